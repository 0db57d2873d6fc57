import { emptyHistory, type History, type HistoryStep, redoStep, undoStep, withSteps } from './history.js';
import { merge } from './merge.js';
import type { Conflict } from './merge-data.js';
import { type NewStep, replayed, type Step, sameStep, spliceBetween } from './steps.js';
import type { Clock, Copy, Keep, Kept, Opened, Stop, Wire } from './wire.js';

/**
 * Where the text is safe.
 *
 * `saved`: on the server. `saving`: on its way. `kept`: in this browser only, the server does not answer. `unkept`: nowhere but on
 * the screen. `refused`: the server does not take it. `gone`: the project was taken out.
 */
export type Safety = 'saved' | 'saving' | 'kept' | 'unkept' | 'refused' | 'gone';

export interface SessionState {
  readonly text: string;
  readonly history: History;
  /** Number of the last step that the server is known to have. */
  readonly seq: number;
  readonly safety: Safety;
  /** Why the server refuses the text. */
  readonly refusal: string | null;
  /** What this window wrote and another one wrote over. */
  readonly conflicts: readonly Conflict[];
}

export interface SessionPorts {
  readonly wire: Wire;
  readonly keep: Keep;
  readonly copy: Copy;
  readonly clock: Clock;
  /** Name of this window; never used again after it is gone. */
  readonly window: string;
  readonly onChange: (state: SessionState) => void;
  /** Somebody has named a revision. */
  readonly onRevision?: () => void;
}

export interface Session {
  readonly state: () => SessionState;
  /** Replaces the text; edits with the same key that follow each other are one, until `endGroup`. */
  readonly edit: (text: string, key: string | null) => void;
  readonly endGroup: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly settle: (conflict: Conflict) => void;
  /** Asks the server at once, without waiting for the next try. */
  readonly retry: () => void;
  readonly close: () => void;
}

/** Least time between two requests for one drag [ms]. */
const pace = 250;
/** First wait after a lost request, and the longest [ms]. */
const [firstWait, longestWait] = [500, 10_000];

/**
 * One window's hold on a project. The server's text (`head`) and what it has not yet acknowledged (`pending`) make the text on the
 * screen. Every pending step is kept in the browser before it is sent, and known again by its window and group when it comes
 * back, so that neither a lost answer nor a killed browser loses it or writes it twice.
 */
