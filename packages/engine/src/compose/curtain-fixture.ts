import type { Catalogue, Item } from '../catalogue/schema.js';
import type { RuleId } from '../rules/known.js';
import type { Rule, SiteRules } from '../rules/schema.js';

/** A small invented catalogue and rule set for the tests of curtain runs; no part here is a real product. */

const eur = (amount: string) => ({ amount, currency: 'EUR' });
const piece = (id: string, price: string, mass: number) => ({ id, name: id, price: eur(price), mass });
const system = 'rail';

const support = (id: string, hung: string, reach: readonly [number, number], price: string) => ({
  ...piece(id, price, 0.3),
  kind: 'track support',
  system,
  hung,
  reach,
  capacity: 1500,
  capacityFactor: 3,
  size: [0.06, 0.04, 0.3],
  needs: [{ item: 'screw', count: 2 }],
});

const items = [
  {
    id: 'rail',
    name: 'Track',
    kind: 'track',
    system,
    size: [0.03, 0.02],
    massPerLength: 0.7,
    stock: [
      { length: 1, price: eur('14.00') },
      { length: 2, price: eur('26.00') },
      { length: 3, price: eur('37.00') },
    ],
    secondMoment: 1e-8,
    secondMomentNote: 'invented',
    runnerDrop: 0.03,
    supportSpacing: { ceiling: 1, wall: 1, 'floor post': 1.2, frame: 1, shelf: 1 },
    shortestPiece: 0.3,
  },
  { ...piece('curve-300', '20.00', 0.4), kind: 'track curve', system, radius: 0.3, angle: Math.PI / 2 },
  { ...piece('curve-600', '30.00', 0.8), kind: 'track curve', system, radius: 0.6, angle: Math.PI / 2 },
  {
    ...piece('inline', '4.00', 0.1),
    kind: 'track connector',
    system,
    ways: 2,
    angle: 0,
    passesRunners: true,
    size: [0.1, 0.03, 0.03],
  },
  {
    ...piece('corner', '9.00', 0.2),
    kind: 'track connector',
    system,
    ways: 2,
    angle: Math.PI / 2,
    passesRunners: false,
    size: [0.1, 0.1, 0.03],
  },
  { ...piece('stop', '2.00', 0.02), kind: 'end stop', system, length: 0.02 },
  { ...piece('runner', '0.60', 0.01), kind: 'runner', system, length: 0.03, pitch: 0.15, capacity: 2, packSize: 10 },
  support('rod-500', 'ceiling', [0.1, 0.5], '12.00'),
  support('rod-1000', 'ceiling', [0.3, 1], '15.00'),
  support('post', 'floor post', [1.8, 2.6], '70.00'),
  support('bracket', 'wall', [0, 0.2], '9.00'),
  support('clamp', 'frame', [0, 0.1], '7.00'),
  support('shelf-post', 'shelf', [0.3, 1], '30.00'),
  { ...piece('screw', '0.10', 0.01), kind: 'screw', packSize: 50 },
  {
    id: 'hem-chain',
    name: 'Hem weight',
    kind: 'hem weight',
    massPerLength: 0.2,
    stockLengths: [10],
    price: eur('3.00'),
  },
  {
    id: 'barrier',
    name: 'Barrier cloth',
    kind: 'cloth',
    purpose: 'laser barrier',
    joining: 'magnets',
    jointLoss: 0,
    massPerArea: 0.8,
    thickness: 0.001,
    hem: { height: 0.06, massPerLength: 0.2 },
    widths: [0.5, 0.6, 0.75, 1, 1.5, 2].map((width) => ({ width, price: eur((width * 100).toFixed(2)) })),
    drops: [0.8, 2.1, 2.4, 2.8],
    ratings: [],
    fireClass: 'class 1 (invented)',
  },
  {
    id: 'dark',
    name: 'Blackout cloth',
    kind: 'cloth',
    purpose: 'blackout',
    joining: 'overlap',
    jointLoss: 0.04,
    massPerArea: 0.3,
    thickness: 0.0005,
    hem: { height: 0.06, massPerLength: 0 },
    widths: [1, 1.2].map((width) => ({ width, price: eur((width * 50).toFixed(2)) })),
    drops: [0.6, 0.8, 2.4],
    ratings: [],
  },
] as unknown as readonly Item[];

export const curtainCatalogue: Catalogue = {
  items,
  byId: new Map(items.map((i) => [i.id, i])),
  currency: 'EUR',
  priceDate: '2026-01-01',
  priceBasis: 'invented',
  invented: true,
  hash: 'fixture',
};

const values: Partial<Record<RuleId, number>> = {
  'curtain.fullness-low': 0.07,
  'curtain.fullness-high': 0.1,
  'curtain.end-distance': 0.2,
  'curtain.joint-distance': 0.15,
  'curtain.hem-gap': 0.015,
  'curtain.hem-gap-most': 0.025,
  'curtain.overlap': 0.3,
  'curtain.pull': 200,
  'curtain.to-table': 0.15,
  'frame.track-deflection': 360,
};

const rule = (id: RuleId, value: number): Rule => ({
  id,
  meaning: id,
  value,
  written: String(value),
  source: { work: 'fixture', mark: 'invented' },
});

export const curtainRules: SiteRules = {
  profile: 'fixture',
  title: 'fixture',
  jurisdiction: 'none',
  caution: 'invented',
  byId: Object.fromEntries(Object.entries(values).map(([id, v]) => [id, rule(id as RuleId, v)])) as SiteRules['byId'],
  hash: 'fixture',
};
