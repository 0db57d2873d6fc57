import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { briefData, withEdits } from '../brief/document.js';
import type { Shelf } from '../engine/contract.js';
import { needCells, needRows, planNeeds, shownNeeds } from './single-needs.js';

const text = `needs:
  noise: { limit: 55 dB } # of the group
  electricalSupply:
    available: 3.6 kW
  budget: 12000 EUR
`;
const shelf: Shelf = { items: [], profiles: [{ id: 'eu', name: 'Europe' }], rules: [], overlays: [], disciplines: [] };

const rows = shownNeeds(briefData(text));
const rowOf = (name: string): number => rows.findIndex((row) => row.name === name);

/** Pastes a block whose first cell stands in a row and column. */
function paste(name: string, column: number, block: readonly (readonly string[])[]) {
  const inputs = block.flatMap((cells, r) =>
    cells.map((cell, c) => ({ row: rowOf(name) + r, column: column + c, text: cell })),
  );
  const plan = planNeeds(rows, { data: briefData(text), shelf }, inputs);
  const after = withEdits(text, plan.edits);
  return { ...plan, text: after, needs: parse(after).needs };
}

test('every single need of the brief is there with its quantities', () => {
  const names = new Set(needRows.map(({ base }) => base.join('/')));
  expect([...names]).toEqual([
    'needs/background',
    'needs/noise',
    'needs/electricalSupply',
    'needs/monitoring',
    'needs',
    'site',
  ]);
});

test('a quantity stands in two cells, money too', () => {
  const cells = (name: string) => needCells(briefData(text), rows[rowOf(name)]!).slice(1);
  expect(cells('Noise: at most')).toEqual(['55', 'dB']);
  expect(cells('All in all: budget')).toEqual(['12000', 'EUR']);
  expect(cells('Monitoring: particles')).toEqual(['', '']);
});

describe('a pasted block', () => {
  test('changes a number under its unit, and only its letters', () => {
    expect(paste('Noise: at most', 1, [['48']]).text).toBe(text.replace('55 dB', '48 dB'));
  });

  test('takes value and unit together, whichever comes first', () => {
    expect(paste('Electrical supply: available', 1, [['4100', 'W']]).needs.electricalSupply.available).toBe('4100 W');
    expect(paste('Electrical supply: available', 2, [['W']]).needs.electricalSupply.available).toBe('3.6 W');
    expect(paste('Electrical supply: available', 1, [['4.1 kW', '']]).needs.electricalSupply.available).toBe('4.1 kW');
  });

  test('begins a need that was not there, and clears one with its last value', () => {
    expect(paste('Monitoring: particles', 1, [['yes'], ['no']]).needs.monitoring).toEqual({
      particles: true,
      pressure: false,
    });
    expect(paste('Noise: at most', 1, [['', '']]).needs.noise).toBeUndefined();
  });

  test('guesses no unit, and names what it cannot read', () => {
    const bare = paste('Electrical supply: voltage', 1, [['230']]);
    expect([bare.edits, bare.refused.length]).toEqual([[], 1]);
    expect(bare.refused[0]!.reason).toContain('unit');
    expect(paste('Noise: at most', 1, [['48 kg']]).refused).toHaveLength(1);
    expect(paste('Electrical supply: available', 1, [['4 kW', 'W']]).refused[0]!.reason).toContain('kW');
    expect(paste('Monitoring: particles', 2, [['dB']]).refused[0]!.reason).toBe('This has no unit.');
  });

  test('of the whole schedule as it was copied writes nothing', () => {
    const data = briefData(text);
    const plan = planNeeds(
      rows,
      { data, shelf },
      rows.flatMap((row, r) => needCells(data, row).map((cell, column) => ({ row: r, column, text: cell }))),
    );
    expect([plan.edits, plan.refused, plan.taken]).toEqual([[], [], 0]);
  });

  test('does not rename a quantity, and has no rows below the last', () => {
    expect(paste('Noise: at most', 0, [['Quiet', '48']])).toMatchObject({ refused: [{ column: 0 }], taken: 1 });
    const below = planNeeds(rows, { data: briefData(text), shelf }, [{ row: rows.length, column: 1, text: '1' }]);
    expect([below.edits, below.refused.length]).toEqual([[], 1]);
  });
});
