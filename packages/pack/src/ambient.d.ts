/** The parts of libraries that this package uses, so that it compiles without the types of any platform. */

declare module 'write-excel-file/universal' {
  interface Written {
    toBlob(): Promise<{ arrayBuffer(): Promise<ArrayBuffer> }>;
  }
  export default function writeXlsx(sheets: readonly object[]): Written;
}

declare module 'pdfkit' {
  export interface TextOptions {
    readonly width?: number;
    readonly height?: number;
    readonly align?: 'left' | 'center' | 'right';
    readonly lineBreak?: boolean;
    readonly lineGap?: number;
    readonly continued?: boolean;
    readonly indent?: number;
    readonly ellipsis?: boolean;
  }
  interface PageOptions {
    readonly size: readonly [number, number];
    readonly margin: number;
  }
  interface DocumentOptions extends PageOptions {
    readonly autoFirstPage: boolean;
    readonly bufferPages: boolean;
    readonly compress?: boolean;
    readonly font: string | null;
    readonly lang?: string;
    readonly displayTitle?: boolean;
    readonly pdfVersion?: string;
    readonly info: Readonly<Record<string, unknown>>;
  }
  export interface OutlineItem {
    addItem(title: string): OutlineItem;
  }
  export interface FontGlyph {
    readonly id: number;
    readonly advanceWidth: number;
    readonly codePoints: readonly number[];
  }
  export interface GlyphPosition {
    readonly xAdvance: number;
    readonly yAdvance: number;
    readonly xOffset: number;
    readonly yOffset: number;
    readonly advanceWidth: number;
  }
  interface GlyphRun {
    readonly glyphs: readonly FontGlyph[];
    readonly positions: readonly GlyphPosition[];
    readonly advanceWidth: number;
  }
  /** Not promised by the library: the version is pinned, and the tests read the text back. */
  interface EmbeddedFont {
    readonly scale: number;
    readonly font: {
      layout(text: string, features: readonly string[]): { readonly glyphs: readonly FontGlyph[] };
      glyphForCodePoint(codePoint: number): FontGlyph;
    };
    layout: (text: string) => GlyphRun;
  }
  export default class PDFDocument {
    readonly _font: EmbeddedFont;
    constructor(options: DocumentOptions);
    readonly page: { readonly width: number; readonly height: number };
    readonly outline: OutlineItem;
    x: number;
    y: number;
    on(event: 'data', listener: (chunk: Uint8Array) => void): this;
    on(event: 'end', listener: () => void): this;
    on(event: 'error', listener: (error: Error) => void): this;
    addPage(options: PageOptions): this;
    addNamedDestination(name: string): void;
    goTo(x: number, y: number, width: number, height: number, name: string): this;
    bufferedPageRange(): { readonly start: number; readonly count: number };
    switchToPage(page: number): this;
    flushPages(): void;
    end(): void;
    registerFont(name: string, source: Uint8Array): this;
    font(name: string): this;
    fontSize(size: number): this;
    widthOfString(text: string, options?: TextOptions): number;
    heightOfString(text: string, options?: TextOptions): number;
    text(text: string, x: number, y: number, options?: TextOptions): this;
    save(): this;
    restore(): this;
    translate(x: number, y: number): this;
    rotate(degrees: number): this;
    scale(factor: number): this;
    path(d: string): this;
    rect(x: number, y: number, width: number, height: number): this;
    circle(x: number, y: number, radius: number): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    lineWidth(width: number): this;
    lineCap(style: 'butt' | 'round' | 'square'): this;
    dash(length: number | readonly number[], options?: { readonly space?: number }): this;
    undash(): this;
    stroke(colour?: string): this;
    fill(colour?: string): this;
    fillAndStroke(fill: string, stroke: string): this;
    fillColor(colour: string): this;
    strokeColor(colour: string): this;
  }
}

declare module 'fontkit' {
  interface Glyph {
    readonly id: number;
    readonly advanceWidth: number;
    readonly path: { toSVG(): string };
  }
  export interface Font {
    readonly unitsPerEm: number;
    layout(text: string, features: readonly string[]): { readonly glyphs: readonly Glyph[] };
    glyphForCodePoint(codePoint: number): Glyph;
    getGlyph(id: number): Glyph;
  }
  export function create(bytes: Uint8Array): Font;
}
