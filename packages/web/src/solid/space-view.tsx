import { Canvas } from '@react-three/fiber';
import { useMemo, useState } from 'react';
import type { Design } from '../engine/contract.js';
import { select } from '../state/store.js';
import { texts } from '../texts.js';
import { Beams, Boxes, Cloth, Plates, RoomShell } from './bodies.js';
import { boxesOf, boxOver } from './boxes.js';
import { useInk } from './ink.js';
import { Turning } from './turning.js';

/** The same design in space: paper-white bodies with ink edges, like a drawing that can be turned. */
export default function SpaceView({ design }: { readonly design: Design }) {
  const ink = useInk();
  const [drawable] = useState(canDraw);
  const middle = useMemo(() => middleOf(design), [design]);
  const furniture = useMemo(() => furnitureOf(design), [design]);
  const made = useMemo(
    () => design.parts.flatMap((part) => boxesOf(part.shape).map((box) => ({ id: part.of, part: part.id, box }))),
    [design.parts],
  );
  if (!drawable) return <p className="waiting">{texts.space.noCanvas}</p>;
  const reach = Math.max(middle.size, 3);
  return (
    <div className="space" role="img" aria-label={texts.space.label}>
      <Canvas
        frameloop="demand"
        dpr={[1, 2]}
        camera={{
          up: [0, 0, 1],
          position: [middle.at[0] + reach * 0.7, middle.at[1] - reach * 1.5, reach * 1.15],
          fov: 35,
          near: 0.05,
          far: 200,
        }}
        onPointerMissed={() => select(null)}
      >
        <color attach="background" args={[ink.paper]} />
        <hemisphereLight args={[0xffffff, 0xc8c8c2, ink.dark ? 2.2 : 2.9]} />
        <directionalLight position={[4, -6, 10]} intensity={ink.dark ? 0.8 : 0.5} />
        <RoomShell design={design} ink={ink} />
        <Boxes bodies={furniture} fill={ink.body} line={ink.ink} accent={ink.accent} />
        <Boxes bodies={made} fill={ink.body} line={ink.ink} accent={ink.accent} />
        <Plates parts={design.parts} ink={ink} />
        <Cloth parts={design.parts} ink={ink} />
        <Beams design={design} ink={ink} />
        <Turning target={[middle.at[0], middle.at[1], 1]} />
      </Canvas>
    </div>
  );
}

function canDraw(): boolean {
  return document.createElement('canvas').getContext('webgl2') !== null;
}

function middleOf(design: Design): { readonly at: readonly [number, number]; readonly size: number } {
  const xs = design.room.outline.map((p) => p[0]);
  const ys = design.room.outline.map((p) => p[1]);
  const [west, east, south, north] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return { at: [(west + east) / 2, (south + north) / 2], size: Math.max(east - west, north - south) * 1.1 };
}

/** Thickness that a table top is drawn with; tables are measured by their upper face only. */
const topThickness = 0.2;

const furnitureOf = (design: Design) => [
  ...design.tables.map((t) => ({ id: t.id, part: t.id, box: boxOver(t.outline, t.height - topThickness, t.height) })),
  ...design.tables.flatMap((t) =>
    t.equipment.map((e) => ({ id: t.id, part: e.id, box: boxOver(e.outline, e.bottom, e.top) })),
  ),
  ...[...design.equipment, ...design.room.columns, ...design.room.obstructions]
    .filter((s) => s.outline.length >= 4)
    .map((s) => ({ id: s.id, part: s.id, box: boxOver(s.outline, s.bottom, s.top) })),
];