export async function openSession(ports: SessionPorts): Promise<Session> {
  const { wire, keep, copy, clock, window } = ports;
  const { opened, answered } = await openedOrCopied(ports);

  let head = opened.text;
  let seq = opened.seq;
  /** All steps that led to the text, as far as this browser knows them. */
  let led = opened.steps;
  /** False as long as the server has not answered since the project was opened from this browser's copy. */
  let reached = answered;
  let known = withSteps(emptyHistory, opened.steps);
  let pending: readonly NewStep[] = [];
  /** How many of the pending steps were sent at least once, and may have arrived. */
  let sent = 0;
  let text = head;
  /** The text before the last pending step, from which it grows while it is not sent. */
  let before = head;
  let conflicts: readonly Conflict[] = [];
  let key: string | null = null;
  let group = '';
  let groups = 0;
  let underWay = false;
  let lastSent = Number.NEGATIVE_INFINITY;
  let paced: Stop | null = null;
  let waiting: Stop | null = null;
  let wait = firstWait;
  let kept = true;
  let refusal: string | null = null;
  let gone = false;
  let closed = false;

  const safety = (): Safety => {
    if (gone) return 'gone';
    if (pending.length === 0) return reached ? 'saved' : 'kept';
    if (refusal !== null) return 'refused';
    if (!kept) return 'unkept';
    return waiting ? 'kept' : 'saving';
  };
  const state = (): SessionState => ({
    text,
    history: withSteps(known, pending),
    seq,
    safety: safety(),
    refusal,
    conflicts,
  });
  const tell = (): void => {
    if (!closed) ports.onChange(state());
  };
  const keepNow = (): void => {
    copy.write(gone ? null : { text: head, seq, steps: led });
    kept = keep.write(
      pending.length === 0 && conflicts.length === 0 ? null : { base: seq, text: head, steps: pending, conflicts },
    );
  };

  const push = (step: HistoryStep, after: string): void => {
    before = text;
    pending = [...pending, { ...step, window }];
    text = after;
  };

  const newGroup = (): string => {
    groups += 1;
    return `${window}-${groups}`;
  };

  function edit(after: string, byKey: string | null): void {
    if (after === text || gone) return;
    const goesOn = byKey !== null && byKey === key;
    if (!goesOn) group = newGroup();
    key = byKey;
    const last = pending.at(-1);
    if (goesOn && last?.group === group && last.kind === 'edit' && pending.length > sent) {
      const splices = spliceBetween(before, after);
      pending = [...pending.slice(0, -1), ...(splices.length === 0 ? [] : [{ ...last, splices }])];
      // Back where it began: there is nothing to send, and nothing to go on with.
      if (splices.length === 0) key = null;
      text = after;
    } else push({ kind: 'edit', group, splices: spliceBetween(text, after) }, after);
    changedHere(goesOn);
  }

  function again(step: HistoryStep | null): void {
    const after = step && replayed(text, [step]);
    if (!step || after === null || gone) return;
    key = null;
    // A long drag is taken back in one replacement; one that led nowhere has none, and keeps its own.
    const [least] = spliceBetween(text, after);
    push(least ? { ...step, splices: [least] } : step, after);
    changedHere(false);
  }

  /** After a change of this window: kept first, then sent. */
  function changedHere(goesOn: boolean): void {
    if (refusal !== null) putTogether();
    keepNow();
    const early = goesOn ? lastSent + pace - clock.now() : 0;
    if (early <= 0) void send();
    else
      paced ??= clock.after(early, () => {
        paced = null;
        void send();
      });
    tell();
  }

  /** What was refused is not sent again step by step: the text as it stands now is a new try. */
  function putTogether(): void {
    refusal = null;
    const splices = spliceBetween(head, text);
    before = head;
    pending = splices.length === 0 ? [] : [{ window, group: newGroup(), kind: 'edit', splices }];
  }

  function endGroup(): void {
    key = null;
    paced?.();
    paced = null;
    void send();
  }

  /** Sends what waits, all at once; one request at a time. */
  async function send(): Promise<void> {
    if (underWay || closed || gone || waiting || refusal !== null || pending.length === 0) return;
    underWay = true;
    paced?.();
    paced = null;
    lastSent = clock.now();
    const batch = firstBatch(pending);
    sent = Math.max(sent, batch.length);
    try {
      const answer = await wire.append(seq, batch);
      if (closed) return;
      wait = firstWait;
      reached = true;
      // The steps themselves may have come first, on the other way.
      if (answer.outcome === 'kept') acknowledge(answer.seq);
      else if (answer.outcome === 'behind') take(answer.steps);
      else if (answer.outcome === 'gone') gone = true;
      else await refused(answer.why);
    } catch {
      if (!closed) waitAndRetry();
    }
    underWay = false;
    if (!closed) {
      keepNow();
      tell();
      if (!paced) void send();
    }
  }

  /** All that was sent is on the server, up to this number. */
  function acknowledge(upTo: number): void {
    if (upTo <= seq) return;
    const count = Math.min(upTo - seq, sent);
    advance(pending.slice(0, count));
  }

  /** The first pending steps are on the server now. */
  function advance(steps: readonly NewStep[]): void {
    head = replayed(head, steps) ?? head;
    known = withSteps(known, steps);
    led = [...led, ...numbered(steps, seq)];
    seq += steps.length;
    pending = pending.slice(steps.length);
    sent = Math.max(0, sent - steps.length);
    if (pending.length === 0) before = text;
  }

  /** Steps of the server's history, ours among them. */
  function take(steps: readonly Step[]): void {
    const fresh = steps.filter((step) => step.seq > seq);
    if (fresh.length === 0) return;
    if (fresh[0]!.seq !== seq + 1) {
      void catchUp();
      return;
    }
    let own = 0;
    while (own < fresh.length && own < sent && sameStep(pending[own]!, fresh[own]!)) own++;
    if (own > 0) advance(pending.slice(0, own));
    const foreign = fresh.slice(own);
    if (foreign.length > 0) follow(foreign);
  }

  /** Others were first: their steps are taken, and what is pending here is merged into one edit on top of them. */
  function follow(foreign: readonly Step[]): void {
    const theirs = replayed(head, foreign);
    if (theirs === null) {
      void startAgain();
      return;
    }
    known = withSteps(known, foreign);
    led = [...led, ...foreign];
    onTopOf(theirs, seq + foreign.length);
  }

  function onTopOf(theirs: string, at: number): void {
    const base = head;
    head = theirs;
    seq = at;
    sent = 0;
    if (pending.length === 0) {
      text = before = head;
      // What is undone next is theirs; an edit that goes on here starts a new one.
      key = null;
      return;
    }
    const last = pending.at(-1)!;
    const merged = merge(base, text, theirs);
    tellConflicts(merged.conflicts);
    const splices = spliceBetween(theirs, merged.text);
    const joined = last.kind === 'edit' ? last.group : newGroup();
    pending = splices.length === 0 ? [] : [{ window, group: joined, kind: 'edit', splices }];
    before = head;
    text = merged.text;
  }

  /** A later word about the same place takes the earlier one's stead. */
  function tellConflicts(found: readonly Conflict[]): void {
    const places = new Set(found.map(placeKey));
    conflicts = [...conflicts.filter((c) => !places.has(placeKey(c))), ...found];
  }

  /** The server knows a text that ours does not lead to: its own is taken, and ours merged into it. */
  async function startAgain(): Promise<void> {
    try {
      const now = await wire.open();
      if (closed) return;
      startFrom(now);
      onTopOf(now.text, now.seq);
      keepNow();
      tell();
      void send();
    } catch {
      if (!closed) waitAndRetry();
    }
  }

  /** A refusal of a text that fits says something about the text itself; sending it again would not help. */
  async function refused(why: string): Promise<void> {
    const now = await wire.open();
    if (now.seq !== seq || now.text !== head) {
      startFrom(now);
      onTopOf(now.text, now.seq);
    } else {
      refusal = why;
      sent = 0;
    }
  }

  function startFrom(now: Opened): void {
    known = withSteps(emptyHistory, now.steps);
    led = now.steps;
  }

  function waitAndRetry(): void {
    waiting?.();
    waiting = clock.after(wait, () => {
      waiting = null;
      void catchUp();
    });
    wait = Math.min(wait * 2, longestWait);
    tell();
  }

  /** What happened while nobody listened. */
  async function catchUp(): Promise<void> {
    try {
      const steps = await wire.since(seq);
      if (closed) return;
      waiting?.();
      waiting = null;
      wait = firstWait;
      reached = true;
      gone = steps === null;
      take(steps ?? []);
      keepNow();
      tell();
      void send();
    } catch {
      if (!closed && !waiting) waitAndRetry();
    }
  }

  /** Takes up what a window that is gone had not yet brought to the server. */
  function takeUp(left: Kept): void {
    conflicts = [...conflicts, ...left.conflicts];
    const mine = replayed(left.text, left.steps);
    if (mine === null || left.steps.length === 0) return;
    const since = opened.steps.filter((step) => step.seq > left.base);
    let own = 0;
    while (own < left.steps.length && own < since.length && sameStep(left.steps[own]!, since[own]!)) own++;
    const rest = left.steps.slice(own);
    if (rest.length === 0) return;
    const leftBase = replayed(left.text, left.steps.slice(0, own)) ?? left.text;
    if (leftBase === text) for (const step of rest) pushLeft(step);
    else {
      const merged = merge(leftBase, mine, text);
      tellConflicts(merged.conflicts);
      if (merged.text !== text)
        push({ kind: 'edit', group: newGroup(), splices: spliceBetween(text, merged.text) }, merged.text);
    }
  }

  function pushLeft(step: NewStep): void {
    before = text;
    pending = [...pending, step];
    text = replayed(text, [step]) ?? text;
    sent = pending.length;
  }

  for (const left of keep.left()) takeUp(left);
  keepNow();
  keep.clearLeft();

  const stopListening = wire.listen({
    steps: (steps) => {
      if (closed) return;
      const [textBefore, seqBefore] = [text, seq];
      take(steps);
      if (seq === seqBefore && text === textBefore) return;
      keepNow();
      tell();
      void send();
    },
    opened: () => void catchUp(),
    gone: () => {
      gone = true;
      tell();
    },
    revision: () => ports.onRevision?.(),
  });

  tell();
  if (reached) void send();
  else waitAndRetry();
  return {
    state,
    edit,
    endGroup,
    undo: () => again(undoStep(withSteps(known, pending))),
    redo: () => again(redoStep(withSteps(known, pending))),
    settle: (conflict) => {
      conflicts = conflicts.filter((each) => each !== conflict);
      keepNow();
      tell();
    },
    retry: () => void catchUp(),
    close: () => {
      closed = true;
      paced?.();
      waiting?.();
      stopListening();
      copy.close();
    },
  };
}

