import type { Cover } from '../catalogue/schema.js';
import type { DesignCover, WallOpening } from '../design/types.js';
import { calculation, val } from '../floor/calculation.js';
import { type Finding, overLimit } from '../floor/finding.js';
import { between2 } from '../floor/geometry/vec.js';
import { millimetreText } from '../floor/number-text.js';
import { commonPractice, geometrySource } from '../floor/source.js';
import type { CheckContext } from './context.js';

const cautions = [
  'A cover keeps light from a window; whether it withstands the beam is its rating, and the laser safety officer decides.',
];

/** The larger of both sizes over the largest that the item is made in, upright or on its side. */
function sizeFinding(cover: DesignCover, item: Cover, opening: WallOpening): Finding {
  const [long, short] = [Math.max(cover.width, cover.height), Math.min(cover.width, cover.height)];
  const [most, less] = [Math.max(...item.largest), Math.min(...item.largest)];
  const utilisation = Math.max(long / most, short / less);
  const mm = (value: number, name: string, origin: string) => val(value * 1000, 'mm', name, origin);
  return {
    id: `curtain/cover-size/${cover.id}`,
    discipline: 'curtain',
    subject: cover.id,
    requirement: 'The cover reaches over the opening',
    // Made to size up to its largest: there is no margin to keep, so a full use is no call to attention.
    verdict: overLimit(utilisation) ? 'fails' : 'meets',
    message: `The cover over ${opening.name} is ${millimetreText(cover.width)} wide and ${millimetreText(cover.height)} high with its laps; ${item.name} is made up to ${millimetreText(most)} by ${millimetreText(less)}.`,
    demand: long,
    capacity: most,
    unit: 'm',
    utilisation,
    calculation: calculation(`Size of the cover over ${opening.name}`, [
      {
        symbol: 'u',
        name: 'larger share of the largest size that is made',
        expression: 'max(a/A, b/B)',
        values: {
          a: mm(long, 'longer side with laps', `opening ${opening.id}, overlap of ${item.id}`),
          A: mm(most, 'longest side made', `catalogue ${item.id}`),
          b: mm(short, 'shorter side with laps', `opening ${opening.id}, overlap of ${item.id}`),
          B: mm(less, 'largest shorter side made', `catalogue ${item.id}`),
        },
        result: utilisation,
        unit: '1',
        source: geometrySource,
      },
    ]),
    source: geometrySource,
    decider: 'laser safety officer',
    required: true,
    cautions,
    asks: [],
    at: between2(opening.from, opening.to, 0.5),
  };
}

/** A window in a room with lasers that nothing covers. */
function bareWindow(window: WallOpening): Finding {
  return {
    id: `curtain/bare-window/${window.id}`,
    discipline: 'curtain',
    subject: window.id,
    requirement: 'Windows of a laser room are covered',
    verdict: 'attention',
    message: `${window.name} has no cover; laser light and daylight pass through it. Plan a cover, or let the laser safety officer decide that none is needed.`,
    demand: null,
    capacity: null,
    unit: '1',
    utilisation: null,
    calculation: null,
    source: commonPractice,
    decider: 'laser safety officer',
    required: false,
    cautions,
    asks: [],
    at: between2(window.from, window.to, 0.5),
  };
}

/** Covers large enough for their openings, and windows left open in a room with lasers. */
export function checkCover({ design, catalogue }: CheckContext): Finding[] {
  const openings = [...design.room.windows, ...design.room.doors];
  const sizes = design.covers.flatMap((cover) => {
    const item = catalogue.byId.get(cover.item);
    const opening = openings.find((o) => o.id === cover.over);
    return item?.kind === 'cover' && opening ? [sizeFinding(cover, item, opening)] : [];
  });
  const covered = new Set(design.covers.map((c) => c.over));
  const bare = design.lasers.length === 0 ? [] : design.room.windows.filter((w) => !covered.has(w.id)).map(bareWindow);
  return [...sizes, ...bare];
}
