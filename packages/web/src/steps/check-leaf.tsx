import { sourceText } from '@cloche/engine';
import type { Finding } from '../engine/contract.js';
import { verdictsInOrder } from '../notes/verdict-groups.js';
import { VerdictMark } from '../notes/verdict-mark.js';
import { useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';

/** The findings counted by discipline and verdict, and what was assumed on the way. */
export function CheckLeaf() {
  const computed = useWorkbench((s) => s.computed);
  const disciplines = useWorkbench((s) => s.shelf.disciplines);
  if (!computed) return null;
  const { findings, design } = computed;
  return (
    <>
      <table className="tally">
        <thead>
          <tr>
            <th scope="col">
              <span className="visually-hidden">{texts.notes.title}</span>
            </th>
            {verdictsInOrder.map((verdict) => (
              <th key={verdict} scope="col">
                <VerdictMark verdict={verdict} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {disciplines.map(({ id, title }) => (
            <TallyRow key={id} title={title} findings={findings.filter((f) => f.discipline === id)} />
          ))}
        </tbody>
      </table>
      <h3>{texts.checks.assumptions}</h3>
      {design.assumptions.length === 0 && <p className="second">{texts.checks.noAssumptions}</p>}
      <ul className="assumptions">
        {design.assumptions.map((a) => (
          <li key={`${a.path.join('/')} ${a.what}`}>
            {a.what}: {a.value}
            <span className="second">
              {a.reason} {sourceText(a.source)}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}

function TallyRow({ title, findings }: { readonly title: string; readonly findings: readonly Finding[] }) {
  return (
    <tr>
      <th scope="row">{title}</th>
      {verdictsInOrder.map((verdict) => {
        const count = findings.filter((f) => f.verdict === verdict).length;
        return (
          <td key={verdict} className={count === 0 ? 'none' : undefined}>
            {count}
          </td>
        );
      })}
    </tr>
  );
}
