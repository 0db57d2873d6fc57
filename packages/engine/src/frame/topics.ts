import { type Calculation, type CalculationStep, calculation } from '../floor/calculation.js';
import { type Outcome, ok } from '../floor/problem.js';
import type { Topic, TopicArguments, TopicInput } from '../floor/topic.js';
import type { Dimension } from '../floor/units.js';
import { boltPreload, boltPreloadSteps } from './bolt-preload.js';
import { frameCautions } from './cautions.js';
import { footLoadSteps, sharedLoadSteps } from './foot-load-steps.js';
import { footLoads, footPlane } from './foot-loads.js';
import { groovePanel, groovePanelSteps } from './groove-panel.js';
import { hollowSectionSteps } from './hollow-section-steps.js';
import { memberBuckling, memberBucklingSteps } from './member-buckling.js';
import { rectangularHollowSection, standardCornerRadii } from './rectangular-hollow-section.js';
import { singleSpan } from './single-span.js';
import { singleSpanAssumptions, singleSpanSteps } from './single-span-steps.js';
import { type BucklingClass, bucklingClasses, type HollowFinish, partialFactors } from './tables.js';
import { thermalGrowth, thermalGrowthSteps } from './thermal-growth.js';
import { pushSteps, tiltStep, tipOver } from './tip-over.js';
import { baseTransmissibility, transmissibilitySteps } from './transmissibility.js';
import type { BeamEnds, SingleSpan } from './types.js';

const number = (inputs: TopicArguments, name: string): number => {
  const value = inputs[name];
  return typeof value === 'number' ? value : Number.NaN;
};
const word = (inputs: TopicArguments, name: string): string => String(inputs[name]);

const quantity = (name: string, dimension: Dimension, about: string, preset?: string): TopicInput => ({
  name,
  about,
  shape: { dimension },
  ...(preset === undefined ? {} : { default: preset }),
});
const pure = (name: string, about: string, preset?: string): TopicInput => ({
  name,
  about,
  shape: { number: true },
  ...(preset === undefined ? {} : { default: preset }),
});

function made<T>(
  found: Outcome<T>,
  title: string,
  steps: (value: T) => readonly CalculationStep[],
  extra: { readonly assumptions?: readonly string[]; readonly cautions?: readonly string[] } = {},
): Outcome<Calculation> {
  return found.ok ? ok(calculation(title, steps(found.value), extra)) : found;
}

const elasticity = quantity('elasticity', 'stress', 'modulus of elasticity; aluminium when left out', '70 GPa');
const expansion = quantity('expansion', 'expansion', 'linear expansion; aluminium when left out', '23e-6 /K');

const beam: Topic = {
  name: 'beam',
  about: 'largest deflection and moment of one span under a uniform load and one point load',
  inputs: [
    {
      name: 'ends',
      about: 'how the span is held',
      shape: { choice: ['simple', 'fixed and simple', 'fixed', 'cantilever'] },
      default: 'simple',
    },
    quantity('span', 'length', 'span'),
    quantity('uniform', 'force per length', 'uniform load with the bar itself', '0 N/m'),
    quantity('load', 'force', 'point load', '0 N'),
    quantity('load-at', 'length', 'distance of the point load from the first end', '0 m'),
    pure('second-moment-cm4', 'second moment of area in cm4'),
    elasticity,
  ],
  run: (inputs) => {
    const load = number(inputs, 'load');
    const span: SingleSpan = {
      ends: word(inputs, 'ends') as BeamEnds,
      span: number(inputs, 'span'),
      uniform: number(inputs, 'uniform'),
      points: load === 0 ? [] : [{ at: number(inputs, 'load-at'), load }],
      secondMoment: number(inputs, 'second-moment-cm4') * 1e-8,
      elasticity: number(inputs, 'elasticity'),
    };
    return made(
      singleSpan(span),
      'Bending of a single span',
      (found) => {
        const steps = singleSpanSteps(span, found, { loads: 'input', section: 'input', elasticity: 'input' });
        return [...steps.deflection, ...steps.moment.slice(-1)];
      },
      { assumptions: [singleSpanAssumptions.bending], cautions: [frameCautions.engineer] },
    );
  },
};

