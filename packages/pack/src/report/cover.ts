import { type Decider, type Design, type Finding, type Verdict, verdictOrder } from '@cloche/engine';
import { hairline, ink, secondInk, verdictInk } from '../drawing/inks.js';
import { verdictShape } from '../drawing/verdict-shape.js';
import { a4, type Flow, margins, textWidth } from './flow.js';
import type { ReportInput } from './report.js';

const countOf = (findings: readonly Finding[], verdict: Verdict) =>
  findings.filter((f) => f.verdict === verdict).length;

/** Everyone who must decide, in the order of the alphabet. */
export const decidersOf = (findings: readonly Finding[]): Decider[] =>
  [...new Set(findings.map((f) => f.decider))].sort();

export function coverPage(flow: Flow, input: ReportInput): void {
  const { design, findings } = input;
  flow.newPage();
  flow.y = 120;
  flow.words(design.project.owner || 'Owner to be completed', { size: 10, colour: secondInk, after: 22 });
  flow.words(design.project.name, { size: 28, medium: true, after: 6 });
  flow.words('Design report: layout, checks, parts', { size: 13, colour: secondInk, after: 22 });
  facts(flow, input);
  flow.y += 16;
  status(flow);
  flow.y += 18;
  tally(flow, findings);
  flow.y += 12;
  approvals(flow, design, decidersOf(findings));
  const foot = design.project.invented
    ? 'Invented data: this report describes no real room, no real parts and no real prices.'
    : 'A proposal until the appointed or licensed persons have approved it. Local codes come first.';
  flow.y = Math.max(flow.y + 10, a4.height - margins.bottom - 30);
  flow.words(foot, { size: 8.5, colour: secondInk, after: 0 });
}

function facts(flow: Flow, { design, revision, issued }: ReportInput): void {
  const rows: [string, string][] = [
    ['Number', design.project.number || 'to be completed'],
    ['Revision', revision.name],
    ['Content hash', revision.hash],
    ['Issued', issued],
    ['Created by', design.project.author || 'to be completed'],
    ['Contact', design.project.contact || 'to be completed'],
    ['Laser safety officer', design.project.laserSafetyOfficer || 'to be completed'],
    ['Site rules', `${design.rules.title} (${design.rules.jurisdiction})`],
  ];
  for (const [label, value] of rows) {
    const y = flow.y;
    flow.words(label, { size: 8.5, colour: secondInk, after: 0, width: 100 });
    flow.y = y;
    flow.words(value, { size: 8.5, indent: 110, after: 2.5 });
  }
}

function status(flow: Flow): void {
  flow.need(40);
  flow.doc.lineWidth(1.2).undash().rect(margins.left, flow.y, textWidth, 34).stroke(verdictInk.fails);
  flow.y += 10;
  flow.words('NOT APPROVED', { size: 12, medium: true, colour: verdictInk.fails, align: 'center', after: 12 });
}

function tally(flow: Flow, findings: readonly Finding[]): void {
  const width = textWidth / verdictOrder.length;
  const y = flow.y;
  verdictOrder.forEach((verdict, i) => {
    const x = margins.left + i * width;
    flow.marks(verdictShape(verdict, [x + 10, y + 11], 18));
    flow.y = y;
    flow.words(String(countOf(findings, verdict)), {
      size: 17,
      medium: true,
      indent: i * width + 27,
      width: 60,
      after: 0,
    });
    flow.y = y + 24;
    flow.words(verdict, { size: 8.5, colour: secondInk, indent: i * width, width: width - 6, after: 0 });
  });
  flow.y += 8;
}

/** One line a role, all of it empty: the tool never signs for a person. */
function approvals(flow: Flow, design: Design, deciders: readonly Decider[]): void {
  flow.words('Decisions', { size: 10.5, medium: true, after: 2 });
  flow.words('Each line stays empty until that person decides. A decision holds for this content hash only.', {
    size: 8,
    colour: secondInk,
    after: 4,
  });
  const columns = ['role', 'decision', 'name', 'signature', 'date'];
  const shares = [0.24, 0.2, 0.22, 0.22, 0.12];
  const line = (cells: readonly string[], height: number, colour: string) => {
    let x = 0;
    const y = flow.y;
    cells.forEach((cell, i) => {
      flow.y = y;
      if (cell !== '') flow.words(cell, { size: 8, colour, indent: x, width: shares[i]! * textWidth - 4, after: 0 });
      x += shares[i]! * textWidth;
    });
    flow.y = y + height;
    flow.rule(hairline);
    flow.y += 5;
  };
  line(columns, 12, secondInk);
  const named = (role: Decider) =>
    role === 'laser safety officer' && design.project.laserSafetyOfficer ? design.project.laserSafetyOfficer : '';
  for (const role of deciders) line([role, '', named(role), '', ''], 19, ink);
}
