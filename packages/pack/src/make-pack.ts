import {
  bytesHash,
  canonicalText,
  cutPlans,
  type DesignEnclosure,
  type PartsList,
  partsList,
  utf8Bytes,
} from '@cloche/engine';
import { elevationDrawing } from './drawing/elevation/elevation-drawing.js';
import { outlineFonts } from './drawing/outline-fonts.js';
import { planDrawing } from './drawing/plan/plan-drawing.js';
import type { SheetFacts } from './drawing/sheet-frame.js';
import { sheetSvg } from './drawing/svg.js';
import type { Sheet } from './drawing/types.js';
import { planDxf } from './dxf/plan-dxf.js';
import type { PackFile, PackInput, PackOptions } from './pack-file.js';
import { elevationName } from './pack-names.js';
import { cutColumns, partColumns, stockColumns } from './parts/columns.js';
import { csvText } from './parts/csv.js';
import { type CutList, cutList } from './parts/cut-list.js';
import { aboutTable, tableOf, withTotals, xlsxBytes } from './parts/xlsx.js';
import { inReadingOrder, reportPdf } from './report/report.js';

const media = {
  json: 'application/json',
  svg: 'image/svg+xml',
  dxf: 'image/vnd.dxf',
  csv: 'text/csv; charset=utf-8; header=present',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  pdf: 'application/pdf',
} as const;

/** A value that is computed when it is first asked for: a pack of one drawing plans no cuts. */
function lazy<T>(compute: () => T): () => T {
  let held: { readonly value: T } | undefined;
  return () => {
    held ??= { value: compute() };
    return held.value;
  };
}

type Facts = Omit<SheetFacts, 'scale' | 'title' | 'documentType'>;

/** What the title blocks say, for sheet `sheet` of all. */
export function sheetFacts(
  { design, revision, issued }: Pick<PackInput, 'design' | 'revision' | 'issued'>,
  sheet: number,
): Facts {
  return {
    owner: design.project.owner,
    number: design.project.number,
    revision: revision.name,
    hash: revision.hash.replace('sha256:', '').slice(0, 12),
    issued: issued.slice(0, 10),
    author: design.project.author,
    rules: design.rules.title,
    sheet,
    sheets: 1 + design.enclosures.length,
  };
}

interface Recipe {
  readonly name: string;
  readonly mediaType: string;
  readonly make: () => string | Uint8Array | Promise<Uint8Array>;
}

interface Lists {
  readonly cutList: () => CutList;
  readonly parts: () => PartsList;
}

/** First sheet of a workbook (handbook of deliverables 2.7). */
const about = (
  { design, revision, issued, catalogue }: PackInput,
  title: string,
  more: readonly (readonly [string, string])[],
) =>
  aboutTable([
    ['Document', title],
    ['Project', design.project.name],
    ['Number', design.project.number],
    ['Revision', revision.name],
    ['Content hash', revision.hash],
    ['Issued', issued.slice(0, 10)],
    ['Status', 'NOT APPROVED'],
    [
      'Data',
      design.project.invented || catalogue.invented
        ? 'Invented demo data: no real parts and no real prices.'
        : 'As entered by the user.',
    ],
    ...more,
  ]);

function workbookOfParts(input: PackInput, list: PartsList): Promise<Uint8Array> {
  const currency = list.currency ?? 'no currency';
  const totals = {
    name: 'Total',
    mass_kg: list.massKg,
    ...(list.total === null ? {} : { linePrice: list.total, currency }),
  };
  return xlsxBytes([
    about(input, 'Parts list', [
      ['Prices', `${currency}, ${list.priceDate}, ${list.priceBasis}`],
      ...(list.amendments.prices.length > 0
        ? [['Prices of the project', 'Day and origin stand in each line, in priceDate and priceFrom.'] as const]
        : []),
      ['Line price', 'Order quantity × unit price, rounded half away from zero to the minor unit.'],
      ['Total', list.total === null ? 'no line has a price' : `${list.total} ${currency}`],
      ['Lines without price', String(list.unpriced)],
      ['Mass of all parts', `${list.massKg.toFixed(1)} kg`],
      ['Units', 'H87 piece, MTR metre, MTK square metre (UN/ECE Recommendation 20)'],
    ]),
    withTotals(tableOf('Parts', partColumns, list.rows), partColumns, totals),
  ]);
}

