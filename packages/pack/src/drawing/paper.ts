export type PaperName = 'A3' | 'A2';

/** Trimmed sheets, landscape [mm]. Source: ISO 216; ISO 5457:1999, Table 1 (published). */
export const papers: Readonly<Record<PaperName, { readonly width: number; readonly height: number }>> = {
  A3: { width: 420, height: 297 },
  A2: { width: 594, height: 420 },
};

/** Distance of the frame from the trimmed edge [mm]. Source: ISO 5457:1999, 4.2 (published). */
export const frameMargin = { left: 20, other: 10 } as const;

/** Size of the title block [mm]. Source: width ISO 7200 with ISO 5457 (from memory); height ours. */
export const titleBlock = { width: 180, height: 44 } as const;

/** The room on paper above the strip of title block, notes and legend. */
export function drawingSpace(paper: PaperName) {
  const size = papers[paper];
  const top = frameMargin.other;
  const bottom = size.height - frameMargin.other - titleBlock.height;
  const left = frameMargin.left;
  const right = size.width - frameMargin.other;
  return { left, right, top, bottom, width: right - left, height: bottom - top };
}
