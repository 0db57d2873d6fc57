/** Words for what follows an edit a moment later. */
export const liveTexts = {
  /** Beside a finding whose check has not answered for the newest state yet. */
  stale: 'stale',
  /** Beside the tally of verdicts meanwhile. */
  someStale: 'some stale',
  /** Heading of an open finding that is stale. */
  staleDetail: 'This belongs to the state before the last edit; it is being computed again.',
};
