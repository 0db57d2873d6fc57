import { disciplines, type Finding, sourceText, unitText, utilisationText } from '@cloche/engine';
import { hairline, ink, secondInk } from '../drawing/inks.js';
import { verdictShape } from '../drawing/verdict-shape.js';
import { amountsText, utilisationBar, wordColour } from './findings.js';
import { type Flow, margins, textWidth } from './flow.js';
import { withUnit } from './words.js';
import { agreed, type PrintedStep, type PrintedValue, shapeOf, worksheet } from './worksheet.js';

/** Findings with the numbers that the summary gave them, and of every source its number in the list. */
export interface Numbered {
  readonly findings: readonly { readonly finding: Finding; readonly number: number }[];
  readonly sourceNumber: (source: string) => number;
}
type Item = Numbered['findings'][number];

/** Calculations by discipline and kind of check; what several share is printed once. */
export function calculationsSection(flow: Flow, numbered: Numbered): void {
  const computed = numbered.findings.filter(({ finding }) => finding.calculation !== null);
  if (computed.length === 0) return;
  flow.heading('Calculations');
  flow.words(
    'Under each formula stand the values that are new in it: a symbol keeps its value, given or found, until it is given again. Numbers carry six figures. Angles are in radians inside sin, cos and tan; log is the natural logarithm. Where one calculation serves several findings, its formulas stand once and each finding has a column under its number. Numbers in square brackets: see Sources.',
    { size: 8.5, colour: secondInk, after: 4 },
  );
  for (const { id, title } of disciplines) {
    const items = computed.filter(({ finding }) => finding.discipline === id);
    if (items.length > 0) chapter(flow, title, items, numbered.sourceNumber);
  }
}

const cautionsOf = ({ finding }: Item): readonly string[] => [
  ...new Set([...finding.cautions, ...(finding.calculation?.cautions ?? [])]),
];
const assumptionsOf = ({ finding }: Item): readonly string[] => finding.calculation?.assumptions ?? [];

/** What all of some lists hold, in the order of the first. */
const shared = (lists: readonly (readonly string[])[]): string[] =>
  (lists[0] ?? []).filter((words) => lists.every((list) => list.includes(words)));

/** `air/flow` of `air/flow/enclosure-1`. */
const kindOf = ({ finding }: Item): string => finding.id.split('/').slice(0, 2).join('/');

function chapter(flow: Flow, title: string, items: readonly Item[], sourceNumber: Numbered['sourceNumber']): void {
  flow.chapter(title);
  const kinds = new Map<string, Item[]>();
  for (const item of items) kinds.set(kindOf(item), [...(kinds.get(kindOf(item)) ?? []), item]);
  const groups = [...kinds.values()];
  const common = shared(items.map(cautionsOf));
  if (common.length > 0) flow.words(`Cautions for this chapter: ${common.join(' ')}`, cautionStyle);
  const letters = letteredCautions(groups, common);
  for (const [words, letter] of letters) flow.words(`Caution ${letter}: ${words}`, cautionStyle);
  for (const group of groups) kindSection(flow, group, { common, letters }, sourceNumber);
}

const cautionStyle = { size: 7.5, medium: true, after: 3 } as const;

/** Cautions of more than one kind of check, each with the letter that stands for it in its chapter. */
function letteredCautions(groups: readonly (readonly Item[])[], common: readonly string[]): Map<string, string> {
  const uses = new Map<string, number>();
  for (const group of groups)
    for (const words of new Set(group.flatMap(cautionsOf))) uses.set(words, (uses.get(words) ?? 0) + 1);
  const several = [...uses].filter(([words, count]) => count > 1 && !common.includes(words)).map(([words]) => words);
  return new Map(several.map((words, i) => [words, letterOf(i)]));
}

/** A to Z, then A2, B2 ... */
const letterOf = (i: number): string =>
  `${String.fromCharCode(65 + (i % 26))}${i < 26 ? '' : String(Math.floor(i / 26) + 1)}`;

interface Above {
  readonly common: readonly string[];
  readonly letters: ReadonlyMap<string, string>;
}

