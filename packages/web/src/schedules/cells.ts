import { isShown } from '../brief/is-shown.js';
import { type Path, shownText, valueAt } from '../brief/path.js';
import { readTyped } from '../brief/read-typed.js';
import { type Named, namedOf } from '../brief/references.js';
import type { Field } from '../brief/shapes.js';
import type { Shelf } from '../engine/contract.js';
import { scheduleTexts as say } from '../texts/schedules.js';
import { texts } from '../texts.js';

/** What a cell may name: things of the brief, items of the catalogue. */
export interface Known {
  readonly data: unknown;
  readonly shelf: Shelf;
}

/** A value for the brief (undefined takes it out), or why the text cannot stand there. */
export type CellRead = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly reason: string };

const right = (value: unknown): CellRead => ({ ok: true, value });
const wrong = (reason: string): CellRead => ({ ok: false, reason });

/** What a cell shows: lists and points with commas, yes and no as words. */
export function cellText(value: unknown): string {
  if (Array.isArray(value)) return value.map(shownText).join(', ');
  return value === true ? texts.forms.yes : value === false ? texts.forms.no : shownText(value);
}

export const cellAt = (data: unknown, row: Path, field: Field): unknown => valueAt(data, [...row, ...field.path]);

/** A power of a pulsed laser is no cell at all. */
export const applies = (data: unknown, row: Path, field: Field): boolean => isShown(data, row, field);

/** Figures stand at the right. */
export const isFigure = ({ shape }: Field): boolean =>
  'quantity' in shape || 'whole' in shape || 'number' in shape || 'money' in shape || 'ruleValue' in shape;

/** What may be chosen for a field, as it is written in a cell; empty where anything may be typed. */
export function choicesOf({ shape }: Field, { data, shelf }: Known): readonly Named[] {
  if ('choice' in shape) return shape.choice.map((word) => ({ id: String(word), name: String(word) }));
  if ('yesNo' in shape) return [texts.forms.yes, texts.forms.no].map((word) => ({ id: word, name: word }));
  if ('variants' in shape) return Object.keys(shape.variants).map((word) => ({ id: word, name: word }));
  if ('several' in shape) return shape.several.map((word) => ({ id: word, name: word }));
  if ('reference' in shape) return namedOf(data, shape.reference);
  if ('references' in shape) return namedOf(data, shape.references);
  if ('place' in shape) return namedOf(data, shape.place);
  if ('anyItem' in shape) return shelf.items;
  if ('item' in shape)
    return shelf.items.filter((i) => shape.item.includes(i.kind) && (shape.of === undefined || i.use === shape.of));
  if ('profile' in shape) return shelf.profiles;
  return 'rule' in shape ? shelf.rules : [];
}

const alike = (text: string): string => text.trim().toLowerCase();

/** The one thing that a word names by id or by name; letters great and small are the same. */
function named(word: string, among: readonly Named[]): CellRead {
  const byId = among.find((each) => alike(each.id) === alike(word));
  if (byId) return right(byId.id);
  const byName = among.filter((each) => alike(each.name) === alike(word));
  if (byName.length === 1) return right(byName[0]!.id);
  if (byName.length > 1) return wrong(say.severalCalled(word));
  return wrong(
    among.length === 0
      ? say.noneYet(word)
      : say.notAmong(
          word,
          among.map((each) => each.id),
        ),
  );
}

function several(text: string, among: readonly Named[]): CellRead {
  const read = text
    .split(/[,;]/)
    .filter((word) => word.trim() !== '')
    .map((word) => named(word, among));
  const first = read.find((each) => !each.ok);
  return first ?? right(read.flatMap((each) => (each.ok ? [each.value] : [])));
}

/** A thing by its name, or a point as two lengths. */
function place(text: string, field: Field, known: Known): CellRead {
  const found = named(text, choicesOf(field, known));
  const parts = text.split(/[,;]/).map((part) => part.trim());
  if (found.ok || parts.length !== 2) return found;
  const length: Field = { path: [], label: '', shape: { quantity: 'length' } };
  const read = parts.map((part) => readCell(length, part, known));
  return read.find((each) => !each.ok) ?? right(parts);
}

/** Reads what was typed or pasted into a cell. An empty text takes the value out. */
export function readCell(field: Field, text: string, known: Known): CellRead {
  const typed = text.trim();
  const { shape } = field;
  if (typed === '') return 'id' in shape ? wrong(texts.forms.idForm) : right(undefined);
  if ('id' in shape) return /^[a-z][a-z0-9-]{0,39}$/.test(typed) ? right(typed) : wrong(texts.forms.idForm);
  if ('references' in shape || 'several' in shape) return several(typed, choicesOf(field, known));
  if ('place' in shape) return place(typed, field, known);
  if ('yesNo' in shape) {
    const word = alike(typed);
    if (['yes', 'true'].includes(word)) return right(true);
    return ['no', 'false'].includes(word) ? right(false) : wrong(say.yesOrNo(typed));
  }
  const choices = choicesOf(field, known);
  if ('choice' in shape) {
    const found = shape.choice.find((word) => alike(String(word)) === alike(typed));
    return found === undefined ? wrong(say.notAmong(typed, shape.choice.map(String))) : right(found);
  }
  if (choices.length > 0 || 'reference' in shape || 'item' in shape || 'anyItem' in shape || 'variants' in shape)
    return named(typed, choices);
  const read = readTyped(field, typed);
  return read.ok ? right(read.value) : wrong(`${read.message} ${read.hint}`.trim());
}
