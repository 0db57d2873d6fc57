/** First letters of the hash name a state well enough to be told apart by eye. */
export const shortHash = (revision: string): string => revision.replace(/^sha256:/, '').slice(0, 10);
