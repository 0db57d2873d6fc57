/** Writing and marks that the things themselves, or the notes, already tell a screen reader. */
export const unspoken = { 'aria-hidden': true } as const;
