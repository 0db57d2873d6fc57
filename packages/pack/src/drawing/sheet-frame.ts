import { hairline, ink, lineWidth, secondInk, verdictInk, wash } from './inks.js';
import { box, fittedText, line, text } from './marks.js';
import { frameMargin, type PaperName, papers, titleBlock } from './paper.js';
import type { Mark, Pen } from './types.js';

/** What stands in the title block of every sheet. */
export interface SheetFacts {
  readonly title: string;
  readonly documentType: string;
  readonly owner: string;
  readonly number: string;
  readonly revision: string;
  readonly hash: string;
  readonly issued: string;
  readonly author: string;
  readonly rules: string;
  readonly sheet: number;
  readonly sheets: number;
  readonly scale: number;
}

const frameLine: Pen = { width: lineWidth.frame, colour: ink };
const cellLine: Pen = { width: lineWidth.narrow, colour: ink };
const centring: Pen = { width: lineWidth.frame, colour: ink };

interface Cell {
  readonly label: string;
  readonly value: string;
  readonly width: number;
  readonly colour?: string;
  readonly medium?: boolean;
}

/** Frame and centring marks; the lower mark stops at the frame, where the notes begin. Source: ISO 5457:1999, 4.2 (borders published; line width and marks from memory). */
export function frameMarks(paper: PaperName): Mark[] {
  const { width, height } = papers[paper];
  const { left, other } = frameMargin;
  const right = width - other;
  const bottom = height - other;
  return [
    box(left, other, right - left, bottom - other, frameLine),
    line([width / 2, other - 5], [width / 2, other + 5], centring),
    line([width / 2, bottom + 5], [width / 2, bottom], centring),
    line([left - 5, height / 2], [left + 5, height / 2], centring),
    line([right + 5, height / 2], [right - 5, height / 2], centring),
  ];
}

const emptyMark = 'to be completed';

/** Rows of cells as in ISO 7200:2004 (field table published); a mandatory field without data says so. */
function rows(facts: SheetFacts, paper: PaperName): readonly (readonly Cell[])[] {
  const given = (value: string) => (value === '' ? { value: emptyMark, colour: secondInk } : { value });
  return [
    [
      { label: 'Title', value: facts.title, width: 104, medium: true },
      { label: 'Type of document', value: facts.documentType, width: 76 },
    ],
    [
      { label: 'Legal owner', ...given(facts.owner), width: 104 },
      { label: 'Number', ...given(facts.number), width: 46, medium: true },
      { label: 'Rev.', value: facts.revision, width: 30, medium: true },
    ],
    [
      { label: 'Created by', ...given(facts.author), width: 52 },
      { label: 'Approved by', value: 'NOT APPROVED', width: 52, colour: verdictInk.fails, medium: true },
      { label: 'Date of issue', value: facts.issued, width: 46 },
      { label: 'Sheet', value: `${facts.sheet} / ${facts.sheets}`, width: 30 },
    ],
    [
      { label: 'Site rules', value: facts.rules, width: 58 },
      { label: 'Content hash', value: facts.hash, width: 46 },
      { label: 'Scale', value: `1:${facts.scale}`, width: 46, medium: true },
      { label: 'Size', value: `${paper}  en`, width: 30 },
    ],
  ];
}

const labelHeight = 2.5;
const valueHeight = 3;

export function titleBlockMarks(facts: SheetFacts, paper: PaperName): Mark[] {
  const size = papers[paper];
  const x0 = size.width - frameMargin.other - titleBlock.width;
  const y0 = size.height - frameMargin.other - titleBlock.height;
  const rowHeight = titleBlock.height / 4;
  const marks: Mark[] = [
    box(x0, y0, titleBlock.width, titleBlock.height, { ...cellLine, width: lineWidth.wide }, '#FFFFFF'),
  ];
  rows(facts, paper).forEach((row, r) => {
    const y = y0 + r * rowHeight;
    if (r > 0) marks.push(line([x0, y], [x0 + titleBlock.width, y], cellLine));
    let x = x0;
    row.forEach((cell, c) => {
      if (c > 0) marks.push(line([x, y], [x, y + rowHeight], cellLine));
      marks.push(text([x + 1.5, y + 3.8], cell.label, labelHeight, { colour: secondInk }));
      const style = { ...(cell.colour ? { colour: cell.colour } : {}), medium: cell.medium ?? false };
      marks.push(fittedText([x + 1.5, y + rowHeight - 2], cell.value, valueHeight, cell.width - 3, style));
      x += cell.width;
    });
  });
  return marks;
}

/** A wash behind the strip along the lower edge and the line above it. */
export function stripMarks(paper: PaperName): Mark[] {
  const size = papers[paper];
  const y = size.height - frameMargin.other - titleBlock.height;
  const right = size.width - frameMargin.other;
  return [
    box(frameMargin.left, y, right - frameMargin.left, titleBlock.height, undefined, wash),
    line([frameMargin.left, y], [right, y], { width: lineWidth.narrow, colour: hairline }),
  ];
}