function workbookOfCuts(input: PackInput, list: CutList): Promise<Uint8Array> {
  return xlsxBytes([
    about(input, 'Cut list', [
      ['Saw cut', `${list.kerfMm} mm`],
      ['Trim', `${list.trimMm} mm from each end of a bar`],
      ['Tolerance', 'ISO 2768-m (ISO 2768-1:1989, Table 1); above 4000 mm to be agreed'],
      ...list.summary.map((s) => [s.name, s.words] as const),
    ]),
    tableOf('Cuts', cutColumns, list.rows),
    tableOf('Bars and sheets', stockColumns, list.stock),
  ]);
}

function recipes(input: PackInput, lists: Lists): Recipe[] {
  const { design, catalogue } = input;
  const plan = lazy((): Sheet => planDrawing(design, { catalogue, facts: sheetFacts(input, 1) }));
  const elevation = (enclosure: DesignEnclosure, i: number) =>
    lazy((): Sheet => elevationDrawing(design, enclosure, sheetFacts(input, i + 2)));
  const elevations = design.enclosures.map((enclosure, i) => ({
    name: elevationName(enclosure),
    sheet: elevation(enclosure, i),
  }));
  const fonts = lazy(() => outlineFonts(input.fonts));
  const svg = (sheet: Sheet) => sheetSvg(sheet, fonts());
  const report = () =>
    reportPdf({
      ...input,
      parts: lists.parts(),
      cuts: lists.cutList(),
      sheets: [plan(), ...elevations.map((e) => e.sheet())],
    });
  return [
    { name: 'design.json', mediaType: media.json, make: () => canonicalText(design) },
    { name: 'findings.json', mediaType: media.json, make: () => canonicalText(inReadingOrder(input.findings)) },
    { name: 'plan.svg', mediaType: media.svg, make: () => svg(plan()) },
    ...elevations.map((e) => ({
      name: e.name,
      mediaType: media.svg,
      make: () => svg(e.sheet()),
    })),
    { name: 'plan.dxf', mediaType: media.dxf, make: () => planDxf(design, catalogue) },
    { name: 'parts.csv', mediaType: media.csv, make: () => csvText(partColumns, lists.parts().rows) },
    { name: 'parts.xlsx', mediaType: media.xlsx, make: () => workbookOfParts(input, lists.parts()) },
    { name: 'cuts.csv', mediaType: media.csv, make: () => csvText(cutColumns, lists.cutList().rows) },
    { name: 'cuts.xlsx', mediaType: media.xlsx, make: () => workbookOfCuts(input, lists.cutList()) },
    { name: 'report.pdf', mediaType: media.pdf, make: report },
  ];
}

const bytesOf = (made: string | Uint8Array): Uint8Array => (typeof made === 'string' ? utf8Bytes(made) : made);

/** Path, size and hash of every file, and what they were made from. */
function manifest(input: PackInput, files: readonly PackFile[]): PackFile {
  const list = {
    schema: 1,
    project: input.design.project.number,
    revision: input.revision,
    issued: input.issued,
    status: 'not approved',
    inputs: input.design.inputs,
    engine: input.design.engine,
    csv: 'text that a spreadsheet could run as a formula has an apostrophe before it',
    files: files.map(({ name, mediaType, bytes }) => ({
      path: name,
      mediaType,
      size: bytes.length,
      sha256: bytesHash(bytes),
    })),
  };
  return { name: 'manifest.json', mediaType: media.json, bytes: utf8Bytes(canonicalText(list)) };
}

/**
 * Everything that leaves the tool for one revision, as files in memory: model, findings, drawings, lists, report, manifest (last, over
 * the files that were made). Equal input gives equal bytes.
 * @returns the files in a fixed order; an empty list when it was cancelled, so that half a pack never passes for a whole one
 */
export async function makePack(input: PackInput, options: PackOptions = {}): Promise<PackFile[]> {
  const { design, catalogue, rules } = input;
  const cuts = lazy(() => cutPlans(design, catalogue, rules));
  const lists: Lists = {
    cutList: lazy(() => cutList(cuts(), rules)),
    parts: lazy(() => partsList(design, catalogue, rules, cuts())),
  };
  const wanted = recipes(input, lists).filter((recipe) => options.only?.includes(recipe.name) ?? true);
  const files: PackFile[] = [];
  for (const recipe of wanted) {
    if (options.signal?.cancelled) return [];
    files.push({ name: recipe.name, mediaType: recipe.mediaType, bytes: bytesOf(await recipe.make()) });
    options.onProgress?.(recipe.name, files.length / (wanted.length + 1));
  }
  if (options.signal?.cancelled) return [];
  files.push(manifest(input, files));
  options.onProgress?.('manifest.json', 1);
  return files;
}
