import { texts } from '../texts.js';
import { markSaved, openBrief, useWorkbench } from './store.js';

/** Hands bytes to the browser as a file. */
export function handOver(blob: Blob, name: string): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

export function saveBrief(): void {
  const { text, fileName } = useWorkbench.getState();
  handOver(new Blob([text], { type: 'text/yaml' }), fileName);
  markSaved();
}

/** True when nothing would be lost, or the person accepts the loss. */
export function mayLeave(): boolean {
  const { text, savedText } = useWorkbench.getState();
  return text === savedText || window.confirm(texts.file.leave);
}

const largest = 2 * 1024 * 1024;

export async function openFile(file: File): Promise<void> {
  if (file.size > largest) {
    useWorkbench.setState({ trouble: texts.file.tooLarge });
    return;
  }
  const text = await file.text();
  if (mayLeave()) openBrief({ name: file.name, text });
}
