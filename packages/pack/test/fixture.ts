import type {
  Catalogue,
  Design,
  Finding,
  Item,
  Part,
  PartGroup,
  PartRole,
  SiteRules,
  Vec2,
  Vec3,
} from '@cloche/engine';
import { calculation, commonPractice, rectangle, source, val } from '@cloche/engine';

/** An invented room with one table, one enclosure, one partition and one laser. Hand-made: no real room, part or price. */

const invented = source('demo catalogue', 'invented');
const item = (raw: object): Item => raw as Item;

const items: Item[] = [
  item({ id: 'bar-40', name: 'Profile, 40 x 40', kind: 'profile', size: [0.04, 0.04], alloy: 'EN AW-6063 T66', slot: { width: 0.008, depth: 0.012, series: '40' }, massPerLength: 1.6, stockLengths: [6], price: { amount: '9.80', currency: 'EUR' } }),
  item({ id: 'corner-40', name: 'Bracket, angle, 40', kind: 'angle bracket', series: '40', size: [0.04, 0.04, 0.04], mass: 0.09, price: { amount: '2.35', currency: 'EUR' } }),
  item({ id: 'screw-m8', name: 'Screw, M8 x 20', kind: 'screw', mass: 0.012, packSize: 50, price: { amount: '0.22', currency: 'EUR' } }),
  item({ id: 'foot-40', name: 'Foot, levelling', kind: 'levelling foot', series: '40', size: [0.06, 0.06, 0.08], height: 0.06, capacity: 300, mass: 0.3, price: { amount: '7.90', currency: 'EUR' } }),
  item({ id: 'ffu-1200', name: 'Fan filter unit, 1200 x 600', kind: 'fan filter unit', size: [1.2, 0.6, 0.32], filterClass: 'H14', mass: 28, price: { amount: '940.00', currency: 'EUR' } }),
  item({ id: 'rail-c', name: 'Curtain track', kind: 'track', system: 'c', size: [0.03, 0.03], massPerLength: 0.7, stock: [{ length: 3, price: { amount: '36.00', currency: 'EUR' } }, { length: 1.5, price: { amount: '20.00', currency: 'EUR' } }] }),
  item({ id: 'runner-c', name: 'Runner', kind: 'runner', system: 'c', mass: 0.01, packSize: 10, price: { amount: '0.80', currency: 'EUR' } }),
  item({ id: 'cloth-b', name: '=Cloth, laser barrier', kind: 'cloth', purpose: 'laser barrier', massPerArea: 0.6, widths: [{ width: 1.2, price: { amount: '310.50', currency: 'EUR' } }], drops: [2.6] }),
  item({ id: 'sheet-6', name: 'Sheet, clear', kind: 'sheet', material: 'PMMA', thickness: 0.006, massPerArea: 7.1, sheetSize: [2, 1], transparent: true }),
  item({ id: 'sign-lit', name: 'Sign, laser, lit', kind: 'sign', lit: true, size: [0.3, 0.2], mass: 1.1, price: { amount: '185.00', currency: 'EUR' } }),
  item({ id: 'stop-red', name: 'Button, emergency stop', kind: 'interlock part', role: 'stop button', mass: 0.2, price: { amount: '49.00', currency: 'EUR' } }),
  item({ id: 'contact-d', name: 'Contact, door', kind: 'interlock part', role: 'door contact', mass: 0.1, price: { amount: '31.00', currency: 'EUR' } }),
]; // biome-ignore format: one item a line

export const catalogue: Catalogue = {
  items,
  byId: new Map(items.map((i) => [i.id, i])),
  currency: 'EUR',
  priceDate: '2026-01-15',
  priceBasis: 'invented, without tax',
  invented: true,
  hash: 'sha256:0',
};

export const rules = {
  profile: 'demo',
  title: 'Demo site rules',
  jurisdiction: 'none',
  caution: 'Invented rules; ask the authority.',
  byId: {
    'parts.fastener-spare': { id: 'parts.fastener-spare', meaning: 'spare fasteners', value: 0.05, written: '5 %', source: commonPractice },
    'parts.runner-spare': { id: 'parts.runner-spare', meaning: 'spare runners', value: 0.05, written: '5 %', source: commonPractice },
    'cutting.kerf': { id: 'cutting.kerf', meaning: 'width of the saw cut', value: 0.004, written: '4 mm', source: commonPractice },
    'cutting.trim': { id: 'cutting.trim', meaning: 'trimmed from each end of a bar', value: 0.01, written: '10 mm', source: commonPractice },
    'cutting.useful-offcut': { id: 'cutting.useful-offcut', meaning: 'shortest off-cut that is worth keeping', value: 0.3, written: '300 mm', source: commonPractice },
  },
  hash: 'sha256:1',
} as unknown as SiteRules; // biome-ignore format: one rule a line

