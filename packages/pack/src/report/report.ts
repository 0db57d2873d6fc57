import {
  type Catalogue,
  compareText,
  type Design,
  type Finding,
  type PartsList,
  sourceText,
  verdictOrder,
} from '@cloche/engine';
import PDFDocument from 'pdfkit';
import { hairline, secondInk } from '../drawing/inks.js';
import { drawSheet } from '../drawing/pdf-sheet.js';
import { printable } from '../drawing/printable.js';
import type { Sheet } from '../drawing/types.js';
import type { CutList } from '../parts/cut-list.js';
import { calculationsSection } from './calculations.js';
import { contentsPage } from './contents.js';
import { coverPage, decidersOf } from './cover.js';
import { findingsSection } from './findings.js';
import { a4, Flow, margins, textWidth } from './flow.js';
import { layTabular } from './font-layout.js';
import { cutSection, partsSection } from './lists.js';
import { curtainSection, settingOutSection } from './schedules.js';
import { allCautions, allSources, standingCautions } from './words.js';

export interface ReportInput {
  readonly design: Design;
  readonly findings: readonly Finding[];
  readonly catalogue: Catalogue;
  readonly parts: PartsList;
  readonly cuts: CutList;
  readonly sheets: readonly Sheet[];
  readonly issued: string;
  readonly revision: { readonly name: string; readonly hash: string };
  readonly fonts: { readonly regular: Uint8Array; readonly medium: Uint8Array };
}

/** What needs a person first; within a verdict by id, so that the order does not depend on who computed first. */
export const inReadingOrder = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort(
    (a, b) => verdictOrder.indexOf(a.verdict) - verdictOrder.indexOf(b.verdict) || compareText(a.id, b.id),
  );

function scope(flow: Flow, { design, findings }: ReportInput): void {
  flow.heading('Scope and basis');
  flow.words(
    'This report holds what was computed from the survey, the needs, the layout and the parts of this revision. It says nothing about what no finding names. It assists; it does not decide.',
    { after: 5 },
  );
  flow.words(`Site rules: ${design.rules.title}, ${design.rules.jurisdiction}. ${design.rules.caution}`, { after: 5 });
  flow.words(`Decided by others: ${decidersOf(findings).join(', ')}.`, { after: 5 });
  flow.words(
    `Computed by engine ${design.engine} from brief ${design.inputs.brief}, catalogue ${design.inputs.catalogue}, rules ${design.inputs.rules}.`,
    { size: 8, colour: secondInk, after: 5 },
  );
}

function assumptions(flow: Flow, { design }: ReportInput): void {
  if (design.assumptions.length > 0) {
    flow.heading('Assumptions');
    flow.table(
      [
        { head: 'what', share: 24, of: (a) => a.what },
        { head: 'assumed', share: 16, medium: true, of: (a) => a.value },
        { head: 'because', share: 34, of: (a) => a.reason },
        { head: 'source', share: 26, of: (a) => sourceText(a.source) },
      ],
      design.assumptions,
    );
  }
  if (design.questions.length === 0) return;
  flow.heading('Open questions');
  flow.words('What could change the answer most stands first.', { size: 8.5, colour: secondInk, after: 5 });
  const byWeight = [...design.questions].sort((a, b) => b.weight - a.weight || compareText(a.id, b.id));
  flow.table(
    [
      { head: 'question', share: 34, medium: true, of: (q) => q.question },
      { head: 'assumed meanwhile', share: 20, of: (q) => q.assumed },
      { head: 'why it is open', share: 22, of: (q) => q.reason },
      { head: 'what it decides', share: 24, of: (q) => q.effect },
    ],
    byWeight,
  );
}

function closing(flow: Flow, { design, findings }: ReportInput, sources: readonly string[]): void {
  flow.heading('Cautions');
  for (const caution of [...new Set([...standingCautions, design.rules.caution, ...allCautions(findings)])])
    flow.words(caution, { size: 8, after: 2.5 });
  flow.heading('Sources');
  flow.words(
    'In brackets how well each is backed: read, published (read in a reproduction), from memory, common practice, derived, computed, entered, invented. Obtain the originals before relying on them.',
    { size: 8.5, colour: secondInk, after: 5 },
  );
  sources.forEach((source, i) => {
    flow.words(`[${i + 1}]  ${source}`, { size: 8, after: 1.5 });
  });
}

