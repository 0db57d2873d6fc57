import type { CompleteEnclosure } from '../brief/complete.js';
import type { SideName } from '../brief/schema.js';
import type { Catalogue, Foot, Profile, Strip } from '../catalogue/schema.js';
import type { Barrier, DesignEnclosure, DesignTable, EnclosureSide, Part, RoofBeam } from '../design/types.js';
import type { Vec3 } from '../floor/geometry/vec.js';
import { millimetreText } from '../floor/number-text.js';
import { type Outcome, ok, problem, refuse } from '../floor/problem.js';
import { standardGravity } from '../frame/index.js';
import { ruleNumber } from '../rules/schema.js';
import { type Axes, axesOf, ringOf, toSpace } from './axes.js';
import { chooseFoot } from './choose-foot.js';
import { chooseProfile } from './choose-profile.js';
import { chooseUnits, type UnitChoice } from './choose-units.js';
import type { StraightCurtain } from './curtain-straight.js';
import { finishParts } from './draft.js';
import { type Hanging, hangingLine, hangingMass, hangingPlay, hangSides, hungMass } from './enclosure-hanging.js';
import { chooseItems, type EnclosureContext, type EnclosureItems } from './enclosure-items.js';
import { frameHardware } from './frame-hardware.js';
import { type Bay, type FrameMembers, frameMembers, type PanelField, postPoints, sideLines } from './frame-members.js';
import { cheapest, itemsOf } from './items.js';
import { centreOf, centreOfMass } from './mass.js';
import { rigidSide } from './rigid-side.js';
import { layRoof, panelSpan, type RoofLayout } from './roof.js';
import { type BeamLoad, roofLoads } from './roof-loads.js';
import { lightParts, roofPanels, unitParts } from './roof-parts.js';

/** Slit left at each end of a curtain [m] (common practice); counted as open area. */
const curtainEndSlit = 0.005;
/** Between the hem gap and the roof a side needs this much, for a rail and a panel or a curtain [m] (common practice). */
const leastSideHeight = 0.5;
/** Largest width of a rigid panel: one person can carry it [m] (common practice). */
const panelWidth = 1.25;

export interface ComposedEnclosure {
  readonly enclosure: DesignEnclosure;
  readonly parts: readonly Part[];
  readonly barriers: readonly Barrier[];
}

/** Bays of the long sides and of the ends with what hangs on each metre, for the roof loads. */
function loadedBays(axes: Axes, bays: readonly Bay[], hung: ReadonlyMap<SideName, number>) {
  const [low, plusU, high, minusU] = axes.sideAt;
  const loaded = ({ bay, number }: { readonly bay: Bay; readonly number: number }) => ({
    bay: number,
    from: bay.from,
    to: bay.to,
    hung: hung.get(bay.side) ?? 0,
    carriesTrack: hung.has(bay.side),
  });
  const numbered = bays.map((bay, number) => ({ bay, number }));
  return {
    longBays: numbered.filter(({ bay }) => bay.side === low || bay.side === high).map(loaded),
    endBays: numbered
      .filter(({ bay }) => bay.side === plusU || bay.side === minusU)
      .map((b) => ({ ...loaded(b), sign: (b.bay.side === plusU ? 1 : -1) as 1 | -1 })),
  };
}

/** Sides with rigid panels and the largest opening that one closes: what a person carries and the sheet is large enough for, its long side upright. */
const rigidFields = ({ closures }: EnclosureItems, { slot }: Profile): ReadonlyMap<SideName, PanelField> =>
  new Map(
    Object.entries(closures).flatMap(([name, sheet]): [SideName, PanelField][] => {
      if (sheet?.kind !== 'sheet') return [];
      const opening = (side: number): number => side - 2 * slot.depth;
      const width = Math.min(panelWidth, opening(Math.min(...sheet.sheetSize)));
      return [[name as SideName, { width, height: opening(Math.max(...sheet.sheetSize)) }]];
    }),
  );

