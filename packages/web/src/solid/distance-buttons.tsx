import { texts } from '../texts.js';
import { lookFrom, useSpace } from './space-store.js';

/** Coming closer and going farther without a wheel. */
export function DistanceButtons() {
  const { closer, farther } = texts.space;
  const onFoot = useSpace((s) => s.walk !== null);
  if (onFoot) return null;
  return (
    <div className="plan-buttons">
      <button type="button" onClick={() => lookFrom('closer')} aria-label={closer} title={closer}>
        +
      </button>
      <button type="button" onClick={() => lookFrom('farther')} aria-label={farther} title={farther}>
        −
      </button>
    </div>
  );
}
