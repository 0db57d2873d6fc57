import { create } from 'zustand';
import type { Vec2 } from '../engine/contract.js';
import { widthOf } from './plan-labels.js';
import { unspoken } from './unspoken.js';
import type { Size } from './view.js';

interface Hovered {
  readonly name: string;
  /** Where the pointer came upon the thing, pixels of the sheet. */
  readonly at: Vec2;
}

const useHovered = create<{ readonly hovered: Hovered | null }>(() => ({ hovered: null }));

/** Told when the pointer enters or leaves something, never while it moves within. */
export function hoverOver(event: { readonly target: EventTarget; readonly clientX: number; readonly clientY: number }) {
  const element = event.target as Element;
  const thing = element.closest('[data-thing]');
  const sheet = element.closest('.plan');
  const name = thing?.getAttribute('aria-label');
  if (!thing || !sheet || !name || isWritten(sheet, thing.getAttribute('data-thing') ?? '', name)) return hoverOff();
  const box = sheet.getBoundingClientRect();
  useHovered.setState({ hovered: { name, at: [event.clientX - box.left, event.clientY - box.top] } });
}

export function hoverOff(): void {
  if (useHovered.getState().hovered) useHovered.setState({ hovered: null });
}

/** The name stands on the sheet already; a mark or letter alone does not say it. */
function isWritten(sheet: Element, id: string, name: string): boolean {
  const label = sheet.querySelector(`.labels [data-label="${CSS.escape(id)}"] text.name`);
  const shown = label?.textContent?.replace(/\s/g, '');
  return shown !== undefined && shown !== id && name.replace(/\s/g, '').includes(shown);
}

/** The name of what the pointer is over, where there was no room to write it. */
export function HoverName({ size, type }: { readonly size: Size; readonly type: number }) {
  const hovered = useHovered((s) => s.hovered);
  if (!hovered) return null;
  const width = widthOf(hovered.name) + 8;
  const [x, y] = [hovered.at[0] / type, hovered.at[1] / type];
  const left = Math.max(4, Math.min(x + 12, size.width / type - width - 4));
  return (
    <g className="hover-name" transform={`scale(${type}) translate(${left} ${Math.max(50, y - 30)})`} {...unspoken}>
      <rect width={width} height={20} rx={2} />
      <text x={width / 2} y={14.5} textAnchor="middle">
        {hovered.name}
      </text>
    </g>
  );
}
