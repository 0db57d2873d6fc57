import { parseQuantity } from '@cloche/engine';
import type { Problem } from '../engine/contract.js';
import { texts } from '../texts.js';
import type { Written } from './document.js';
import type { Field } from './shapes.js';

export type Trouble = Pick<Problem, 'message' | 'hint'>;
export type Read = { readonly ok: true; readonly value: Written | undefined } | ({ readonly ok: false } & Trouble);

export const wrong = (message: string, hint = ''): Read => ({ ok: false, message, hint });
export const right = (value: Written | undefined): Read => ({ ok: true, value });

/** What a typed text becomes in the brief, or why it cannot stand there. */
export function readTyped({ shape }: Field, text: string): Read {
  const typed = text.trim();
  if (typed === '') return right(undefined);
  if ('quantity' in shape) {
    const read = parseQuantity(typed, shape.quantity);
    return read.ok ? right(typed) : wrong(read.problems[0]?.message ?? '', read.problems[0]?.hint);
  }
  if ('whole' in shape) return /^\d+$/.test(typed) ? right(Number(typed)) : wrong(texts.forms.whole);
  if ('number' in shape) return Number.isFinite(Number(typed)) ? right(Number(typed)) : wrong(texts.forms.number);
  if ('date' in shape) return isDate(typed) ? right(typed) : wrong(texts.forms.date);
  if ('money' in shape) return /^\d+(\.\d+)? [A-Z]{3}$/.test(typed) ? right(typed) : wrong(texts.forms.money);
  if ('ruleValue' in shape && Number.isFinite(Number(typed))) return right(Number(typed));
  if ('ruleValue' in shape && /^(true|false)$/.test(typed)) return right(typed === 'true');
  return right(text);
}

/** A day of the calendar as ISO 8601 writes it: the 30th of February is none. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}
