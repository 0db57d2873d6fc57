import type { CompleteBrief, CompleteEnclosure } from '../brief/complete.js';
import type { SideName } from '../brief/schema.js';
import type { Catalogue, Cloth, Foot, Light, Profile, Sheet, Strip, Track } from '../catalogue/schema.js';
import type { Barrier, DesignEnclosure, DesignTable, EnclosureSide, Part, RoofBeam, Shape } from '../design/types.js';
import type { Vec3 } from '../floor/geometry/vec.js';
import { add3, between3, scale3 } from '../floor/geometry/vec.js';
import { type Outcome, ok, type Problem, problem, refuse } from '../floor/problem.js';
import { standardGravity } from '../frame/index.js';
import { ruleNumber, type SiteRules } from '../rules/schema.js';
import { type Axes, axesOf, ringOf, toRoom, toSpace } from './axes.js';
import { chooseFoot } from './choose-foot.js';
import { chooseProfile } from './choose-profile.js';
import { chooseUnits, type UnitChoice } from './choose-units.js';
import { composeStraightCurtain, type StraightCurtain } from './curtain-straight.js';
import { finishParts, type PartDraft } from './draft.js';
import { frameHardware } from './frame-hardware.js';
import { type Bay, type FrameMembers, frameMembers, postPoints, sideLines } from './frame-members.js';
import { cheapest, chosenItem, findItem, itemsOf } from './items.js';
import { rigidSide } from './rigid-side.js';
import { layRoof, type Rect, type RoofLayout } from './roof.js';
import { type BeamLoad, roofLoads } from './roof-loads.js';
import { stripSide } from './strip-side.js';

/** Distance of the middle of a track or strip rail to the inside of the frame, beside half its own width [m] (common practice). */
const hangingPlay = 0.005;
/** Largest width of a rigid panel: one person can carry it [m] (common practice). */
const panelWidth = 1.25;
/** Slit left at each end of a curtain [m] (common practice); counted as open area. */
const curtainEndSlit = 0.005;
/** Lights when the brief names no number (common practice). */
const defaultLights = { close: 2, 'walk-in': 4 } as const;

export interface ComposedEnclosure {
  readonly enclosure: DesignEnclosure;
  readonly parts: readonly Part[];
  readonly barriers: readonly Barrier[];
}

interface Context {
  readonly brief: CompleteBrief;
  readonly tables: readonly DesignTable[];
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
}

/** What closes the sides, the roof and the floor: items chosen once, before anything is placed. */
interface Items {
  readonly roofSheet: Sheet;
  readonly light: Light | null;
  readonly lightCount: number;
  readonly closures: Readonly<Record<SideName, Cloth | Sheet | null>>;
  readonly track: Track | undefined;
}

const needsBarrier = (brief: CompleteBrief, tables: readonly string[]): boolean =>
  brief.lasers.some((l) => l.table !== undefined && tables.includes(l.table));

function chooseItems(enclosure: CompleteEnclosure, index: number, { brief, catalogue }: Context): Outcome<Items> {
  const path = ['layout', 'enclosures', index];
  const sheets = itemsOf<Sheet>(catalogue, 'sheet');
  const roofSheet = chosenItem(
    cheapest(sheets.filter((s) => !s.transparent && s.ratings.length === 0)),
    'opaque sheet for the roof',
    path,
  );
  const lightCount = enclosure.lightCount ?? defaultLights[enclosure.kind];
  const light: Outcome<Light | null> =
    lightCount === 0
      ? ok(null)
      : enclosure.light
        ? findItem<Light>(catalogue, enclosure.light, ['light strip'], [...path, 'light'])
        : chosenItem(cheapest(itemsOf<Light>(catalogue, 'light strip')), 'light strip', [...path, 'light']);
  const barrier = needsBarrier(brief, enclosure.around);
  const cloths = itemsOf<Cloth>(catalogue, 'cloth');
  const chooseClosure = (side: SideName): Outcome<Cloth | Sheet | null> => {
    const { closure, item } = enclosure.sides[side];
    const at = [...path, 'sides', side, 'item'];
    if (closure === 'open') return ok(null);
    if (closure === 'rigid panel')
      return item
        ? findItem<Sheet>(catalogue, item, ['sheet'], at)
        : chosenItem(
            cheapest(sheets.filter((s) => (barrier ? s.ratings.length > 0 : s.transparent))),
            barrier ? 'sheet with a laser rating' : 'clear sheet',
            at,
          );
    if (item) return findItem<Cloth>(catalogue, item, ['cloth'], at);
    const purpose = closure === 'strip' ? 'clear strip' : barrier ? 'laser barrier' : 'clean-room curtain';
    return chosenItem(cheapest(cloths.filter((c) => c.purpose === purpose)), `cloth for ${purpose}`, at);
  };
  const sides = {
    south: chooseClosure('south'),
    east: chooseClosure('east'),
    north: chooseClosure('north'),
    west: chooseClosure('west'),
  };
  const problems: Problem[] = [roofSheet, light, ...Object.values(sides)].flatMap((o) => (o.ok ? [] : [...o.problems]));
  if (problems.length > 0 || !roofSheet.ok || !light.ok) return refuse(problems);
  const value = (side: SideName): Cloth | Sheet | null => {
    const chosen = sides[side];
    return chosen.ok ? chosen.value : null;
  };
  return ok({
    roofSheet: roofSheet.value,
    light: light.value,
    lightCount,
    closures: { south: value('south'), east: value('east'), north: value('north'), west: value('west') },
    track: itemsOf<Track>(catalogue, 'track')[0],
  });
}

