import { Component, type ReactNode } from 'react';
import { texts } from '../texts.js';

/** A fault in one drawing is told in its place and leaves the rest of the sheet alive. */
export class BugCatcher extends Component<{ readonly children: ReactNode }, { readonly bug: Error | null }> {
  override state = { bug: null as Error | null };

  static getDerivedStateFromError(bug: Error) {
    return { bug };
  }

  override render() {
    const { bug } = this.state;
    return bug ? <p className="waiting">{`${texts.bug} ${bug.message}`}</p> : this.props.children;
  }
}
