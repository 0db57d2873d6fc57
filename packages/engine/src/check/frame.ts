import type { Finding } from '../floor/finding.js';
import type { CheckContext } from './context.js';
import { checkRoofBeams } from './frame-beams.js';
import { checkClearance } from './frame-clearance.js';
import { openFrameFindings } from './frame-open.js';
import { checkStanding } from './frame-standing.js';

/**
 * Findings on the frames of the enclosures: roof beams, standing, clear distance to the tables, and what stays open.
 * The tool assists; a qualified structural engineer decides on frames over people.
 */
export const checkFrame = (context: CheckContext): Finding[] =>
  context.design.enclosures.flatMap((enclosure) => [
    ...checkRoofBeams(enclosure, context),
    ...checkStanding(enclosure, context),
    ...checkClearance(enclosure, context),
    ...openFrameFindings(enclosure, context),
  ]);
