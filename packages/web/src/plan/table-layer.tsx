import { memo } from 'react';
import type { Design, DesignTable } from '../engine/contract.js';
import { linePath, ringPath } from './path-text.js';
import { Thing } from './thing.js';

/** Tables white with their corner mark, and what stands on them. */
export const TableLayer = memo(function TableLayer({ design }: { readonly design: Design }) {
  return (
    <g className="tables">
      {design.equipment.map((solid) => (
        <Thing key={solid.id} id={solid.id} kind="solid" label={solid.name}>
          <path className="line-seen body" d={ringPath(solid.outline)} />
        </Thing>
      ))}
      {design.tables.map((table) => (
        <Thing key={table.id} id={table.id} kind="table" label={`Table ${table.name}`}>
          <path className="line-edge body" d={ringPath(table.outline)} />
          <path className="line-fine" d={cornerMark(table)} />
        </Thing>
      ))}
      {design.tables.flatMap((table) =>
        table.equipment.map((solid) => (
          <Thing key={solid.id} id={solid.id} kind="solid" label={solid.name}>
            <path className="grip" d={ringPath(solid.outline)} />
            <path className="line-fine" d={ringPath(solid.outline)} />
          </Thing>
        )),
      )}
    </g>
  );
});

/** A short line across the first corner: from it the places on the table are told apart. */
function cornerMark(table: DesignTable): string {
  const [corner, along, , back] = table.outline;
  if (!corner || !along || !back) return '';
  const reach = 0.14;
  const toward = (to: readonly [number, number], length: number) =>
    [corner[0] + ((to[0] - corner[0]) * reach) / length, corner[1] + ((to[1] - corner[1]) * reach) / length] as const;
  return linePath([toward(along, table.length), toward(back, table.width)]);
}