/** Number, revision, hash, date and page on every text page; drawings carry them in their title block. */
function runningHeads(flow: Flow, { design, revision, issued }: ReportInput): void {
  const { doc } = flow;
  const { count } = doc.bufferedPageRange();
  for (const page of flow.textPages) {
    doc.switchToPage(page);
    const hash = revision.hash.replace('sha256:', '').slice(0, 12);
    const left = `${design.project.number || design.project.name}   revision ${revision.name}   ${hash}   ${issued}   not approved`;
    const y = 14 * (72 / 25.4);
    doc.font('regular').fontSize(7.5).fillColor(secondInk);
    doc.text(printable(left), margins.left, y, { lineBreak: false });
    const right = `page ${page + 1} of ${count}`;
    doc.text(right, a4.width - margins.right - doc.widthOfString(right), y, { lineBreak: false });
    doc
      .lineWidth(0.5)
      .undash()
      .moveTo(margins.left, y + 12)
      .lineTo(margins.left + textWidth, y + 12)
      .stroke(hairline);
  }
}

function openDocument({ design, issued, revision, fonts }: ReportInput): PDFDocument {
  const doc = new PDFDocument({
    autoFirstPage: false,
    bufferPages: true,
    font: null,
    size: [a4.width, a4.height],
    margin: 0,
    lang: 'en',
    displayTitle: true,
    pdfVersion: '1.7',
    info: {
      Title: `${design.project.name}: design report`,
      Author: design.project.owner,
      Subject: `${design.project.number} revision ${revision.name} ${revision.hash}, not approved`,
      Creator: 'Cloche',
      Producer: 'Cloche',
      // The only date in the file is the one that the caller gives: equal input, equal bytes.
      CreationDate: new Date(`${issued.slice(0, 10)}T00:00:00Z`),
    },
  });
  doc.registerFont('regular', fonts.regular);
  doc.registerFont('medium', fonts.medium);
  for (const name of ['regular', 'medium']) layTabular(doc, name);
  return doc;
}

/**
 * The report as PDF: cover with empty decisions, contents, findings, scope, drawings in true size, setting out, curtain schedule,
 * assumptions and questions, every calculation, parts, cuts, cautions, sources. Equal input gives equal bytes.
 */
export function reportPdf(input: ReportInput): Promise<Uint8Array> {
  const doc = openDocument(input);
  const chunks: Uint8Array[] = [];
  const done = new Promise<Uint8Array>((resolve, reject) => {
    doc.on('data', (chunk) => chunks.push(chunk));
    doc.on('end', () => resolve(joined(chunks)));
    doc.on('error', reject);
  });
  const flow = new Flow(doc);
  const findings = inReadingOrder(input.findings);
  const assumed = input.design.assumptions.map((a) => sourceText(a.source));
  const sources = allSources(findings, assumed);
  coverPage(flow, input);
  flow.newPage();
  const contents = flow.textPages[flow.textPages.length - 1]!;
  flow.newPage();
  findingsSection(flow, findings);
  scope(flow, input);
  for (const sheet of input.sheets)
    flow.foreignPage(() => {
      drawSheet(doc, sheet);
      flow.enter(sheet.title, 1);
    });
  settingOutSection(flow, input.design);
  curtainSection(flow, input.design, input.catalogue, findings);
  assumptions(flow, input);
  calculationsSection(flow, {
    findings: findings.map((finding, i) => ({ finding, number: i + 1 })),
    sourceNumber: (source) => sources.indexOf(source) + 1,
  });
  partsSection(flow, input.parts);
  cutSection(flow, input.cuts);
  closing(flow, input, sources);
  contentsPage(flow, contents);
  runningHeads(flow, input);
  doc.end();
  return done;
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
