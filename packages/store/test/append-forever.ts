import { valueOf } from '@cloche/engine';
import { openStore } from '../src/index.js';

/**
 * Appends one step after the other and says the number of each once it is acknowledged, until it is killed.
 *
 *     append-forever FOLDER PROJECT
 */
const [folder, project] = process.argv.slice(2) as [string, string];
const store = valueOf(await openStore(folder));
let base = (await store.steps.since(project, Number.MAX_SAFE_INTEGER))!.seq;
for (;;) {
  const made = await store.steps.append(project, {
    base,
    steps: [{ window: 'w', group: `${base}`, kind: 'edit', splices: [{ at: 0, out: '', in: `${base + 1},` }] }],
    at: '2026-10-01T12:00:00.000Z',
  });
  if (made.outcome !== 'appended') throw new Error(made.outcome);
  base = made.seq;
  process.stdout.write(`${base}\n`);
  // A pipe is written when the event loop turns.
  await new Promise((resolve) => setImmediate(resolve));
}
