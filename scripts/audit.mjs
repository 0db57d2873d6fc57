// What reaches a user: known weaknesses of the packages, as far as the registry tells, and their licences.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Permissive licences that the project ships under its own; fonts under theirs. */
const permissive = new Set([
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BSL-1.0',
  'CC0-1.0',
  'ISC',
  'MIT',
  'OFL-1.1',
  'Unlicense',
  'Zlib',
]);

/** Licences that a package states in its LICENSE file alone, read there; for this version only. */
const read = new Map([['png-js@2.0.0', 'MIT']]);

const licenceOf = (lock, path) => {
  const { license, version } = lock.packages[path];
  return license ?? read.get(`${path.split('node_modules/').at(-1)}@${version}`);
};

/** True for an SPDX expression that can be met with permissive licences alone: any of `OR`, all of `AND`. */
export function isPermissive(expression) {
  const [first, ...rest] = alternatives(expression.trim());
  if (rest.length > 0) return [first, ...rest].some(isPermissive);
  const inner = /^\((.*)\)$/.exec(first)?.[1];
  if (inner !== undefined) return isPermissive(inner);
  const parts = split(first, ' AND ');
  return parts.length > 1 ? parts.every(isPermissive) : permissive.has(first);
}

const alternatives = (expression) => split(expression, ' OR ');

/** Parts of an expression, parted outside of brackets. */
function split(expression, by) {
  const parts = [''];
  let depth = 0;
  for (let i = 0; i < expression.length; i++) {
    if (depth === 0 && expression.startsWith(by, i)) {
      parts.push('');
      i += by.length - 1;
      continue;
    }
    if (expression[i] === '(') depth++;
    if (expression[i] === ')') depth--;
    parts[parts.length - 1] += expression[i];
  }
  return parts.map((part) => part.trim());
}

/** Used to build the page, not part of it. */
const builds = (name) => name.startsWith('@types/') || name === 'vite' || name.startsWith('@vitejs/');

/**
 * Paths in the lock file of all packages that reach a user: what our packages depend on, and what is bundled into the page, which
 * is declared for development there.
 */
export function shipped(lock) {
  const found = new Set();
  /** Where Node would find a package, from a folder upward. */
  const resolve = (from, name) => {
    for (let folder = from; ; folder = folder.slice(0, Math.max(0, folder.lastIndexOf('/')))) {
      const path = `${folder === '' ? '' : `${folder}/`}node_modules/${name}`;
      if (lock.packages[path]) return path;
      if (folder === '') return undefined;
    }
  };
  const visit = (from, names) => {
    for (const name of names) {
      const path = resolve(from, name);
      if (path === undefined || found.has(path)) continue;
      const entry = lock.packages[path];
      if (entry.link) continue;
      found.add(path);
      visit(path, Object.keys({ ...entry.dependencies, ...entry.optionalDependencies }));
    }
  };
  for (const [path, entry] of Object.entries(lock.packages)) {
    if (!/^packages\/[^/]+$/.test(path)) continue;
    visit(path, Object.keys(entry.dependencies ?? {}));
    if (path === 'packages/web')
      visit(
        path,
        Object.keys(entry.devDependencies ?? {}).filter((name) => !builds(name)),
      );
  }
  return [...found].sort();
}

/** A line for each shipped package whose licence is not known to be permissive. */
export const licenceTroubles = (lock) =>
  shipped(lock)
    .filter((path) => !isPermissive(licenceOf(lock, path) ?? ''))
    .map((path) => `${path}: ${licenceOf(lock, path) ?? 'no licence stated'}`);

/**
 * What an audit report means: troubles that fail, or that nothing was audited.
 * @param report what `npm audit --json` printed, parsed; null when it was no JSON
 */
export function judge(report, lock) {
  if (!report?.vulnerabilities) {
    const why = report?.message ?? report?.error?.summary ?? 'no answer';
    return { audited: false, why: String(why).split(' - ')[0], troubles: [] };
  }
  const reach = new Set(shipped(lock));
  const troubles = Object.entries(report.vulnerabilities)
    .filter(([, { severity }]) => severity === 'high' || severity === 'critical')
    .filter(([, { nodes }]) => (nodes ?? []).some((path) => reach.has(path)))
    .map(([name, { severity, via }]) => {
      const titles = (via ?? []).map((each) => (typeof each === 'string' ? each : each.title));
      return `${name}: ${severity}: ${titles.join('; ')}`;
    });
  return { audited: true, troubles };
}

/** Asks the registry; what it cannot or will not tell is null. */
function askRegistry(cwd) {
  // Without --omit=dev: what the page bundles counts as development for npm, and `judge` leaves out what does not reach a user.
  const { stdout } = spawnSync('npm', ['audit', '--json', '--audit-level=high'], {
    cwd,
    encoding: 'utf8',
    shell: process.platform === 'win32',
    timeout: 60_000,
    maxBuffer: 64 * 1024 * 1024,
  });
  try {
    return JSON.parse(stdout);
  } catch {
    return null;
  }
}

/** Prints what was found; throws when something that reaches a user fails. */
export function audit(root) {
  const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
  const { audited, why, troubles } = judge(askRegistry(root), lock);
  console.log(
    audited
      ? `${shipped(lock).length} shipped packages audited: ${troubles.length} with high or critical weaknesses.`
      : `NOT AUDITED for known weaknesses: the registry gives no report (${why}).`,
  );
  const all = [...troubles, ...licenceTroubles(lock).map((line) => `licence: ${line}`)];
  if (all.length > 0) throw new Error(`\n${all.join('\n')}`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    audit(join(import.meta.dirname, '..'));
  } catch (error) {
    console.error(error.message);
    process.exitCode = 1;
  }
}