const hollow: Topic = {
  name: 'hollow-section',
  about: 'properties of a rectangular steel or aluminium tube with rounded corners by the standard formulas',
  inputs: [
    quantity('width', 'length', 'outside width'),
    quantity('height', 'length', 'outside height'),
    quantity('thickness', 'length', 'wall'),
    {
      name: 'finish',
      about: 'sets the corner radii',
      shape: { choice: ['hot finished', 'cold formed'] },
      default: 'cold formed',
    },
  ],
  run: (inputs) => {
    const thickness = number(inputs, 'thickness');
    const radii = standardCornerRadii(word(inputs, 'finish') as HollowFinish, thickness);
    if (!radii.ok) return radii;
    const section = {
      width: number(inputs, 'width'),
      height: number(inputs, 'height'),
      thickness,
      outerRadius: radii.value.outer,
      innerRadius: radii.value.inner,
    };
    return made(rectangularHollowSection(section), 'Rectangular hollow section', (found) =>
      hollowSectionSteps(section, found),
    );
  },
};

const tipping: Topic = {
  name: 'tip-over',
  about: 'push and tilt that tip a free-standing frame about one edge of its base',
  inputs: [
    quantity('mass', 'mass', 'mass of the frame'),
    quantity('lever', 'length', 'distance in plan from the centre of mass to the tipping edge'),
    quantity('height', 'length', 'height of the centre of mass'),
    quantity('push', 'force', 'horizontal push', '250 N'),
    quantity('push-height', 'length', 'height of the push', '1.5 m'),
  ],
  run: (inputs) => {
    const body = {
      mass: number(inputs, 'mass'),
      lever: number(inputs, 'lever'),
      height: number(inputs, 'height'),
      push: number(inputs, 'push'),
      pushHeight: number(inputs, 'push-height'),
      tilt: 0,
    };
    return made(
      tipOver(body),
      'Tipping of a free-standing frame',
      () => [
        ...pushSteps(body, { mass: 'input', lever: 'input', push: 'input' }),
        tiltStep(body, { mass: 'input', lever: 'input' }),
      ],
      { assumptions: ['A rigid body on a rigid floor, without anchors.'], cautions: [frameCautions.engineer] },
    );
  },
};

const feet: Topic = {
  name: 'foot-load',
  about: 'load on the most loaded of four feet in a rectangle, and with one foot off the floor',
  inputs: [
    quantity('mass', 'mass', 'mass of all that stands on the feet'),
    quantity('length', 'length', 'distance of the feet along x'),
    quantity('width', 'length', 'distance of the feet along y'),
    quantity('x', 'length', 'centre of mass from the first foot along x'),
    quantity('y', 'length', 'centre of mass from the first foot along y'),
  ],
  run: (inputs) => {
    const [mass, length, width] = [number(inputs, 'mass'), number(inputs, 'length'), number(inputs, 'width')];
    const points = [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ] as const;
    const centre = [number(inputs, 'x'), number(inputs, 'y')] as const;
    const plane = footPlane(points, mass, centre);
    if (!plane.ok) return plane;
    return made(
      footLoads(points, mass, centre),
      'Loads on four feet',
      (found) => {
        const worst = points[found.reactions.indexOf(found.largest)]!;
        const uneven = sharedLoadSteps(mass, 4, 1, 'input')
          .slice(1)
          .map((step) => ({ ...step, symbol: 'R3' }));
        return [...footLoadSteps(plane.value, 4, mass, worst, 'input'), ...uneven];
      },
      { assumptions: ['A rigid frame on equal feet.'], cautions: [frameCautions.engineer] },
    );
  },
};

const buckling: Topic = {
  name: 'member-buckling',
  about: 'design resistance of a straight aluminium member in compression',
  inputs: [
    quantity('buckling-length', 'length', 'buckling length'),
    pure('second-moment-cm4', 'smallest second moment of area in cm4'),
    quantity('area', 'area', 'area of the section'),
    quantity('proof-strength', 'stress', '0.2 % proof strength'),
    {
      name: 'class',
      about: 'buckling class: A heat-treated (T6), B not (T5)',
      shape: { choice: ['A', 'B'] },
      default: 'B',
    },
    elasticity,
    pure('partial-factor', 'gamma M1', String(partialFactors.members)),
  ],
  run: (inputs) => {
    const curve = bucklingClasses[word(inputs, 'class') as BucklingClass];
    const member = {
      ...curve,
      bucklingLength: number(inputs, 'buckling-length'),
      secondMoment: number(inputs, 'second-moment-cm4') * 1e-8,
      area: number(inputs, 'area'),
      proofStrength: number(inputs, 'proof-strength'),
      elasticity: number(inputs, 'elasticity'),
      partialFactor: number(inputs, 'partial-factor'),
      weldFactor: 1,
    };
    return made(memberBuckling(member), 'Buckling of a member', (found) => memberBucklingSteps(member, found), {
      assumptions: ['Full section effective, no welds, bending only (no twisting).'],
      cautions: [frameCautions.engineer],
    });
  },
};

