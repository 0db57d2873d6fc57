import { create } from 'zustand';
import type { Vec2 } from '../engine/contract.js';
import { useWorkbench } from '../state/store.js';
import type { Cut } from './section.js';
import type { Look, Stand } from './stand.js';

export const tools = ['cut', 'walk', 'apart', 'steps', 'shown'] as const;
export type Tool = (typeof tools)[number];

export const layers = ['curtains', 'panels', 'barriers', 'beams', 'ceiling'] as const;
export type Layer = (typeof layers)[number];

/** A set view that was asked for; a new object for each time. */
export interface Wanted {
  readonly look: Look | 'hand' | 'closer' | 'farther';
}

/** Where one stands on foot, and looks. */
export interface OnFoot {
  readonly at: Vec2;
  /** Way one looks in the plan, counter-clockwise from east [rad]. */
  readonly heading: number;
  /** Upward positive [rad]. */
  readonly pitch: number;
}

export interface SpaceState {
  /** The tool whose slip lies open. */
  readonly tool: Tool | null;
  readonly things: boolean;
  readonly cuts: readonly Cut[];
  /** Share that the parts are pulled apart. */
  readonly apart: number;
  /** Assembly steps that are shown; all when null. */
  readonly step: number | null;
  readonly shown: Readonly<Record<Layer, boolean>>;
  /** Above the floor [m]. */
  readonly eyeHeight: number;
  readonly walk: OnFoot | null;
  /** The set view that was asked for and is not taken yet. */
  readonly wanted: Wanted | null;
  /** Where the eye was when the space was left, and which brief was seen. */
  readonly left: { readonly stand: Stand; readonly opened: number } | null;
  /** Piece under the pointer. */
  readonly hovered: string | null;
}

/** Eyes of a person who stands, or sits [m]. Source: common practice. */
export const eyeHeights = { standing: 1.6, seated: 1.2 } as const;

const atFirst: Omit<SpaceState, 'things'> = {
  tool: null,
  cuts: [],
  apart: 0,
  step: null,
  shown: { curtains: true, panels: true, barriers: false, beams: true, ceiling: false },
  eyeHeight: eyeHeights.standing,
  walk: null,
  wanted: null,
  left: null,
  hovered: null,
};

export const useSpace = create<SpaceState>(() => ({ ...atFirst, things: window.innerWidth >= 1600 }));

const set = useSpace.setState;
const get = useSpace.getState;

// Another brief begins with a whole, closed space.
useWorkbench.subscribe((now, before) => {
  if (now.opened !== before.opened) set(atFirst);
});

export const openTool = (tool: Tool | null): void => set({ tool });
export const showThings = (things: boolean): void => set({ things });
export const lookFrom = (look: Wanted['look']): void => set({ wanted: { look }, walk: null });
export const looked = (): void => set({ wanted: null });
export const leaveAt = (stand: Stand, opened: number): void => set({ left: { stand, opened } });
export const pullApart = (apart: number): void => set({ apart });
export const showStep = (step: number | null): void => set({ step });
export const hover = (hovered: string | null): void => set({ hovered });
export const setEyeHeight = (eyeHeight: number): void => set({ eyeHeight });
export const walkTo = (walk: OnFoot | null): void => set({ walk });
export const toggleLayer = (layer: Layer): void => set({ shown: { ...get().shown, [layer]: !get().shown[layer] } });

/** More than two planes leave nothing that a person can read. */
export const mostCuts = 2;

export function addCut(cut: Cut): void {
  if (get().cuts.length < mostCuts) set({ cuts: [...get().cuts, cut] });
}
export const removeCut = (index: number): void => set({ cuts: get().cuts.filter((_, i) => i !== index) });
export const changeCut = (index: number, change: Partial<Cut>): void =>
  set({ cuts: get().cuts.map((cut, i) => (i === index ? { ...cut, ...change } : cut)) });
