import { texts } from '../texts.js';
import { pullApart, useSpace } from './space-store.js';

/** How far the parts are drawn from each other. */
export function ApartSlip() {
  const apart = useSpace((s) => s.apart);
  const words = texts.space.apart;
  return (
    <>
      <div className="about">
        <label className="slide">
          <span>{words.slider}</span>
          <input
            type="range"
            min={0}
            max={100}
            step={5}
            value={Math.round(apart * 100)}
            aria-valuetext={words.share(apart)}
            onChange={(e) => pullApart(Number(e.target.value) / 100)}
          />
          <span className="number">{words.share(apart)}</span>
        </label>
        <div className="adds">
          <button type="button" disabled={apart === 0} onClick={() => pullApart(0)}>
            {words.together}
          </button>
        </div>
      </div>
      <p className="second">{words.about}</p>
    </>
  );
}