/** Middle line of a hanging closure along the inside of a side, in the own axes. */
function hangingLine(axes: Axes, name: SideName, offset: number) {
  const line = sideLines(axes).find((l) => l.name === name)!;
  const across = (line.alongU ? axes.width : axes.length) / 2 - offset;
  const at = (s: number) => (line.alongU ? toRoom(axes, s, line.sign * across) : toRoom(axes, line.sign * across, s));
  return { from: at(-line.half), to: at(line.half), length: 2 * line.half };
}

/** Curtain or strips of the sides that have them; mass per metre of side is what the roof beam carries. */
function hangSides(
  enclosure: CompleteEnclosure,
  index: number,
  axes: Axes,
  items: Items,
  { catalogue, rules }: Context,
): Outcome<Hanging> {
  const curtains = new Map<SideName, StraightCurtain>();
  const strips = new Map<SideName, readonly PartDraft[]>();
  const problems: Problem[] = [];
  for (const { name } of sideLines(axes)) {
    const { closure } = enclosure.sides[name];
    const cloth = items.closures[name];
    if (cloth?.kind !== 'cloth') continue;
    if (closure === 'strip') {
      strips.set(
        name,
        stripSide({
          of: enclosure.id,
          axes,
          side: name,
          cloth,
          offset: hangingPlay + cloth.thickness,
          clearHeight: enclosure.clearHeight,
          hemGap: enclosure.hemGap,
        }),
      );
      continue;
    }
    if (!items.track) {
      problems.push(
        problem(
          'compose/item-missing',
          ['layout', 'enclosures', index],
          'The catalogue has no track.',
          'Add a track to the catalogue.',
        ),
      );
      continue;
    }
    const line = hangingLine(axes, name, hangingPlay + items.track.size[0] / 2);
    const curtain = composeStraightCurtain({
      id: `${enclosure.id}-${name}`,
      of: enclosure.id,
      markPrefix: `${enclosure.id}-${name[0]}`.toUpperCase(),
      from: line.from,
      to: line.to,
      trackHeight: enclosure.clearHeight,
      hemGap: enclosure.hemGap,
      cloth,
      track: items.track,
      hung: 'frame',
      catalogue,
      rules,
      rulePrefix: 'compose.enclosure.curtain',
      path: ['layout', 'enclosures', index, 'sides', name],
    });
    if (curtain.ok) curtains.set(name, curtain.value);
    else problems.push(...curtain.problems);
  }
  return problems.length > 0 ? refuse(problems) : ok({ curtains, strips });
}

const centreOf = (shape: Shape): Vec3 => {
  switch (shape.shape) {
    case 'bar':
      return between3(shape.from, shape.to, 0.5);
    case 'bend':
      return shape.centre;
    case 'box':
      return shape.centre;
    case 'plate':
      return scale3(
        shape.corners.reduce<Vec3>((sum, c) => add3(sum, c), [0, 0, 0]),
        1 / shape.corners.length,
      );
    case 'cloth': {
      const n = shape.line.length;
      const x = shape.line.reduce((sum, p) => sum + p[0], 0) / n;
      const y = shape.line.reduce((sum, p) => sum + p[1], 0) / n;
      return [x, y, (shape.top + shape.bottom) / 2];
    }
    case 'loose':
      return shape.at;
  }
};

