import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');

interface Import {
  readonly file: string;
  readonly to: string;
  /** Types alone: nothing of the module is there when the program runs. */
  readonly types: boolean;
}

const sourcesUnder = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return ['node_modules', 'dist'].includes(entry.name) ? [] : sourcesUnder(path);
    return /\.tsx?$/.test(entry.name) && !entry.name.endsWith('.d.ts') ? [path] : [];
  });

const parse = (file: string): ts.SourceFile =>
  ts.createSourceFile(
    file,
    readFileSync(file, 'utf8'),
    ts.ScriptTarget.ES2022,
    true,
    file.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
  );

/** Every module named by import, export or import(). */
function importsOf(file: string): Import[] {
  const found: Import[] = [];
  const visit = (node: ts.Node): void => {
    const named = ts.isImportDeclaration(node) || ts.isExportDeclaration(node) ? node.moduleSpecifier : undefined;
    const called =
      ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword ? node.arguments[0] : undefined;
    const specifier = named ?? called;
    const types =
      (ts.isImportDeclaration(node) && node.importClause?.isTypeOnly === true) ||
      (ts.isExportDeclaration(node) && node.isTypeOnly);
    if (specifier && ts.isStringLiteral(specifier)) found.push({ file, to: specifier.text, types });
    ts.forEachChild(node, visit);
  };
  visit(parse(file));
  return found;
}

const packages = readdirSync(join(root, 'packages'));
const files = packages.flatMap((p) => sourcesUnder(join(root, 'packages', p)));
const imports = files.flatMap(importsOf);
const isTest = (file: string) => /\.test\.tsx?$/.test(file) || file.includes(`${join('/', 'test')}/`);

/** The file that a relative import means. */
const target = ({ file, to }: Pick<Import, 'file' | 'to'>): string | undefined => {
  const base = resolve(dirname(file), to.replace(/\?.*$/, '')).replace(/\.js$/, '');
  return [`${base}.ts`, `${base}.tsx`, join(base, 'index.ts'), base].find((p) => existsSync(p) && /\.tsx?$/.test(p));
};

test('the reader sees the whole tree', () => {
  expect(files.length).toBeGreaterThan(100);
  expect(imports.length).toBeGreaterThan(200);
});

describe('packages import one way', () => {
  const allowed: Readonly<Record<string, readonly string[]>> = {
    engine: [],
    pack: ['engine'],
    store: ['engine'],
    server: ['engine', 'pack', 'store'],
    cli: ['engine', 'pack', 'store', 'server'],
    web: ['engine', 'pack'],
  };
  /** What a package may know by its types alone: the page reads what the store writes, but never runs it. */
  const allowedTypes: Readonly<Record<string, readonly string[]>> = { web: ['store'] };

  test.each(packages)('%s imports only what lies under it, by name, and declares it', (name) => {
    const folder = join(root, 'packages', name);
    const manifest = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Record<
      string,
      Record<string, string>
    >;
    const declared = new Set(
      Object.keys({ ...manifest['dependencies'], ...manifest['devDependencies'], ...manifest['peerDependencies'] }),
    );
    const rootManifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Record<
      string,
      Record<string, string>
    >;
    const forTests = new Set(Object.keys(rootManifest['devDependencies']!));
    const wrong = imports
      .filter((i) => i.file.startsWith(folder))
      .flatMap((i) => {
        const where = `${relative(root, i.file)} -> ${i.to}`;
        if (i.to.startsWith('.')) {
          const to = resolve(dirname(i.file), i.to);
          return to.startsWith(folder) || isTest(i.file) ? [] : [`${where}: reaches into another package`];
        }
        const bare = i.to
          .split('/')
          .slice(0, i.to.startsWith('@') ? 2 : 1)
          .join('/');
        if (i.to.startsWith('node:') || builtinModules.includes(bare)) return [];
        if (bare.startsWith('@cloche/')) {
          const sibling = bare.slice('@cloche/'.length);
          const below = [...allowed[name]!, ...(i.types ? (allowedTypes[name] ?? []) : [])];
          if (!isTest(i.file) && !below.includes(sibling)) return [`${where}: layer crossed`];
          if (i.to !== bare) return [`${where}: only the package's own entry may be imported`];
        }
        return declared.has(bare) || (isTest(i.file) && (forTests.has(bare) || bare.startsWith('@cloche/')))
          ? []
          : [`${where}: not in package.json`];
      });
    expect(wrong).toEqual([]);
  });
});

