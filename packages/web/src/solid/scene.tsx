import { useMemo } from 'react';
import type { Barrier, Design, Vec3 } from '../engine/contract.js';
import { Beams } from './beams.js';
import { Boxes, Cloth } from './bodies.js';
import { DrawnFrames } from './drawn-frames.js';
import type { Ink } from './ink.js';
import { BarrierFaces, Marks } from './marks.js';
import { Picking } from './picking.js';
import type { Piece } from './pieces.js';
import { RoomShell } from './room-shell.js';
import { planesOf, SectionFaces } from './section-faces.js';
import { useSpace } from './space-store.js';
import { roomPoints } from './stand.js';
import { Turning } from './turning.js';
import { Walking } from './walking.js';
import { wallBlocks } from './walls.js';

export interface SceneProps {
  readonly design: Design;
  readonly ink: Ink;
  /** What is shown, where it is drawn. */
  readonly pieces: readonly Piece[];
  readonly strong: readonly Piece[];
  readonly barrier: Barrier | null;
  /** Points of the thing in hand. */
  readonly hand: readonly Vec3[];
}

/** Everything that is drawn in space: paper-white bodies with ink edges, like a drawing that can be turned. */
export function Scene({ design, ink, pieces, strong, barrier, hand }: SceneProps) {
  const { room } = design;
  const cuts = useSpace((s) => s.cuts);
  const shown = useSpace((s) => s.shown);
  const inPlace = useSpace((s) => s.apart === 0 && s.step === null);
  const onFoot = useSpace((s) => s.walk !== null);
  const planes = useMemo(() => planesOf(cuts), [cuts]);
  const walls = useMemo(() => wallBlocks(room), [room]);
  const points = useMemo(() => roomPoints(room.outline, room.height), [room]);
  const { bodies, plates, cloth, strips } = useMemo(() => byKind(pieces), [pieces]);
  const drawn = { ink, planes };
  return (
    <>
      <color attach="background" args={[ink.paper]} />
      <hemisphereLight args={[0xffffff, 0xc8c8c2, ink.dark ? 2.2 : 2.9]} />
      <directionalLight position={[4, -6, 10]} intensity={ink.dark ? 0.8 : 0.5} />
      <RoomShell room={room} walls={walls} ceiling={shown.ceiling} {...drawn} />
      <Boxes pieces={bodies} {...drawn} />
      <Boxes pieces={plates} clear {...drawn} />
      <Cloth pieces={cloth} opacity={onFoot ? 1 : 0.55} {...drawn} />
      <Cloth pieces={strips} opacity={0.4} {...drawn} />
      {shown.beams && <Beams lasers={design.lasers} {...drawn} />}
      {shown.barriers && inPlace && <BarrierFaces barriers={design.barriers} {...drawn} />}
      <SectionFaces room={room} walls={walls} pieces={pieces} cuts={cuts} ceiling={shown.ceiling} ink={ink} />
      <Marks strong={strong} barrier={barrier} {...drawn} />
      {onFoot ? <Walking design={design} /> : <Turning room={points} hand={hand} />}
      <Picking pieces={pieces} cuts={cuts} />
      <DrawnFrames />
    </>
  );
}

/** Pieces by how they are drawn; strips are clear, curtains are not. */
function byKind(pieces: readonly Piece[]) {
  const of = (kind: Piece['kind']) => pieces.filter((p) => p.kind === kind);
  const isStrip = ({ part }: Piece) => part?.role === 'strip panel';
  return {
    bodies: of('body'),
    plates: of('plate'),
    cloth: of('cloth').filter((p) => !isStrip(p)),
    strips: of('cloth').filter(isStrip),
  };
}
