import { type Comparison, decimalText, differenceText } from '@cloche/engine';
import { VerdictMark } from '../notes/verdict-mark.js';
import { changesTexts } from '../texts/changes.js';

/** The comparison in one line, as a title block has it. */
export function CompareSummary({ comparison }: { readonly comparison: Comparison }) {
  const { geometry, findings, parts, worse } = comparison;
  const { summary } = changesTexts;
  const count = (direction: 'worse' | 'better') => findings.filter((f) => f.direction === direction).length;
  const mass = parts.mass.after - parts.mass.before;
  const cells: readonly (readonly [string, string])[] = [
    [summary.things, geometry.length === 0 ? summary.nothing : summary.differ(geometry.length)],
    [summary.findings, [summary.worse(count('worse')), summary.better(count('better'))].join(', ')],
    [summary.pieces, signedPair(parts.pieces.added, parts.pieces.removed) || summary.nothing],
    [summary.mass, signed(Number(decimalText(mass, 1)), ' kg') || summary.nothing],
    [summary.cost, differenceText(parts.difference, parts.cost) || summary.nothing],
  ];
  return (
    <>
      <dl className="compare-summary" aria-label={summary.label}>
        {cells.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className="number">{value}</dd>
          </div>
        ))}
      </dl>
      {worse && (
        <p className="in-the-way">
          <VerdictMark verdict="fails" />
          {changesTexts.inTheWay}
        </p>
      )}
    </>
  );
}

const signed = (value: number, unit = ''): string =>
  value === 0 ? '' : `${value > 0 ? '+' : '\u2212'}${Math.abs(value)}${unit}`;

const signedPair = (added: number, removed: number): string =>
  [signed(added), signed(-removed)].filter((text) => text !== '').join(' ');
