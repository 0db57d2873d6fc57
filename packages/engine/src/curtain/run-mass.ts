import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { negative } from './messages.js';

export interface RunMassQuestion {
  /** Mass of the track [kg/m]. */
  readonly track: number;
  /** Mass of one runner [kg] and distance between runners along the cloth [m]. */
  readonly runner: number;
  readonly pitch: number;
  /** Flat cloth width per length of track, 1.07 to 1.10 [-]. */
  readonly fullness: number;
  /** Mass of the cloth [kg/m2] and of its hem [kg/m]. */
  readonly cloth: number;
  readonly hem: number;
  /** Height of the curtain [m]. */
  readonly drop: number;
}

/**
 * Mass per length of track with the curtain drawn.
 *
 *     m = m_track + k (m_cloth H + m_hem + m_runner / pitch)
 * @param question masses, pitch, fullness k and drop H, in SI
 * @returns mass [kg/m], of the track alone, and of what hangs on it; or `curtain/pitch`, `curtain/drop`, `curtain/fullness`,
 *          `curtain/negative`
 * Source: sum of masses (derived; handbook of layout, 3.5).
 */
export function runMassPerLength({ track, runner, pitch, fullness, cloth, hem, drop }: RunMassQuestion): Outcome<{
  readonly total: number;
  readonly hanging: number;
}> {
  const problems = [
    ...positive('curtain/pitch', 'pitch', pitch, 'm'),
    ...positive('curtain/drop', 'drop', drop, 'm'),
    ...positive('curtain/fullness', 'fullness', fullness, ''),
    ...Object.entries({ track, runner, cloth, hem })
      .filter(([, value]) => !(value >= 0))
      .map(([name, value]) => negative(name, value, 'kg')),
  ];
  if (problems.length > 0) return refuse(problems);
  const hanging = fullness * (cloth * drop + hem + runner / pitch);
  return ok({ total: track + hanging, hanging });
}