describe('inside the engine', () => {
  const src = join(root, 'packages/engine/src');
  const disciplines = ['laser', 'air', 'frame', 'curtain', 'cutting', 'room'];
  const folderOf = (file: string) => relative(src, file).split('/')[0]!;
  /** What each folder may import besides itself. */
  const below: Readonly<Record<string, readonly string[]>> = {
    floor: [],
    ...Object.fromEntries(disciplines.map((d) => [d, ['floor']])),
    reading: ['floor'],
    rules: ['floor', 'reading'],
    catalogue: ['floor', 'reading'],
    brief: ['floor', 'reading', 'rules', 'design'],
    design: ['floor', 'brief', 'catalogue', 'rules', 'cutting', 'frame'],
    compose: ['floor', 'reading', 'brief', 'rules', 'catalogue', 'design', ...disciplines],
    parts: ['floor', 'catalogue', 'rules', 'design', 'cutting'],
    compare: ['floor', 'catalogue', 'rules', 'design', 'parts'],
    check: ['floor', 'brief', 'rules', 'catalogue', 'design', ...disciplines],
    overlay: ['floor', 'rules', 'design', 'check', ...disciplines],
    discipline: ['floor', 'reading', 'check', 'overlay', ...disciplines],
    cure: ['floor', 'reading', 'brief', 'rules', 'catalogue', 'design', 'compose', 'check', 'discipline'],
  };

  test('every folder imports only what lies under it', () => {
    const wrong = imports
      .filter((i) => i.file.startsWith(src) && i.to.startsWith('.') && !isTest(i.file))
      .flatMap((i) => {
        const from = folderOf(i.file);
        const to = target(i);
        if (!to) return [`${relative(root, i.file)} -> ${i.to}: no such file`];
        const into = folderOf(to);
        if (from === into || from.endsWith('.ts') || into === 'version.ts') return [];
        return below[from]?.includes(into) ? [] : [`${relative(root, i.file)} -> ${relative(root, to)}`];
      });
    expect(wrong).toEqual([]);
  });

  test('no clock, no chance, no output', () => {
    const forbidden = ['Date.now', 'Math.random', 'new Date', 'performance.now', 'console.'];
    const wrong = [...sourcesUnder(src), ...sourcesUnder(join(root, 'packages/pack/src'))]
      .filter((f) => !isTest(f))
      .flatMap((file) => {
        const found: string[] = [];
        const visit = (node: ts.Node): void => {
          const text =
            ts.isNewExpression(node) && node.expression.getText() === 'Date' && (node.arguments?.length ?? 0) === 0
              ? 'new Date'
              : ts.isPropertyAccessExpression(node)
                ? node.getText()
                : '';
          if (forbidden.some((f) => text === f || (f.endsWith('.') && text.startsWith(f))))
            found.push(`${relative(root, file)}: ${text}`);
          ts.forEachChild(node, visit);
        };
        visit(parse(file));
        return found;
      });
    expect(wrong).toEqual([]);
  });
});

test('no import cycles among values', () => {
  const graph = new Map<string, string[]>();
  for (const file of files.filter((f) => !isTest(f))) {
    const source = parse(file);
    const values = source.statements.flatMap((s) => {
      if (ts.isImportDeclaration(s) && !s.importClause?.isTypeOnly && ts.isStringLiteral(s.moduleSpecifier))
        return [s.moduleSpecifier.text];
      if (ts.isExportDeclaration(s) && !s.isTypeOnly && s.moduleSpecifier && ts.isStringLiteral(s.moduleSpecifier))
        return [s.moduleSpecifier.text];
      return [];
    });
    graph.set(
      file,
      values.filter((v) => v.startsWith('.')).flatMap((to) => target({ file, to }) ?? []),
    );
  }
  const state = new Map<string, 'open' | 'done'>();
  const cycles: string[] = [];
  const visit = (file: string, path: readonly string[]): void => {
    if (state.get(file) === 'done') return;
    if (state.get(file) === 'open') {
      cycles.push([...path.slice(path.indexOf(file)), file].map((f) => relative(root, f)).join(' -> '));
      return;
    }
    state.set(file, 'open');
    for (const to of graph.get(file) ?? []) visit(to, [...path, file]);
    state.set(file, 'done');
  };
  for (const file of graph.keys()) visit(file, []);
  expect(cycles).toEqual([]);
});
