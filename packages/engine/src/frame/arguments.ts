import { type Problem, positive } from '../floor/problem.js';
import { frameMessages } from './messages.js';

/** Name, value and unit of arguments that must be finite and above zero: `frame/not-positive`. */
export const needPositive = (named: Readonly<Record<string, readonly [number, string]>>): Problem[] =>
  Object.entries(named).flatMap(([name, [value, unit]]) => positive('frame/not-positive', name, value, unit));

/** Arguments that must be finite: `frame/not-a-number`. */
export const needFinite = (named: Readonly<Record<string, number>>): Problem[] =>
  Object.entries(named).flatMap(([name, value]) => (Number.isFinite(value) ? [] : [frameMessages.number(name, value)]));

/** Arguments that must be finite and not below zero: `frame/negative`. */
export const needNotNegative = (named: Readonly<Record<string, readonly [number, string]>>): Problem[] =>
  Object.entries(named).flatMap(([name, [value, unit]]) => {
    if (!Number.isFinite(value)) return [frameMessages.number(name, value)];
    return value < 0 ? [frameMessages.negative(name, value, unit)] : [];
  });
