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
import { distanceEndsOn } from '../brief/kept-distances.js';
import { type Path, pathKey, valueAt } from '../brief/path.js';
import { namesOf } from '../brief/references.js';
import { engineClient } from '../engine/client.js';
import type { Answer, Computed, Problem, Shelf } from '../engine/contract.js';
import { browserCopy } from '../session/browser-copy.js';
import { browserKeep, holdPage } from '../session/browser-keep.js';
import { httpWire } from '../session/http-wire.js';
import type { Conflict } from '../session/merge-data.js';
import { openSession, type Safety, type Session, type SessionState } from '../session/sync.js';
import type { Clock } from '../session/wire.js';
import { type Example, fetchExamples, fetchTexts } from './server.js';
import type { StepName } from './steps.js';

export { type StepName, stepNames } from './steps.js';
export type View = 'plan' | 'space' | 'text' | 'sheet' | 'changes' | 'schedules';

export interface Reading {
  readonly number: number;
  readonly name: string;
  readonly text: string;
}

export interface Workbench {
  readonly text: string;
  /** The brief as data, quantities as text; of the last text that was a document. */
  readonly data: unknown;
  /** The project on the sheet; null while the list of projects is shown. */
  readonly project: string | null;
  /** The text as this window opened the project. */
  readonly openedText: string;
  /** How many projects were opened: tells one from the next. */
  readonly opened: number;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Number of the last step that the server has. */
  readonly seq: number;
  readonly safety: Safety;
  /** Why the server does not take the text. */
  readonly refusal: string | null;
  /** What was written here and overwritten by another window. */
  readonly conflicts: readonly Conflict[];
  /** How many times somebody has named a revision since the project was opened. */
  readonly revisionNews: number;
  /** A revision that is read instead of the text in hand; nothing can be changed meanwhile. */
  readonly reading: Reading | null;
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
  /** Everything that is in hand, in the order it was taken. */
  readonly selection: readonly string[];
  /** The thing in hand when it is one alone, and whether it was taken on the sheet, where its numbers then stand beside it. */
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
  project: null,
  openedText: '',
  opened: 0,
  canUndo: false,
  canRedo: false,
  seq: 0,
  safety: 'saved',
  refusal: null,
  conflicts: [],
  revisionNews: 0,
  reading: null,
  examples: [],
  shelf: { items: [], profiles: [], rules: [], disciplines: [], overlays: [] },
  computed: null,
  computedData: null,
  problems: [],
  busy: true,
  trouble: null,
  step: 'survey',
  view: 'plan',
  selection: [],
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
export const engine = engineClient();

/** What differs between two briefs; only the newest pair that is asked for is answered. */
export const compareTexts = engine.compare;

/** Name of this page; with the number of the project that it opens it names a window among all that work on one. */
const pageName = crypto.getRandomValues(new Uint32Array(3)).reduce((name, n) => name + n.toString(36), 'w');
let session: Session | null = null;

/** Fetches what the page computes from. */
export async function begin(): Promise<void> {
  holdPage(pageName);
  const [texts, examples] = await Promise.all([fetchTexts(), fetchExamples()]);
  set({ examples, shelf: await engine.prepare(texts.catalogue, texts.rules) });
}

/** Takes catalogue and site rules as they are now on the shelf, and computes with them. */
export async function reloadShelf(): Promise<void> {
  const texts = await fetchTexts();
  set({ shelf: await engine.prepare(texts.catalogue, texts.rules) });
  const { project, text, data } = get();
  if (project !== null) recompute(text, data);
}

function recompute(text: string, data: unknown): void {
  const { opened } = get();
  engine.compute(text, (answer: Answer) => {
    if (get().opened !== opened) return;
    const busy = get().text !== text || (answer.ok && answer.value.pending);
    if (answer.ok) set({ computed: answer.value, computedData: data, problems: [], busy });
    else set({ problems: answer.problems, busy });
  });
}

function put(text: string): void {
  const data = briefData(text) ?? get().data;
  set({ text, data, busy: true });
  recompute(text, data);
}

/** Opens a project of the server; what this browser has kept of it is taken up again. */
export async function openProject(id: string): Promise<void> {
  closeProject();
  const opened = get().opened + 1;
  set({ project: id, opened });
  const name = `${pageName}-${opened}`;
  let own: Session | null = null;
  own = await openSession({
    wire: httpWire(id),
    keep: await browserKeep(id, pageName, name),
    copy: browserCopy(id),
    clock,
    window: name,
    onChange: (state) => {
      if (own !== null && session === own) follow(state);
    },
    onRevision: () => set({ revisionNews: get().revisionNews + 1 }),
  });
  // Another was opened meanwhile.
  if (get().opened !== opened) {
    own.close();
    return;
  }
  session = own;
  const { text } = own.state();
  set({ openedText: text });
  put(text);
  follow(own.state());
}

const clock: Clock = {
  now: () => performance.now(),
  after: (ms, run) => {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  },
};

/** Lays the project in hand down; what is not on the server yet stays kept in this browser. */
export function closeProject(): void {
  session?.close();
  session = null;
  engine.open();
  set({
    project: null,
    opened: get().opened + 1,
    text: '',
    data: null,
    computed: null,
    computedData: null,
    problems: [],
    busy: true,
    trouble: null,
    openFinding: null,
    decider: null,
    ...inHand([]),
    pointedParts: new Set(),
    conflicts: [],
    refusal: null,
    safety: 'saved',
    canUndo: false,
    canRedo: false,
    reading: null,
    revisionNews: 0,
  });
}

/** The sheet shows what the session holds, unless a revision is read. */
function follow({ text, history, seq, safety, refusal, conflicts }: SessionState): void {
  set({ seq, safety, refusal, conflicts, canUndo: history.done !== null, canRedo: history.undone !== null });
  if (get().reading === null && text !== get().text) put(text);
}

/** Replaces the text; edits with the same key that follow each other are undone together. A revision cannot be edited. */
export function editText(text: string, key: string | null): void {
  if (get().reading === null) session?.edit(text, key);
}

/** Shows a revision in place of the text in hand, or the text in hand again. */
export function read(revision: Reading | null): void {
  if (!session) return;
  // What is read is looked at; the differences make way for it.
  const view = revision && get().view === 'changes' ? 'plan' : get().view;
  set({ reading: revision, view, ...inHand([]), openFinding: null });
  put(revision?.text ?? session.state().text);
}

/** Takes the text of the revision that is read as an edit, which can be undone. */
export function takeBack(): void {
  const { reading } = get();
  if (!reading) return;
  set({ reading: null });
  editText(reading.text, null);
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
  const named = typeof before === 'string' ? [...namesOf(data, before), ...distanceEndsOn(data, before)] : [];
  editText(
    withValues(
      text,
      [...named, [...path, 'id']].map((each) => [each, id] as const),
    ),
    null,
  );
  set(inHand([id]));
}
export const removeEntry = (path: Path): void => {
  editText(withValue(get().text, path, undefined), null);
  set(inHand([]));
};

/** The next edit starts a new state, even of the same field. */
export const endEdit = (): void => session?.endGroup();

export function undo(): void {
  if (get().reading === null) session?.undo();
}

export function redo(): void {
  if (get().reading === null) session?.redo();
}

/** A conflict was seen: theirs stays, or mine was put in by an edit. */
export const settleConflict = (conflict: Conflict): void => session?.settle(conflict);
/** Asks the server again at once. */
export const askAgain = (): void => session?.retry();
/** What differs is shown in its own step alone; with it the plan makes way and comes back. */
export const goToStep = (step: StepName): void =>
  set(step === 'changes' ? { step, view: 'changes' } : get().view === 'changes' ? { step, view: 'plan' } : { step });
export const show = (view: View): void => set({ view });

const inHand = (selection: readonly string[]): Pick<Workbench, 'selection' | 'selected'> => ({
  selection,
  selected: selection.length === 1 ? selection[0]! : null,
});
const only = (id: string | null) => inHand(id === null ? [] : [id]);

export const select = (id: string | null): void => set({ ...only(id), onSheet: true });
export const selectInForm = (id: string | null): void => set({ ...only(id), onSheet: false });
export const selectSeveral = (ids: readonly string[]): void => set({ ...inHand([...new Set(ids)]), onSheet: true });
/** Takes a thing into the hand beside what is there, or lays it down again. */
export function selectAlso(id: string): void {
  const { selection } = get();
  selectSeveral(selection.includes(id) ? selection.filter((each) => each !== id) : [...selection, id]);
}
export const pointParts = (ids: readonly string[]): void => set({ pointedParts: new Set(ids) });
export const showFor = (decider: Decider | null): void => set({ decider });
export const openFinding = (id: string | null): void => set({ openFinding: id });
export const focusFinding = (id: string | null): void => set({ focusedFinding: id });
export const showInText = (caret: number): void => set({ view: 'text', caret });