const bolt: Topic = {
  name: 'bolt-preload',
  about: 'preload of a tightened bolt and the force at which its joint slips',
  inputs: [
    quantity('diameter', 'length', 'nominal diameter'),
    quantity('torque', 'torque', 'tightening torque'),
    pure('nut-factor', 'share of the torque, about 0.2 as received', '0.2'),
    pure('friction', 'friction of the clamped faces', '0.12'),
    pure('interfaces', 'faces that must slip', '1'),
  ],
  run: (inputs) => {
    const joint = {
      diameter: number(inputs, 'diameter'),
      torque: number(inputs, 'torque'),
      nutFactor: number(inputs, 'nut-factor'),
      friction: number(inputs, 'friction'),
      interfaces: number(inputs, 'interfaces'),
    };
    return made(boltPreload(joint), 'Bolt preload and slip', (found) => boltPreloadSteps(joint, found), {
      cautions: [frameCautions.joints],
    });
  },
};

const panel: Topic = {
  name: 'groove-panel',
  about: 'cut size of a panel in grooves, its hold and its growth',
  inputs: [
    quantity('opening', 'length', 'clear opening between the bars'),
    quantity('groove', 'length', 'depth of the groove'),
    quantity('clearance', 'length', 'free room at each end'),
    quantity('change', 'temperature difference', 'change of temperature', '15 K'),
    quantity('panel-expansion', 'expansion', 'expansion of the panel; acrylic when left out', '70e-6 /K'),
    expansion,
  ],
  run: (inputs) => {
    const sheet = {
      clearOpening: number(inputs, 'opening'),
      grooveDepth: number(inputs, 'groove'),
      endClearance: number(inputs, 'clearance'),
      temperatureChange: number(inputs, 'change'),
      panelExpansion: number(inputs, 'panel-expansion'),
      frameExpansion: number(inputs, 'expansion'),
    };
    return made(groovePanel(sheet), 'Panel in grooves', (found) => groovePanelSteps(sheet, found), {
      assumptions: ['Tolerances of cut and frame come on top.'],
    });
  },
};

const thermal: Topic = {
  name: 'thermal-growth',
  about: 'growth of a bar that gets warmer, and the stress when it is held',
  inputs: [
    quantity('length', 'length', 'length'),
    quantity('change', 'temperature difference', 'change of temperature'),
    expansion,
    elasticity,
  ],
  run: (inputs) => {
    const bar = {
      length: number(inputs, 'length'),
      temperatureChange: number(inputs, 'change'),
      expansion: number(inputs, 'expansion'),
      elasticity: number(inputs, 'elasticity'),
    };
    return made(thermalGrowth(bar), 'Thermal growth', (found) => thermalGrowthSteps(bar, found));
  },
};

const vibration: Topic = {
  name: 'transmissibility',
  about: 'share of a floor vibration that reaches an isolated mass',
  inputs: [
    quantity('frequency', 'frequency', 'frequency of the floor or fan'),
    quantity('natural-frequency', 'frequency', 'natural frequency of the isolated mass'),
    pure('damping', 'share of critical damping', '0.03'),
  ],
  run: (inputs) => {
    const mass = {
      frequency: number(inputs, 'frequency'),
      naturalFrequency: number(inputs, 'natural-frequency'),
      damping: number(inputs, 'damping'),
    };
    return made(baseTransmissibility(mass), 'Transmissibility', (found) => transmissibilitySteps(mass, found));
  },
};

/** Calculations of frames that stand without a project. */
export const frameTopics: readonly Topic[] = [beam, hollow, tipping, feet, buckling, bolt, panel, thermal, vibration];
