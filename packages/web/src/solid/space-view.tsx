import '../styles/space.css';
import { Canvas } from '@react-three/fiber';
import { useEffect, useId, useMemo, useRef, useState } from 'react';
import type { Design } from '../engine/contract.js';
import { extentOf } from '../plan/places.js';
import { useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { type AssemblyStep, assemblySteps } from './assembly-order.js';
import { cornersOf } from './boxes.js';
import { DistanceButtons } from './distance-buttons.js';
import { useInk } from './ink.js';
import { isMarked, markedBarrier, subjectOf } from './marked.js';
import { type Piece, piecesOf } from './pieces.js';
import { PlanCorner } from './plan-corner.js';
import { Rose } from './rose.js';
import { Scene } from './scene.js';
import { SectionHandles } from './section-handles.js';
import { SheetWords } from './sheet-words.js';
import { shownPieces } from './shown-pieces.js';
import { useSpace } from './space-store.js';
import { ThingsList } from './things-list.js';
import { ToolRow } from './tool-row.js';

/** The same design in space, to be turned, cut open, walked through, pulled apart and set up step by step. */
export default function SpaceView({ design }: { readonly design: Design }) {
  const [drawable] = useState(canDraw);
  const steps = useMemo(() => assemblySteps(design), [design]);
  const all = useMemo(() => piecesOf(design), [design]);
  const pieces = usePieces(design, all, steps);
  const { strong, barrier } = useStrong(design, all, pieces, steps);
  const things = useSpace((s) => s.things);
  if (!drawable) return <p className="waiting">{texts.space.noCanvas}</p>;
  return (
    <section className={things ? 'space with-things' : 'space'} aria-label={texts.space.label}>
      <div className="space-sheet">
        <SpaceCanvas design={design} pieces={pieces} strong={strong} barrier={barrier} />
        <SheetWords design={design} pieces={pieces} />
        <SectionHandles room={design.room} />
        <Rose />
        <DistanceButtons />
        <PlanCorner design={design} />
      </div>
      {things && <ThingsList design={design} />}
      <ToolRow design={design} steps={steps} />
    </section>
  );
}

interface SpaceCanvasProps {
  readonly design: Design;
  readonly pieces: readonly Piece[];
  readonly strong: readonly Piece[];
  readonly barrier: ReturnType<typeof markedBarrier>;
}

function SpaceCanvas({ design, pieces, strong, barrier }: SpaceCanvasProps) {
  const ink = useInk();
  const selected = useWorkbench((s) => s.selected);
  const hand = useMemo(() => handPoints(design, pieces, selected), [design, pieces, selected]);
  const onFoot = useSpace((s) => s.walk !== null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const summary = useId();
  useEffect(() => {
    const label = onFoot ? texts.space.canvasOnFoot : texts.space.canvas;
    const element = canvas.current;
    element?.setAttribute('aria-label', label);
    element?.setAttribute('aria-describedby', summary);
  }, [onFoot, summary]);
  return (
    <>
      <p id={summary} className="visually-hidden">
        <Summary design={design} />
      </p>
      <Canvas
        ref={canvas}
        flat
        frameloop="demand"
        dpr={[1, 2]}
        camera={{ up: [0, 0, 1], near: 0.05, far: 300 }}
        gl={{ localClippingEnabled: true }}
        onCreated={({ gl }) => {
          const { domElement } = gl;
          domElement.tabIndex = 0;
          domElement.setAttribute('role', 'application');
          domElement.setAttribute('aria-roledescription', texts.space.canvasRole);
        }}
      >
        <Scene design={design} ink={ink} pieces={pieces} strong={strong} barrier={barrier} hand={hand} />
      </Canvas>
    </>
  );
}

/** What the drawing holds and how it is shown, in words. */
function Summary({ design }: { readonly design: Design }) {
  const { tables, enclosures, runs, lasers } = design;
  const cuts = useSpace((s) => s.cuts);
  const apart = useSpace((s) => s.apart);
  const step = useSpace((s) => s.step);
  const held = texts.plan.summary(tables.length, enclosures.length, runs.length, lasers.length);
  return `${held} ${texts.space.state(cuts.length, apart, step)}`;
}

/** Pieces as they are shown now. */
function usePieces(design: Design, all: readonly Piece[], steps: readonly AssemblyStep[]): readonly Piece[] {
  const apart = useSpace((s) => s.apart);
  const step = useSpace((s) => s.step);
  const shown = useSpace((s) => s.shown);
  return useMemo(
    () => shownPieces(design, all, steps, { apart, step, shown }),
    [design, all, steps, apart, step, shown],
  );
}

/**
 * What is drawn strong; while steps are gone through, the parts of the step as well. What hangs under a ceiling that is not shown is
 * drawn when it is meant.
 */
function useStrong(design: Design, all: readonly Piece[], pieces: readonly Piece[], steps: readonly AssemblyStep[]) {
  const selected = useWorkbench((s) => s.selected);
  const pointed = useWorkbench((s) => s.pointedParts);
  const subject = useWorkbench((s) => subjectOf(s.computed?.findings ?? [], s.focusedFinding));
  const step = useSpace((s) => s.step);
  const hovered = useSpace((s) => s.hovered);
  const ceiling = useSpace((s) => s.shown.ceiling);
  const strong = useMemo(() => {
    const now = new Set(step === null ? [] : (steps[step]?.parts ?? []).map((p) => p.id));
    const meant = (p: Piece) => isMarked(p, { selected, pointed, subject });
    const above = ceiling ? [] : all.filter((p) => p.ceiling && meant(p));
    return [...pieces.filter((p) => meant(p) || now.has(p.id) || (p.id === hovered && p.part)), ...above];
  }, [all, pieces, steps, ceiling, selected, pointed, subject, step, hovered]);
  return { strong, barrier: useMemo(() => markedBarrier(design, subject), [design, subject]) };
}

function handPoints(design: Design, pieces: readonly Piece[], selected: string | null) {
  if (selected === null) return [];
  const drawn = pieces.filter((p) => p.thing === selected || p.id === selected);
  if (drawn.length > 0) return drawn.flatMap((p) => p.boxes.flatMap(cornersOf));
  return extentOf(design, selected).map(([x, y]) => [x, y, 1] as const);
}

let known: boolean | undefined;

/** Whether this browser draws in space; the context that was tried is given back. */
function canDraw(): boolean {
  if (known === undefined) {
    const tried = document.createElement('canvas').getContext('webgl2');
    known = tried !== null;
    tried?.getExtension('WEBGL_lose_context')?.loseContext();
  }
  return known;
}
