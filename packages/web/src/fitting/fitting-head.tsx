import { shortHash } from '../projects/short-hash.js';
import { fittingTexts as say } from '../texts/fitting.js';
import type { Fitting } from './fitting.js';

/** What is built, of which revision, and that nobody has signed it. */
export function FittingHead({ fitting }: { readonly fitting: Fitting }) {
  return (
    <header>
      <h1>{fitting.project}</h1>
      <p className="second">
        {[say.revision(shortHash(fitting.revision)), ...(fitting.invented ? [say.invented] : [])].join(', ')}
      </p>
      <p className="not-signed">{say.notSigned}</p>
    </header>
  );
}
