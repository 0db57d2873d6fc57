import { renderToStaticMarkup } from 'react-dom/server';
import fittingStyle from '../styles/fitting.css?inline';
import paperStyle from '../styles/paper.css?inline';
import { fittingTexts as say } from '../texts/fitting.js';
import type { Fitting } from './fitting.js';
import { FittingHead } from './fitting-head.js';
import { Pieces, Steps } from './fitting-lists.js';
import { ticksPlace } from './ticks.js';

export interface FittingDrawing {
  readonly title: string;
  readonly svg: string;
}

/** Keeps ticks in the browser that opens the file, and finds pieces; a browser that keeps nothing still ticks. */
const script = (place: string): string => `
const place = ${JSON.stringify(place)};
const boxes = [...document.querySelectorAll('input[data-key]')];
try {
  const kept = JSON.parse(localStorage.getItem(place) ?? 'null');
  if (Array.isArray(kept)) for (const box of boxes) box.checked = kept.includes(box.dataset.key);
} catch {}
document.addEventListener('change', () => {
  try {
    localStorage.setItem(place, JSON.stringify(boxes.filter((b) => b.checked).map((b) => b.dataset.key)));
  } catch {}
});
document.querySelector('input[type=search]')?.addEventListener('input', (event) => {
  const wanted = event.target.value.trim().toLowerCase();
  for (const piece of document.querySelectorAll('[data-mark]'))
    piece.hidden = !piece.dataset.mark.toLowerCase().includes(wanted);
});
`;

/** Script text cannot end its own element early. */
const inScript = (text: string): string => text.replaceAll('</', '<\\/');

/** The sheet as one page with everything in it: it asks nothing of any network. */
export function fittingFile(fitting: Fitting, drawings: readonly FittingDrawing[], done: ReadonlySet<string>): string {
  const body = renderToStaticMarkup(
    <main className="fitting kept">
      <FittingHead fitting={fitting} />
      <Steps fitting={fitting} ticking={{ done }} />
      <h2>{say.views.pieces}</h2>
      <label className="find">
        <span>{say.find}</span>
        <input type="search" autoComplete="off" />
      </label>
      <Pieces pieces={fitting.pieces} wanted="" />
      <ul className="drawings">
        {drawings.map(({ title, svg }) => (
          <li key={title}>
            <h2>{title}</h2>
            <div className="frame large">
              <img src={`data:image/svg+xml;base64,${base64(svg)}`} alt={title} />
            </div>
          </li>
        ))}
      </ul>
    </main>,
  );
  const policy = "default-src 'none'; img-src data:; style-src 'unsafe-inline'; script-src 'unsafe-inline'";
  // The fonts of the page stay behind: they would double the file, and every device has one.
  const style = `${paperStyle.replace(/@font-face\s*\{[^}]*\}/g, '')}${fittingStyle}`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${say.title}</title>
<style>${style}</style>
</head>
<body>
${body}
<script>${inScript(script(ticksPlace(fitting.revision)))}</script>
</body>
</html>
`;
}

/** Text as base64 of its UTF-8. */
function base64(text: string): string {
  const bytes = new TextEncoder().encode(text);
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary);
}
