import type { Step } from '@cloche/store';

/** What windows are told about a project; `id` is the number of the last step that the event brings them to. */
export type LiveEvent =
  | {
      readonly event: 'steps';
      readonly id: number;
      readonly data: { readonly seq: number; readonly steps: readonly Step[] };
    }
  | { readonly event: 'revision'; readonly data: { readonly number: number } }
  | { readonly event: 'gone'; readonly data: Readonly<Record<string, never>> };

type Listener = (event: LiveEvent) => void;

/** Tells every window that looks at a project what happened to it, the one that did it included. */
export interface LiveHub {
  readonly tell: (project: string, event: LiveEvent) => void;
  /** @returns stops listening; null when too many listen already */
  readonly listen: (project: string, listener: Listener) => (() => void) | null;
}

/** Windows of one project; far more than people open, few enough to hold. */
const mostListeners = 100;

export function liveHub(): LiveHub {
  const rooms = new Map<string, Set<Listener>>();
  return {
    tell(project, event) {
      for (const listener of rooms.get(project) ?? []) listener(event);
    },
    listen(project, listener) {
      const room = rooms.get(project) ?? new Set();
      if (room.size >= mostListeners) return null;
      rooms.set(project, room.add(listener));
      return () => {
        room.delete(listener);
        if (room.size === 0 && rooms.get(project) === room) rooms.delete(project);
      };
    },
  };
}
