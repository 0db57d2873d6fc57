// What a bare machine lacks, set up with Node's own modules only.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const cache = join(root, 'node_modules', '.cache');
const windows = process.platform === 'win32';

/** Runs a command with its output shown; throws when it fails. */
export function run(command, args, options = {}) {
  const result = spawnSync(command, args, { cwd: root, stdio: 'inherit', shell: windows, ...options });
  if (result.error) throw result.error;
  if (result.status !== 0) throw new Error(`${command} ${args.join(' ')} ended with ${result.status ?? result.signal}`);
}

const has = (program) => spawnSync(program, ['--version'], { stdio: 'ignore' }).error === undefined;

export function needNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  console.error(`Node ${process.versions.node} is too old: Cloche needs 20.19 or newer.`);
  process.exit(1);
}

/** Hash of the names, sizes and times of files: tells whether a build is stale. */
function stamp(paths) {
  const hash = createHash('sha256');
  const visit = (path) => {
    if (!existsSync(path)) return;
    const info = statSync(path);
    if (info.isDirectory()) {
      for (const name of readdirSync(path).sort())
        if (name !== 'dist' && name !== 'node_modules') visit(join(path, name));
    } else hash.update(`${path}:${info.size}:${info.mtimeMs}\n`);
  };
  for (const path of paths) visit(join(root, path));
  return hash.digest('hex');
}

const mark = (name) => join(cache, `cloche-${name}`);
const isCurrent = (name, value) => existsSync(mark(name)) && readFileSync(mark(name), 'utf8') === value;
const remember = (name, value) => {
  mkdirSync(cache, { recursive: true });
  writeFileSync(mark(name), value);
};

/** Installs the packages when they are missing or the lock file changed. */
export function dependencies() {
  const lock = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
  if (existsSync(join(root, 'node_modules', 'typescript')) && isCurrent('lock', lock)) return;
  console.log('Installing packages ...');
  run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel', 'error']);
  remember('lock', lock);
}

/** Builds all packages when a source is newer than the last build. */
export function build() {
  const sources = readdirSync(join(root, 'packages')).flatMap((p) => [
    `packages/${p}/src`,
    `packages/${p}/package.json`,
    `packages/${p}/index.html`,
  ]);
  const now = stamp([...sources, 'tsconfig.base.json', 'package-lock.json', 'scripts/bundle.mjs']);
  if (
    existsSync(join(root, 'packages/cli/dist/bundle/main.js')) &&
    existsSync(join(root, 'packages/web/dist/index.html')) &&
    isCurrent('build', now)
  )
    return;
  console.log('Building ...');
  run('npm', ['run', '--silent', 'build']);
  remember('build', now);
}

/** Debian packages that the tests use: a browser, a reference solver for frames, readers for PDF, SVG and DXF. */
const tools = [
  { program: 'chromium', packages: ['chromium'] },
  { program: 'z88f', packages: ['z88', 'z88-data'] },
  { program: 'pdftotext', packages: ['poppler-utils'] },
];

/** Installs what the tests need from Debian's packages where that is allowed, else says exactly what to install and stops. */
export function testTools() {
  const missing = tools.filter(
    ({ program }) => spawnSync('sh', ['-c', `command -v ${program}`], { stdio: 'ignore' }).status !== 0,
  );
  if (missing.length === 0) return;
  const packages = missing.flatMap((m) => m.packages);
  const install = `apt-get install -y --no-install-recommends ${packages.join(' ')}`;
  const asRoot = process.getuid?.() === 0;
  const sudo = !asRoot && has('sudo') && spawnSync('sudo', ['-n', 'true'], { stdio: 'ignore' }).status === 0;
  if (has('apt-get') && (asRoot || sudo)) {
    console.log(`Installing ${packages.join(', ')} ...`);
    const [command, ...first] = sudo ? ['sudo', '-n', 'apt-get'] : ['apt-get'];
    const options = {
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      stdio: ['ignore', 'ignore', 'inherit'],
    };
    run(command, [...first, 'update', '-q'], options);
    run(command, [...first, 'install', '-y', '-q', '--no-install-recommends', ...packages], options);
    return;
  }
  console.error(
    `The tests need these programs: ${missing.map((m) => m.program).join(', ')}.\nInstall them, then run npm test again:\n\n    sudo apt-get update && sudo ${install}\n`,
  );
  process.exit(1);
}
