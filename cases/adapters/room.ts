import {
  discPasses,
  narrowestWay,
  type Outcome,
  offsetArea,
  type Ring,
  type RoundObstacle,
  seenInterval,
  seenThroughGap,
  stripSourceWidths,
  swingArea,
  swingHolds,
  type Vec2,
  type WayRequest,
  type WorkingSpaceCondition,
  workingSpace,
} from '@cloche/engine';
import { type Adapters, type Given, Unsupported } from '../adapter.js';

const degree = Math.PI / 180;

function computed<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Unsupported(outcome.problems.map((p) => p.message).join(' '));
  return outcome.value;
}

const list = <T>(given: Given, name: string): readonly T[] => {
  const value = given.any(name) ?? [];
  if (!Array.isArray(value)) throw new Unsupported(`field ${name} is no list`);
  return value as T[];
};

const point = (given: Given, name: string): Vec2 => {
  const [x, y] = given.numbers(name);
  if (x === undefined || y === undefined) throw new Unsupported(`field ${name} is no point`);
  return [x, y];
};

function wayRequest(given: Given): WayRequest {
  const columns = list<{ x_m: number; y_m: number; radius_m: number }>(given, 'columns');
  return {
    room: list<Vec2>(given, 'room_m'),
    obstacles: list<Ring>(given, 'obstacles_m').map((outline, i) => ({ id: `obstacle ${i + 1}`, outline })),
    columns: columns.map(
      (c, i): RoundObstacle => ({ id: `column ${i + 1}`, centre: [c.x_m, c.y_m], radius: c.radius_m }),
    ),
    starts: [point(given, 'start_m')],
    goals: [point(given, 'goal_m')],
  };
}

function offset(given: Given) {
  given.ignore('meaning');
  if ((given.optionalText('join') ?? 'round') !== 'round') throw new Unsupported('only round corners are computed');
  const outline = list<Vec2>(given, 'polygon_m');
  return { area_m2: offsetArea(outline, list<Ring>(given, 'holes_m'), given.number('offset_m')) };
}

function sight(given: Given) {
  if (given.has('source_width_m')) {
    const widths = computed(
      stripSourceWidths({
        sourceWidth: given.number('source_width_m'),
        sourceToGap: given.number('distance_source_to_gap_m'),
        gapWidth: given.number('gap_width_m'),
        gapToScreen: given.number('distance_gap_to_screen_m'),
      }),
    );
    return { width_reached_by_any_source_point_m: widths.some, width_seen_by_every_source_point_m: widths.every };
  }
  const [low, high] = point(given, 'gap_y_m');
  const gap = { source: point(given, 'source_m'), barrierX: given.number('barrier_x_m'), gap: [low, high] as const };
  const points = list<Vec2>(given, 'points_m');
  const screen = given.optionalNumber('screen_x_m');
  return {
    ...(screen === undefined ? {} : { lit_interval_y_m: computed(seenInterval(gap, screen)) }),
    visible: points.map((p) => seenThroughGap(gap, p)),
  };
}

function door(given: Given) {
  const sector = {
    hinge: point(given, 'hinge_m'),
    leaf: given.number('leaf_width_m'),
    from: given.number('from_deg') * degree,
    to: given.number('to_deg') * degree,
  };
  const points = list<Vec2>(given, 'points_m');
  return { sector_area_m2: computed(swingArea(sector)), inside: points.map((p) => swingHolds(sector, p)) };
}

function board(given: Given) {
  const condition = given.text('condition');
  if (!/^[ABC]$/.test(condition)) throw new Unsupported(`condition ${condition} is not in the table`);
  const space = computed(workingSpace(given.number('volts_to_ground'), condition as WorkingSpaceCondition));
  return { min_depth_ft: space.depthFeet, min_depth_m: space.depth };
}

export const roomAdapters: Adapters = {
  'narrowest walkway': (given) => ({ bottleneck_width_m: computed(narrowestWay(wayRequest(given))).width }),
  'disc path existence': (given) => ({
    path_exists: computed(discPasses(wayRequest(given), given.number('disc_diameter_m'))),
  }),
  'offset area': offset,
  'visibility through a gap': sight,
  'door swing sector': door,
  'electrical working space': board,
};
