import { memo } from 'react';
import type { Design } from '../engine/contract.js';
import { linePath } from './path-text.js';
import { Thing } from './thing.js';

/** Beams as chain lines; their arrows and wavelengths are written in the layer of labels. */
export const BeamLayer = memo(function BeamLayer({ design }: { readonly design: Design }) {
  return (
    <g className="beams">
      {design.lasers.map((laser) => (
        <Thing key={laser.id} id={laser.id} kind="beam" label={`Laser ${laser.name}`}>
          {laser.legs.map((leg) => {
            const d = linePath([
              [leg.from[0], leg.from[1]],
              [leg.to[0], leg.to[1]],
            ]);
            return (
              <g key={`${leg.from} ${leg.to}`}>
                <path className="grip-line" d={d} />
                <path className={leg.carried === 'open' ? 'line-chain' : 'line-seen'} d={d} />
              </g>
            );
          })}
        </Thing>
      ))}
    </g>
  );
});
