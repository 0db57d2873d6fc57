/** An invented brief with `count` equal tables in a row, each with a laser and a close enclosure: for growth measurements. */
export function manyTables(count: number): string {
  const pitch = 4.5;
  const length = count * pitch + 1;
  const ids = Array.from({ length: count }, (_, i) => i + 1);
  return [
    'cloche: 1',
    'project: { name: Growth, invented: true }',
    'site: { rules: eu }',
    'room:',
    '  name: Hall',
    `  outline: [[0 m, 0 m], [${length} m, 0 m], [${length} m, 5 m], [0 m, 5 m]]`,
    '  height: 3.2 m',
    'tables:',
    ...ids.map(
      (i) =>
        `  - { id: table-${i}, at: [${(i - 0.5) * pitch + 0.5} m, 2.5 m], length: 2.4 m, width: 1.2 m, height: 0.9 m, travel: 5 mm }`,
    ),
    'lasers:',
    ...ids.map(
      (i) =>
        `  - { id: laser-${i}, table: table-${i}, at: [-1 m, 0 m], beamHeight: 100 mm, direction: 0 deg, wavelength: 532 nm, emission: { kind: continuous, power: 2 W }, beam: { diameter: 2 mm, measuredAt: 1/e2, divergence: 1 mrad } }`,
    ),
    'needs:',
    '  cleanliness:',
    ...ids.map((i) => `    - { where: box-${i}, isoClass: 6, size: 0.5 um, state: at-rest }`),
    'layout:',
    '  enclosures:',
    ...ids.map((i) => `    - { id: box-${i}, kind: close, around: [table-${i}], gap: 100 mm }`),
    '',
  ].join('\n');
}
