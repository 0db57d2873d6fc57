import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const sheet = readFileSync(new URL('../src/styles/paper.css', import.meta.url), 'utf8');
const colours = (text: string): Record<string, string> =>
  Object.fromEntries([...text.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)].map((m) => [m[1]!, m[2]!]));
const at = sheet.indexOf('@media (prefers-color-scheme: dark)');
const light = colours(sheet.slice(0, at));
const schemes = { light, dark: { ...light, ...colours(sheet.slice(at)) } };

/** Relative luminance and contrast ratio. Source: WCAG 2.2, definitions (from memory). */
const luminance = (hex: string): number => {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
};
const ratio = (a: string, b: string): number => {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high! + 0.05) / (low! + 0.05);
};

// Ratios printed by the handbook of deliverables for the verdict colours on white.
test.each([
  ['#005a8c', 7.39],
  ['#9b1c1c', 8.15],
  ['#6b6b6b', 5.33],
])('the ratio of %s on white is as published', (colour, published) => {
  expect(Math.abs(ratio(colour, '#ffffff') - published)).toBeLessThan(0.005);
});

describe.each(Object.entries(schemes))('%s paper', (_, c) => {
  // WCAG 2.2, 1.4.3: text 4.5:1.
  test.each([
    ['ink', 'paper'],
    ['second', 'paper'],
    ['accent', 'paper'],
    ['fails', 'paper'],
    ['ink', 'wash'],
    ['second', 'wash'],
    ['accent', 'wash'],
    ['on-accent', 'accent'],
    ['ink', 'body'],
  ])('%s on %s can be read', (text, ground) => {
    expect(ratio(c[text]!, c[ground]!)).toBeGreaterThanOrEqual(4.5);
  });
  // WCAG 2.2, 1.4.11: edges of controls and signs 3:1.
  test.each([
    ['edge', 'paper'],
    ['meets', 'paper'],
    ['open', 'paper'],
    ['sign', 'meets'],
    ['sign', 'fails'],
  ])('%s on %s can be told apart', (part, ground) => {
    expect(ratio(c[part]!, c[ground]!)).toBeGreaterThanOrEqual(3);
  });
});