/** What is said above by letter, what is said here in full; with numbers where it is not for all of the group. */
function cautions(flow: Flow, group: readonly Item[], { common, letters }: Above): void {
  const own = (item: Item) => cautionsOf(item).filter((words) => !common.includes(words));
  const all = [...new Set(group.flatMap(own))];
  const said = all.map((words) => {
    const who = group.filter((item) => own(item).includes(words));
    const numbers = who.length === group.length ? '' : ` (no. ${numbersText(who)})`;
    return { letter: letters.get(words), words: `${letters.get(words) ?? words}${numbers}` };
  });
  const lettered = said.filter((s) => s.letter !== undefined).map((s) => s.words);
  const full = said.filter((s) => s.letter === undefined).map((s) => s.words);
  const text = [
    lettered.length === 0
      ? ''
      : `${lettered.length === 1 ? 'Caution' : 'Cautions'} ${lettered.join(', ')} of this chapter.`,
    full.length === 0 ? '' : `${full.length === 1 ? 'Caution' : 'Cautions'}: ${full.join(' ')}`,
  ];
  const words = text.filter((t) => t !== '').join(' ');
  if (words !== '') flow.words(words, { ...cautionStyle, after: 2 });
}

const numbersText = (items: readonly Item[]): string => items.map(({ number }) => number).join(', ');

/** What some of the group need: each once, with the numbers it holds for where that is not all. */
function lines(flow: Flow, group: readonly Item[], of: (item: Item) => readonly string[], title: string): void {
  const said = new Map<string, Item[]>();
  for (const item of group) for (const words of of(item)) said.set(words, [...(said.get(words) ?? []), item]);
  const byWho = new Map<string, string[]>();
  for (const [words, items] of said) {
    const who = items.length === group.length ? '' : ` (no. ${numbersText(items)})`;
    byWho.set(who, [...(byWho.get(who) ?? []), words]);
  }
  for (const [who, words] of byWho)
    flow.words(`${title}${words.join(' ')}${who}`, { size: 7.5, colour: secondInk, after: 1 });
}

function kindSection(flow: Flow, group: readonly Item[], above: Above, sourceNumber: Numbered['sourceNumber']): void {
  const title = agreed(group.map(({ finding }) => finding.requirement.replace(/\.$/, '')));
  flow.y += 5;
  flow.need(74);
  flow.rule(hairline);
  flow.y += 4;
  flow.words(title ?? kindWords(group[0]!), { size: 9.5, medium: true, after: 2 });
  for (const item of group) itemLine(flow, item, title === null);
  flow.y += 1.5;
  lines(flow, group, ({ finding }) => (finding.rule ? [`Rule ${ruleText(finding.rule)}.`] : []), '');
  lines(flow, group, assumptionsOf, 'Assumed: ');
  lines(flow, group, ({ finding }) => finding.asks.map((id) => `${id}.`), 'Rests on open questions: ');
  cautions(flow, group, above);
  const sheets = columnsOf(group);
  for (const items of sheets) {
    const own = agreed(items.map(({ finding }) => finding.calculation!.title));
    sheet(flow, items, own !== null && (sheets.length > 1 || own !== title) ? own : null, sourceNumber);
  }
}

const kindWords = (item: Item): string => {
  const words = kindOf(item).split('/')[1]!.replace(/-/g, ' ');
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
};

const ruleText = (rule: NonNullable<Finding['rule']>): string => {
  const over = rule.overriddenBecause ? `; overridden for this project because ${rule.overriddenBecause}` : '';
  return `${rule.id}: ${rule.text}; ${sourceText(rule.source)}${over}`;
};

/** Number, verdict, what it is about, and the outcome, on one line. */
function itemLine(flow: Flow, { finding, number }: Item, withTitle: boolean): void {
  flow.need(13);
  const about = finding.id.split('/').slice(2).join(', ') || finding.subject;
  flow.marks(verdictShape(finding.verdict, [margins.left + 5, flow.y + 4.6], 7.5));
  flow.span(finding.verdict, { size: 7.5, medium: true, indent: 13, colour: wordColour(finding) });
  flow.span(`no. ${number}`, { size: 7.5, indent: 68 });
  flow.span(flow.cut(withTitle ? finding.requirement : about, 8, 225), { size: 8, indent: 100 });
  flow.span(amountsText(finding), { size: 7.5, indent: 330, width: 82, align: 'right', colour: secondInk });
  if (finding.utilisation !== null) {
    utilisationBar(flow, finding, margins.left + 420, flow.y + 5, 42);
    flow.span(utilisationText(finding.utilisation), {
      size: 8,
      medium: true,
      indent: textWidth - 32,
      width: 32,
      align: 'right',
    });
  }
  flow.y += 12;
}

