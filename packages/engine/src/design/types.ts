import type { SideName } from '../brief/schema.js';
import type { Question } from '../floor/finding.js';
import type { Ring } from '../floor/geometry/polygon.js';
import type { Vec2, Vec3 } from '../floor/geometry/vec.js';
import type { Source } from '../floor/source.js';

/** The rule that placed a part: why it exists. */
export interface Placed {
  /** `compose.enclosure.corner-post`: stable. */
  readonly rule: string;
  /** One sentence: `A post stands at each corner of the frame.` */
  readonly because: string;
}

/** The shape of a part in the room, metres. Every drawing and the 3D view are made from it. */
export type Shape =
  /** Straight bar of rectangular envelope: `width` is horizontal across the bar (for upright bars along `across`), `height` the other. */
  | {
      readonly shape: 'bar';
      readonly from: Vec3;
      readonly to: Vec3;
      readonly width: number;
      readonly height: number;
      readonly across?: Vec2;
    }
  /** Bar bent in plan about `centre` from angle `start` through `sweep` (counter-clockwise positive) [rad]. */
  | {
      readonly shape: 'bend';
      readonly centre: Vec3;
      readonly radius: number;
      readonly start: number;
      readonly sweep: number;
      readonly width: number;
      readonly height: number;
    }
  /** Box about `centre`, its length turned by `turn` from east. */
  | {
      readonly shape: 'box';
      readonly centre: Vec3;
      readonly length: number;
      readonly width: number;
      readonly height: number;
      readonly turn: number;
    }
  /** Flat plate: corners in order, all in one plane. */
  | { readonly shape: 'plate'; readonly corners: readonly Vec3[]; readonly thickness: number }
  /** Hanging cloth: the line of its upper edge in plan, its top and its bottom height. */
  | {
      readonly shape: 'cloth';
      readonly line: readonly Vec2[];
      readonly top: number;
      readonly bottom: number;
      readonly fullness: number;
    }
  /** Small parts (fasteners) that are only counted: where they sit. */
  | { readonly shape: 'loose'; readonly at: Vec3 };

export type PartGroup =
  | 'profiles'
  | 'joints'
  | 'feet'
  | 'fasteners'
  | 'strips'
  | 'panels'
  | 'fan filter units'
  | 'lights'
  | 'track'
  | 'track supports'
  | 'runners'
  | 'curtains'
  | 'covers'
  | 'signs'
  | 'sensors'
  | 'interlocks';

export type PartRole =
  | 'post'
  | 'beam'
  | 'cross beam'
  | 'rail'
  | 'joint'
  | 'foot'
  | 'fastener'
  | 'slot cover'
  | 'panel insert'
  | 'cap'
  | 'side panel'
  | 'roof panel'
  | 'fan filter unit'
  | 'light'
  | 'track'
  | 'track curve'
  | 'connector'
  | 'support'
  | 'end stop'
  | 'runner'
  | 'curtain panel'
  | 'strip panel'
  | 'hem weight'
  | 'cover'
  | 'sign'
  | 'sensor'
  | 'interlock';

/** One placed thing to buy, cut and fit (or a count of loose ones at one place). */
export interface Part {
  readonly id: string;
  /** Catalogue item. */
  readonly item: string;
  readonly group: PartGroup;
  readonly role: PartRole;
  /** Enclosure, run, cover ... that it belongs to. */
  readonly of: string;
  /** Piece mark: equal pieces share one; absent for parts that need none (fasteners, runners). */
  readonly mark?: string;
  readonly shape: Shape;
  readonly count: number;
  /** Exact cut or finished sizes [m], where the part is made to size. */
  readonly length?: number;
  readonly width?: number;
  readonly thickness?: number;
  /** Mass of all `count` pieces [kg]. */
  readonly mass: number;
  readonly placed: Placed;
  /** Words for the workshop: end operations, sides out. */
  readonly note?: string;
}

/** A stretch of wall taken by a door, window or board. */
export interface WallOpening {
  readonly id: string;
  readonly name: string;
  readonly wall: number;
  readonly from: Vec2;
  readonly to: Vec2;
  /** Unit normal into the room. */
  readonly inward: Vec2;
  readonly width: number;
  readonly bottom: number;
  readonly top: number;
}

export interface DesignDoor extends WallOpening {
  readonly swing: 'in' | 'out' | 'sliding' | 'none';
  readonly exit: boolean;
  /** One per leaf: hinge, leaf length, direction angles closed and open [rad]. */
  readonly leaves: readonly {
    readonly hinge: Vec2;
    readonly leaf: number;
    readonly closed: number;
    readonly open: number;
  }[];
}

export interface DesignBoard extends WallOpening {
  readonly voltsToGround: number;
  readonly opposite: 'nothing grounded' | 'grounded' | 'live';
}

/** Something solid in the plan with a height range. */
export interface Solid {
  readonly id: string;
  readonly name: string;
  readonly outline: Ring;
  readonly bottom: number;
  readonly top: number;
}

