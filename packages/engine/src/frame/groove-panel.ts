import { type CalculationStep, fromStep, val } from '../floor/calculation.js';
import { type Outcome, ok, refuse } from '../floor/problem.js';
import { geometrySource } from '../floor/source.js';
import { needFinite, needNotNegative, needPositive } from './arguments.js';
import { frameMessages } from './messages.js';
import { frameSources } from './tables.js';

/** A panel held in grooves on two opposite sides. */
export interface GroovePanel {
  /** Between the faces of the bars [m]. */
  readonly clearOpening: number;
  readonly grooveDepth: number;
  /** Free room left at each end in the groove [m]. */
  readonly endClearance: number;
  /** Change of temperature [K] and expansions [1/K]. */
  readonly temperatureChange: number;
  readonly panelExpansion: number;
  readonly frameExpansion: number;
}

export interface GroovePanelResult {
  readonly cutSize: number;
  readonly engagement: number;
  /** Growth of the panel against the frame over the clear opening [m]. */
  readonly relativeGrowth: number;
  /** What still holds at one side when the panel is pushed to the other [m]. */
  readonly leastEngagement: number;
}

/**
 * Cut size of a panel in grooves, and how well it is held.
 *
 *     cut = opening + 2 (depth - clearance);  e = depth - clearance;  e_min = depth - 2 clearance
 *     growth = (alpha_panel - alpha_frame) dT opening
 * Negative e_min means that the pushed panel falls out. Tolerances of cut and frame come on top: ask for at least 2 mm,
 * better 4 mm where light must stay inside (common practice).
 * @param p opening, groove, temperature [m, K, 1/K]
 * @returns sizes [m], or `frame/not-positive`, `frame/negative`, `frame/not-a-number`, `frame/groove-clearance`
 * Source: geometry (derived); linear expansion (derived).
 */
export function groovePanel(p: GroovePanel): Outcome<GroovePanelResult> {
  const problems = [
    ...needPositive({ clearOpening: [p.clearOpening, 'm'], grooveDepth: [p.grooveDepth, 'm'] }),
    ...needNotNegative({
      endClearance: [p.endClearance, 'm'],
      panelExpansion: [p.panelExpansion, '1/K'],
      frameExpansion: [p.frameExpansion, '1/K'],
    }),
    ...needFinite({ temperatureChange: p.temperatureChange }),
  ];
  if (problems.length === 0 && p.endClearance >= p.grooveDepth)
    problems.push(frameMessages.grooveClearance(p.grooveDepth, p.endClearance));
  if (problems.length > 0) return refuse(problems);
  const engagement = p.grooveDepth - p.endClearance;
  return ok({
    cutSize: p.clearOpening + 2 * engagement,
    engagement,
    relativeGrowth: (p.panelExpansion - p.frameExpansion) * p.temperatureChange * p.clearOpening,
    leastEngagement: p.grooveDepth - 2 * p.endClearance,
  });
}

/** The steps of `groovePanel`, in mm. Source: geometry and linear expansion (derived). */
export function groovePanelSteps(p: GroovePanel, found: GroovePanelResult): readonly CalculationStep[] {
  const mm = (value: number, name: string) => val(value * 1000, 'mm', name);
  const groove = { h: mm(p.grooveDepth, 'depth of the groove'), c: mm(p.endClearance, 'clearance at each end') };
  const engagement: CalculationStep = {
    symbol: 'e',
    name: 'engagement at each side',
    expression: 'h - c',
    values: groove,
    result: found.engagement * 1000,
    unit: 'mm',
    source: geometrySource,
  };
  const opening = mm(p.clearOpening, 'clear opening');
  return [
    engagement,
    {
      symbol: 'cut',
      name: 'cut size',
      expression: 'o + 2*e',
      values: { o: opening, e: fromStep(engagement) },
      result: found.cutSize * 1000,
      unit: 'mm',
      source: geometrySource,
    },
    {
      symbol: 'emin',
      name: 'engagement left when pushed to one side',
      expression: 'h - 2*c',
      values: groove,
      result: found.leastEngagement * 1000,
      unit: 'mm',
      source: geometrySource,
    },
    {
      symbol: 'growth',
      name: 'growth of the panel against the frame',
      expression: '(ap - af)/1000000*dT*o',
      values: {
        ap: val(p.panelExpansion * 1e6, 'um/(m K)', 'expansion of the panel'),
        af: val(p.frameExpansion * 1e6, 'um/(m K)', 'expansion of the frame'),
        dT: val(p.temperatureChange, 'K', 'change of temperature'),
        o: opening,
      },
      result: found.relativeGrowth * 1000,
      unit: 'mm',
      source: frameSources.thermal,
    },
  ];
}
