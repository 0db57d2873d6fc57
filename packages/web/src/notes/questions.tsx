import type { Question } from '../engine/contract.js';
import { showPath } from '../state/show-path.js';
import { texts } from '../texts.js';

/** Missing facts, the one that could change most first. */
export function Questions({ questions }: { readonly questions: readonly Question[] }) {
  const ranked = [...questions].sort((a, b) => b.weight - a.weight);
  return (
    <section className="note-group questions">
      <h2>
        <span className="word">{texts.questions.title}</span>
        <span className="count">{ranked.length}</span>
      </h2>
      {ranked.length === 0 && <p className="second">{texts.questions.none}</p>}
      <ul>
        {ranked.map((question) => (
          <li key={question.id} className="question">
            <p>{question.question}</p>
            <p className="second">
              {texts.questions.assumed} {question.assumed}, {texts.questions.because} {question.reason}.{' '}
              {question.effect}
            </p>
            <button type="button" className="quiet" onClick={() => showPath(question.path)}>
              {texts.questions.answer}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
