import { type CSSProperties, type RefObject, useLayoutEffect, useRef, useState } from 'react';
import { sizeBox } from '../arrange/size-place.js';
import { sizeLines } from '../arrange/sizes.js';
import type { Design } from '../engine/contract.js';
import { useWorkbench } from '../state/store.js';
import { boxOf, cardCorner, gap } from './card-corner.js';
import { clearancesOf, distanceBox, middleOf } from './clearances.js';
import { extentOf } from './places.js';
import { type Box, type PlanView, type Size, toScreen } from './view.js';
import { usePlanView } from './view-store.js';

/** Height of the words that choose the view, pixels. */
const viewWords = 46;

interface Placed {
  readonly ref: RefObject<HTMLElement | null>;
  readonly style: CSSProperties;
}

function screenBox(design: Design, view: PlanView, size: Size, id: string): readonly Box[] {
  const points = extentOf(design, id).map((p) => toScreen(view, size, p));
  return points.length === 0 ? [] : [boxOf(points)];
}

/** Places a card beside what is in hand, clear of its typed distances. */
export function usePlaceBeside(design: Design, ids: readonly string[]): Placed {
  const { view, size } = usePlanView();
  const data = useWorkbench((s) => s.data);
  const ref = useRef<HTMLElement>(null);
  const [card, setCard] = useState({ width: 260, height: 240 });
  const key = ids.join(' ');
  // biome-ignore lint/correctness/useExhaustiveDependencies: another thing has another card
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const observer = new ResizeObserver(() => setCard({ width: element.offsetWidth, height: element.offsetHeight }));
    observer.observe(element);
    return () => observer.disconnect();
  }, [key]);
  const boxes = view ? ids.flatMap((id) => screenBox(design, view, size, id)) : [];
  // Beside what was taken last; what else is in hand should stay clear.
  const thing = boxes.at(-1);
  if (!view || !thing) return { ref, style: { right: gap, top: gap + 60 } };
  const numbers =
    ids.length === 1
      ? [
          ...clearancesOf(design, ids[0]!).map((c) => distanceBox(toScreen(view, size, middleOf(c)))),
          ...sizeLines(data, design, ids[0]!).map((line) => sizeBox(line, view, size)),
        ]
      : boxes.slice(0, -1);
  const [left, top] = cardCorner(thing, card, size, numbers);
  // The words that choose the view stay clear where there is room.
  const under = Math.max(top, Math.min(viewWords, size.height - card.height - gap));
  return { ref, style: { left, top: under } };
}
