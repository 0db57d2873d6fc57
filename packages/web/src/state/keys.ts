import { useEffect } from 'react';
import { saveBrief } from './file.js';
import { redo, undo, useWorkbench } from './store.js';

/** Undo, redo and save by the keys that people know; they need Ctrl or Cmd, so that typing is never caught. */
export function useKeys(): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key === 'z') (event.shiftKey ? redo : undo)();
      else if (key === 'y') redo();
      else if (key === 's') saveBrief();
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}

/** The browser asks before a page with unsaved changes is left. */
export function useLeaveWarning(): void {
  useEffect(() => {
    const onLeave = (event: BeforeUnloadEvent) => {
      const { text, savedText } = useWorkbench.getState();
      if (text !== savedText) event.preventDefault();
    };
    window.addEventListener('beforeunload', onLeave);
    return () => window.removeEventListener('beforeunload', onLeave);
  }, []);
}