const placed = (because: string) => ({ rule: 'test.fixture', because });
const table: Vec2 = [3.0, 2.6];
const frame = { length: 3.6, width: 2.1, top: 2.4 };

interface PartSpec {
  readonly id: string;
  readonly item: string;
  readonly group: PartGroup;
  readonly role: PartRole;
  readonly of: string;
  readonly shape: Part['shape'];
  readonly mass: number;
  readonly count?: number;
  readonly mark?: string;
  readonly length?: number;
  readonly width?: number;
  readonly thickness?: number;
}
const part = (spec: PartSpec): Part => ({ count: 1, placed: placed(`A ${spec.role} belongs to ${spec.of}.`), ...spec });

const x = [table[0] - frame.length / 2 + 0.02, table[0] + frame.length / 2 - 0.02] as const;
const y = [table[1] - frame.width / 2 + 0.02, table[1] + frame.width / 2 - 0.02] as const;
const bar = (from: Vec3, to: Vec3): Part['shape'] => ({ shape: 'bar', from, to, width: 0.04, height: 0.04 });

const posts = x.flatMap((px, i) =>
  y.map((py, j) =>
    part({ id: `box-post-${i}${j}`, item: 'bar-40', group: 'profiles', role: 'post', of: 'box', mark: 'P1', shape: bar([px, py, 0.06], [px, py, frame.top]), length: 2.34, mass: 3.744 }),
  ),
); // biome-ignore format: fixture
const beams = [
  ...y.map((py, j) => part({ id: `box-beam-${j}`, item: 'bar-40', group: 'profiles', role: 'beam', of: 'box', mark: 'B1', shape: bar([x[0] + 0.02, py, 2.38], [x[1] - 0.02, py, 2.38]), length: 3.52, mass: 5.632 })),
  ...x.map((px, i) => part({ id: `box-end-${i}`, item: 'bar-40', group: 'profiles', role: 'beam', of: 'box', mark: 'B2', shape: bar([px, y[0] + 0.02, 2.38], [px, y[1] - 0.02, 2.38]), length: 2.02, mass: 3.232 })),
  part({ id: 'box-cross', item: 'bar-40', group: 'profiles', role: 'cross beam', of: 'box', mark: 'B2', shape: bar([3.0, y[0] + 0.02, 2.38], [3.0, y[1] - 0.02, 2.38]), length: 2.02, mass: 3.232 }),
]; // biome-ignore format: fixture
const loose = [
  part({ id: 'box-brackets', item: 'corner-40', group: 'joints', role: 'joint', of: 'box', count: 20, shape: { shape: 'loose', at: [3, 2.6, 2.4] }, mass: 1.8 }),
  part({ id: 'box-screws', item: 'screw-m8', group: 'fasteners', role: 'fastener', of: 'box', count: 80, shape: { shape: 'loose', at: [3, 2.6, 2.4] }, mass: 0.96 }),
  part({ id: 'box-feet', item: 'foot-40', group: 'feet', role: 'foot', of: 'box', count: 4, shape: { shape: 'loose', at: [3, 2.6, 0] }, mass: 1.2 }),
  part({ id: 'wall-runners', item: 'runner-c', group: 'runners', role: 'runner', of: 'wall', count: 33, shape: { shape: 'loose', at: [5.6, 2, 2.7] }, mass: 0.33 }),
]; // biome-ignore format: fixture
const units = [2.1, 3.9].map((cx, i) =>
  part({ id: `box-unit-${i}`, item: 'ffu-1200', group: 'fan filter units', role: 'fan filter unit', of: 'box', mark: 'F1', shape: { shape: 'box', centre: [cx, 2.6, 2.56], length: 1.2, width: 0.6, height: 0.32, turn: 0 }, mass: 28 }),
); // biome-ignore format: fixture
const panel = part({ id: 'box-panel', item: 'sheet-6', group: 'panels', role: 'side panel', of: 'box', mark: 'S1', shape: { shape: 'plate', corners: [[1.22, 1.57, 0.1], [4.78, 1.57, 0.1], [4.78, 1.57, 1], [1.22, 1.57, 1]], thickness: 0.006 }, length: 1.75, width: 0.9, thickness: 0.006, count: 2, mass: 22.365 }); // biome-ignore format: fixture
const run = [
  part({ id: 'wall-track-0', item: 'rail-c', group: 'track', role: 'track', of: 'wall', mark: 'T1', shape: bar([5.6, 0, 2.7], [5.6, 3, 2.7]), length: 3, mass: 2.1 }),
  part({ id: 'wall-track-1', item: 'rail-c', group: 'track', role: 'track', of: 'wall', mark: 'T2', shape: bar([5.6, 3, 2.7], [5.6, 4.2, 2.7]), length: 1.2, mass: 0.84 }),
  ...[0, 1, 2, 3].map((i) => part({ id: `wall-panel-${i}`, item: 'cloth-b', group: 'curtains', role: 'curtain panel', of: 'wall', mark: 'C1', shape: { shape: 'cloth', line: [[5.6, i * 0.9], [5.6, i * 0.9 + 0.9]], top: 2.66, bottom: 0.06, fullness: 1.14 }, length: 2.6, width: 1.2, mass: 1.872 })),
]; // biome-ignore format: fixture
const devices = [
  part({ id: 'sign-1', item: 'sign-lit', group: 'signs', role: 'sign', of: 'door-1', shape: { shape: 'loose', at: [7.2, 3.6, 1.6] }, mass: 1.1 }),
  part({ id: 'stop-1', item: 'stop-red', group: 'interlocks', role: 'interlock', of: 'room', shape: { shape: 'loose', at: [5.2, 0.1, 1.1] }, mass: 0.2 }),
  part({ id: 'contact-1', item: 'contact-d', group: 'interlocks', role: 'interlock', of: 'door-1', shape: { shape: 'loose', at: [7.2, 4.4, 2] }, mass: 0.1 }),
]; // biome-ignore format: fixture

