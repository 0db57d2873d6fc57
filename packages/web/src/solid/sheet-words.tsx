import { at3, numberText } from '@cloche/engine';
import { type ReactNode, useMemo, useRef } from 'react';
import type { Design, DesignLaser, Vec3 } from '../engine/contract.js';
import { useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { isHidden } from './pick.js';
import type { Piece } from './pieces.js';
import { usePin } from './pins.js';
import { isKept } from './section.js';
import { useSpace } from './space-store.js';

/** No more marks than can be read at once. */
const mostMarks = 16;

/** Writing over the drawing: wavelengths along beams, the mark of what is pointed at. */
export function SheetWords({ design, pieces }: { readonly design: Design; readonly pieces: readonly Piece[] }) {
  const cuts = useSpace((s) => s.cuts);
  const beams = useSpace((s) => s.shown.beams);
  const hovered = useSpace((s) => s.hovered);
  const pointed = useWorkbench((s) => s.pointedParts);
  const itemNames = useWorkbench((s) => s.computed?.itemNames);
  const foot = useSpace((s) => s.walk);
  const eyeHeight = useSpace((s) => s.eyeHeight);
  const waves = useMemo(() => (beams ? waveLabels(design.lasers) : []), [design.lasers, beams]);
  const named = pieces.filter((p) => p.id === hovered || pointed.has(p.id)).slice(0, mostMarks);
  return (
    <div className="sheet-words" aria-hidden="true">
      {waves
        .filter(({ at }) => cuts.every((cut) => isKept(cut, at)))
        // On foot a curtain hides a beam, so that it hides its writing too.
        .filter(({ at }) => !foot || !isHidden(at3(foot.at, eyeHeight), at, pieces, cuts))
        .map(({ id, at, text }) => (
          <Word key={id} at={at} className="wavelength">
            {text}
          </Word>
        ))}
      {named.map((piece) => (
        <Word key={piece.id} at={middleOf(piece)} className="mark-label">
          {piece.part?.mark && <b>{piece.part.mark}</b>}
          {piece.id === hovered && <span>{nameOf(piece, design, itemNames)}</span>}
        </Word>
      ))}
    </div>
  );
}

function Word({
  at,
  className,
  children,
}: {
  readonly at: Vec3;
  readonly className: string;
  readonly children: ReactNode;
}) {
  const element = useRef<HTMLSpanElement>(null);
  usePin(element, at);
  return (
    <span ref={element} className="pin" data-word={className}>
      <span className={className}>{children}</span>
    </span>
  );
}

const middleOf = ({ boxes }: Piece): Vec3 => boxes[Math.floor(boxes.length / 2)]?.middle ?? [0, 0, 0];

const nameOf = (piece: Piece, design: Design, itemNames: Readonly<Record<string, string>> | undefined): string => {
  if (piece.part) return itemNames?.[piece.part.item] ?? piece.part.item;
  const named = [
    ...design.tables,
    ...design.tables.flatMap((t) => t.equipment),
    ...design.equipment,
    ...design.lasers,
    ...design.room.doors,
    ...design.room.windows,
    ...design.room.boards,
    ...design.room.columns,
    ...design.room.beams,
    ...design.room.obstructions,
  ].find((t) => t.id === piece.id);
  return named?.name ?? piece.id;
};

interface WaveLabel {
  readonly id: string;
  readonly at: Vec3;
  readonly text: string;
}

/** The wavelength stands at the middle of the longest leg; beams that share a leg are written in one place, one after the other. */
function waveLabels(lasers: readonly DesignLaser[]): readonly WaveLabel[] {
  const labels: WaveLabel[] = [];
  for (const laser of lasers) {
    const leg = [...laser.legs].sort((a, b) => lengthOf(b) - lengthOf(a))[0];
    if (!leg) continue;
    const at: Vec3 = [0, 1, 2].map((k) => (leg.from[k as 0] + leg.to[k as 0]) / 2) as unknown as Vec3;
    const text = texts.space.wavelength(numberText(laser.wavelength * 1e9));
    const near = labels.findIndex((l) => Math.hypot(l.at[0] - at[0], l.at[1] - at[1], l.at[2] - at[2]) < 0.25);
    const same = labels[near];
    if (same) labels[near] = { ...same, text: `${same.text}, ${text}` };
    else labels.push({ id: laser.id, at, text });
  }
  return labels;
}

const lengthOf = ({ from, to }: DesignLaser['legs'][number]): number =>
  Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
