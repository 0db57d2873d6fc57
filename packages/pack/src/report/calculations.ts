import { type CalculationStep, type Finding, sourceText, utilisationText } from '@cloche/engine';
import { hairline, ink, secondInk, verdictInk } from '../drawing/inks.js';
import { verdictShape } from '../drawing/verdict-shape.js';
import { type Flow, margins, textWidth } from './flow.js';
import { printable } from './printable.js';
import { amountText, givenText, valueText, withUnit } from './words.js';

/** One finding as on a hand-written sheet: what is asked, what came out, and every step that leads there. */
export function findingBlock(flow: Flow, finding: Finding): void {
  flow.need(96);
  flow.y += 6;
  const y = flow.y;
  flow.marks(verdictShape(finding.verdict, [margins.left + 6, y + 7], 11));
  flow.words(finding.requirement, { size: 10.5, medium: true, indent: 18, width: textWidth - 110, after: 1 });
  const below = flow.y;
  flow.y = y + 1;
  const words = finding.verdict.replace(' ', '\u00a0');
  flow.words(words, { size: 9, medium: true, align: 'right', colour: wordColour(finding), after: 0 });
  flow.y = below;
  flow.words(`${finding.id}   on ${finding.subject}   decides: ${finding.decider}`, {
    size: 7.5,
    colour: secondInk,
    indent: 18,
    after: 3,
  });
  flow.words(finding.message, { size: 9, indent: 18, after: 3 });
  if (finding.utilisation !== null) utilisation(flow, finding, finding.utilisation);
  if (finding.rule) rule(flow, finding);
  calculation(flow, finding);
  cautions(flow, finding);
  if (finding.asks.length > 0)
    flow.words(`Rests on the open question ${finding.asks.join(', ')}.`, { size: 8, indent: 18, after: 1.5 });
  flow.y += 3;
  flow.rule(hairline);
  flow.y += 2;
}

/** Amber is too light for words on white; its shape carries the colour. */
const wordColour = (finding: Finding) => (finding.verdict === 'attention' ? ink : verdictInk[finding.verdict]);

/** A thin bar with its mark at 1. */
function utilisation(flow: Flow, finding: Finding, value: number): void {
  flow.need(14);
  const { doc } = flow;
  const left = margins.left + 18;
  const width = 120;
  const one = left + width / 1.5;
  const end = left + Math.min(width, (Math.max(0, value) * width) / 1.5);
  const y = flow.y + 5;
  doc
    .lineWidth(0.5)
    .undash()
    .moveTo(left, y)
    .lineTo(left + width, y)
    .stroke(hairline);
  if (end > left) doc.lineWidth(2.6).moveTo(left, y).lineTo(end, y).stroke(verdictInk[finding.verdict]);
  doc
    .lineWidth(0.8)
    .moveTo(one, y - 4)
    .lineTo(one, y + 4)
    .stroke(ink);
  const amounts = [
    finding.demand === null ? '' : `demand ${amountText(finding.demand, finding.unit)}`,
    finding.capacity === null ? '' : `capacity ${amountText(finding.capacity, finding.unit)}`,
    `utilisation ${utilisationText(value)}`,
  ].filter((words) => words !== '');
  flow.words(amounts.join('    '), { size: 8, indent: 18 + width + 10, after: 4 });
}

function rule(flow: Flow, finding: Finding): void {
  const { rule: used } = finding;
  if (!used) return;
  const over = used.overriddenBecause ? `; overridden for this project because ${used.overriddenBecause}` : '';
  flow.words(`Rule ${used.id}: ${used.text}; ${sourceText(used.source)}${over}`, { size: 8, indent: 18, after: 3 });
}

function calculation(flow: Flow, finding: Finding): void {
  if (!finding.calculation) {
    flow.words('No calculation: what is needed for it is not known.', {
      size: 8,
      colour: secondInk,
      indent: 18,
      after: 3,
    });
    return;
  }
  flow.words(finding.calculation.title, { size: 8.5, medium: true, indent: 18, after: 3 });
  for (const step of finding.calculation.steps) stepBlock(flow, step);
  for (const assumption of finding.calculation.assumptions)
    flow.words(`Assumed: ${assumption}`, { size: 8, indent: 18, after: 1.5 });
}

/** All cautions of a result stand with it, each once, as one paragraph. */
function cautions(flow: Flow, finding: Finding): void {
  const all = [...new Set([...finding.cautions, ...(finding.calculation?.cautions ?? [])])];
  if (all.length === 0) return;
  flow.words(`${all.length === 1 ? 'Caution' : 'Cautions'}: ${all.join(' ')}`, {
    size: 7.5,
    indent: 18,
    after: 2,
    medium: true,
  });
}

/** Values in two columns, read across: they are many and short. */
function values(flow: Flow, step: CalculationStep): void {
  const given = Object.entries(step.values).map(([symbol, value]) => givenText(symbol, value));
  const width = (textWidth - 44) / 2 - 6;
  for (let i = 0; i < given.length; i += 2) {
    const pair = given.slice(i, i + 2);
    flow.need(Math.max(...pair.map((words) => flow.heightOf(words, 8, width))));
    const top = flow.y;
    const ends = pair.map((words, column) => {
      flow.y = top;
      flow.words(words, { size: 8, indent: 44 + column * (width + 6), width, after: 0.5, colour: secondInk });
      return flow.y;
    });
    flow.y = Math.max(...ends);
  }
}

/** Formula, values with their names, result with unit, source. */
export function stepBlock(flow: Flow, step: CalculationStep): void {
  flow.need(40);
  const top = flow.y;
  flow.words(`${step.symbol} = ${step.expression}`, { size: 9, indent: 30, width: textWidth * 0.56, after: 1 });
  const below = flow.y;
  if (top < below) {
    flow.y = top;
    flow.words(step.name, {
      size: 8,
      colour: secondInk,
      indent: 30 + textWidth * 0.58,
      width: textWidth * 0.42 - 30,
      after: 1,
    });
  }
  flow.y = Math.max(flow.y, below);
  values(flow, step);
  flow.words(`${step.symbol} = ${withUnit(valueText(step.result), step.unit)}`, {
    size: 9,
    medium: true,
    indent: 30,
    after: 0.5,
  });
  const note = step.note ? ` ${step.note}` : '';
  flow.words(printable(`${sourceText(step.source)}${note}`), { size: 7.5, colour: secondInk, indent: 30, after: 5 });
}
