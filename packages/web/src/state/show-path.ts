import { isNode, parseDocument } from 'yaml';
import type { Path } from '../brief/path.js';
import { showInText, useWorkbench } from './store.js';

/** Puts the caret of the text pane where a path stands, or on the nearest thing above it that is there. */
export function showPath(path: Path): void {
  const { text } = useWorkbench.getState();
  const document = parseDocument(text);
  for (let depth = path.length; depth > 0; depth--) {
    const node = document.getIn(path.slice(0, depth), true);
    if (isNode(node) && node.range) {
      showInText(node.range[0]);
      return;
    }
  }
  showInText(0);
}
