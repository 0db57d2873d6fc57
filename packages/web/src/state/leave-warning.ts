import { useEffect } from 'react';
import { useWorkbench } from './store.js';

/** The browser asks before a page is left only when something is neither on the server nor kept in the browser. */
export function useLeaveWarning(): void {
  useEffect(() => {
    const onLeave = (event: BeforeUnloadEvent) => {
      if (useWorkbench.getState().safety === 'unkept') event.preventDefault();
    };
    window.addEventListener('beforeunload', onLeave);
    return () => window.removeEventListener('beforeunload', onLeave);
  }, []);
}