export interface DesignRoom {
  readonly name: string;
  readonly outline: Ring;
  readonly height: number;
  readonly ceiling: string;
  readonly doors: readonly DesignDoor[];
  readonly windows: readonly WallOpening[];
  readonly boards: readonly DesignBoard[];
  readonly columns: readonly Solid[];
  readonly beams: readonly Solid[];
  readonly obstructions: readonly Solid[];
  readonly sprinklers: readonly { readonly id: string; readonly at: Vec2; readonly deflector: number }[];
  readonly detectors: readonly { readonly id: string; readonly at: Vec2; readonly kind: string }[];
  readonly exitSigns: readonly { readonly id: string; readonly at: Vec2; readonly height: number }[];
  readonly airTerminals: readonly {
    readonly id: string;
    readonly kind: 'supply' | 'return';
    readonly at: Vec2;
    readonly size: Vec2;
    readonly flow: number | null;
  }[];
  readonly luminaires: readonly { readonly id: string; readonly at: Vec2; readonly size: Vec2 }[];
}

export interface DesignTable {
  readonly id: string;
  readonly name: string;
  readonly outline: Ring;
  readonly centre: Vec2;
  readonly turn: number;
  readonly length: number;
  readonly width: number;
  /** Top above the floor. */
  readonly height: number;
  readonly mass: number | null;
  readonly travel: number;
  readonly equipment: readonly (Solid & {
    readonly mass: number | null;
    readonly heat: number;
    readonly electricalLoad: number;
    readonly noise: number | null;
  })[];
}

/** A source with its beam in the room; numbers in SI. */
export interface DesignLaser {
  readonly id: string;
  readonly name: string;
  readonly table: string | null;
  readonly wavelength: number;
  readonly wavelengthRange: readonly [number, number] | null;
  readonly emission:
    | { readonly kind: 'continuous'; readonly power: number }
    | { readonly kind: 'pulsed'; readonly energy: number; readonly duration: number; readonly rate: number }
    | { readonly kind: 'irregular pulses' | 'scanned' };
  /** Mean power, tolerance added; null when it cannot be told from what is given. */
  readonly meanPower: number | null;
  /** Relative tolerance on power or energy that the numbers above already hold. */
  readonly tolerance: number;
  readonly diameter: number;
  readonly measuredAt: '1/e' | '1/e2' | 'fwhm';
  readonly divergence: number;
  readonly profile: 'gaussian' | 'top-hat';
  readonly declaredClass: string | null;
  /** Points of the beam, from where it leaves; the last leg runs on to the table edge when the beam has no stated end. */
  readonly path: readonly Vec3[];
  readonly legs: readonly {
    readonly from: Vec3;
    readonly to: Vec3;
    readonly carried: 'open' | 'tube' | 'fibre';
    readonly endsOn: string;
  }[];
  readonly foreseeableTilt: number;
  readonly heat: number;
  readonly electricalLoad: number;
  readonly settlingTime: number;
}

export interface EnclosureSide {
  readonly name: SideName;
  readonly closure: 'curtain' | 'strip' | 'rigid panel' | 'open';
  readonly item: string | null;
  /** Ends of the side on the inside face, seen from inside left to right. */
  readonly from: Vec2;
  readonly to: Vec2;
  readonly bottom: number;
  readonly top: number;
}

/** A roof beam as a simple beam with what it carries. */
export interface RoofBeam {
  /** Part of the beam. */
  readonly part: string;
  readonly mark: string;
  readonly profile: string;
  /** Clear span between its posts or supports [m]. */
  readonly span: number;
  /** Uniform load, the bar itself included [N/m]. */
  readonly uniform: number;
  /** Point loads [N] at distances from the first end [m] (end reactions of cross beams). */
  readonly points: readonly { readonly at: number; readonly load: number }[];
  readonly carriesTrack: boolean;
}

export interface DesignEnclosure {
  readonly id: string;
  readonly name: string;
  readonly kind: 'close' | 'walk-in';
  readonly tables: readonly string[];
  readonly turn: number;
  readonly centre: Vec2;
  /** Outside and inside of the frame in plan. */
  readonly outline: Ring;
  readonly inside: Ring;
  readonly length: number;
  readonly width: number;
  readonly insideLength: number;
  readonly insideWidth: number;
  /** Underside of the roof beams. */
  readonly clearHeight: number;
  /** Top of the frame, and of everything on it. */
  readonly frameTop: number;
  readonly top: number;
  readonly gaps: Readonly<Record<SideName, number>>;
  readonly hemGap: number;
  readonly sides: readonly EnclosureSide[];
  readonly profile: string;
  readonly unit: string | null;
  readonly unitCount: number;
  readonly unitAreas: readonly Ring[];
  readonly feet: 'levelling foot' | 'foot plate' | 'caster';
  readonly footPoints: readonly Vec2[];
  readonly roofBeams: readonly RoofBeam[];
  /** Air volume inside [m3], tables taken off not. */
  readonly volume: number;
  readonly cleanArea: number;
  /** Open gaps with their areas [m2]. */
  readonly openings: readonly { readonly what: string; readonly area: number }[];
  readonly mass: number;
  readonly centreOfMass: Vec3;
  readonly lightCount: number;
  /** Tries of the bounded choices, as found: each with what was tried and why it was dropped or kept. */
  readonly tries: readonly { readonly choice: string; readonly tried: string; readonly outcome: string }[];
}

