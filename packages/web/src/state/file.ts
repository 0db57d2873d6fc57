import { shownText, valueAt } from '../brief/path.js';
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

/** Letters, digits and hyphens of the project's name, so that every file system takes it; JSON stays JSON. */
export function briefName(project: string, text: string): string {
  const stem = project
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${stem || 'brief'}.${text.trimStart().startsWith('{') ? 'json' : 'yaml'}`;
}
