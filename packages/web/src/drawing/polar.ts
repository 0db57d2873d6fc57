import { distance2, type Vec2 } from '@cloche/engine';
import { drawingTexts } from '../texts/drawing.js';
import { lengthText, type Units } from './length-text.js';
import type { Aim, Shown, ToolField } from './tool.js';

const { fields: say } = drawingTexts;

export const angleOf = (from: Vec2, to: Vec2): number => Math.atan2(to[1] - from[1], to[0] - from[0]);

export const angleText = (radians: number): string =>
  `${Number((((radians * 180) / Math.PI + 360) % 360).toFixed(1)) % 360}\u00b0`;

/** A point from the one before: what was typed of length and angle, the rest from the pointer. */
export function polarPlace(from: Vec2 | undefined, { at, typed }: Aim): Vec2 {
  if (!from || (typed.length === undefined && typed.angle === undefined)) return at;
  const angle = typed.angle ?? angleOf(from, at);
  // Along a typed angle the pointer tells how far it has gone that way.
  const along = (at[0] - from[0]) * Math.cos(angle) + (at[1] - from[1]) * Math.sin(angle);
  const length = typed.length ?? Math.max(0, along);
  return [from[0] + length * exact(Math.cos(angle)), from[1] + length * exact(Math.sin(angle))];
}

const exact = (value: number): number => (Math.abs(value) < 1e-12 ? 0 : value);

export function polarFields(from: Vec2 | undefined, to: Vec2): readonly ToolField[] {
  if (!from) return [];
  return [
    { id: 'length', label: say.length, kind: 'length', value: distance2(from, to) },
    { id: 'angle', label: say.angle, kind: 'angle', value: angleOf(from, to) },
  ];
}

/** The leg that is drawn next with its length and angle. */
export function polarShown(from: Vec2 | undefined, to: Vec2, units: Units): NonNullable<Shown['dimensions']> {
  if (!from || distance2(from, to) < 1e-6) return [];
  const text = `${lengthText(distance2(from, to), units)}  ${angleText(angleOf(from, to))}`;
  return [{ from, to, text, field: 'length' }];
}
