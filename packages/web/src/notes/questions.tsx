import { memo } from 'react';
import type { Question } from '../engine/contract.js';
import { reveal } from '../steps/reveal.js';
import { texts } from '../texts.js';

/** Missing facts, the one that could change most first. */
export const Questions = memo(function Questions({ questions }: { readonly questions: readonly Question[] }) {
  const ranked = [...questions].sort((a, b) => b.weight - a.weight);
  return (
    <details className="note-group questions" open>
      <summary>
        <h2>
          <span className="word">{texts.questions.title}</span>
          <span className="count">{ranked.length}</span>
        </h2>
      </summary>
      {ranked.length === 0 && <p className="second">{texts.questions.none}</p>}
      <ul>
        {ranked.map((question) => (
          <li key={question.id} className="question">
            <p>
              {question.question} <Weight share={question.weight} />
            </p>
            <p className="second">
              {texts.questions.meanwhile(question.assumed)} {question.effect}
            </p>
            <button type="button" className="quiet" onClick={() => reveal(question.path)}>
              {texts.questions.answer}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
});

/** How much the answer could change, as a thin bar; the words are for who cannot see it. */
function Weight({ share }: { readonly share: number }) {
  return (
    <span className="weight">
      <span className="visually-hidden">{texts.questions.weight(Math.round(share * 100))}</span>
      <svg width="46" height="6" aria-hidden="true">
        <title>{texts.questions.weight(Math.round(share * 100))}</title>
        <path className="rail" d="M0 3H46" />
        <path className="used" d={`M0 3H${46 * share}`} />
      </svg>
    </span>
  );
}
