import type { Calculation, Discipline, Finding } from '@cloche/engine';

/** Two seconds of echo in an invented room; the figures stand for nothing. */
const echo: Calculation = {
  title: 'Echo of the room',
  steps: [
    {
      symbol: 'T',
      name: 'time of the echo',
      expression: '4*a',
      values: { a: { value: 0.5, unit: 's' } },
      result: 2,
      unit: 's',
      source: { work: 'nothing', mark: 'invented' },
    },
  ],
  assumptions: [],
  cautions: [],
};

const finding = (id: string): Finding => ({
  id,
  discipline: 'sound',
  subject: 'room',
  requirement: 'The room echoes for a short time',
  verdict: 'attention',
  message: 'The room echoes for 2 s.',
  demand: 2,
  capacity: 2,
  unit: 's',
  utilisation: 1,
  calculation: echo,
  source: { work: 'nothing', mark: 'invented' },
  decider: 'group',
  required: false,
  cautions: [],
  asks: [],
  at: [1, 1],
});

/** A discipline for tests that is named nowhere but in a list of disciplines. */
export const sound: Discipline = {
  id: 'sound',
  title: 'Acoustics',
  light: [() => [finding('sound/echo/room')]],
  heavy: [() => [finding('sound/slow-echo/room')]],
  overlays: [
    {
      id: 'sound/echo',
      discipline: 'sound',
      title: 'Echo',
      key: 'E',
      legend: [{ style: 'reach', means: 'where it echoes' }],
      limits: 'Invented.',
      draw: (_, findings) => [
        { mark: 'circle', style: 'reach', centre: [1, 1], radius: findings.get('sound/echo/room')?.demand ?? 0 },
      ],
    },
  ],
  topics: [{ name: 'echo-time', about: 'time of an echo', inputs: [], run: () => ({ ok: true, value: echo }) }],
};
