import type { Finding } from '../floor/finding.js';
import type { CheckContext } from './context.js';
import { barrierFindings } from './laser-barrier.js';
import type { Subject } from './laser-finding.js';
import { limitsOf } from './laser-limit.js';
import { openFindingsOf, openFindingsOfProject } from './laser-open.js';
import {
  beamPlaneFinding,
  classFinding,
  diffuseFinding,
  exposureFinding,
  hazardDistanceFinding,
} from './laser-source.js';

/**
 * Laser findings of a design: for each source its limits, hazard distances, class and beam plane; for each source and barrier whether the
 * barrier withstands the beam and what passes; and by name what is not assessed.
 *
 * An aid for planning. The appointed laser safety officer decides.
 * @param context brief, design, catalogue and rules in force [-]
 * @returns       findings in the order of sources and barriers [-]
 * Source: as named in each finding.
 */
export function checkLaser(context: CheckContext): Finding[] {
  const subjects: Subject[] = context.design.lasers.map((laser) => ({
    laser,
    brief: context.brief.lasers.find((b) => b.id === laser.id),
    limits: limitsOf(context, laser),
  }));
  return [
    ...subjects.flatMap((subject) => sourceFindings(context, subject)),
    ...subjects.flatMap((subject) =>
      context.design.barriers.flatMap((barrier) => barrierFindings(context, subject, barrier)),
    ),
    ...openFindingsOfProject(context),
  ];
}

const sourceFindings = (context: CheckContext, subject: Subject): Finding[] => [
  exposureFinding(context, subject, 'eye'),
  exposureFinding(context, subject, 'skin'),
  hazardDistanceFinding(context, subject),
  diffuseFinding(context, subject),
  classFinding(subject),
  beamPlaneFinding(context, subject),
  ...openFindingsOf(subject),
];
