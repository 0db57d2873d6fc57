import { type Calculation, type Finding, numberText, sourceText, unitText } from '@cloche/engine';

/** Significant figures of every value of a calculation: enough for a stranger to get the printed result again. */
export const calculationFigures = 6;

export const withUnit = (value: string, unit: string): string =>
  unit === '1' || unit === '' ? value : `${value}\u00a0${unitText(unit)}`;

/** Demand, capacity and the like in the summary: three figures. */
export const amountText = (value: number | null, unit: string): string =>
  value === null ? '' : withUnit(numberText(value), unit);

export const valueText = (value: number): string => numberText(value, calculationFigures);

export const sourcesOf = (calculation: Calculation | null): string[] =>
  (calculation?.steps ?? []).map((step) => sourceText(step.source));

/** Everything that the findings rest on, each once, in alphabetical order. */
export function allSources(findings: readonly Finding[], more: readonly string[]): string[] {
  const named = findings.flatMap((f) => [
    sourceText(f.source),
    ...(f.rule ? [sourceText(f.rule.source)] : []),
    ...sourcesOf(f.calculation),
  ]);
  return [...new Set([...named, ...more])].sort();
}

/** Every caution once, in the order in which it first stands. */
export const allCautions = (findings: readonly Finding[]): string[] => [
  ...new Set(findings.flatMap((f) => [...f.cautions, ...(f.calculation?.cautions ?? [])])),
];

/** Cautions that stand in every report. Source: handbook of deliverables 5.4. */
export const standingCautions: readonly string[] = [
  'Laser: exposure limits and classes are to be confirmed by the laser safety officer. Barriers and eyewear hold only against the stated wavelength, power, beam size and time; reflections and changed optics void the result.',
  'Overhead: loads and fixings are decided by a structural engineer. No load on a suspended ceiling unless proved; a second retention for anything above people.',
  'Electricity: by a qualified electrician; isolation, and earthing of metal frames.',
  'Fire: fabrics, ways out, detectors and sprinklers are decided with the fire authority.',
  'Clean air: a class is proved by measurement in the stated occupancy state, not by calculation.',
];