const corner = (at: Vec2): Vec2 => at;

export const design = {
  schema: 1,
  engine: '0.1.0',
  inputs: { brief: 'sha256:b', catalogue: 'sha256:0', rules: 'sha256:1' },
  project: {
    name: 'Demo laser room <A & B>',
    number: 'DEMO-001',
    owner: 'Example Institute (invented)',
    author: 'A. Example',
    contact: 'room 0.01',
    laserSafetyOfficer: '',
    invented: true,
    units: 'metric',
  },
  rules: { profile: 'demo', title: 'Demo site rules', jurisdiction: 'none', caution: 'Invented rules; ask the authority.' },
  room: {
    name: 'Laser room 0.14',
    outline: [[0, 0], [7.2, 0], [7.2, 5.4], [0, 5.4]],
    height: 3.1,
    ceiling: 'concrete',
    doors: [
      {
        id: 'door-1', name: 'D1', wall: 1, from: [7.2, 3.5], to: [7.2, 4.5], inward: [-1, 0], width: 1, bottom: 0, top: 2.1, swing: 'in', exit: true,
        leaves: [{ hinge: [7.2, 4.5], leaf: 1, closed: -Math.PI / 2, open: Math.PI }],
      },
    ],
    windows: [{ id: 'window-1', name: 'W1', wall: 2, from: [2.8, 5.4], to: [1.2, 5.4], inward: [0, -1], width: 1.6, bottom: 0.9, top: 2.1 }],
    boards: [{ id: 'board-1', name: 'Board', wall: 0, from: [6.2, 0], to: [6.8, 0], inward: [0, 1], width: 0.6, bottom: 0.6, top: 1.8, voltsToGround: 230, opposite: 'nothing grounded' }],
    columns: [{ id: 'column-1', name: 'Column', outline: rectangle([0.2, 5.2], 0.4, 0.4), bottom: 0, top: 3.1 }],
    beams: [],
    obstructions: [{ id: 'desk-1', name: 'Desk', outline: rectangle([6.75, 1.7], 0.8, 1.6), bottom: 0, top: 0.75 }],
    sprinklers: [{ id: 'sp-1', at: [5, 4.6], deflector: 3.0 }, { id: 'sp-2', at: [1.5, 4.6], deflector: 3.0 }],
    detectors: [{ id: 'de-1', at: [6.4, 2.9], kind: 'smoke' }],
    exitSigns: [{ id: 'ex-1', at: [6.6, 4.9], height: 2.4 }],
    airTerminals: [{ id: 'sa-1', kind: 'supply', at: [3.6, 4.6], size: [0.6, 0.6], flow: 0.2 }],
    luminaires: [],
  },
  tables: [
    {
      id: 'table-a', name: 'Table A', outline: rectangle(table, 3, 1.5), centre: table, turn: 0, length: 3, width: 1.5, height: 0.9, mass: 900, travel: 0.01,
      equipment: [{ id: 'head', name: 'Laser head', outline: rectangle([1.9, 2.9], 0.7, 0.3), bottom: 0.9, top: 1.1, mass: 20, heat: 100, electricalLoad: 300, noise: null }],
    },
  ],
  equipment: [],
  lasers: [
    {
      id: 'laser-a', name: 'Laser A', table: 'table-a', wavelength: 1064e-9, wavelengthRange: null, emission: { kind: 'continuous', power: 5 }, meanPower: 5.5, tolerance: 0.1, diameter: 0.002, measuredAt: '1/e2', divergence: 0.001, profile: 'gaussian', declaredClass: '4',
      path: [[2.25, 2.9, 1.05], [4.2, 2.9, 1.05], [4.2, 2.2, 1.05]],
      legs: [{ from: [2.25, 2.9, 1.05], to: [4.2, 2.9, 1.05], carried: 'open', endsOn: 'mirror' }, { from: [4.2, 2.9, 1.05], to: [4.2, 2.2, 1.05], carried: 'open', endsOn: 'beam stop' }],
      foreseeableTilt: 0.05, heat: 100, electricalLoad: 300, settlingTime: 3600,
    },
  ],
  enclosures: [
    {
      id: 'box', name: 'Enclosure A', kind: 'close', tables: ['table-a'], turn: 0, centre: table,
      outline: rectangle(table, frame.length, frame.width), inside: rectangle(table, frame.length - 0.08, frame.width - 0.08),
      length: frame.length, width: frame.width, insideLength: 3.52, insideWidth: 2.02, clearHeight: 2.36, frameTop: 2.4, top: 2.72,
      gaps: { south: 0.26, east: 0.26, north: 0.26, west: 0.26 }, hemGap: 0.05,
      sides: [
        { name: 'south', closure: 'rigid panel', item: 'sheet-6', from: corner([1.24, 1.59]), to: corner([4.76, 1.59]), bottom: 0.1, top: 2.36 },
        { name: 'north', closure: 'curtain', item: 'cloth-b', from: corner([4.76, 3.61]), to: corner([1.24, 3.61]), bottom: 0.05, top: 2.36 },
        { name: 'east', closure: 'open', item: null, from: corner([4.76, 1.59]), to: corner([4.76, 3.61]), bottom: 0, top: 2.36 },
      ],
      profile: 'bar-40', unit: 'ffu-1200', unitCount: 2, unitAreas: [rectangle([2.1, 2.6], 1.2, 0.6), rectangle([3.9, 2.6], 1.2, 0.6)],
      feet: 'levelling foot', footPoints: x.flatMap((px) => y.map((py): Vec2 => [px, py])), roofBeams: [], volume: 16.8, cleanArea: 7.1, openings: [], mass: 140, centreOfMass: [3, 2.6, 1.6], lightCount: 0, tries: [],
    },
  ],
  runs: [
    {
      id: 'wall', name: 'Partition', kind: 'partition', closed: false, hung: 'ceiling', on: null, corners: [[5.6, 0], [5.6, 4.2]], line: [[5.6, 0], [5.6, 4.2]],
      segments: [{ kind: 'straight', from: [5.6, 0], to: [5.6, 4.2], start: 0, length: 4.2 }],
      pathLength: 4.2, trackHeight: 2.7, hemGap: 0.06, drop: 2.6, curtainTop: 2.66, cloth: 'cloth-b', track: 'rail-c', joints: [3],
      supports: [0.2, 1.2, 2.2, 2.9, 4].map((at, i) => ({ part: `wall-support-${i}`, at, point: [5.6, at] })),
      supportSpacing: 1, supportItem: 'support', openings: [],
      stretches: [{ from: 0, to: 4.2, panels: [0, 1, 2, 3].map(() => ({ mark: 'C1', width: 1.2 })), flatWidth: 4.8, fullness: 4.8 / 4.2, fits: true }],
      massPerLength: 2.6, mass: 10.9, stackBack: 0.7,
    },
  ],
  covers: [],
  devices: [
    { id: 'sign-1', kind: 'sign', at: [7.1, 3.3, 1.6], item: 'sign-lit', on: 'door-1', text: 'Laser' },
    { id: 'stop-1', kind: 'stop', at: [5.2, 0.1, 1.1], item: 'stop-red', on: 'room', text: 'Stop' },
    { id: 'contact-1', kind: 'interlock', at: [7.1, 4.6, 2], item: 'contact-d', on: 'door-1', text: 'Door contact' },
  ],
  barriers: [],
  parts: [...posts, ...beams, ...loose, ...units, panel, ...run, ...devices],
  assumptions: [{ path: ['room', 'height'], what: 'Hem gap', value: '60 mm', reason: 'Usual gap over a laboratory floor.', source: commonPractice }],
  questions: [{ id: 'ceiling', path: ['room', 'ceiling'], question: 'What carries the ceiling?', assumed: 'concrete', reason: 'Nobody looked above it.', effect: 'Decides every support of the partition.', weight: 0.8 }],
} as unknown as Design; // biome-ignore format: fixture

