import { useMemo } from 'react';
import type { Design } from '../engine/contract.js';
import { texts } from '../texts.js';
import { LengthField } from './length-field.js';
import { eyeHeights, type OnFoot, setEyeHeight, useSpace, walkTo } from './space-store.js';
import { firstPlace, groundOf } from './walk.js';

/** Eyes lower than this lie on the floor; as far they stay under the ceiling [m]. */
const lowestEyes = 0.3;

/** Going through the space on foot, at a chosen height of the eyes. */
export function WalkSlip({ design }: { readonly design: Design }) {
  const walking = useSpace((s) => s.walk !== null);
  const eyeHeight = useSpace((s) => s.eyeHeight);
  const start = useMemo(() => startOf(design), [design]);
  const words = texts.space.walk;
  const begin = () => {
    walkTo(start);
    document.querySelector<HTMLElement>('.space canvas')?.focus();
  };
  return (
    <>
      <div className="about">
        <div className="adds">
          <button
            type="button"
            className="main-action"
            disabled={!start}
            onClick={walking ? () => walkTo(null) : begin}
          >
            {walking ? words.end : words.begin}
          </button>
        </div>
        <p className="second">{start ? `${words.about} ${words.passes}` : words.noPlace}</p>
      </div>
      <div className="about">
        <div className="adds">
          {(['standing', 'seated'] as const).map((how) => (
            <button
              key={how}
              type="button"
              aria-pressed={eyeHeight === eyeHeights[how]}
              onClick={() => setEyeHeight(eyeHeights[how])}
            >
              {words[how]}
            </button>
          ))}
        </div>
        <LengthField
          label={words.eyes}
          value={eyeHeight}
          low={lowestEyes}
          high={design.room.height - lowestEyes}
          outside={words.outside}
          outsideHint={words.outsideHint}
          change={setEyeHeight}
        />
        <p className="second">{words.source}</p>
      </div>
    </>
  );
}

/** Begins inside the door, looking to the middle of the room. */
function startOf(design: Design): OnFoot | null {
  const at = firstPlace(design, groundOf(design));
  if (!at) return null;
  const { outline } = design.room;
  const middle = [0, 1].map((k) => {
    const all = outline.map((p) => p[k as 0]);
    return (Math.min(...all) + Math.max(...all)) / 2;
  });
  return { at, heading: Math.atan2(middle[1]! - at[1], middle[0]! - at[0]), pitch: 0 };
}
