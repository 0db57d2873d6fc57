import type { Finding } from '../floor/finding.js';
import type { CheckContext } from './context.js';
import {
  fireFinding,
  fullnessFindings,
  hemFinding,
  lightFinding,
  openingFindings,
  runnerFinding,
  tableFinding,
} from './curtain-cloth.js';
import { runFacts } from './curtain-facts.js';
import {
  anchorFinding,
  deflectionFinding,
  endFinding,
  jointFinding,
  loadFinding,
  spacingFinding,
} from './curtain-supports.js';

/** Findings on every curtain run: its supports and track, its panels and runners, its openings, and what is not assessed. */
export const checkCurtain = (context: CheckContext): Finding[] =>
  context.design.runs.flatMap((run) => {
    const facts = runFacts(context, run);
    return [
      spacingFinding(facts),
      ...endFinding(facts),
      ...jointFinding(facts),
      loadFinding(facts),
      deflectionFinding(facts),
      ...anchorFinding(facts),
      ...fullnessFindings(facts),
      ...hemFinding(facts),
      ...tableFinding(facts),
      ...runnerFinding(facts),
      ...openingFindings(facts),
      fireFinding(facts),
      lightFinding(facts),
    ];
  });
