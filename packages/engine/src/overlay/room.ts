import { planThings } from '../check/room-plan.js';
import { wayObstacles } from '../check/room-ways.js';
import type { DesignDoor } from '../design/types.js';
import type { Ring } from '../floor/geometry/polygon.js';
import { add2, between2, scale2, sub2, unit2, type Vec2 } from '../floor/geometry/vec.js';
import { millimetreText } from '../floor/number-text.js';
import type { OverlayMark } from '../floor/overlay.js';
import { freePieces } from '../room/index.js';
import { ruleNumber } from '../rules/schema.js';
import { findingsUnder, type Overlay, valueOf } from './overlay.js';

const widths = ['room/access/', 'room/gap/', 'room/way/', 'room/exit-way/'] as const;

export const roomWays: Overlay = {
  id: 'room/ways',
  discipline: 'room',
  title: 'Ways and free widths',
  key: 'G',
  legend: [{ style: 'pass', means: 'floor over which a person as wide as the narrowest allowed way can walk' }],
  limits:
    'Doors are taken as open, movable things as standing where they are drawn. The fire authority decides on ways out.',
  draw: (context, findings) => {
    const radius = ruleNumber(context.rules, 'way.clear-width') / 2;
    const pieces = freePieces(context.design.room.outline, wayObstacles(context), [], radius);
    return [
      ...pieces.map(
        ({ outline, holes }): OverlayMark => ({ mark: 'area', style: 'pass', outline, holes, grow: radius }),
      ),
      ...widths.flatMap((start) =>
        findingsUnder(findings, start).flatMap((f) =>
          valueOf(f, f.capacity === null ? f.verdict : millimetreText(f.capacity)),
        ),
      ),
    ];
  },
};

/** The quarter that a leaf sweeps. */
function swing({ leaves }: DesignDoor): OverlayMark[] {
  const steps = 16;
  return leaves.map(({ hinge, leaf, closed, open }) => {
    const arc = Array.from({ length: steps + 1 }, (_, i): Vec2 => {
      const angle = closed + ((open - closed) * i) / steps;
      return [hinge[0] + leaf * Math.cos(angle), hinge[1] + leaf * Math.sin(angle)];
    });
    return { mark: 'area', style: 'keep', outline: [hinge, ...arc] };
  });
}

export const roomKeepClear: Overlay = {
  id: 'room/keep-clear',
  discipline: 'room',
  title: 'What must stay clear',
  key: 'K',
  legend: [{ style: 'keep', means: 'swing of a door leaf; clear space before an electrical board' }],
  limits:
    'The space before a board is drawn about its middle; the rule lets it lie to either side. An electrician decides.',
  draw: ({ design, rules }, findings) => [
    ...design.room.doors.flatMap(swing),
    ...design.room.boards.map((board): OverlayMark => {
      const need = findings.get(`room/board/${board.id}`)?.demand ?? ruleNumber(rules, 'electric.board-depth');
      const half = Math.max(ruleNumber(rules, 'electric.board-width'), board.width) / 2;
      return { mark: 'area', style: 'keep', outline: boxBefore(board.from, board.to, board.inward, half, need) };
    }),
    ...[...findingsUnder(findings, 'room/board/'), ...findingsUnder(findings, 'room/door-width/')].flatMap((f) =>
      valueOf(f, f.capacity === null ? f.verdict : millimetreText(f.capacity)),
    ),
  ],
};

function boxBefore(from: Vec2, to: Vec2, inward: Vec2, half: number, depth: number): Ring {
  const middle = between2(from, to, 0.5);
  const along = scale2(unit2(sub2(to, from)), half);
  const [a, b] = [sub2(middle, along), add2(middle, along)];
  return [a, b, add2(b, scale2(inward, depth)), add2(a, scale2(inward, depth))];
}

export const roomHeights: Overlay = {
  id: 'room/heights',
  discipline: 'room',
  title: 'Heights',
  key: 'H',
  legend: [
    { style: 'part', means: 'underside over a way, or top of what stands, above the floor' },
    { style: 'keep', means: 'sprinkler and its deflector' },
  ],
  limits: 'Whether spray still reaches what it must is judged by the fire authority.',
  draw: ({ design }) => [
    ...planThings(design)
      .filter((t) => !t.line)
      .flatMap((t): OverlayMark[] => [
        { mark: 'area', style: 'part', outline: t.points },
        {
          mark: 'value',
          at: middleOf(t.points),
          text: `${t.bottom > 0 ? `${millimetreText(t.bottom)} to ` : ''}${millimetreText(t.top)}`,
        },
      ]),
    ...design.room.beams.flatMap((b): OverlayMark[] => [
      { mark: 'area', style: 'part', outline: b.outline },
      { mark: 'value', at: middleOf(b.outline), text: `under ${millimetreText(b.bottom)}` },
    ]),
    ...design.room.sprinklers.flatMap((s): OverlayMark[] => [
      { mark: 'circle', style: 'keep', centre: s.at, radius: 0.12 },
      { mark: 'value', at: s.at, text: millimetreText(s.deflector) },
    ]),
  ],
};

const middleOf = (ring: Ring): Vec2 => [
  (Math.min(...ring.map((p) => p[0])) + Math.max(...ring.map((p) => p[0]))) / 2,
  (Math.min(...ring.map((p) => p[1])) + Math.max(...ring.map((p) => p[1]))) / 2,
];
