import { type Calculation, calculation, fromStep, val } from '../floor/calculation.js';
import { type Outcome, ok } from '../floor/problem.js';
import { commonPractice, geometrySource, type Source, source } from '../floor/source.js';
import type { Topic, TopicArguments } from '../floor/topic.js';
import { cornerGeometry } from './corner.js';
import { curtainDrop } from './drop.js';
import { fewestSupports } from './fewest-supports.js';
import { overlapRay } from './overlap.js';
import { panelWidthBand } from './panel-width.js';
import { runMassPerLength } from './run-mass.js';
import { runnersOf } from './runners.js';
import { supportLoadBound } from './support-bound.js';
import { supportWindows } from './support-windows.js';
import { gravity, lightCautions, runnerRuleSource, supportCautions, tributaryFactor } from './tables.js';

const number = (inputs: TopicArguments, name: string): number => inputs[name] as number;
const length = { dimension: 'length' } as const;
const mm = (metres: number, name: string) => val(metres * 1000, 'mm', name);
const derived: Source = source('sum of masses', 'derived');

/** Turns the value of an outcome into a calculation, problems pass through. */
const shown = <T>(outcome: Outcome<T>, show: (value: T) => Calculation): Outcome<Calculation> =>
  outcome.ok ? ok(show(outcome.value)) : outcome;

const width: Topic = {
  name: 'curtain-width',
  about: 'least and largest flat width of the panels over a length of track',
  inputs: [
    { name: 'length', about: 'track covered by the curtain', shape: length },
    { name: 'extra-low', about: 'least extra width', shape: { dimension: 'ratio' }, default: '7 %' },
    { name: 'extra-high', about: 'largest extra width', shape: { dimension: 'ratio' }, default: '10 %' },
  ],
  run: (inputs) => {
    const L = number(inputs, 'length');
    const extraLow = number(inputs, 'extra-low');
    const extraHigh = number(inputs, 'extra-high');
    return shown(panelWidthBand(L, { extraLow, extraHigh }), ({ least, most }) =>
      calculation('Flat width of a curtain', [
        {
          symbol: 'b_least',
          name: 'least total width',
          expression: 'L * (1 + low)',
          values: { L: mm(L, 'covered track'), low: val(extraLow, '1', 'least extra width') },
          result: least * 1000,
          unit: 'mm',
          source: commonPractice,
        },
        {
          symbol: 'b_most',
          name: 'largest total width',
          expression: 'L * (1 + high)',
          values: { L: mm(L, 'covered track'), high: val(extraHigh, '1', 'largest extra width') },
          result: most * 1000,
          unit: 'mm',
          source: commonPractice,
        },
      ]),
    );
  },
};

const drop: Topic = {
  name: 'curtain-drop',
  about: 'finished height of a curtain and its gap at the low point of the floor',
  inputs: [
    { name: 'underside', about: 'underside of the track above the high point of the floor', shape: length },
    { name: 'runner-drop', about: 'from the underside of the track to the upper edge of the curtain', shape: length },
    { name: 'hem-gap', about: 'open height under the curtain at the high point of the floor', shape: length },
    { name: 'floor-fall', about: 'fall of the floor along the run', shape: length, default: '0 mm' },
  ],
  run: (inputs) => {
    const question = {
      underside: number(inputs, 'underside'),
      runnerDrop: number(inputs, 'runner-drop'),
      hemGap: number(inputs, 'hem-gap'),
      floorFall: number(inputs, 'floor-fall'),
    };
    return shown(curtainDrop(question), (found) =>
      calculation('Height of a curtain', [
        {
          symbol: 'H',
          name: 'finished height of the curtain',
          expression: 'u - r - h',
          values: {
            u: mm(question.underside, 'underside of the track'),
            r: mm(question.runnerDrop, 'runner drop'),
            h: mm(question.hemGap, 'hem gap'),
          },
          result: found.drop * 1000,
          unit: 'mm',
          source: geometrySource,
        },
        {
          symbol: 'h_low',
          name: 'hem gap at the low point of the floor',
          expression: 'h + f',
          values: { h: mm(question.hemGap, 'hem gap'), f: mm(question.floorFall, 'fall of the floor') },
          result: found.lowGap * 1000,
          unit: 'mm',
          source: geometrySource,
        },
      ]),
    );
  },
};

