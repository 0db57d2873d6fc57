import { memo } from 'react';
import type { Design, DesignDoor, Vec2 } from '../engine/contract.js';
import { acrossWall, openingRing } from './opening-path.js';
import { arcPath, linePath, ringPath } from './path-text.js';
import { Thing } from './thing.js';
import { counterClockwise, offsetRing, wallThickness } from './wall-band.js';

type Room = Design['room'];

/** Walls hatched, their openings, and what the building put into the room. */
export const RoomLayer = memo(function RoomLayer({ room }: { readonly room: Room }) {
  const inner = counterClockwise(room.outline);
  const outer = offsetRing(inner, wallThickness);
  return (
    <g className="room">
      <path className="floor" d={ringPath(inner)} />
      <path className="wall" d={ringPath(inner) + ringPath(outer)} />
      <path className="line-cut" d={ringPath(inner)} />
      <path className="line-seen" d={ringPath(outer)} />
      {room.windows.map((window) => (
        <Thing key={window.id} id={window.id} kind="window" label={`Window ${window.name}`}>
          <path className="opening" d={openingRing(window)} />
          <path className="line-fine" d={acrossWall(window, 0.5)} />
          <path className="line-seen" d={acrossWall(window, 0.35) + acrossWall(window, 0.65)} />
        </Thing>
      ))}
      {room.boards.map((board) => (
        <Thing key={board.id} id={board.id} kind="board" label={`Board ${board.name}`}>
          <path className="line-cut" d={linePath([board.from, board.to])} />
        </Thing>
      ))}
      {room.doors.map((door) => (
        <Door key={door.id} door={door} />
      ))}
      {[...room.columns, ...room.obstructions].map((solid) => (
        <Thing key={solid.id} id={solid.id} kind="solid" label={solid.name}>
          <path
            className={room.columns.includes(solid) ? 'wall line-cut' : 'line-seen body'}
            d={ringPath(solid.outline)}
          />
        </Thing>
      ))}
      {room.beams.map((beam) => (
        <Thing key={beam.id} id={beam.id} kind="above" label={beam.name}>
          <path className="line-hidden" d={ringPath(beam.outline)} />
        </Thing>
      ))}
      {room.luminaires.map((light) => (
        <path key={light.id} className="line-hidden" d={boxPath(light.at, light.size)} />
      ))}
      {room.airTerminals.map((terminal) => (
        <path key={terminal.id} className="line-hidden" d={boxPath(terminal.at, terminal.size, true)} />
      ))}
    </g>
  );
});

function Door({ door }: { readonly door: DesignDoor }) {
  return (
    <Thing id={door.id} kind="door" label={`Door ${door.name}`}>
      <path className="opening" d={openingRing(door)} />
      {door.leaves.map((leaf) => {
        const end: Vec2 = [
          leaf.hinge[0] + leaf.leaf * Math.cos(leaf.open),
          leaf.hinge[1] + leaf.leaf * Math.sin(leaf.open),
        ];
        return (
          <g key={String(leaf.hinge)}>
            <path className="line-fine" d={arcPath(leaf.hinge, leaf.leaf, leaf.closed, leaf.open)} />
            <path className="line-edge" d={linePath([leaf.hinge, end])} />
          </g>
        );
      })}
    </Thing>
  );
}

function boxPath([x, y]: Vec2, [length, width]: Vec2, crossed = false): string {
  const [a, b]: [Vec2, Vec2] = [
    [x - length / 2, y - width / 2],
    [x + length / 2, y + width / 2],
  ];
  const ring = ringPath([a, [b[0], a[1]], b, [a[0], b[1]]]);
  return crossed
    ? `${ring}${linePath([a, b])}${linePath([
        [b[0], a[1]],
        [a[0], b[1]],
      ])}`
    : ring;
}