const sagSteps = [
  { symbol: 'w_sag', name: 'deflection in mid-span', expression: '5*w*L^4/(384*E*I)', values: { w: val(0.05, 'N/mm', 'uniform load', 'brief'), L: val(1500, 'mm', 'span', 'design'), E: val(70000, 'N/mm2', 'modulus', 'table'), I: val(90000, 'mm4', 'second moment', 'catalogue bar-40') }, result: (5 * 0.05 * 1500 ** 4) / (384 * 70000 * 90000), unit: 'mm', source: source('textbook beam formula', 'from memory') },
  { symbol: 'w_max', name: 'largest deflection', expression: 'L/300', values: { L: val(1500, 'mm', 'span', 'design') }, result: 5, unit: 'mm', source: commonPractice },
]; // biome-ignore format: fixture

const finding = (spec: Partial<Finding> & Pick<Finding, 'id' | 'verdict' | 'message'>): Finding => ({
  discipline: 'frame',
  subject: 'box',
  requirement: 'Roof beam stays stiff',
  demand: null,
  capacity: null,
  unit: '1',
  utilisation: null,
  calculation: null,
  source: commonPractice,
  decider: 'structural engineer',
  required: true,
  cautions: [],
  asks: [],
  ...spec,
});

export const findings: readonly Finding[] = [
  finding({ id: 'frame/sag/box-beam-0', verdict: 'meets', message: 'The roof beam sags 0.523 mm of the 5.00 mm allowed.', demand: 0.5232, capacity: 5, unit: 'mm', utilisation: 0.10463, calculation: calculation('Sag of the roof beam', sagSteps, { assumptions: ['Simply supported at both ends.'], cautions: ['Loads overhead: a licensed engineer decides.'] }) }),
  finding({ id: 'room/way/desk', discipline: 'room', subject: 'wall', requirement: 'Way to the exit is wide enough', verdict: 'fails', message: 'The way between partition and desk is 750 mm; 900 mm are needed. Moving the partition 150 mm west cures it.', demand: 0.9, capacity: 0.75, unit: 'm', utilisation: 1.2, decider: 'fire authority', calculation: calculation('Free width', [{ symbol: 'u', name: 'utilisation', expression: 'need/free', values: { need: val(0.9, 'm', 'clear width of a way', 'rule way.exit-width'), free: val(0.75, 'm', 'free width', 'design') }, result: 1.2, unit: '1', source: invented }]), rule: { id: 'way.exit-width', text: 'clear width of a way to an exit: 0.90 m', source: commonPractice, overriddenBecause: 'agreed on site' }, cautions: ['The fire authority decides on ways out.'] }),
  finding({ id: 'laser/burn/wall', discipline: 'laser', subject: 'wall', requirement: 'Barrier withstands the beam', verdict: 'not assessed', message: 'No rating covers 1064 nm at this spot; how long the cloth withstands the beam is not known.', decider: 'laser safety officer', asks: ['ceiling'], cautions: ['The laser safety officer decides.'] }),
  finding({ id: 'air/class/box', discipline: 'air', subject: 'box', requirement: 'Particles under the class limit', verdict: 'attention', message: 'The predicted concentration is 0.95 of the limit.', demand: 3344, capacity: 3520, unit: '1/m3', utilisation: 0.95, decider: 'testing organisation', calculation: calculation('Share of the limit', [{ symbol: 'u', name: 'utilisation', expression: 'C/C_max', values: { C: val(3344, '1/m3', 'predicted', 'step C'), C_max: val(3520, '1/m3', 'limit ISO class 5 at 0.5 µm', 'table') }, result: 0.95, unit: '1', source: source('ISO 14644-1:2015', 'published', 'Table 1') }]), cautions: ['Only a measurement proves a class.'] }),
]; // biome-ignore format: fixture

export const revision = { name: 'A', hash: 'sha256:0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef' };
export const issued = '2026-03-09';
