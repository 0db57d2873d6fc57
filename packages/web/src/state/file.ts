import { shownText, valueAt } from '../brief/path.js';
import { briefName } from './file-name.js';
import { useWorkbench } from './store.js';

/** Hands bytes to the browser as a file. */
export function handOver(blob: Blob, name: string): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** The brief in hand as a file, named after its project. */
export function saveBrief(): void {
  const { text, data } = useWorkbench.getState();
  handOver(new Blob([text], { type: 'text/yaml' }), briefName(shownText(valueAt(data, ['project', 'name'])), text));
}
