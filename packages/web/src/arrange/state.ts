import { create } from 'zustand';
import type { Vec2 } from '../engine/contract.js';

/** What the pointer does on the sheet instead of taking things in hand. */
export type SheetTool = 'measure' | 'zoom' | 'background';

export interface ArrangeState {
  readonly tool: SheetTool | null;
  /** Corners of the frame that is being drawn, in pixels of the sheet, and what it is for. */
  readonly frame: { readonly from: Vec2; readonly to: Vec2; readonly purpose: 'select' | 'zoom' } | null;
  /** What was last done or could not be done, in sentences; read out once. */
  readonly said: readonly string[];
  /** Tells one message from the next when the words are the same. */
  readonly saidCount: number;
  /** The words are read out but stand elsewhere on the screen already. */
  readonly quiet: boolean;
}

export const useArrange = create<ArrangeState>(() => ({
  tool: null,
  frame: null,
  said: [],
  saidCount: 0,
  quiet: false,
}));

export const takeTool = (tool: SheetTool | null): void => useArrange.setState({ tool, frame: null });
export const toggleTool = (tool: SheetTool): void => takeTool(useArrange.getState().tool === tool ? null : tool);

const say = (said: readonly string[], quiet: boolean): void =>
  useArrange.setState((s) => ({ said, saidCount: s.saidCount + 1, quiet }));

export const tellAll = (said: readonly string[]): void => say(said, false);
/** For screen readers: what a person who sees the screen reads beside it. */
export const readOut = (said: readonly string[]): void => say(said, true);
