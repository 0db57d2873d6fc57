/**
 * Text with letters that the shipped font has: thin spaces become no-break spaces, the diameter sign becomes its look-alike.
 * Checked against the character map of both weights.
 */
export const printable = (raw: string): string =>
  raw
    .replace(/[\u2009\u202f\u2007]/g, '\u00a0')
    .replace(/\u2300/g, '\u00d8')
    .replace(/[\u2010\u2011]/g, '-')
    .replace(/\t/g, ' ');