const stack: Topic = {
  name: 'curtain-stack',
  about: 'runners of a panel and the track that it takes pushed together',
  inputs: [
    { name: 'width', about: 'width of the panel', shape: length },
    { name: 'pitch', about: 'largest distance between runners', shape: length, default: '150 mm' },
    { name: 'runner-length', about: 'length of a runner along the track', shape: length },
    { name: 'thickness', about: 'thickness of the cloth', shape: length },
    { name: 'end-stop', about: 'length of the end stop', shape: length, default: '0 mm' },
  ],
  run: (inputs) => {
    const question = {
      width: number(inputs, 'width'),
      pitch: number(inputs, 'pitch'),
      runnerLength: number(inputs, 'runner-length'),
      thickness: number(inputs, 'thickness'),
      endStop: number(inputs, 'end-stop'),
    };
    return shown(runnersOf(question), (found) => {
      const gaps = {
        symbol: 'g',
        name: 'gaps between runners',
        expression: 'ceil(b / p)',
        values: { b: mm(question.width, 'panel width'), p: mm(question.pitch, 'largest pitch') },
        result: found.gaps,
        unit: '1',
        source: runnerRuleSource,
      };
      const runners = {
        symbol: 'n',
        name: 'runners',
        expression: 'g + 1',
        values: { g: fromStep(gaps) },
        result: found.runners,
        unit: '1',
        source: runnerRuleSource,
      };
      return calculation('Runners and stack-back', [
        gaps,
        runners,
        {
          symbol: 's',
          name: 'stack-back',
          expression: 'max(n * l, 2 * t * g) + e',
          values: {
            n: fromStep(runners),
            l: mm(question.runnerLength, 'runner length'),
            t: mm(question.thickness, 'thickness of the cloth'),
            g: fromStep(gaps),
            e: mm(question.endStop, 'end stop'),
          },
          result: found.stackBack * 1000,
          unit: 'mm',
          source: runnerRuleSource,
        },
      ]);
    });
  },
};

const corner: Topic = {
  name: 'curtain-corner',
  about: 'straights, bend and path of a track round a corner',
  inputs: [
    { name: 'leg-a', about: 'first leg, to the sharp corner', shape: length },
    { name: 'leg-b', about: 'second leg, to the sharp corner', shape: length },
    { name: 'radius', about: 'radius of the centre line of the bend', shape: length },
    { name: 'angle', about: 'angle by which the track turns', shape: { dimension: 'angle' }, default: '90 deg' },
  ],
  run: (inputs) => {
    const question = {
      legA: number(inputs, 'leg-a'),
      legB: number(inputs, 'leg-b'),
      radius: number(inputs, 'radius'),
      angle: number(inputs, 'angle'),
    };
    return shown(cornerGeometry(question), (found) => {
      const R = mm(question.radius, 'radius of the bend');
      const angle = val((question.angle * 180) / Math.PI, 'deg', 'angle by which the track turns');
      const straight = (symbol: string, leg: number, result: number) => ({
        symbol,
        name: 'straight part of the leg',
        expression: 'leg - R * tan(angle * pi / 360)',
        values: { leg: mm(leg, 'leg to the sharp corner'), R, angle },
        result: result * 1000,
        unit: 'mm',
        source: geometrySource,
      });
      const a = straight('s_a', question.legA, found.straightA);
      const b = straight('s_b', question.legB, found.straightB);
      const bend = {
        symbol: 'c',
        name: 'length of the bend',
        expression: 'R * angle * pi / 180',
        values: { R, angle },
        result: found.bend * 1000,
        unit: 'mm',
        source: geometrySource,
      };
      return calculation('Track round a corner', [
        a,
        b,
        bend,
        {
          symbol: 'path',
          name: 'length of the path',
          expression: 's_a + s_b + c',
          values: { s_a: fromStep(a), s_b: fromStep(b), c: fromStep(bend) },
          result: found.path * 1000,
          unit: 'mm',
          source: geometrySource,
        },
      ]);
    });
  },
};

const overlap: Topic = {
  name: 'curtain-overlap',
  about: 'steepest straight ray that two overlapping layers let through',
  inputs: [
    { name: 'overlap', about: 'lap of the two layers', shape: length },
    { name: 'spacing', about: 'distance of the two layers', shape: length },
  ],
  run: (inputs) => {
    const v = number(inputs, 'overlap');
    const a = number(inputs, 'spacing');
    return shown(overlapRay(v, a), (found) =>
      calculation(
        'Rays through an overlap',
        [
          {
            symbol: 'alpha',
            name: 'least angle of a ray to the normal of the curtain',
            expression: 'atan(v / a) * 180 / pi',
            values: { v: mm(v, 'overlap'), a: mm(a, 'distance of the layers') },
            result: (found.fromNormal * 180) / Math.PI,
            unit: 'deg',
            source: geometrySource,
          },
        ],
        {
          assumptions: [
            'Flat, parallel, opaque layers; straight rays in plan. Scatter and reflection between the layers are not covered.',
          ],
          cautions: lightCautions,
        },
      ),
    );
  },
};

