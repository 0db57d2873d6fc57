/** The languages of the person's browser; a page without one is English. */
const locales = (): readonly string[] => globalThis.navigator?.languages ?? ['en'];

const marks = new Map<string, string>();

/** The decimal sign where the person lives. */
function decimalMark(locale: string): string {
  const known = marks.get(locale);
  if (known !== undefined) return known;
  const mark = new Intl.NumberFormat(locale).formatToParts(1.5).find((part) => part.type === 'decimal')?.value ?? '.';
  marks.set(locale, mark);
  return mark;
}

/**
 * A printed number with the decimal sign of a locale; digits are grouped by thin spaces everywhere (ISO 80000-1:2022, 7.3, from memory).
 * Figures inside the brief stay as they were written, and units with points in them do not occur.
 */
export function localNumber(text: string, locale = locales()[0] ?? 'en'): string {
  const mark = decimalMark(locale);
  return mark === '.' ? text : text.replace(/(?<=\d)\.(?=\d)/g, mark);
}

/** Day and time as people write it where they live. */
export const localTime = (iso: string, locale = locales()[0] ?? 'en'): string =>
  new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' }).format(new Date(iso));

export const localDay = (iso: string, locale = locales()[0] ?? 'en'): string =>
  new Intl.DateTimeFormat(locale, { dateStyle: 'medium' }).format(new Date(iso));
