import type { Problem } from '../engine/contract.js';

/** What a field says under itself: what is wrong, or how the typed text was read. */
export function Told({
  id,
  problem,
  back,
}: {
  readonly id: string;
  readonly problem: Pick<Problem, 'message' | 'hint'> | undefined;
  readonly back?: string | null | undefined;
}) {
  return (
    <span id={id} className={problem ? 'told problem' : 'told'} aria-live="polite">
      {problem ? `${problem.message} ${problem.hint}`.trim() : back ? `= ${back}` : ''}
    </span>
  );
}
