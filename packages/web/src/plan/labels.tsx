import { memo, useMemo } from 'react';
import { useSizes } from '../arrange/dimension-inputs.js';
import { sizeBox } from '../arrange/size-place.js';
import type { SizeLine } from '../arrange/sizes.js';
import type { Computed, Design, Vec2 } from '../engine/contract.js';
import { boxOf } from './card-corner.js';
import { type Clearance, distanceBox, middleOf } from './clearances.js';
import { findingSpots } from './finding-spots.js';
import { useDistances } from './place-inputs.js';
import { type PlacedLabel, placeLabels } from './place-labels.js';
import { planLabels, planLines } from './plan-labels.js';
import { unspoken } from './unspoken.js';
import type { Box, PlanView, Size } from './view.js';

/** Writing on the plan, in screen pixels so that it stays readable at every scale; it is placed anew only when the scale changes. */
export function Labels({
  computed,
  view,
  size,
}: {
  readonly computed: Computed;
  readonly view: PlanView;
  readonly size: Size;
}) {
  const held = useDistances(computed.design);
  const sizes = useSizes(computed.design);
  const x = size.width / 2 - view.middle[0] * view.scale;
  const y = size.height / 2 + view.middle[1] * view.scale;
  return (
    <g className="labels" transform={`translate(${x} ${y})`} {...unspoken}>
      <Written computed={computed} scale={view.scale} held={held} sizes={sizes} />
    </g>
  );
}

interface WrittenProps {
  readonly computed: Computed;
  readonly scale: number;
  /** Distances of the thing in hand, which stand on the sheet as well. */
  readonly held: readonly Clearance[];
  readonly sizes: readonly SizeLine[];
}

const Written = memo(function Written({ computed, scale, held, sizes }: WrittenProps) {
  const { design } = computed;
  const placed = useMemo(() => {
    const sheet = ([px, py]: Vec2): Vec2 => [px * scale, -py * scale];
    const marks = findingSpots(computed).map(({ at }): Box => around(sheet(at), 7));
    const typed = held.map((clearance) => distanceBox(sheet(middleOf(clearance))));
    const asScaled: PlanView = { middle: [0, 0], scale };
    const typedSizes = sizes.map((line) => sizeBox(line, asScaled, { width: 0, height: 0 }));
    const obstacles = [...marks, ...typed, ...typedSizes];
    return placeLabels(planLabels(design, sheet), obstacles, planLines(design, sheet), roundRoom(design, sheet));
  }, [computed, design, scale, held, sizes]);
  const letters = useMemo(() => lettersOf(design), [design]);
  return (
    <>
      <Arrows design={design} scale={scale} />
      {placed.map((label) => (
        <g key={label.key} data-label={label.key}>
          {label.leadsTo && <path className="leads" d={leadPath(label)} />}
          {letters.has(label.key) ? <Letter label={label} /> : <Name label={label} />}
        </g>
      ))}
    </>
  );
});

/** Names stand in the room or among its dimensions. */
const besideRoom = 60;

function roundRoom({ room }: Design, sheet: (point: Vec2) => Vec2): Box {
  const { min, max } = boxOf(room.outline.map(sheet));
  return { min: [min[0] - besideRoom, min[1] - besideRoom], max: [max[0] + besideRoom, max[1] + besideRoom] };
}

const around = ([x, y]: Vec2, r: number): Box => ({ min: [x - r, y - r], max: [x + r, y + r] });

const lettersOf = ({ room, devices }: Design): ReadonlySet<string> =>
  new Set([...room.sprinklers, ...room.detectors, ...room.exitSigns, ...devices].map((thing) => thing.id));

function Letter({ label }: { readonly label: PlacedLabel }) {
  const [x, y] = label.at;
  return (
    <g className="overhead">
      <circle cx={x} cy={y} r={7} />
      <text x={x} y={y + 4} textAnchor="middle">
        {label.text}
      </text>
    </g>
  );
}

function Name({ label: { at, angle = 0, text } }: { readonly label: PlacedLabel }) {
  const lines = text.split('\n');
  return (
    <text
      className="name"
      textAnchor="middle"
      transform={`translate(${at[0]} ${at[1]}) rotate(${angle}) translate(0 4.5)`}
    >
      {lines.length === 1
        ? text
        : lines.map((line, i) => (
            <tspan key={line} x={0} y={(i - (lines.length - 1) / 2) * 15}>
              {line}
            </tspan>
          ))}
    </text>
  );
}

/** From the edge of the writing nearest to its thing. */
function leadPath({ box, leadsTo }: PlacedLabel): string {
  if (!leadsTo) return '';
  const [x, y] = leadsTo;
  const near = (k: 0 | 1) => Math.min(box.max[k], Math.max(box.min[k], leadsTo[k]));
  return `M${near(0)} ${near(1)}L${x} ${y}`;
}

/** Heads of the arrows at the ends of the legs of every beam. */
function Arrows({ design, scale }: { readonly design: Design; readonly scale: number }) {
  return design.lasers.flatMap((laser) =>
    laser.legs.map((leg) => {
      const [dx, dy] = [(leg.to[0] - leg.from[0]) * scale, -(leg.to[1] - leg.from[1]) * scale];
      if (Math.hypot(dx, dy) < 12) return null;
      const angle = (Math.atan2(dy, dx) * 180) / Math.PI;
      return (
        <path
          key={`${laser.id} ${leg.from} ${leg.to}`}
          className="arrow"
          transform={`translate(${leg.to[0] * scale} ${-leg.to[1] * scale}) rotate(${angle})`}
          d="M0 0L-11 -3.2L-11 3.2Z"
        />
      );
    }),
  );
}
