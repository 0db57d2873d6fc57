import { sourceText, unitText } from '@cloche/engine';
import type { Calculation, CalculationStep } from '../engine/contract.js';
import { localNumber } from '../locale.js';
import { texts } from '../texts.js';
import { Formula, FormulaName } from './formula.js';
import { sixFigures } from './six-figures.js';

/** The calculation as on a hand-written sheet: formula, values, result, source; enough to compute it again. */
export function CalculationSheet({ calculation }: { readonly calculation: Calculation }) {
  const { steps } = calculation;
  return (
    <div className="calculation">
      <h4>{calculation.title}</h4>
      <ol>
        {steps.map((step, i) => (
          <Step key={step.symbol} step={step} last={i === steps.length - 1} />
        ))}
      </ol>
      {calculation.assumptions.length > 0 && (
        <p className="assumed">
          <span className="second">{texts.notes.assumptions}</span> {calculation.assumptions.join(' ')}
        </p>
      )}
    </div>
  );
}

function Step({ step, last }: { readonly step: CalculationStep; readonly last: boolean }) {
  const values = Object.entries(step.values);
  return (
    <li className={last ? 'calculation-step last' : 'calculation-step'}>
      <p className="step-name">{step.name}</p>
      <p className="formula">
        <FormulaName name={step.symbol} /> = <Formula text={step.expression} />
      </p>
      <table>
        <tbody>
          {values.map(([name, value]) => (
            <tr key={name}>
              <th scope="row">
                <FormulaName name={name} />
              </th>
              <td className="number">{localNumber(sixFigures(value.value))}</td>
              <td className="unit">{unitText(value.unit)}</td>
              <td className="what">
                {value.name}
                {value.origin && <span className="second"> {value.origin}</span>}
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr className="result">
            <th scope="row">
              <FormulaName name={step.symbol} />
            </th>
            <td className="number">{localNumber(sixFigures(step.result))}</td>
            <td className="unit">{unitText(step.unit)}</td>
            <td className="what">{step.note}</td>
          </tr>
        </tfoot>
      </table>
      <p className="step-source">{sourceText(step.source)}</p>
    </li>
  );
}