function centreOfMass(parts: readonly { readonly shape: Shape; readonly mass: number }[]): {
  readonly mass: number;
  readonly centre: Vec3;
} {
  const mass = parts.reduce((sum, p) => sum + p.mass, 0);
  const moment = parts.reduce<Vec3>((sum, p) => add3(sum, scale3(centreOf(p.shape), p.mass)), [0, 0, 0]);
  return { mass, centre: mass > 0 ? scale3(moment, 1 / mass) : [0, 0, 0] };
}

/** Bays of the long sides and of the ends with what hangs on each metre, for the roof loads. */
function loadedBays(axes: Axes, bays: readonly Bay[], hung: ReadonlyMap<SideName, number>) {
  const [low, plusU, high, minusU] = axes.sideAt;
  const loaded = (bay: Bay) => ({
    from: bay.from,
    to: bay.to,
    hung: hung.get(bay.side) ?? 0,
    carriesTrack: hung.has(bay.side),
  });
  return {
    longBays: bays.filter((b) => b.side === low || b.side === high).map(loaded),
    endBays: bays
      .filter((b) => b.side === plusU || b.side === minusU)
      .map((b) => ({ ...loaded(b), sign: (b.side === plusU ? 1 : -1) as 1 | -1 })),
  };
}

function unitParts(of: string, axes: Axes, choice: UnitChoice, roof: RoofLayout, frameTop: number): PartDraft[] {
  const { unit } = choice;
  if (!unit) return [];
  return roof.units.map(
    (r): PartDraft => ({
      item: unit.id,
      group: 'fan filter units',
      role: 'fan filter unit',
      of,
      shape: {
        shape: 'box',
        centre: toSpace(axes, (r.u0 + r.u1) / 2, (r.v0 + r.v1) / 2, frameTop + unit.size[2] / 2),
        length: r.u1 - r.u0,
        width: r.v1 - r.v0,
        height: unit.size[2],
        turn: axes.turn,
      },
      count: 1,
      mass: unit.mass,
      placed: {
        rule: 'compose.enclosure.fan-filter-unit',
        because: 'Fan filter units lie over the middle of the work, on cross beams, as many as flow and coverage need.',
      },
    }),
  );
}

function roofPanels(of: string, axes: Axes, sheet: Sheet, roof: RoofLayout, frameTop: number): PartDraft[] {
  const most = Math.max(...sheet.sheetSize);
  const split = (r: Rect): Rect[] => {
    const pieces = Math.ceil((r.v1 - r.v0) / most - 1e-9);
    const step = (r.v1 - r.v0) / pieces;
    return Array.from({ length: pieces }, (_, i) => ({ ...r, v0: r.v0 + i * step, v1: r.v0 + (i + 1) * step }));
  };
  return roof.panels.flatMap(split).map((r): PartDraft => {
    const a = r.u1 - r.u0;
    const b = r.v1 - r.v0;
    return {
      item: sheet.id,
      group: 'panels',
      role: 'roof panel',
      of,
      shape: {
        shape: 'plate',
        corners: [
          toSpace(axes, r.u0, r.v0, frameTop),
          toSpace(axes, r.u1, r.v0, frameTop),
          toSpace(axes, r.u1, r.v1, frameTop),
          toSpace(axes, r.u0, r.v1, frameTop),
        ],
        thickness: sheet.thickness,
      },
      count: 1,
      length: Math.max(a, b),
      width: Math.min(a, b),
      thickness: sheet.thickness,
      mass: a * b * sheet.massPerArea,
      placed: { rule: 'compose.enclosure.roof-panel', because: 'Panels close the roof where no fan filter unit lies.' },
    };
  });
}

