import { type Finding, utilisationText } from '@cloche/engine';
import { hairline, ink, secondInk, verdictInk } from '../drawing/inks.js';
import { verdictShape } from '../drawing/verdict-shape.js';
import { type Flow, margins, textWidth } from './flow.js';
import { amountText } from './words.js';

/** Amber is too light for words on white; its shape carries the colour. */
export const wordColour = (finding: Finding): string =>
  finding.verdict === 'attention' ? ink : verdictInk[finding.verdict];

const left = 84;
const right = 88;
const size = 8;

/** A thin bar with its mark at 1, `width` points wide, about the given height. */
export function utilisationBar(flow: Flow, finding: Finding, x: number, y: number, width: number): void {
  const { doc } = flow;
  const value = finding.utilisation ?? 0;
  const one = x + width / 1.5;
  const end = x + Math.min(width, (Math.max(0, value) * width) / 1.5);
  doc
    .lineWidth(0.5)
    .undash()
    .moveTo(x, y)
    .lineTo(x + width, y)
    .stroke(hairline);
  if (end > x) doc.lineWidth(2.4).moveTo(x, y).lineTo(end, y).stroke(verdictInk[finding.verdict]);
  doc
    .lineWidth(0.7)
    .moveTo(one, y - 3)
    .lineTo(one, y + 3)
    .stroke(ink);
}

/** Every finding with its number, verdict, whole message and amounts; the calculations refer to the number. */
export function findingsSection(flow: Flow, findings: readonly Finding[]): void {
  flow.heading('Findings');
  const open = findings.filter((f) => f.verdict === 'not assessed').length;
  flow.words(
    `Fails first. "Not assessed" never counts as met: ${open === 0 ? 'nothing is open' : `${open} ${open === 1 ? 'finding is' : 'findings are'} open`}. Used is demand over capacity, or its inverse where more is better: above 1 it fails, from 0.9 it calls for attention. What is computed stands under Calculations by the same number, with the cautions that belong to it.`,
    { size: 8.5, colour: secondInk, after: 6 },
  );
  findings.forEach((finding, i) => {
    findingRow(flow, finding, i + 1);
  });
}

/** `5.88 mm of 11.3 mm`: demand of capacity. */
export function amountsText({ demand, capacity, unit }: Finding): string {
  return [demand, capacity]
    .filter((value) => value !== null)
    .map((value) => amountText(value, unit))
    .join(' of ');
}

function findingRow(flow: Flow, finding: Finding, number: number): void {
  const said = amountsText(finding);
  const used = finding.utilisation !== null;
  const width = textWidth - left - (used || said !== '' ? right : 0);
  const title = `${finding.requirement.replace(/\.$/, '')} (${finding.subject})`;
  const decider = `decides: ${finding.decider}`;
  const words = flow.heightOf(title, size, width) + flow.heightOf(finding.message, size, width) + 2;
  const beside = (used ? 14 : 0) + (said === '' ? 0 : 9.5) + 9.5;
  flow.need(Math.max(words, beside, 22) + 6);
  const top = flow.y;
  flow.marks(verdictShape(finding.verdict, [margins.left + 5, top + 5], 8));
  flow.span(finding.verdict, { size, medium: true, indent: 13, colour: wordColour(finding) });
  flow.y = top + 11;
  flow.span(`no. ${number}`, { size: 7, colour: secondInk, indent: 13 });
  flow.y = top;
  flow.words(title, { size, medium: true, indent: left, width, after: 1 });
  flow.words(finding.message, { size, indent: left, width, after: 0 });
  if (!used && said === '') deciderLine(flow, decider);
  const below = flow.y;
  flow.y = top;
  if (used) {
    utilisationBar(flow, finding, margins.left + textWidth - right + 10, top + 5, 40);
    flow.span(utilisationText(finding.utilisation ?? 0), {
      size,
      medium: true,
      indent: textWidth - 40,
      width: 40,
      align: 'right',
    });
    flow.y = top + 12;
  }
  for (const line of used || said !== '' ? [said, decider] : []) {
    flow.words(line, {
      size: 6.8,
      indent: textWidth - right + 4,
      width: right - 4,
      align: 'right',
      colour: secondInk,
      after: 0.5,
    });
  }
  flow.y = Math.max(below, flow.y, top + 20) + 2;
  flow.rule();
  flow.y += 3;
}

const deciderLine = (flow: Flow, words: string): void =>
  flow.words(words, { size: 6.8, indent: left, colour: secondInk, after: 0.5 });