/** As the server has the project; while it is away, as this browser last had it. */
async function openedOrCopied({
  wire,
  keep,
  copy,
}: SessionPorts): Promise<{ readonly opened: Opened; readonly answered: boolean }> {
  try {
    return { opened: await wire.open(), answered: true };
  } catch (error) {
    const copied = error instanceof TypeError ? newest(await copy.read(), keep.left()) : null;
    if (!copied) throw error;
    return { opened: copied, answered: false };
  }
}

/** What another window left may stand on a later text than the copy; the steps between the two are not known then. */
function newest(copied: Opened | null, left: readonly Kept[]): Opened | null {
  return left.reduce<Opened | null>(
    (best, { base, text }) => (best && best.seq >= base ? best : { seq: base, text, steps: [] }),
    copied,
  );
}

const numbered = (steps: readonly NewStep[], after: number): Opened['steps'] =>
  steps.map((step, i) => ({ ...step, seq: after + i + 1 }));

/** As many steps as one request holds: the server takes 500 with 5000 splices in at most 5 MB. */
function firstBatch(steps: readonly NewStep[]): readonly NewStep[] {
  let [size, splices] = [0, 0];
  const end = steps.findIndex((step, i) => {
    size += JSON.stringify(step).length;
    splices += step.splices.length;
    return i > 0 && (i >= mostSteps || splices > mostSplices || size > mostCharacters);
  });
  return end < 0 ? steps : steps.slice(0, end);
}

const mostSteps = 400;
const mostSplices = 4000;
const mostCharacters = 1_000_000;

const placeKey = ({ spot }: Conflict): string => JSON.stringify(spot);
