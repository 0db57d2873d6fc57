import { offsetOf } from '../brief/document.js';
import { showInText, useWorkbench } from '../state/store.js';
import { reveal, stepOf } from '../steps/reveal.js';
import { texts } from '../texts.js';

/** Why the brief cannot be used as it stands; each leads to its place in the text. */
export function Problems() {
  const problems = useWorkbench((s) => s.problems);
  const text = useWorkbench((s) => s.text);
  const trouble = useWorkbench((s) => s.trouble);
  return (
    <div role="status" aria-live="polite">
      {trouble && <p className="trouble">{trouble}</p>}
      {problems.length > 0 && (
        <section className="note-group problems">
          <h2>
            <span className="word">{texts.problems.title}</span>
            <span className="count">{problems.length}</span>
          </h2>
          <ul>
            {problems.map((problem) => (
              <li key={`${problem.code} ${problem.path.join('/')} ${problem.message}`} className="question">
                <p>{problem.message}</p>
                <p className="second">{problem.hint}</p>
                {problem.place && (
                  <button
                    type="button"
                    className="quiet"
                    onClick={() =>
                      problem.place && showInText(offsetOf(text, problem.place.line, problem.place.column))
                    }
                  >
                    {texts.problems.goTo} {texts.problems.at(problem.place.line, problem.place.column)}
                  </button>
                )}
                {stepOf(problem.path) && (
                  <button type="button" className="quiet" onClick={() => reveal(problem.path)}>
                    {texts.problems.inForms}
                  </button>
                )}
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