/** More numbers than this do not fit beside each other. */
const mostColumns = 6;

/** Findings whose calculations have one shape, in sheets of as many columns as fit. */
function columnsOf(group: readonly Item[]): Item[][] {
  const shapes = new Map<string, Item[]>();
  for (const item of group) {
    const shape = shapeOf(item.finding.calculation!);
    shapes.set(shape, [...(shapes.get(shape) ?? []), item]);
  }
  return [...shapes.values()].flatMap((items) => {
    const sheets = Math.ceil(items.length / mostColumns);
    const each = Math.ceil(items.length / sheets);
    return Array.from({ length: sheets }, (_, i) => items.slice(i * each, (i + 1) * each));
  });
}

const label = 148;
const columnWidth = (count: number) => Math.min(86, (textWidth - label) / count);
const nameLeft = 316;

function sheet(flow: Flow, items: readonly Item[], title: string | null, sourceNumber: Numbered['sourceNumber']): void {
  flow.y += 3;
  const steps = worksheet(items.map(({ finding }) => finding.calculation!));
  const same = steps.every((step) => agreed(step.results) !== null && step.given.every(isCommon));
  const head = () => {
    if (!same) columnHead(flow, items);
  };
  flow.need(30 + (steps[0] ? stepHeight(flow, steps[0]) : 0));
  if (title !== null) flow.words(`${title}, for no. ${numbersText(items)}`, { size: 8.5, medium: true, after: 2 });
  head();
  for (const step of steps) {
    if (flow.need(stepHeight(flow, step))) head();
    stepBlock(flow, step, items, sourceNumber(step.source));
  }
}

function columnHead(flow: Flow, items: readonly Item[]): void {
  const width = columnWidth(items.length);
  items.forEach(({ number }, i) => {
    flow.span(`no. ${number}`, {
      size: 7.5,
      medium: true,
      indent: label + i * width,
      width: width - 4,
      align: 'right',
    });
  });
  flow.y += 11;
}

const formulaOf = (step: PrintedStep): string => `${step.symbol} = ${step.expression}`;
const formulaSize = 8.2;
const smallSize = 7.2;

const isCommon = (value: PrintedValue): boolean => agreed(value.texts) !== null;

/** Enough of a step to stand together: its formula, some of its values, its result. */
function stepHeight(flow: Flow, step: PrintedStep): number {
  const common = step.given.filter(isCommon).length;
  const lines = Math.ceil(common / 2) + (step.given.length - common);
  return flow.heightOf(formulaOf(step), formulaSize, textWidth) + Math.min(6, lines) * 10 + 24;
}

/** Formula with its result, name and source; under it the values that are new here. The result goes last where it does not fit beside. */
function stepBlock(flow: Flow, step: PrintedStep, items: readonly Item[], source: number): void {
  const top = flow.y;
  const result = agreed(step.results);
  // A figure read from a table is its own result.
  const plain = result !== null && step.expression === result;
  const formula = plain ? step.symbol : formulaOf(step);
  const said = result === null ? '' : withUnit(result, step.unit);
  const width = flow.widthOf(formula, formulaSize);
  const long = width > nameLeft - 12;
  const beside = result !== null && width + flow.widthOf(` = ${said}`, formulaSize, true) < nameLeft - 12;
  if (beside) {
    flow.span(formula, { size: formulaSize });
    flow.span(` = ${said}`, { size: formulaSize, medium: true, indent: width });
    flow.y += formulaSize * 1.38;
  } else flow.words(formula, { size: formulaSize, after: 0 });
  const below = flow.y;
  // A long formula has the whole width, and its name under it.
  if (!long) flow.y = top + 0.8;
  const backing = step.mark === 'read' || step.mark === 'derived' ? '' : ` ${step.mark}`;
  flow.words(`${step.name} [${source}]${backing}`, {
    size: smallSize,
    colour: secondInk,
    indent: long ? 12 : nameLeft,
    width: textWidth - (long ? 12 : nameLeft),
    after: 0,
  });
  flow.y = Math.max(below, flow.y);
  commonValues(flow, step.given.filter(isCommon), items);
  for (const value of step.given.filter((v) => !isCommon(v))) valueRow(flow, value, items);
  if (!beside && result !== null) flow.words(`${step.symbol} = ${said}`, { size: formulaSize, medium: true, after: 0 });
  if (result === null) resultRow(flow, step);
  notes(flow, step.notes, items, '');
  flow.y += 2.6;
}

