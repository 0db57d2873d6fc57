import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { valueOf } from '@cloche/engine';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bundled } from '../test/bundled.js';
import { openStore } from './index.js';

let script = '';
let folder = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'cloche-kill-'));
  script = fileURLToPath(await bundled('packages/store/test/append-forever.ts', 'append-forever'));
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Lets a process append until it has acknowledged a number of steps, kills it at once, and gives the last one it told. */
function killedAfter(project: string, acknowledged: number): Promise<number> {
  const child = spawn(process.execPath, [script, folder, project], { stdio: ['ignore', 'pipe', 'inherit'] });
  let said = '';
  child.stdout.on('data', (chunk) => {
    said += chunk;
    if (said.split('\n').length > acknowledged) child.kill('SIGKILL');
  });
  return new Promise((resolve, reject) => {
    child.on('close', (code, signal) => {
      const last = said.split('\n').at(-2);
      if (signal !== 'SIGKILL' || last === undefined) reject(new Error(`ended with ${code ?? signal}`));
      else resolve(Number(last));
    });
  });
}

test('a process killed while it writes loses no acknowledged step, leaves no hole and no lock', async () => {
  const first = valueOf(await openStore(folder));
  const project = await first.projects.create({ text: 'start', name: 'Kill', at: '2026-10-01T12:00:00.000Z' });
  await first.close();
  // Numbers drawn once at random; where in a write the process dies is up to the system.
  for (const acknowledged of [1, 37, 4, 90, 2, 61, 13, 140, 7, 25, 3, 52]) {
    const told = await killedAfter(project, acknowledged);
    const store = valueOf(await openStore(folder));
    const { seq, steps } = (await store.steps.since(project, 0))!;
    const text = (await store.projects.get(project))!.text;
    await store.close();
    expect(seq).toBeGreaterThanOrEqual(told);
    const numbers = Array.from({ length: seq }, (_, i) => i + 1);
    expect(steps.map((s) => s.seq)).toEqual(numbers);
    // Each step writes its own number before the text: what must stand there is known without a replay.
    expect(text).toBe(`${numbers.reverse().join(',')},start`);
  }
}, 120_000);
