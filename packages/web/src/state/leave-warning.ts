import { useEffect } from 'react';
import { useWorkbench } from './store.js';

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