const mass: Topic = {
  name: 'curtain-mass',
  about: 'mass per length of track with the curtain drawn, and the load of one support by the site bound',
  inputs: [
    { name: 'track', about: 'mass of the track', shape: { dimension: 'mass per length' } },
    { name: 'cloth', about: 'mass of the cloth', shape: { dimension: 'mass per area' } },
    { name: 'drop', about: 'height of the curtain', shape: length },
    { name: 'extra', about: 'extra width of the curtain', shape: { dimension: 'ratio' }, default: '10 %' },
    { name: 'hem', about: 'mass of the hem', shape: { dimension: 'mass per length' }, default: '0 kg/m' },
    { name: 'runner', about: 'mass of a runner', shape: { dimension: 'mass' }, default: '0 kg' },
    { name: 'pitch', about: 'distance between runners', shape: length, default: '150 mm' },
    { name: 'spacing', about: 'distance between supports', shape: length, default: '1 m' },
    { name: 'pull', about: 'pull of a person', shape: { dimension: 'force' }, default: '200 N' },
  ],
  run: (inputs) => {
    const q = {
      track: number(inputs, 'track'),
      runner: number(inputs, 'runner'),
      pitch: number(inputs, 'pitch'),
      fullness: 1 + number(inputs, 'extra'),
      cloth: number(inputs, 'cloth'),
      hem: number(inputs, 'hem'),
      drop: number(inputs, 'drop'),
    };
    const perLength = runMassPerLength(q);
    if (!perLength.ok) return perLength;
    const w = perLength.value.total * gravity.value;
    const spacing = number(inputs, 'spacing');
    const pull = number(inputs, 'pull');
    return shown(supportLoadBound(w, spacing, pull), (bound) => {
      const m = {
        symbol: 'm',
        name: 'mass per length',
        expression: 'm_t + k * (m_c * H + m_h + m_r / p)',
        values: {
          m_t: val(q.track, 'kg/m', 'track'),
          k: val(q.fullness, '1', 'cloth width per track length'),
          m_c: val(q.cloth, 'kg/m2', 'cloth'),
          H: val(q.drop, 'm', 'height of the curtain'),
          m_h: val(q.hem, 'kg/m', 'hem'),
          m_r: val(q.runner, 'kg', 'runner'),
          p: val(q.pitch, 'm', 'runner pitch'),
        },
        result: perLength.value.total,
        unit: 'kg/m',
        source: derived,
      };
      const load = {
        symbol: 'w',
        name: 'weight per length',
        expression: 'm * g',
        values: { m: fromStep(m), g: val(gravity.value, 'm/s2', 'free fall') },
        result: w,
        unit: 'N/m',
        source: gravity.source,
      };
      return calculation(
        'Weight of a curtain run',
        [
          m,
          load,
          {
            symbol: 'R',
            name: 'bound of the load on one support',
            expression: 'f * w * l + P',
            values: {
              f: val(tributaryFactor.value, '1', 'factor on the tributary length'),
              w: fromStep(load),
              l: val(spacing, 'm', 'support spacing'),
              P: val(pull, 'N', 'pull of a person'),
            },
            result: bound,
            unit: 'N',
            source: tributaryFactor.source,
          },
        ],
        {
          assumptions: ['Curtain drawn along the whole track; pushed together it loads single supports more.'],
          cautions: supportCautions,
        },
      );
    });
  },
};

const supports: Topic = {
  name: 'curtain-supports',
  about: 'fewest supports of a straight track without joints',
  inputs: [
    { name: 'length', about: 'length of the track', shape: length },
    { name: 'spacing', about: 'largest distance between supports', shape: length, default: '1 m' },
    {
      name: 'end-distance',
      about: 'largest distance of the outer supports to the ends',
      shape: length,
      default: '200 mm',
    },
  ],
  run: (inputs) => {
    const L = number(inputs, 'length');
    const spacing = number(inputs, 'spacing');
    const endDistance = number(inputs, 'end-distance');
    const windows = supportWindows({ length: L, endDistance, joints: [], jointDistance: 0, required: [] });
    if (!windows.ok) return windows;
    return shown(fewestSupports({ length: L, spacing, windows: windows.value, forbidden: [] }), (places) =>
      calculation(
        'Supports of a track',
        [
          {
            symbol: 'n',
            name: 'fewest supports',
            expression: 'max(0, ceil((L - 2 * e) / s)) + 1',
            values: {
              L: mm(L, 'length of the track'),
              e: mm(endDistance, 'largest end distance'),
              s: mm(spacing, 'largest spacing'),
            },
            result: places.length,
            unit: '1',
            source: commonPractice,
          },
        ],
        { assumptions: ['No joints, no places where a support is forbidden.'], cautions: supportCautions },
      ),
    );
  },
};

/** Calculations on curtain runs that stand without a project. */
export const curtainTopics: readonly Topic[] = [width, drop, stack, corner, overlap, mass, supports];