/** Mass on all roof beams, their own included [kg]; cross beams rest on the long ones and are counted there. */
const roofMass = (loads: readonly BeamLoad[]): number =>
  loads
    .filter((l) => l.kind !== 'cross')
    .reduce((sum, l) => sum + l.uniform * l.span + l.points.reduce((p, { load }) => p + load, 0), 0) / standardGravity;

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
  context: EnclosureContext,
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
  if (enclosure.clearHeight - enclosure.hemGap < leastSideHeight)
    return refuse([
      problem(
        'compose/hem-gap-too-high',
        [...path, 'hemGap'],
        `The hem gap of ${millimetreText(enclosure.hemGap)} leaves ${enclosure.id}, ${millimetreText(enclosure.clearHeight)} high, no side to close.`,
        'Make hemGap smaller, or leave it out.',
      ),
    ]);
  const items = chooseItems(enclosure, index, axes, context);
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
      panelSpan: Math.min(panelSpan, ...items.value.roofSheet.sheetSize),
    });
  const hung = hungMass(axes, hanging.value);
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
      rigidSides: rigidFields(items.value, profile),
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
      tries: [...items.value.tries, ...units.value.tries, ...choice.value.tries, ...foot.value.tries],
      catalogue,
    }),
  );
}

interface Assembly {
  readonly enclosure: CompleteEnclosure;
  readonly axes: Axes;
  readonly tables: readonly DesignTable[];
  readonly items: EnclosureItems;
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
  const fields = rigidFields(items, profile);
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
      field: fields.get(name)!,
      bays: members.bays.filter((b) => b.side === name),
      hemGap: enclosure.hemGap,
      clearHeight: enclosure.clearHeight,
    });
  });
  const lights = lightParts(of, axes, items.light, items.lightCount, enclosure.clearHeight);
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
      top: hanging.curtains.get(line.name)?.curtainTop ?? enclosure.clearHeight,
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
      openings: openingsOf(sides, hanging.curtains, enclosure.clearHeight - (items.track?.size[1] ?? 0)),
      mass,
      centreOfMass: centre,
      lightCount: lights.length,
      tries,
    },
  };
}

/** Roof beams by the parts they are: the frame has its cross beams, and the beams of its bays, in the order of their numbers. */
function beamsWithParts(parts: readonly Part[], loads: readonly BeamLoad[], profile: string): RoofBeam[] {
  const cross = parts.filter((p) => p.role === 'cross beam');
  const perimeter = parts.filter((p) => p.role === 'beam');
  return loads.map(({ kind, index, ...load }) => {
    const part = (kind === 'cross' ? cross : perimeter)[index];
    if (!part) throw new Error(`${kind} beam ${index} of the roof has a load but no part`);
    return { ...load, part: part.id, mark: part.mark ?? part.id, profile };
  });
}

/** Open areas: hem gaps, head gaps between track and curtain, slits at the ends of curtains, open sides. */
function openingsOf(
  sides: readonly EnclosureSide[],
  curtains: ReadonlyMap<SideName, StraightCurtain>,
  trackHeight: number,
): DesignEnclosure['openings'] {
  return sides.flatMap((side) => {
    const length = Math.hypot(side.to[0] - side.from[0], side.to[1] - side.from[1]);
    if (side.closure === 'open') return [{ what: `open ${side.name} side`, area: length * side.top }];
    const hem = { what: `gap under the ${side.name} side`, area: length * side.bottom };
    const slits = curtains.has(side.name)
      ? [
          { what: `gap over the ${side.name} curtain`, area: length * (trackHeight - side.top) },
          {
            what: `slits at the ends of the ${side.name} curtain`,
            area: 2 * curtainEndSlit * (side.top - side.bottom),
          },
        ]
      : [];
    return [...(hem.area > 0 ? [hem] : []), ...slits];
  });
}
