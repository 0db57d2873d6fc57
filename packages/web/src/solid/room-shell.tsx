import { at3 } from '@cloche/engine';
import { useMemo } from 'react';
import { DoubleSide } from 'three';
import type { Design, DesignDoor, Vec2 } from '../engine/contract.js';
import { type Drawn, FineLines, useGeometry } from './bodies.js';
import { faceGeometry, floorGeometry, type Stretch } from './geometry.js';
import type { WallBlock } from './walls.js';

type Room = Design['room'];

interface RoomShellProps extends Drawn {
  readonly room: Room;
  readonly walls: readonly WallBlock[];
  readonly ceiling: boolean;
}

/** Floor and walls: walls only seen from inside, so that they never hide the room. */
export function RoomShell({ room, walls, ceiling, ink, planes }: RoomShellProps) {
  const faces = useGeometry(() => faceGeometry(walls.map((w) => w.face)), [walls]);
  const floor = useGeometry(() => floorGeometry(room.outline), [room.outline]);
  const lines = useMemo(() => shellLines(room), [room]);
  const clipped = [...planes];
  return (
    <>
      <mesh geometry={faces}>
        <meshBasicMaterial color={ink.wall} transparent opacity={0.5} depthWrite={false} clippingPlanes={clipped} />
      </mesh>
      <mesh geometry={floor}>
        <meshBasicMaterial
          color={ink.wall}
          side={DoubleSide}
          transparent
          opacity={0.3}
          depthWrite={false}
          clippingPlanes={clipped}
        />
      </mesh>
      {ceiling && (
        <mesh geometry={floor} position={[0, 0, room.height]} rotation={[0, 0, 0]}>
          <meshBasicMaterial
            color={ink.wall}
            side={DoubleSide}
            transparent
            opacity={0.45}
            depthWrite={false}
            clippingPlanes={clipped}
          />
        </mesh>
      )}
      <FineLines stretches={lines} color={ink.second} ink={ink} planes={planes} />
    </>
  );
}

/** Edges of the room and its openings, and the swing of its doors on the floor. */
function shellLines({ outline, height, doors, windows }: Room): readonly Stretch[] {
  const edges = outline.flatMap((a, i): Stretch[] => {
    const b = outline[(i + 1) % outline.length]!;
    return [
      [at3(a, 0), at3(b, 0)],
      [at3(a, height), at3(b, height)],
      [at3(a, 0), at3(a, height)],
    ];
  });
  const openings = [...doors, ...windows].flatMap(({ from, to, bottom, top }): Stretch[] => [
    [at3(from, bottom), at3(from, top)],
    [at3(to, bottom), at3(to, top)],
    [at3(from, top), at3(to, top)],
    [at3(from, bottom), at3(to, bottom)],
  ]);
  return [...edges, ...openings, ...doors.flatMap(swingOf)];
}

/** Chords of the arc that each leaf passes over. */
function swingOf({ leaves, bottom }: DesignDoor): readonly Stretch[] {
  const chords = 18;
  return leaves.flatMap(({ hinge, leaf, closed, open }) => {
    const on = (k: number): Vec2 => {
      const angle = closed + ((open - closed) * k) / chords;
      return [hinge[0] + leaf * Math.cos(angle), hinge[1] + leaf * Math.sin(angle)];
    };
    return Array.from({ length: chords }, (_, k): Stretch => [at3(on(k), bottom), at3(on(k + 1), bottom)]);
  });
}
