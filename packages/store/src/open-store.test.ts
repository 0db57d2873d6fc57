import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { valueOf } from '@cloche/engine';
import Libsql from 'libsql';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { defaultDataFolder, openStore } from './index.js';

let base = '';
beforeAll(() => {
  base = mkdtempSync(join(tmpdir(), 'cloche-store-'));
});
afterAll(() => rmSync(base, { recursive: true, force: true }));

const at = '2026-10-01T12:00:00.000Z';
const codesOf = async (folder: string) => {
  const opened = await openStore(folder);
  if (!opened.ok) return opened.problems.map((p) => p.code);
  await opened.value.close();
  return [];
};

describe('a data folder', () => {
  test('is made for its owner alone, and keeps what was written', async () => {
    const folder = join(base, 'deep', 'data');
    const first = valueOf(await openStore(folder));
    const id = await first.projects.create({ text: 'cloche: 1\n', name: 'Bay', at });
    await first.close();
    expect(statSync(join(folder, 'cloche.db-wal'), { throwIfNoEntry: false })?.size ?? 0).toBe(0);
    expect(statSync(folder).mode & 0o077).toBe(0);
    expect(statSync(join(folder, 'cloche.db')).mode & 0o077).toBe(0);
    const second = valueOf(await openStore(folder));
    expect((await second.projects.get(id))!.text).toBe('cloche: 1\n');
    await second.close();
  });

  test('is used by one Cloche at a time, and told so', async () => {
    const folder = join(base, 'one');
    const holder = valueOf(await openStore(folder));
    const second = await openStore(folder);
    expect(second.ok ? undefined : second.problems[0]).toMatchObject({
      code: 'store/in-use',
      hint: expect.stringContaining('--data'),
    });
    // Another process, too.
    const script = `import Libsql from 'libsql';
      try { new Libsql(${JSON.stringify(join(folder, 'in-use.db'))}).exec('begin immediate'); } catch (e) { console.log(e.code); }`;
    const other = spawnSync(process.execPath, ['--input-type=module', '--eval', script], {
      cwd: import.meta.dirname,
      encoding: 'utf8',
    });
    expect(other.stdout.trim()).toBe('SQLITE_BUSY');
    await holder.close();
    expect(await codesOf(folder)).toEqual([]);
  });

  test('that holds no database of ours is left as it is', async () => {
    const folder = join(base, 'damaged');
    mkdirSync(folder);
    writeFileSync(join(folder, 'cloche.db'), 'my own notes, longer than a header of a database would be. '.repeat(20));
    expect(await codesOf(folder)).toEqual(['store/damaged']);
  });

  test('of a newer Cloche is not touched', async () => {
    const folder = join(base, 'newer');
    expect(await codesOf(folder)).toEqual([]);
    const file = new Libsql(join(folder, 'cloche.db'));
    file.exec(`insert into kysely_migration (name, timestamp) values ('9999-later', '${at}')`);
    file.close();
    expect(await codesOf(folder)).toEqual(['store/newer']);
  });

  test('that cannot be made is named', async () => {
    writeFileSync(join(base, 'file'), '');
    expect(await codesOf(join(base, 'file', 'data'))).toEqual(['store/folder']);
  });
});

// XDG Base Directory Specification 0.8: $XDG_DATA_HOME, or $HOME/.local/share; a relative path is ignored (from memory).
test.each([
  ['linux', {}, '/home/a/.local/share/cloche'],
  ['linux', { XDG_DATA_HOME: '/data' }, '/data/cloche'],
  ['linux', { XDG_DATA_HOME: 'data' }, '/home/a/.local/share/cloche'],
  ['darwin', { XDG_DATA_HOME: '/data' }, '/home/a/Library/Application Support/Cloche'],
  ['win32', { LOCALAPPDATA: 'C:\\Users\\a\\AppData\\Local' }, 'C:\\Users\\a\\AppData\\Local\\Cloche'],
] as const)('on %s with %o projects lie in %s', (platform, env, folder) => {
  expect(defaultDataFolder({ platform, env, home: '/home/a' })).toBe(folder);
});
