import { numberText } from '@cloche/engine';
import type { Design, Vec2, Vec3 } from '../engine/contract.js';
import { unspoken } from './unspoken.js';
import { type PlanView, type Size, toScreen } from './view.js';

interface Drawn {
  readonly design: Design;
  readonly view: PlanView;
  readonly size: Size;
}

/** Writing on the plan, in screen pixels so that it stays readable at every scale. */
export function Labels({ design, view, size }: Drawn) {
  return (
    <g className="labels" {...unspoken}>
      {design.tables.map((table) => {
        const corners = table.outline.map((p) => toScreen(view, size, p));
        const wide = extent(corners, 0) > table.name.length * letterWidth;
        const x = (Math.min(...corners.map((p) => p[0])) + Math.max(...corners.map((p) => p[0]))) / 2;
        const y = Math.max(...corners.map((p) => p[1])) + 15;
        return (
          <text key={table.id} x={x} y={y} className="name" textAnchor="middle">
            {wide ? table.name : table.id}
          </text>
        );
      })}
      {design.enclosures.map((enclosure) => (
        <NameAt
          key={enclosure.id}
          name={enclosure.name}
          at={topLeft(enclosure.outline.map((p) => toScreen(view, size, p)))}
        />
      ))}
      {design.runs.map((run) => (
        <RunName key={run.id} name={run.name} line={run.line.map((p) => toScreen(view, size, p))} />
      ))}
      {design.lasers.flatMap((laser) =>
        laser.legs.map((leg) => (
          <BeamArrow
            key={`${laser.id} ${leg.from} ${leg.to}`}
            from={screenOf(leg.from)}
            to={screenOf(leg.to)}
            text={`${numberText(laser.wavelength * 1e9)} nm`}
          />
        )),
      )}
      {overheads(design).map(({ id, at, letter }) => {
        const [x, y] = toScreen(view, size, at);
        return (
          <g key={id} className="overhead">
            <circle cx={x} cy={y} r={7} />
            <text x={x} y={y + 4} textAnchor="middle">
              {letter}
            </text>
          </g>
        );
      })}
    </g>
  );

  function screenOf(p: Vec3): Vec2 {
    return toScreen(view, size, [p[0], p[1]]);
  }
}

/** Mean width of a letter of 13 pixels, with some room. */
const letterWidth = 7.5;

const extent = (points: readonly Vec2[], k: 0 | 1): number =>
  Math.max(...points.map((p) => p[k])) - Math.min(...points.map((p) => p[k]));

const topLeft = (points: readonly Vec2[]): Vec2 => [
  Math.min(...points.map((p) => p[0])),
  Math.min(...points.map((p) => p[1])) - 6,
];

function NameAt({ name, at }: { readonly name: string; readonly at: Vec2 }) {
  return (
    <text x={at[0]} y={at[1]} className="name">
      {name}
    </text>
  );
}

/** Readable from below or from the right, never upside down. */
const upright = (angle: number): number => (angle > 90 || angle <= -90 ? angle + 180 : angle);

function RunName({ name, line }: { readonly name: string; readonly line: readonly Vec2[] }) {
  const [a, b] = longest(line);
  if (!a || !b) return null;
  const angle = upright((Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI);
  return (
    <text
      className="name"
      textAnchor="middle"
      transform={`translate(${(a[0] + b[0]) / 2} ${(a[1] + b[1]) / 2}) rotate(${angle}) translate(0 -9)`}
    >
      {name}
    </text>
  );
}

function longest(line: readonly Vec2[]): readonly [Vec2?, Vec2?] {
  let best: readonly [Vec2?, Vec2?] = [];
  let most = 0;
  for (let i = 0; i + 1 < line.length; i++) {
    const [a, b] = [line[i]!, line[i + 1]!];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length > most) {
      most = length;
      best = [a, b];
    }
  }
  return best;
}

function BeamArrow({ from, to, text }: { readonly from: Vec2; readonly to: Vec2; readonly text: string }) {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  return (
    <g className="beam-label">
      {length > 12 && <path transform={`translate(${to[0]} ${to[1]}) rotate(${angle})`} d="M0 0L-11 -3.2L-11 3.2Z" />}
      {length > 60 && (
        <text
          textAnchor="middle"
          transform={`translate(${(from[0] + to[0]) / 2} ${(from[1] + to[1]) / 2}) rotate(${upright(angle)}) translate(0 -5)`}
        >
          {text}
        </text>
      )}
    </g>
  );
}

/** Things at points: a letter in a ring, as the legend of the printed sheet has them. */
function overheads(design: Design): { readonly id: string; readonly at: Vec2; readonly letter: string }[] {
  const { room } = design;
  const flat = ([x, y]: Vec3): Vec2 => [x, y];
  return [
    ...room.sprinklers.map(({ id, at }) => ({ id, at, letter: 'S' })),
    ...room.detectors.map(({ id, at }) => ({ id, at, letter: 'D' })),
    ...room.exitSigns.map(({ id, at }) => ({ id, at, letter: 'E' })),
    ...design.devices.map((device) => ({ id: device.id, at: flat(device.at), letter: deviceLetter[device.kind] })),
  ];
}

const deviceLetter = { sign: 'W', stop: 'X', interlock: 'I', sensor: 'P' } as const;
