import { useEffect } from 'react';
import { create } from 'zustand';
import { useWorkbench } from '../../state/store.js';
import { arrangeTexts } from '../../texts/arrange.js';
import type { LineDrawing } from './dxf-lines.js';
import { kindOf, largestFile } from './file-kind.js';
import { keptFile } from './keep.js';
import { readDxf } from './read-dxf.js';

const say = arrangeTexts.background;

export type Content =
  | { readonly kind: 'picture'; readonly url: string /** Height in widths. */; readonly aspect: number }
  | { readonly kind: 'lines'; readonly drawing: LineDrawing; readonly aspect: number };

interface Loaded {
  /** The file that the content belongs to. */
  readonly file: string | null;
  readonly content: Content | null;
  /** Why there is no content. */
  readonly trouble: string | null;
}

export const useLoaded = create<Loaded>(() => ({ file: null, content: null, trouble: null }));

/** Pictures with more points than this are told too large [pixels]. */
const mostPixels = 100e6;

/** What a file shows, or why it cannot be shown. */
export async function contentOf(file: Blob): Promise<Content | string> {
  if (file.size > largestFile) return say.tooLarge;
  const kind = kindOf(new Uint8Array(await file.slice(0, 4096).arrayBuffer()));
  if (kind === null) return say.unknownKind;
  if (kind === 'image/vnd.dxf') {
    const drawing = await readDxf(await file.text());
    if (typeof drawing === 'string') return say.dxf[drawing];
    const [width, height] = [drawing.max[0] - drawing.min[0], drawing.max[1] - drawing.min[1]];
    return width > 0 ? { kind: 'lines', drawing, aspect: height / width } : say.dxf.empty;
  }
  try {
    const bitmap = await createImageBitmap(file);
    const { width, height } = bitmap;
    bitmap.close();
    if (width * height > mostPixels) return say.tooManyPixels;
    return { kind: 'picture', url: URL.createObjectURL(file), aspect: height / width };
  } catch {
    return say.brokenPicture;
  }
}

/** Puts what a file shows under the drawing, in place of what was there. */
export function setContent(file: string | null, content: Content | null, trouble: string | null = null): void {
  const before = useLoaded.getState().content;
  if (before?.kind === 'picture' && before !== content) URL.revokeObjectURL(before.url);
  useLoaded.setState({ file, content, trouble });
}

async function load(file: string): Promise<void> {
  setContent(file, null);
  const { project } = useWorkbench.getState();
  const kept = project === null ? null : await keptFile(project, file).catch(() => null);
  const content = kept ? await contentOf(kept) : say.notHere;
  // Another background may have been asked for in between.
  if (useLoaded.getState().file !== file) return;
  if (typeof content === 'string') setContent(file, null, content);
  else setContent(file, content);
}

/** Fetches the background that the brief names. */
export function useBackgroundFile(file: string | null): void {
  const opened = useWorkbench((s) => s.opened);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a brief that is opened anew may name a file that is here now
  useEffect(() => {
    if (file === null) setContent(null, null);
    else if (useLoaded.getState().file !== file || useLoaded.getState().content === null) void load(file);
  }, [file, opened]);
}
