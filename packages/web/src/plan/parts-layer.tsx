import { memo, useMemo } from 'react';
import type { Design, Part } from '../engine/contract.js';
import { linePath, partPath, ringPath } from './path-text.js';
import { Thing } from './thing.js';

/** Line of a part in the plan by what it does: cut edges strong, seen edges fine, what hangs above dashed. */
function lineOf(part: Part): string | null {
  switch (part.role) {
    case 'post':
      return 'line-cut filled';
    case 'side panel':
    case 'strip panel':
      return 'line-edge';
    case 'curtain panel':
      return 'line-cloth';
    case 'fan filter unit':
    case 'roof panel':
    case 'light':
      return 'line-hidden';
    case 'beam':
    case 'cross beam':
    case 'rail':
    case 'track':
    case 'track curve':
    case 'connector':
    case 'cover':
      return 'line-fine';
    default:
      return null;
  }
}

/** Path data of all parts of one thing, joined by line. */
function pathsOf(parts: readonly Part[]): ReadonlyMap<string, string> {
  const paths = new Map<string, string>();
  for (const part of parts) {
    const line = lineOf(part);
    if (line) paths.set(line, (paths.get(line) ?? '') + partPath(part.shape));
  }
  return paths;
}

const groupBy = (parts: readonly Part[]): ReadonlyMap<string, readonly Part[]> => {
  const groups = new Map<string, Part[]>();
  for (const part of parts) groups.set(part.of, [...(groups.get(part.of) ?? []), part]);
  return groups;
};

function Lines({ parts }: { readonly parts: readonly Part[] }) {
  const paths = useMemo(() => pathsOf(parts), [parts]);
  return [...paths].map(([line, d]) => <path key={line} className={line} d={d} />);
}

/** Enclosures and curtain runs, drawn from their parts. */
export const PartsLayer = memo(function PartsLayer({ design }: { readonly design: Design }) {
  const parts = useMemo(() => groupBy(design.parts), [design.parts]);
  return (
    <g className="made">
      {design.enclosures.map((enclosure) => (
        <Thing key={enclosure.id} id={enclosure.id} kind="enclosure" label={`Enclosure ${enclosure.name}`}>
          <path className="grip" d={ringPath(enclosure.outline) + ringPath(enclosure.inside)} />
          {enclosure.unitAreas.map((ring) => (
            <path key={String(ring[0])} className="line-hidden" d={diagonals(ring)} />
          ))}
          <Lines parts={parts.get(enclosure.id) ?? []} />
        </Thing>
      ))}
      {design.runs.map((run) => (
        <Thing key={run.id} id={run.id} kind="run" label={`Curtain run ${run.name}`}>
          <path className="grip-line" d={linePath(run.line)} />
          <Lines parts={parts.get(run.id) ?? []} />
          {run.supports.map((support) => (
            <path key={`${support.part} ${support.at}`} className="line-seen" d={cross(support.point)} />
          ))}
        </Thing>
      ))}
    </g>
  );
});

const diagonals = ([a, b, c, d]: readonly (readonly [number, number])[]): string =>
  a && b && c && d ? linePath([a, c]) + linePath([b, d]) : '';

const cross = ([x, y]: readonly [number, number]): string => {
  const r = 0.035;
  return (
    linePath([
      [x - r, y - r],
      [x + r, y + r],
    ]) +
    linePath([
      [x - r, y + r],
      [x + r, y - r],
    ])
  );
};
