import { sourceText } from '@cloche/engine';
import type { Calculation, CalculationStep } from '../engine/contract.js';
import { texts } from '../texts.js';
import { sixFigures } from './six-figures.js';
import { unitText } from './unit-text.js';

/** The calculation as on a hand-written sheet: formula, values, result, source; enough to compute it again. */
export function CalculationSheet({ calculation }: { readonly calculation: Calculation }) {
  return (
    <div className="calculation">
      <h4>{calculation.title}</h4>
      {calculation.steps.map((step) => (
        <Step key={step.symbol} step={step} />
      ))}
      {calculation.assumptions.length > 0 && (
        <p className="second">
          {texts.notes.assumptions}: {calculation.assumptions.join(' ')}
        </p>
      )}
    </div>
  );
}

function Step({ step }: { readonly step: CalculationStep }) {
  return (
    <div className="calculation-step">
      <p className="step-name">{step.name}</p>
      <p className="formula">
        <var>{step.symbol}</var> = {spaced(step.expression)}
      </p>
      <table>
        <tbody>
          {Object.entries(step.values).map(([name, value]) => (
            <tr key={name}>
              <th scope="row">
                <var>{name}</var>
              </th>
              <td className="number">{sixFigures(value.value)}</td>
              <td className="unit">{unitText(value.unit)}</td>
              <td className="what">
                {value.name}
                {value.origin && <span className="second"> {value.origin}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="result">
        <var>{step.symbol}</var> = {sixFigures(step.result)} <span className="unit">{unitText(step.unit)}</span>
      </p>
      {step.note && <p className="second">{step.note}</p>}
      <p className="second">{sourceText(step.source)}</p>
    </div>
  );
}

/** Signs of times and minus as in print; the arithmetic stays the same. */
const spaced = (expression: string): string => expression.replace(/\*/g, '·').replace(/-/g, '−');
