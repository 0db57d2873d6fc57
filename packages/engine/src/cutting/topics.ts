import { type Outcome, ok } from '../floor/problem.js';
import type { Topic, TopicArguments, TopicInput } from '../floor/topic.js';
import { barPlanCalculation, sheetPlanCalculation } from './calculations.js';
import { planBars } from './plan-bars.js';
import { planSheets } from './plan-sheets.js';
import type { BarRequest, SheetRequest } from './types.js';

const length = { dimension: 'length' } as const;
const number = { number: true } as const;
const numbers = [1, 2, 3, 4] as const;

const lengthOf = (inputs: TopicArguments, name: string): number => inputs[name] as number;
const given = (inputs: TopicArguments, name: string): boolean => typeof inputs[name] === 'number';

const allowances: readonly TopicInput[] = [
  { name: 'kerf', about: 'width of the saw cut', shape: length, default: '4 mm' },
  { name: 'trim', about: 'cut off each end or edge first', shape: length, default: '0 mm' },
];

const barTopic: Topic = {
  name: 'cut-bars',
  about: 'fewest bars for up to four lengths, with kerf',
  inputs: [
    { name: 'bar', about: 'length of a bar', shape: length },
    { name: 'bar-2', about: 'second stock length', shape: length, optional: true },
    ...numbers.flatMap((i): TopicInput[] => [
      { name: `length-${i}`, about: `length ${i} to cut`, shape: length, ...(i > 1 ? { optional: true } : {}) },
      { name: `count-${i}`, about: `how many of length ${i}`, shape: number, ...(i > 1 ? { default: '1' } : {}) },
    ]),
    ...allowances,
  ],
  run: (inputs): Outcome<ReturnType<typeof barPlanCalculation>> => {
    const bars = ['bar', 'bar-2'].filter((name) => given(inputs, name));
    const request: BarRequest = {
      pieces: numbers
        .filter((i) => given(inputs, `length-${i}`))
        .map((i) => ({
          mark: `length ${i}`,
          length: lengthOf(inputs, `length-${i}`),
          count: given(inputs, `count-${i}`) ? lengthOf(inputs, `count-${i}`) : 1,
        })),
      stock: bars.map((name) => ({ length: lengthOf(inputs, name) })),
      kerf: lengthOf(inputs, 'kerf'),
      trim: lengthOf(inputs, 'trim'),
      aim: bars.length === 1 ? 'bars' : 'length',
    };
    const plan = planBars(request);
    return plan.ok ? ok(barPlanCalculation('Cutting bars', request, plan.value)) : plan;
  },
};

const sheetTopic: Topic = {
  name: 'cut-sheets',
  about: 'fewest sheets for up to four panel sizes, straight through cuts',
  inputs: [
    { name: 'sheet-width', about: 'first side of the sheet', shape: length },
    { name: 'sheet-height', about: 'second side of the sheet', shape: length },
    ...numbers.flatMap((i): TopicInput[] => {
      const optional = i > 1 ? ({ optional: true } as const) : {};
      return [
        { name: `width-${i}`, about: `width of panel ${i}`, shape: length, ...optional },
        { name: `height-${i}`, about: `height of panel ${i}`, shape: length, ...optional },
        { name: `count-${i}`, about: `how many of panel ${i}`, shape: number, ...(i > 1 ? { default: '1' } : {}) },
      ];
    }),
    { name: 'turning', about: 'panels may be turned', shape: { choice: ['yes', 'no'] }, default: 'no' },
    ...allowances,
  ],
  run: (inputs): Outcome<ReturnType<typeof sheetPlanCalculation>> => {
    const request: SheetRequest = {
      pieces: numbers
        .filter((i) => given(inputs, `width-${i}`) && given(inputs, `height-${i}`))
        .map((i) => ({
          mark: `panel ${i}`,
          width: lengthOf(inputs, `width-${i}`),
          height: lengthOf(inputs, `height-${i}`),
          count: given(inputs, `count-${i}`) ? lengthOf(inputs, `count-${i}`) : 1,
        })),
      sheet: [lengthOf(inputs, 'sheet-width'), lengthOf(inputs, 'sheet-height')],
      kerf: lengthOf(inputs, 'kerf'),
      trim: lengthOf(inputs, 'trim'),
      rotation: inputs.turning === 'yes',
    };
    const plan = planSheets(request);
    return plan.ok ? ok(sheetPlanCalculation('Cutting sheets', request, plan.value)) : plan;
  },
};

export const cuttingTopics: readonly Topic[] = [barTopic, sheetTopic];
