import type { Comparison, Design, Finding, ItemKind, OverlayInfo, OverlayMark, Problem } from '@cloche/engine';

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
  /** What can be laid over the plan. */
  readonly overlays: readonly OverlayInfo[];
}

/** What the worker does for the page. */
export interface Engine {
  prepare(catalogueFiles: readonly TextFile[], ruleTexts: Readonly<Record<string, string>>): Shelf;
  compute(briefText: string): Answer;
  /** Marks of an overlay on the last state that was computed; none when there is none. */
  overlayMarks(id: string): readonly OverlayMark[];
  compare(beforeText: string, afterText: string): ComparisonAnswer;
}