function lightParts(of: string, axes: Axes, items: Items, clearHeight: number): PartDraft[] {
  const { light, lightCount } = items;
  if (!light || lightCount === 0) return [];
  const rows = lightCount > 1 ? 2 : 1;
  const perRow = Math.ceil(lightCount / rows);
  const v = axes.width / 2 - 0.12;
  return Array.from({ length: lightCount }, (_, i): PartDraft => {
    const row = i % rows;
    const n = Math.floor(i / rows);
    const u = -axes.length / 2 + (axes.length * (n + 0.5)) / perRow;
    return {
      item: light.id,
      group: 'lights',
      role: 'light',
      of,
      shape: {
        shape: 'box',
        centre: toSpace(axes, u, rows === 1 ? 0 : row === 0 ? -v : v, clearHeight - 0.02),
        length: light.length,
        width: 0.04,
        height: 0.03,
        turn: axes.turn,
      },
      count: 1,
      mass: light.mass,
      placed: {
        rule: 'compose.enclosure.light',
        because: 'Light strips run under the roof along both long sides, out of the way of the clean air.',
      },
    };
  });
}

/**
 * A framed enclosure with roof round one or several tables.
 *
 *     1 own axes from tables and gaps   2 items   3 units and roof   4 what hangs on the sides   5 profile by its roof loads
 *     6 members   7 panels, lights, hardware   8 marks, masses, barriers
 * It never touches the table: the gap is kept to frame and closures alike.
 */
export function composeEnclosure(
  enclosure: CompleteEnclosure,
  index: number,
  context: Context,
): Outcome<ComposedEnclosure> {
  const { catalogue, rules, brief } = context;
  const path = ['layout', 'enclosures', index];
  const tables = enclosure.around.map((id) => context.tables.find((t) => t.id === id)!);
  const axes = axesOf(tables, enclosure.gaps);
  const highest = Math.max(...tables.map((t) => t.height));
  if (enclosure.clearHeight <= highest + 0.2)
    return refuse([
      problem(
        'compose/enclosure-too-low',
        [...path, 'clearHeight'],
        `The clear height of ${enclosure.id} leaves less than 200 mm over the table top.`,
        'Make clearHeight larger, or leave it out.',
      ),
    ]);
  const items = chooseItems(enclosure, index, context);
  if (!items.ok) return items;
  // Not chosen yet: the narrowest profile bears least, so that the units fit on whichever is taken.
  const narrowest = Math.min(...itemsOf<Profile>(catalogue, 'profile').map((p) => p.size[0]));
  const asked = enclosure.profile ? catalogue.byId.get(enclosure.profile) : undefined;
  const units = chooseUnits(
    brief,
    enclosure,
    index,
    axes,
    asked?.kind === 'profile' ? asked.size[0] : narrowest,
    catalogue,
    rules,
  );
  if (!units.ok) return units;
  const hanging = hangSides(enclosure, index, axes, items.value, context);
  if (!hanging.ok) return hanging;
  const roofOf = (profile: Profile) =>
    layRoof({
      length: axes.length,
      width: axes.width,
      beamWidth: profile.size[0],
      unit: units.value.size,
      count: units.value.count,
    });
  const hung = hungMass(axes, hanging.value.curtains, hanging.value.strips);
  const rigidSides = sideLines(axes)
    .map((l) => l.name)
    .filter((n) => enclosure.sides[n].closure === 'rigid panel');
  const framed = (profile: Profile, roof: RoofLayout, footHeight: number) =>
    frameMembers({
      of: enclosure.id,
      axes,
      profile,
      clearHeight: enclosure.clearHeight,
      footHeight,
      hemGap: enclosure.hemGap,
      postSpacing: ruleNumber(rules, 'frame.post-spacing'),
      crossBeams: roof.beams,
      rigidSides,
      panelWidth,
    });
  const loadsFor = (profile: Profile): BeamLoad[] => {
    const roof = roofOf(profile);
    const bays = loadedBays(axes, framed(profile, roof, 0).bays, hung);
    return roofLoads({
      length: axes.length,
      width: axes.width,
      profile,
      crossBeams: roof.beams,
      units: roof.units,
      unitMass: (units.value.unit?.mass ?? 0) + ruleNumber(rules, 'frame.unit-filter-loading'),
      panels: roof.panels,
      panelMassPerArea: items.value.roofSheet.massPerArea,
      ...bays,
    });
  };
  const choice = chooseProfile(enclosure.profile, [...path, 'profile'], catalogue, rules, loadsFor);
  if (!choice.ok) return choice;
  const { profile } = choice.value;
  const loads = loadsFor(profile);
  const roof = roofOf(profile);
  const posts = framed(profile, roof, 0).posts.length;
  const foot = chooseFoot(
    enclosure,
    [...path, 'feet'],
    profile,
    roofMass(loads) + hangingMass(hanging.value),
    posts,
    catalogue,
    rules,
  );
  if (!foot.ok) return foot;
  return ok(
    assemble({
      enclosure,
      axes,
      tables,
      items: items.value,
      units: units.value,
      hanging: hanging.value,
      profile,
      roof,
      foot: foot.value.foot,
      members: framed(profile, roof, foot.value.foot.height),
      loads,
      tries: [...units.value.tries, ...choice.value.tries, ...foot.value.tries],
      catalogue,
    }),
  );
}

