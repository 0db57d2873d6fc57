import type { Decider } from '@cloche/engine';
import { create } from 'zustand';
import {
  briefData,
  type Change,
  type Written,
  withEntry,
  withObject,
  withValue,
  withValues,
} from '../brief/document.js';
import { type Path, pathKey, valueAt } from '../brief/path.js';
import { namesOf } from '../brief/references.js';
import { engineClient } from '../engine/client.js';
import type { Answer, Computed, Problem, Shelf, TextFile } from '../engine/contract.js';
import { edited, emptyHistory, type History, redone, undone } from './history.js';
import { type Example, fetchExamples, fetchOpened, fetchTexts } from './server.js';

export const stepNames = ['survey', 'needs', 'layout', 'checks', 'parts', 'sheets', 'proving', 'changes'] as const;
export type StepName = (typeof stepNames)[number];
export type View = 'plan' | 'space' | 'text' | 'sheet';

export interface Workbench {
  readonly text: string;
  /** The brief as data, quantities as text; of the last text that was a document. */
  readonly data: unknown;
  readonly fileName: string;
  readonly savedText: string;
  /** How many briefs were opened: tells one from the next. */
  readonly opened: number;
  readonly history: History;
  readonly examples: readonly Example[];
  /** What catalogue and site rules offer to choose from. */
  readonly shelf: Shelf;
  /** The last state that could be computed. */
  readonly computed: Computed | null;
  /** The brief that `computed` belongs to. */
  readonly computedData: unknown;
  readonly problems: readonly Problem[];
  readonly busy: boolean;
  readonly trouble: string | null;
  readonly step: StepName;
  readonly view: View;
  /** The thing in hand, and whether it was taken on the sheet, where its numbers then stand beside it. */
  readonly selected: string | null;
  readonly onSheet: boolean;
  /** Parts pointed at from the list. */
  readonly pointedParts: ReadonlySet<string>;
  readonly openFinding: string | null;
  /** Only findings that this person or body decides on are shown; all when null. */
  readonly decider: Decider | null;
  /** Finding under the pointer or the keyboard. */
  readonly focusedFinding: string | null;
  /** Where the text pane should put its caret, counted from 0. */
  readonly caret: number | null;
}

export const useWorkbench = create<Workbench>(() => ({
  text: '',
  data: null,
  fileName: 'brief.yaml',
  savedText: '',
  opened: 0,
  history: emptyHistory,
  examples: [],
  shelf: { items: [], profiles: [], rules: [] },
  computed: null,
  computedData: null,
  problems: [],
  busy: true,
  trouble: null,
  step: 'survey',
  view: 'plan',
  selected: null,
  onSheet: false,
  pointedParts: new Set<string>(),
  openFinding: null,
  decider: null,
  focusedFinding: null,
  caret: null,
}));

const set = useWorkbench.setState;
const get = useWorkbench.getState;
const engine = engineClient();

/** Fetches what the page computes from and opens the brief that the server was started with. */
export async function begin(): Promise<void> {
  try {
    const [texts, examples, opened] = await Promise.all([fetchTexts(), fetchExamples(), fetchOpened()]);
    set({ examples, shelf: await engine.prepare(texts.catalogue, texts.rules) });
    openBrief(opened);
  } catch (error) {
    set({ trouble: error instanceof Error ? error.message : String(error), busy: false });
  }
}

function recompute(text: string, data: unknown): void {
  engine.compute(text, (answer: Answer) => {
    const busy = get().text !== text || (answer.ok && answer.value.pending);
    if (answer.ok) set({ computed: answer.value, computedData: data, problems: [], busy });
    else set({ problems: answer.problems, busy });
  });
}

function put(text: string, history: History): void {
  const data = briefData(text) ?? get().data;
  set({ text, data, history, busy: true });
  recompute(text, data);
}

/** Examples and files without an ending are saved as what they are. */
const asFileName = (name: string): string => (/\.(ya?ml|json)$/i.test(name) ? name : `${name}.yaml`);

export function openBrief(file: TextFile): void {
  engine.open();
  set({
    fileName: asFileName(file.name),
    savedText: file.text,
    opened: get().opened + 1,
    trouble: null,
    openFinding: null,
    decider: null,
    selected: null,
    computed: null,
    data: null,
    pointedParts: new Set(),
  });
  put(file.text, emptyHistory);
}

/** Replaces the text; edits with the same key that follow each other are undone together. */
export function editText(text: string, key: string | null): void {
  const now = get();
  if (text === now.text) return;
  put(text, edited(now.history, now.text, key));
}

export const editValue = (path: Path, value: Written | undefined): void =>
  editText(withValue(get().text, path, value), pathKey(path));

/** Several values in one go: both coordinates of a thing that is moved. */
export const editValues = (changes: readonly Change[], key: string): void =>
  editText(withValues(get().text, changes), key);

export const addEntry = (path: Path, entry: unknown): void => editText(withEntry(get().text, path, entry), null);
export const editObject = (path: Path, value: unknown): void => editText(withObject(get().text, path, value), null);

/** Gives a thing another id, and names it so wherever the brief names it. */
export function renameThing(path: Path, id: string): void {
  const { text, data } = get();
  const before = valueAt(data, [...path, 'id']);
  const named = typeof before === 'string' ? namesOf(data, before) : [];
  editText(
    withValues(
      text,
      [...named, [...path, 'id']].map((each) => [each, id] as const),
    ),
    null,
  );
  set({ selected: id });
}
export const removeEntry = (path: Path): void => {
  editText(withValue(get().text, path, undefined), null);
  set({ selected: null });
};

/** The next edit starts a new state, even of the same field. */
export const endEdit = (): void => set({ history: { ...get().history, key: null } });

export function undo(): void {
  const back = undone(get().history, get().text);
  if (back) put(back.text, back.history);
}

export function redo(): void {
  const forward = redone(get().history, get().text);
  if (forward) put(forward.text, forward.history);
}

export const markSaved = (): void => set({ savedText: get().text });
export const goToStep = (step: StepName): void => set({ step });
export const show = (view: View): void => set({ view });
export const select = (selected: string | null): void => set({ selected, onSheet: true });
export const selectInForm = (selected: string | null): void => set({ selected, onSheet: false });
export const pointParts = (ids: readonly string[]): void => set({ pointedParts: new Set(ids) });
export const showFor = (decider: Decider | null): void => set({ decider });
export const openFinding = (id: string | null): void => set({ openFinding: id });
export const focusFinding = (id: string | null): void => set({ focusedFinding: id });
export const showInText = (caret: number): void => set({ view: 'text', caret });