const named = (name: string | null, origin: string | null): string =>
  [name ?? '', origin ? `(${origin})` : ''].filter((words) => words !== '').join(' ');

const givenWords = (value: PrintedValue, origin: string | null): string => {
  const name = agreed(value.origins) === null ? '' : named(agreed(value.names), origin);
  return `${value.symbol} = ${withUnit(value.texts[0]!, value.unit)}${name === '' ? '' : `  ${name}`}`;
};

/** From this many values of one origin on, it is said once for all. */
const manyOfOneOrigin = 5;

/** Values in columns, read across: they are many and short. Three columns where all are short enough. */
function commonValues(flow: Flow, given: readonly PrintedValue[], items: readonly Item[]): void {
  const origins = given.map((value) => agreed(value.origins));
  const one = given.length >= manyOfOneOrigin ? agreed(origins.map((origin) => origin ?? '')) : null;
  const words = given.map((value, i) => givenWords(value, one ? null : origins[i]!));
  const room = (columns: number) => (textWidth - 12) / columns - 6;
  const columns = words.every((text) => flow.widthOf(text, smallSize) <= room(3)) ? 3 : 2;
  const width = room(columns);
  for (let i = 0; i < words.length; i += columns) {
    const line = words.slice(i, i + columns);
    flow.need(Math.max(...line.map((text) => flow.heightOf(text, smallSize, width))));
    const top = flow.y;
    const ends = line.map((text, column) => {
      flow.y = top;
      const indent = 12 + column * (width + 6);
      flow.words(text, { size: smallSize, indent, width, after: 0, colour: secondInk });
      return flow.y;
    });
    flow.y = Math.max(...ends);
  }
  if (one) flow.words(`all from ${one}`, { size: smallSize, indent: 12, after: 0, colour: secondInk });
  for (const value of given) differing(flow, value, items);
}

/** Names and origins of a value where they are not the same in every column. */
function differing(flow: Flow, value: PrintedValue, items: readonly Item[]): void {
  if (agreed(value.names) !== null && agreed(value.origins) !== null) return;
  const words = value.names.map((name, i) => named(name, value.origins[i]!));
  notes(flow, words, items, `${value.symbol}: `);
}

/** A value that differs: its name once at the left, a number in each column. */
function valueRow(flow: Flow, value: PrintedValue, items: readonly Item[]): void {
  const [oneName, oneOrigin] = [agreed(value.names), agreed(value.origins)];
  const name = oneName === null || oneOrigin === null ? '' : named(oneName, oneOrigin);
  row(flow, `${inUnit(value.symbol, value.unit)}${name === '' ? '' : `  ${name}`}`, value.texts, false);
  differing(flow, value, items);
}

const resultRow = (flow: Flow, step: PrintedStep): void =>
  row(flow, inUnit(step.symbol, step.unit), step.results, true);

/** `E in W/m²`; a pure number by its symbol alone. */
const inUnit = (symbol: string, unit: string): string =>
  unitText(unit) === '' ? symbol : `${symbol} in\u00a0${unitText(unit)}`;

function row(flow: Flow, words: string, texts: readonly string[], medium: boolean): void {
  const colour = medium ? ink : secondInk;
  flow.need(flow.heightOf(words, smallSize, label - 18));
  const top = flow.y;
  flow.words(words, { size: medium ? 7.8 : smallSize, medium, indent: 12, width: label - 18, after: 0, colour });
  const below = flow.y;
  flow.y = top;
  const width = columnWidth(texts.length);
  texts.forEach((text, i) => {
    flow.span(text, { size: 7.6, medium, indent: label + i * width, width: width - 4, align: 'right', colour });
  });
  flow.y = below;
}

/** Words that differ between the columns, each with the numbers it holds for. */
function notes(flow: Flow, words: readonly string[], items: readonly Item[], title: string): void {
  const one = agreed(words);
  if (title === '' && one) flow.words(one, { size: smallSize, indent: 12, colour: secondInk, after: 0 });
  if (one !== null) return;
  const said = new Map<string, Item[]>();
  words.forEach((text, i) => {
    if (text !== '') said.set(text, [...(said.get(text) ?? []), items[i]!]);
  });
  for (const [text, who] of said)
    flow.words(`${title}${text} (no. ${numbersText(who)})`, { size: 6.8, indent: 12, colour: secondInk, after: 0 });
}