const hungMass = (
  axes: Axes,
  curtains: ReadonlyMap<SideName, StraightCurtain>,
  strips: ReadonlyMap<SideName, readonly PartDraft[]>,
): ReadonlyMap<SideName, number> => {
  const length = (name: SideName) => 2 * sideLines(axes).find((l) => l.name === name)!.half;
  return new Map([
    ...[...curtains].map(([name, c]) => [name, c.mass / length(name)] as const),
    ...[...strips].map(([name, s]) => [name, s.reduce((sum, p) => sum + p.mass, 0) / length(name)] as const),
  ]);
};

interface Hanging {
  readonly curtains: ReadonlyMap<SideName, StraightCurtain>;
  readonly strips: ReadonlyMap<SideName, readonly PartDraft[]>;
}

const hangingMass = ({ curtains, strips }: Hanging): number =>
  [...curtains.values()].reduce((sum, c) => sum + c.mass, 0) +
  [...strips.values()].flat().reduce((sum, p) => sum + p.mass, 0);

/** Mass on all roof beams, their own included [kg]; cross beams rest on the long ones and are counted there. */
const roofMass = (loads: readonly BeamLoad[]): number =>
  loads
    .filter((l) => l.kind !== 'cross')
    .reduce((sum, l) => sum + l.uniform * l.span + l.points.reduce((p, { load }) => p + load, 0), 0) / standardGravity;

interface Assembly {
  readonly enclosure: CompleteEnclosure;
  readonly axes: Axes;
  readonly tables: readonly DesignTable[];
  readonly items: Items;
  readonly units: UnitChoice;
  readonly hanging: Hanging;
  readonly profile: Profile;
  readonly roof: RoofLayout;
  readonly foot: Foot;
  readonly members: FrameMembers;
  readonly loads: readonly BeamLoad[];
  readonly tries: DesignEnclosure['tries'];
  readonly catalogue: Catalogue;
}

