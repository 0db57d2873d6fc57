import type { Comparison, Cost, Design, Finding, ItemKind, OverlayInfo, OverlayMark, Problem } from '@cloche/engine';
import type { ListPatch, RecordPatch } from './patch.js';

export type {
  Barrier,
  Calculation,
  CalculationStep,
  Comparison,
  Design,
  DesignDevice,
  DesignDoor,
  DesignEnclosure,
  DesignLaser,
  DesignRun,
  DesignTable,
  Dimension,
  Finding,
  FindingChange,
  ItemChange,
  Part,
  Problem,
  Question,
  Ring,
  Shape,
  Solid,
  Source,
  ThingChange,
  Vec2,
  Vec3,
  Verdict,
} from '@cloche/engine';

/** A file of the catalogue or a brief as the server sends it. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** What the sheet shows of one computed state. */
export interface Computed {
  readonly design: Design;
  readonly findings: readonly Finding[];
  /** Content hash that names the state. */
  readonly revision: string;
  /** Names of the catalogue items in use. */
  readonly itemNames: Readonly<Record<string, string>>;
  /** Findings that belong to an earlier state: their checks take longer and have not answered for this one yet. */
  readonly stale: ReadonlySet<string>;
  /** True while heavy checks and the revision are still those of an earlier state. */
  readonly pending: boolean;
}

export type Answer =
  | { readonly ok: true; readonly value: Computed }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Two computed states laid beside each other. */
export interface Compared {
  readonly before: Computed;
  readonly after: Computed;
  readonly comparison: Comparison;
}

export type ComparisonAnswer =
  | { readonly ok: true; readonly value: Compared }
  | {
      readonly ok: false;
      /** The states that cannot be read, each with what is wrong. */
      readonly problems: { readonly before: readonly Problem[]; readonly after: readonly Problem[] };
    };

/** What the page may offer in its choices. */
export interface Shelf {
  readonly items: readonly {
    readonly id: string;
    readonly name: string;
    readonly kind: ItemKind;
    /** Purpose of a cloth or cover, role of an interlock part. */
    readonly use?: string;
  }[];
  readonly profiles: readonly { readonly id: string; readonly name: string }[];
  readonly rules: readonly { readonly id: string; readonly name: string }[];
  /** In the order in which tables name them. */
  readonly disciplines: readonly { readonly id: string; readonly title: string }[];
  /** What can be laid over the plan. */
  readonly overlays: readonly OverlayInfo[];
}

/** What the light checks say of a state, told by what changed since the last that was told. */
export interface SoonTold {
  readonly design: RecordPatch;
  readonly findings: ListPatch<Finding>;
  readonly itemNames: RecordPatch;
}

/** What the heavy checks say, in the same way. */
export interface LaterTold {
  readonly findings: ListPatch<Finding>;
  readonly revision: string;
}

export type Told<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What a worker does for the page. */
export interface Engine {
  prepare(catalogueFiles: readonly TextFile[], ruleTexts: Readonly<Record<string, string>>): Shelf;
  /** A brief that was just opened: everything in one answer. */
  whole(briefText: string): Told<{ readonly soon: SoonTold; readonly later: LaterTold }>;
  /** After an edit: what follows the hand. */
  soon(briefText: string): Told<SoonTold>;
  /** After an edit: what takes longer. */
  later(briefText: string): Told<LaterTold>;
  /** Marks of an overlay on a brief; none when it cannot be read. */
  overlayMarks(briefText: string, id: string): readonly OverlayMark[];
  /** What everything to buy costs. */
  cost(briefText: string): Told<Cost>;
  compare(beforeText: string, afterText: string): ComparisonAnswer;
}
