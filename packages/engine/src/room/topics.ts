import { type Calculation, calculation, val } from '../floor/calculation.js';
import { type Outcome, ok } from '../floor/problem.js';
import type { Topic, TopicArguments, TopicInput } from '../floor/topic.js';
import { swingArea } from './door-swing.js';
import { seenInterval, stripSourceWidths } from './sight-gap.js';
import { roomCautions, roomSources, type WorkingSpaceCondition } from './tables.js';
import { workingSpace } from './working-space.js';

const length = { dimension: 'length' } as const;
const at = (inputs: TopicArguments, name: string): number => inputs[name] as number;
const lengthInput = (name: string, about: string, text?: string): TopicInput =>
  text === undefined ? { name, about, shape: length } : { name, about, shape: length, default: text };

const doorTopic: Topic = {
  name: 'door-swing',
  about: 'floor area that a door leaf sweeps',
  inputs: [
    lengthInput('leaf', 'width of the leaf'),
    { name: 'angle', about: 'how far it opens', shape: { dimension: 'angle' }, default: '90 deg' },
  ],
  run: (inputs): Outcome<Calculation> => {
    const [leaf, angle] = [at(inputs, 'leaf'), at(inputs, 'angle')];
    const area = swingArea({ hinge: [0, 0], leaf, from: 0, to: angle });
    if (!area.ok) return area;
    return ok(
      calculation(
        'Swing of a door',
        [
          {
            symbol: 'A',
            name: 'floor area that the leaf sweeps',
            expression: 'r^2*a*pi/180/2',
            values: { r: val(leaf, 'm', 'leaf width'), a: val((angle * 180) / Math.PI, 'deg', 'opening angle') },
            result: area.value,
            unit: 'm2',
            source: roomSources.doorSwing,
          },
        ],
        { cautions: [roomCautions.plan] },
      ),
    );
  },
};

const boardTopic: Topic = {
  name: 'board-space',
  about: 'clear depth before an electrical board, 600 V to ground or less',
  inputs: [
    { name: 'voltage', about: 'voltage to ground', shape: { dimension: 'voltage' } },
    {
      name: 'opposite',
      about: 'what stands opposite: A nothing grounded, B grounded parts, C live parts',
      shape: { choice: ['A', 'B', 'C'] },
      default: 'B',
    },
  ],
  run: (inputs): Outcome<Calculation> => {
    const space = workingSpace(at(inputs, 'voltage'), inputs.opposite as WorkingSpaceCondition);
    if (!space.ok) return space;
    return ok(
      calculation(
        'Working space before a board',
        [
          {
            symbol: 'D',
            name: 'clear depth',
            expression: 'f*0.3048',
            values: {
              f: val(space.value.depthFeet, 'ft', `table, ${at(inputs, 'voltage')} V, condition ${inputs.opposite}`),
            },
            result: space.value.depth,
            unit: 'm',
            source: roomSources.workingSpace,
          },
        ],
        { cautions: [roomCautions.electric] },
      ),
    );
  },
};

const sightTopic: Topic = {
  name: 'sight-through-gap',
  about: 'what a point source reaches through a gap, in plan',
  inputs: [
    lengthInput('to-barrier', 'from source to barrier'),
    lengthInput('to-screen', 'from source to screen, behind the barrier'),
    lengthInput('gap-from', 'lower end of the gap, measured from the line of the source'),
    lengthInput('gap-to', 'upper end of the gap'),
  ],
  run: (inputs): Outcome<Calculation> => {
    const [d, D] = [at(inputs, 'to-barrier'), at(inputs, 'to-screen')];
    const ends = [at(inputs, 'gap-from'), at(inputs, 'gap-to')] as const;
    const seen = seenInterval({ source: [0, 0], barrierX: d, gap: ends }, D);
    if (!seen.ok) return seen;
    const steps = (['lower', 'upper'] as const).map((end, i) => ({
      symbol: `Y${i + 1}`,
      name: `${end} end of what is seen on the screen`,
      expression: 'y*D/d',
      values: {
        y: val(ends[i]! * 1000, 'mm', `${end} end of the gap`),
        D: val(D, 'm', 'source to screen'),
        d: val(d, 'm', 'source to barrier'),
      },
      result: seen.value[i]! * 1000,
      unit: 'mm',
      source: roomSources.similarTriangles,
    }));
    return ok(calculation('Direct sight through a gap', steps, { cautions: [roomCautions.sight] }));
  },
};

const stripTopic: Topic = {
  name: 'strip-source-through-gap',
  about: 'what a strip of light reaches through a gap, in plan',
  inputs: [
    lengthInput('source-width', 'width of the strip'),
    lengthInput('source-to-gap', 'from the strip to the gap'),
    lengthInput('gap', 'width of the gap'),
    lengthInput('gap-to-screen', 'from the gap to the screen'),
  ],
  run: (inputs): Outcome<Calculation> => {
    const strip = {
      sourceWidth: at(inputs, 'source-width'),
      sourceToGap: at(inputs, 'source-to-gap'),
      gapWidth: at(inputs, 'gap'),
      gapToScreen: at(inputs, 'gap-to-screen'),
    };
    const widths = stripSourceWidths(strip);
    if (!widths.ok) return widths;
    const values = {
      w: val(strip.sourceWidth * 1000, 'mm', 'width of the strip'),
      d: val(strip.sourceToGap, 'm', 'strip to gap'),
      g: val(strip.gapWidth * 1000, 'mm', 'gap'),
      D: val(strip.gapToScreen, 'm', 'gap to screen'),
    };
    const step = (symbol: string, name: string, expression: string, metres: number) => ({
      symbol,
      name,
      expression,
      values,
      result: metres * 1000,
      unit: 'mm',
      source: roomSources.similarTriangles,
    });
    return ok(
      calculation(
        'Strip source through a gap',
        [
          step('S1', 'width that some point of the strip reaches', 'g + (g + w)*D/d', widths.value.some),
          step('S2', 'width that every point of the strip reaches', 'max(0, g - (w - g)*D/d)', widths.value.every),
        ],
        { cautions: [roomCautions.sight] },
      ),
    );
  },
};

export const roomTopics: readonly Topic[] = [doorTopic, boardTopic, sightTopic, stripTopic];