/** Places everything that the choices above named, and sums it up. */
function assemble({
  enclosure,
  axes,
  tables,
  items,
  units,
  hanging,
  profile,
  roof,
  foot,
  members,
  loads,
  tries,
  catalogue,
}: Assembly): ComposedEnclosure {
  const of = enclosure.id;
  const [w, h] = profile.size;
  const frameTop = enclosure.clearHeight + h;
  const rigid = sideLines(axes).flatMap(({ name }) => {
    const sheet = items.closures[name];
    if (sheet?.kind !== 'sheet') return [];
    const insert = cheapest(itemsOf<Strip>(catalogue, 'panel insert').filter((i) => i.series === profile.slot.series));
    return rigidSide({
      of,
      axes,
      profile,
      sheet,
      insert,
      bays: members.bays.filter((b) => b.side === name),
      hemGap: enclosure.hemGap,
      clearHeight: enclosure.clearHeight,
      panelWidth,
    });
  });
  const lights = lightParts(of, axes, items, enclosure.clearHeight);
  const fans = unitParts(of, axes, units, roof, frameTop);
  const corner = toSpace(axes, -axes.length / 2, -axes.width / 2, frameTop);
  const cableRuns = [...fans, ...lights].map((p): readonly [Vec3, Vec3] => [corner, centreOf(p.shape)]);
  const drafts = [
    ...members.parts,
    ...fans,
    ...roofPanels(of, axes, items.roofSheet, roof, frameTop),
    ...rigid,
    ...[...hanging.strips.values()].flat(),
    ...lights,
    ...frameHardware({ of, axes, profile, members, foot, frameTop, catalogue, cableRuns }),
  ];
  const parts = [...finishParts(of, drafts), ...[...hanging.curtains.values()].flatMap((c) => c.parts)];
  const { mass, centre } = centreOfMass(parts);
  const sides = sideLines(axes).map((line): EnclosureSide => {
    const inside = hangingLine(axes, line.name, 0);
    return {
      name: line.name,
      closure: enclosure.sides[line.name].closure,
      item: items.closures[line.name]?.id ?? null,
      from: inside.from,
      to: inside.to,
      bottom: enclosure.hemGap,
      top: enclosure.clearHeight,
    };
  });
  const a = axes.length / 2;
  const b = axes.width / 2;
  const gaps = Object.fromEntries(
    sideLines(axes).map(({ name }) => {
      const inward = hanging.curtains.has(name)
        ? hangingPlay + (items.track?.size[0] ?? 0)
        : hanging.strips.has(name)
          ? 0.02
          : 0;
      return [name, enclosure.gaps[name] - inward];
    }),
  ) as Record<SideName, number>;
  return {
    parts,
    barriers: sides
      .filter((s) => s.item !== null)
      .map((s) => ({
        id: `${of}/${s.name}`,
        name: `${s.name} side of ${enclosure.name ?? of}`,
        of,
        item: s.item,
        from: s.from,
        to: s.to,
        bottom: s.bottom,
        top: s.top,
      })),
    enclosure: {
      id: of,
      name: enclosure.name ?? of,
      kind: enclosure.kind,
      tables: tables.map((t) => t.id),
      turn: axes.turn,
      centre: axes.centre,
      outline: ringOf(axes, -a - h, a + h, -b - w, b + w),
      inside: ringOf(axes, -a, a, -b, b),
      length: members.outside.length,
      width: members.outside.width,
      insideLength: axes.length,
      insideWidth: axes.width,
      clearHeight: enclosure.clearHeight,
      frameTop,
      top: frameTop + (units.unit && roof.units.length > 0 ? units.unit.size[2] : items.roofSheet.thickness),
      gaps,
      hemGap: enclosure.hemGap,
      sides,
      profile: profile.id,
      unit: units.unit?.id ?? null,
      unitCount: roof.units.length,
      unitAreas: roof.units.map((r) => ringOf(axes, r.u0, r.u1, r.v0, r.v1)),
      feet: foot.kind,
      footPoints: postPoints(axes, members.posts),
      roofBeams: beamsWithParts(parts, loads, profile.id),
      volume: axes.length * axes.width * enclosure.clearHeight,
      cleanArea: axes.tableLength * axes.tableWidth,
      openings: openingsOf(sides, hanging.curtains),
      mass,
      centreOfMass: centre,
      lightCount: lights.length,
      tries,
    },
  };
}

/** Roof beams by the parts they are: cross beams, long beams, end beams stand in the same order as their loads. */
function beamsWithParts(parts: readonly Part[], loads: readonly BeamLoad[], profile: string): RoofBeam[] {
  const cross = parts.filter((p) => p.role === 'cross beam');
  const perimeter = parts.filter((p) => p.role === 'beam');
  const take = { cross: [...cross], beam: [...perimeter] };
  const matching = (load: BeamLoad): Part | undefined => {
    const list = load.kind === 'cross' ? take.cross : take.beam;
    const at = list.findIndex((p) => Math.abs((p.length ?? 0) - load.span) < 1e-6);
    return at < 0 ? undefined : list.splice(at, 1)[0];
  };
  return loads.flatMap(({ kind: _kind, index: _index, ...load }, i) => {
    const part = matching(loads[i]!);
    return part ? [{ ...load, part: part.id, mark: part.mark ?? part.id, profile }] : [];
  });
}

/** Open areas: hem gaps, slits at the ends of curtains, open sides. */
function openingsOf(
  sides: readonly EnclosureSide[],
  curtains: ReadonlyMap<SideName, StraightCurtain>,
): DesignEnclosure['openings'] {
  return sides.flatMap((side) => {
    const length = Math.hypot(side.to[0] - side.from[0], side.to[1] - side.from[1]);
    if (side.closure === 'open') return [{ what: `open ${side.name} side`, area: length * side.top }];
    const hem = { what: `gap under the ${side.name} side`, area: length * side.bottom };
    const slits = curtains.has(side.name)
      ? [{ what: `slits at the ends of the ${side.name} curtain`, area: 2 * curtainEndSlit * (side.top - side.bottom) }]
      : [];
    return [...(hem.area > 0 ? [hem] : []), ...slits];
  });
}
