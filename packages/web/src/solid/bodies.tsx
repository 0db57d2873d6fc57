import { type ThreeEvent, useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { BackSide, BoxGeometry, type BufferGeometry, DoubleSide, type InstancedMesh } from 'three';
import type { Design, Part, Vec3 } from '../engine/contract.js';
import { select, useWorkbench } from '../state/store.js';
import type { SolidBox } from './boxes.js';
import {
  clothGeometry,
  edgeGeometry,
  floorGeometry,
  lineGeometry,
  matrixOf,
  plateEdges,
  plateGeometry,
  wallGeometry,
} from './geometry.js';
import type { Ink } from './ink.js';

export interface Body {
  readonly id: string;
  readonly part: string;
  readonly box: SolidBox;
}

interface BoxesProps {
  readonly bodies: readonly Body[];
  readonly fill: string;
  readonly line: string;
  readonly accent: string;
}

const cube = new BoxGeometry(1, 1, 1);

/** A geometry that is given back when another takes its place. */
function useGeometry(make: () => BufferGeometry, needs: readonly unknown[]): BufferGeometry {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the caller names what the geometry is made from
  const geometry = useMemo(make, needs);
  const invalidate = useThree((s) => s.invalidate);
  useEffect(() => {
    invalidate();
    return () => geometry.dispose();
  }, [geometry, invalidate]);
  return geometry;
}

/** Many boxes in one draw, with their edges; the thing in hand and pointed parts stand out in the accent. */
export function Boxes({ bodies, fill, line, accent }: BoxesProps) {
  const mesh = useRef<InstancedMesh>(null);
  const selected = useWorkbench((s) => s.selected);
  const pointed = useWorkbench((s) => s.pointedParts);
  const edges = useGeometry(() => edgeGeometry(bodies.map((b) => b.box)), [bodies]);
  const marked = useMemo(
    () => bodies.filter((b) => b.id === selected || pointed.has(b.part)).map((b) => b.box),
    [bodies, selected, pointed],
  );
  const markedEdges = useGeometry(() => edgeGeometry(marked), [marked]);
  useLayoutEffect(() => {
    bodies.forEach((body, i) => {
      mesh.current?.setMatrixAt(i, matrixOf(body.box));
    });
    if (mesh.current) {
      mesh.current.instanceMatrix.needsUpdate = true;
      mesh.current.computeBoundingSphere();
    }
  }, [bodies]);
  if (bodies.length === 0) return null;
  const onClick = (event: ThreeEvent<MouseEvent>) => {
    event.stopPropagation();
    const body = event.instanceId === undefined ? undefined : bodies[event.instanceId];
    if (body && event.delta < 4) select(body.id);
  };
  return (
    <>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a body in space; the plan has the same by keyboard */}
      <instancedMesh key={bodies.length} ref={mesh} args={[cube, undefined, bodies.length]} onClick={onClick}>
        <meshLambertMaterial color={fill} polygonOffset polygonOffsetFactor={1} polygonOffsetUnits={1} />
      </instancedMesh>
      <lineSegments geometry={edges}>
        <lineBasicMaterial color={line} transparent opacity={0.75} />
      </lineSegments>
      <lineSegments geometry={markedEdges} renderOrder={2}>
        <lineBasicMaterial color={accent} depthTest={false} />
      </lineSegments>
    </>
  );
}

export function Plates({ parts, ink }: { readonly parts: readonly Part[]; readonly ink: Ink }) {
  const faces = useGeometry(() => plateGeometry(parts), [parts]);
  const edges = useGeometry(() => plateEdges(parts), [parts]);
  return (
    <>
      <mesh geometry={faces}>
        <meshLambertMaterial color={ink.plate} transparent opacity={0.25} side={DoubleSide} depthWrite={false} />
      </mesh>
      <lineSegments geometry={edges}>
        <lineBasicMaterial color={ink.ink} transparent opacity={0.6} />
      </lineSegments>
    </>
  );
}

export function Cloth({ parts, ink }: { readonly parts: readonly Part[]; readonly ink: Ink }) {
  const cloth = useGeometry(() => clothGeometry(parts), [parts]);
  return (
    <mesh geometry={cloth}>
      <meshLambertMaterial color={ink.cloth} transparent opacity={0.55} side={DoubleSide} depthWrite={false} />
    </mesh>
  );
}

export function Beams({ design, ink }: { readonly design: Design; readonly ink: Ink }) {
  const lines = useGeometry(
    () => lineGeometry(design.lasers.flatMap((laser) => laser.legs.map((leg) => [leg.from, leg.to] as const))),
    [design.lasers],
  );
  return (
    <lineSegments geometry={lines}>
      <lineBasicMaterial color={ink.accent} />
    </lineSegments>
  );
}

/** Floor and walls: walls only seen from inside, so that they never hide the room. */
export function RoomShell({ design, ink }: { readonly design: Design; readonly ink: Ink }) {
  const { outline, height, doors, windows } = design.room;
  const walls = useGeometry(() => wallGeometry(outline, height), [outline, height]);
  const floor = useGeometry(() => floorGeometry(outline), [outline]);
  const edges = useGeometry(
    () =>
      lineGeometry([
        ...outline.flatMap((a, i) => {
          const b = outline[(i + 1) % outline.length]!;
          return [[at(a, 0), at(b, 0)] as const, [at(a, 0), at(a, height)] as const];
        }),
        ...[...doors, ...windows].flatMap(({ from, to, bottom, top }) => [
          [at(from, bottom), at(from, top)] as const,
          [at(to, bottom), at(to, top)] as const,
          [at(from, top), at(to, top)] as const,
          [at(from, bottom), at(to, bottom)] as const,
        ]),
      ]),
    [outline, height, doors, windows],
  );
  return (
    <>
      <mesh geometry={walls}>
        <meshBasicMaterial color={ink.wall} side={BackSide} transparent opacity={0.5} depthWrite={false} />
      </mesh>
      <mesh geometry={floor}>
        <meshBasicMaterial color={ink.wall} side={DoubleSide} transparent opacity={0.3} depthWrite={false} />
      </mesh>
      <lineSegments geometry={edges}>
        <lineBasicMaterial color={ink.second} />
      </lineSegments>
    </>
  );
}

const at = (p: readonly [number, number], z: number): Vec3 => [p[0], p[1], z];
