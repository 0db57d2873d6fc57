import {
  type Comparison,
  costText,
  type Direction,
  decimalText,
  differenceText,
  type FindingChange,
  fieldText,
  type ItemChange,
  type Pair,
  type PartsComparison,
  sizeText,
  type ThingChange,
  tellingSizes,
  thingText,
  utilisationText,
} from '@cloche/engine';
import pc from 'picocolors';
import { paint, sign, wrap } from './findings.js';

const kindWidth = 13;
const useWidth = 18;

/** What differs between two states, as a table for people. */
export function comparisonText(comparison: Comparison, files: Pair<string>, width: number): string {
  const { project, geometry, findings, parts, rules, falls, revisions } = comparison;
  const head = [
    `${pc.dim('before')}  ${revisions.before.slice(7, 19)}  ${files.before}`,
    `${pc.dim('after ')}  ${revisions.after.slice(7, 19)}  ${files.after}`,
  ];
  const sections = [
    section(
      'Project',
      project.map((f) => `  ${fieldText(f)}`),
    ),
    section('Site rules', [
      ...rules.map((r) => `  ${r.meaning}: ${r.after}, was ${r.before}`),
      ...(comparison.catalogueChanged ? ['  The catalogue is another one.'] : []),
    ]),
    section('Geometry', geometryRows(geometry, width)),
    section('Findings', findingRows(findings, width)),
    section('Parts and cost', partRows(parts)),
    section(
      'Results that fall, by who decides',
      falls.map((f) => `  ${f.decider.padEnd(24)}${String(f.findings.length).padStart(4)}`),
    ),
  ].flat();
  return [...head, ...(sections.length === 0 ? ['', 'Nothing differs.'] : sections), '', summary(comparison)].join(
    '\n',
  );
}

const section = (title: string, rows: readonly string[]): string[] =>
  rows.length === 0 ? [] : ['', pc.bold(title), ...rows];

/** One row a thing; what only goes along with another stands in one line under it. */
function geometryRows(things: readonly ThingChange[], width: number): string[] {
  const idWidth = Math.max(8, ...things.map((t) => t.id.length)) + 2;
  const indent = ' '.repeat(2 + kindWidth + idWidth);
  const row = (kind: string, id: string, text: string) =>
    `  ${kind.padEnd(kindWidth)}${pc.bold(id.padEnd(idWidth))}${wrap(text, Math.max(40, width - indent.length), indent)}`;
  const only = (t: ThingChange) => t.along !== null && t.resized.length === 0 && t.changed.length === 0;
  return things
    .filter((t) => !only(t))
    .flatMap((thing) => {
      const along = things.filter((t) => only(t) && t.along === thing.id).map((t) => t.id);
      const rows = [row(thing.kind, thing.id, thingText(thing))];
      return along.length === 0 ? rows : [...rows, row('', '', `along with it: ${along.join(', ')}`)];
    });
}

const titles: Readonly<Record<Direction, string>> = { worse: 'worse', better: 'better', other: 'other' };

function findingRows(findings: readonly FindingChange[], width: number): string[] {
  const told = findings.filter((f) => f.change !== 'basis' || f.direction !== 'other');
  const basis = findings.length - told.length;
  return [
    ...(['worse', 'better', 'other'] as const).flatMap((direction) => {
      const rows = told.filter((f) => f.direction === direction);
      return rows.length === 0 ? [] : [`  ${titles[direction]}`, ...rows.map((f) => findingRow(f, width))];
    }),
    ...(basis === 0
      ? []
      : [pc.dim(`  ${basis} more ${basis === 1 ? 'keeps its' : 'keep their'} verdict and rest on other numbers.`)]),
  ];
}

/** The verdict as it is, the utilisation before and after, and, where it is worse, what was found. */
function findingRow(f: FindingChange, width: number): string {
  const now = f.after ?? f.before!;
  const indent = ' '.repeat(3 + 16 + useWidth);
  const head = `  ${paint[now.verdict](`${sign[now.verdict]} ${now.verdict.padEnd(14)}`)}${useText(f).padStart(useWidth - 1)}  `;
  const was = wasText(f);
  const name = `${pc.bold(f.subject)}: ${f.requirement}${was === '' ? '' : pc.dim(` (${was})`)}`;
  const message =
    f.direction === 'worse' && f.after
      ? `\n${indent}${wrap(now.message, Math.max(40, width - indent.length), indent)}`
      : '';
  return `${head}${name}${message}`;
}

function wasText({ before, after, change }: FindingChange): string {
  if (before === null) return 'new';
  if (after === null) return 'gone';
  return change === 'verdict' ? `was ${before.verdict}` : '';
}

function useText({ before, after }: FindingChange): string {
  const [was, is] = [before, after].map((s) => (s?.utilisation == null ? '' : utilisationText(s.utilisation)));
  if (was === is) return is!;
  return `${was} \u2192 ${is}`.trim();
}

const signed = (value: number, text: (size: number) => string): string =>
  value === 0 ? '' : `${value > 0 ? '+' : '\u2212'}${text(Math.abs(value))}`;

function partRows({ items, pieces, mass, cost, difference }: PartsComparison): string[] {
  if (items.length === 0) return [];
  const nameWidth = Math.max(...items.map((i) => i.name.length)) + 2;
  const kilograms = (kg: number) => `${decimalText(kg, 1)} kg`;
  const total = (name: string, was: string, is: string, by: string) =>
    `  ${name.padEnd(8)}${was.padStart(14)} \u2192 ${is.padEnd(14)} ${by}`.trimEnd();
  const unpriced = Math.max(cost.before.unpriced, cost.after.unpriced);
  return [
    ...items.flatMap((item) => itemRows(item, nameWidth)),
    '',
    total(
      'pieces',
      String(pieces.before),
      String(pieces.after),
      [signed(pieces.added, String), signed(-pieces.removed, String)].join(' ').trim(),
    ),
    total('mass', kilograms(mass.before), kilograms(mass.after), signed(mass.after - mass.before, kilograms)),
    total('cost', costText(cost.before), costText(cost.after), differenceText(difference, cost)),
    ...(unpriced === 0
      ? []
      : [
          `  ${linesText(cost.before.unpriced)} before and ${linesText(cost.after.unpriced)} after are not priced, and not in the cost.`,
        ]),
  ];
}

const linesText = (n: number): string => (n === 1 ? '1 line' : `${n} lines`);

function itemRows(item: ItemChange, nameWidth: number): string[] {
  const { pieces, change, cost, difference } = item;
  const counts =
    change === 'changed' ? countText(pieces) : `${change} ${change === 'added' ? pieces.after : pieces.before}`;
  const head = `  ${item.name.padEnd(nameWidth)}${counts.padStart(12)}${differenceText(difference, cost).padStart(18)}`;
  return [
    head.trimEnd(),
    ...tellingSizes(item).map((size) =>
      pc.dim(`    ${sizeText(size).padEnd(nameWidth - 2)}${countText(size.count).padStart(12)}`),
    ),
  ];
}

const countText = ({ before, after }: Pair<number>): string => `${before} \u2192 ${after}`;

function summary({ findings, geometry, worse }: Comparison): string {
  const count = (direction: Direction) => findings.filter((f) => f.direction === direction).length;
  const things = geometry.length === 1 ? '1 thing differs' : `${geometry.length} things differ`;
  const stands = worse ? ' Something stands in the way that did not before.' : '';
  return `${things}; findings: ${count('worse')} worse, ${count('better')} better, ${count('other')} other.${stands}`;
}