export type RunSegment =
  | {
      readonly kind: 'straight';
      readonly from: Vec2;
      readonly to: Vec2;
      readonly start: number;
      readonly length: number;
    }
  | {
      readonly kind: 'bend';
      readonly from: Vec2;
      readonly to: Vec2;
      readonly centre: Vec2;
      readonly radius: number;
      readonly startAngle: number;
      readonly sweep: number;
      readonly start: number;
      readonly length: number;
    };

export interface DesignRun {
  readonly id: string;
  readonly name: string;
  readonly kind: 'bay' | 'partition' | 'shelf';
  readonly closed: boolean;
  readonly hung: 'ceiling' | 'wall' | 'floor post' | 'frame' | 'shelf';
  readonly on: string | null;
  /** Corner points as asked. */
  readonly corners: readonly Vec2[];
  /** Line of the track, bends as short chords (for drawing and distances). */
  readonly line: readonly Vec2[];
  readonly segments: readonly RunSegment[];
  readonly pathLength: number;
  readonly trackHeight: number;
  readonly hemGap: number;
  /** Finished height of the curtain, and its top above the floor. */
  readonly drop: number;
  readonly curtainTop: number;
  readonly cloth: string;
  readonly track: string;
  readonly joints: readonly number[];
  readonly supports: readonly { readonly part: string; readonly at: number; readonly point: Vec2 }[];
  readonly supportSpacing: number;
  readonly supportItem: string;
  readonly openings: readonly { readonly at: number; readonly width: number }[];
  /** Stretches of curtain between openings: the panels that cover each. */
  readonly stretches: readonly {
    readonly from: number;
    readonly to: number;
    readonly panels: readonly { readonly mark: string; readonly width: number }[];
    readonly flatWidth: number;
    readonly fullness: number;
    readonly fits: boolean;
  }[];
  /** Mass per metre of track with curtain drawn [kg/m]. */
  readonly massPerLength: number;
  readonly mass: number;
  readonly stackBack: number;
}

/** An upright face that may stop light: side of an enclosure, curtain of a run, cover. */
export interface Barrier {
  readonly id: string;
  readonly name: string;
  /** Enclosure, run or cover. */
  readonly of: string;
  /** Catalogue item with its ratings; null when the side is open. */
  readonly item: string | null;
  readonly from: Vec2;
  readonly to: Vec2;
  readonly bottom: number;
  readonly top: number;
}

export interface DesignCover {
  readonly id: string;
  readonly over: string;
  readonly item: string;
  readonly part: string;
  readonly width: number;
  readonly height: number;
  readonly fits: boolean;
}

/** Signs, stops, interlock parts, sensors: points in the room. */
export interface DesignDevice {
  readonly id: string;
  readonly kind: 'sign' | 'stop' | 'interlock' | 'sensor';
  readonly at: Vec3;
  readonly item: string;
  readonly on: string;
  readonly text: string;
}

export interface Assumption {
  readonly path: readonly (string | number)[];
  readonly what: string;
  readonly value: string;
  readonly reason: string;
  readonly source: Source;
}

/** What was found: the whole space, ready to be checked, drawn and ordered. Plain, readonly, JSON-able; SI. */
export interface Design {
  readonly schema: 1;
  readonly engine: string;
  /** Content hashes of what the design was made from. */
  readonly inputs: { readonly brief: string; readonly catalogue: string; readonly rules: string };
  readonly project: {
    readonly name: string;
    readonly number: string;
    readonly owner: string;
    readonly author: string;
    readonly contact: string;
    readonly laserSafetyOfficer: string;
    readonly invented: boolean;
    readonly units: 'metric' | 'imperial';
  };
  readonly rules: {
    readonly profile: string;
    readonly title: string;
    readonly jurisdiction: string;
    readonly caution: string;
  };
  readonly room: DesignRoom;
  readonly tables: readonly DesignTable[];
  readonly equipment: readonly (Solid & {
    readonly mass: number | null;
    readonly heat: number;
    readonly electricalLoad: number;
    readonly noise: number | null;
  })[];
  readonly lasers: readonly DesignLaser[];
  readonly enclosures: readonly DesignEnclosure[];
  readonly runs: readonly DesignRun[];
  readonly covers: readonly DesignCover[];
  readonly devices: readonly DesignDevice[];
  readonly barriers: readonly Barrier[];
  readonly parts: readonly Part[];
  readonly assumptions: readonly Assumption[];
  readonly questions: readonly Question[];
}
