import { troubleOf } from '../state/server.js';
import { listen } from './shared-live.js';
import type { NewStep, Step } from './steps.js';
import type { Appended, Wire } from './wire.js';

interface Steps {
  readonly seq: number;
  readonly steps: readonly Step[];
}

/** The project was taken out, or never was. */
export class NoProject extends Error {}

const isGone = (response: Response): boolean => response.status === 404 || response.status === 410;

async function json<T>(path: string): Promise<T> {
  const response = await fetch(path);
  if (isGone(response)) throw new NoProject(await troubleOf(response));
  if (!response.ok) throw new Error(await troubleOf(response));
  return (await response.json()) as T;
}

/** The way to a project on the server that this page came from. */
export function httpWire(id: string): Wire {
  const base = `api/projects/${id}`;
  const after = (seq: number) => json<Steps>(`${base}/steps?after=${seq}`);
  return {
    async open() {
      // The steps are asked for first: what comes between belongs to the text already, and is not counted.
      const { steps } = await after(0);
      const { seq, text } = await json<{ readonly seq: number; readonly text: string }>(base);
      const between = steps.length < seq ? (await after(steps.length)).steps : [];
      return { seq, text, steps: [...steps, ...between].slice(0, seq) };
    },
    since: async (seq) => {
      try {
        return (await after(seq)).steps;
      } catch (error) {
        if (error instanceof NoProject) return null;
        throw error;
      }
    },
    append: async (seq, steps) => answerOf(await post(`${base}/steps`, seq, steps)),
    listen: (heard) => listen(`${base}/live`, heard),
  };
}

const post = (path: string, base: number, steps: readonly NewStep[]): Promise<Response> =>
  fetch(path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ base, steps }),
  });

async function answerOf(response: Response): Promise<Appended> {
  if (response.ok) return { outcome: 'kept', seq: ((await response.json()) as { readonly seq: number }).seq };
  if (response.status === 409) return { outcome: 'behind', steps: ((await response.json()) as Steps).steps };
  if (isGone(response)) return { outcome: 'gone' };
  const why = await troubleOf(response);
  if (response.status >= 500) throw new Error(why);
  return { outcome: 'refused', why };
}
