import { secondInk } from '../drawing/inks.js';
import { a4, type Flow, margins, textWidth } from './flow.js';

/** Fills the page that was kept for it, once it is known where everything stands. */
export function contentsPage(flow: Flow, page: number): void {
  const { doc } = flow;
  doc.switchToPage(page);
  flow.y = margins.top;
  flow.span('Contents', { size: 15, medium: true });
  flow.y += 30;
  // A long list moves closer together rather than over the end of its page.
  const pitch = Math.min(17, (a4.height - margins.bottom - flow.y) / Math.max(1, flow.entries.length));
  for (const entry of flow.entries) {
    const indent = entry.level === 1 ? 0 : 16;
    const size = Math.min(entry.level === 1 ? 10 : 9, pitch - 2);
    const end = flow.span(entry.title, { size, indent, medium: entry.level === 1 }) + indent;
    const number = String(entry.page + 1);
    flow.span(number, { size, indent: textWidth - 40, width: 40, align: 'right' });
    doc
      .lineWidth(0.4)
      .dash([0.4, 2.6])
      .moveTo(margins.left + end + 6, flow.y + size * 0.95)
      .lineTo(margins.left + textWidth - flow.widthOf(number, size) - 6, flow.y + size * 0.95)
      .stroke(secondInk)
      .undash();
    doc.goTo(margins.left, flow.y - 1, textWidth, pitch, entry.destination);
    flow.y += pitch;
  }
}
