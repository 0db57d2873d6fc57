import { type Problem, readCatalogue, readRules } from '@cloche/engine';
import { hashOf, type ShelfPlace, type StockTexts, textProblems } from '@cloche/store';
import type { FastifyInstance } from 'fastify';
import type { ServerContext } from './context.js';
import { sendProblem } from './problem-json.js';
import { textBody } from './project-routes.js';
import { because, briefText, fileName, inShelf, inShelfVersion, record } from './shapes.js';
import { textsOf } from './stock.js';

interface Place {
  readonly Params: ShelfPlace;
}

const refused = 'These data files cannot be used as they stand.';

/** Catalogue and rules in force: what was shipped, or what the shelf put in its place, with every version and its reason. */
export function shelfRoutes(app: FastifyInstance, context: ServerContext): void {
  const { shelf } = context.store;
  const shipped = textsOf(context.stock.shipped);
  app.get('/api/shelf', () => lines(context));
  app.get<{ Params: ShelfPlace & { readonly hash: string } }>(
    '/api/shelf/:kind/:name/:hash',
    { schema: { params: inShelfVersion } },
    async (request, reply) => {
      const { kind, name, hash } = request.params;
      const original = own(shipped[kind], name);
      const text =
        original !== undefined && hashOf(original) === hash ? original : await shelf.text({ kind, name }, hash);
      return text === undefined
        ? sendProblem(reply, 404, 'no-such-version', 'This file never had such a version.')
        : reply.type('text/plain; charset=utf-8').send(text);
    },
  );
  app.put<Place & { Body: { readonly text: string; readonly because: string; readonly file?: string } }>(
    '/api/shelf/:kind/:name',
    {
      schema: { params: inShelf, body: record({ text: briefText, because, file: fileName }, ['file']) },
      bodyLimit: textBody,
    },
    async (request, reply) => {
      const { text } = request.body;
      const texts = textsOf(await context.stock.inForce());
      const broken = textProblems(text);
      const problems = broken.length > 0 ? broken : problemsAt(request.params, withText(texts, request.params, text));
      if (problems.length > 0) return sendProblem(reply, 422, 'shelf-refused', refused, problems);
      return { hash: await shelf.put(request.params, { ...request.body, at: context.now() }) };
    },
  );
  app.delete<Place & { Querystring: { readonly because: string } }>(
    '/api/shelf/:kind/:name',
    { schema: { params: inShelf, querystring: record({ because }) } },
    async (request, reply) => {
      const { kind, name } = request.params;
      const texts = textsOf(await context.stock.inForce());
      const original = own(shipped[kind], name);
      if (own(texts[kind], name) === original)
        return sendProblem(reply, 404, 'not-on-shelf', 'Nothing replaces this file.');
      // What is broken already may always be taken back: that is the way out.
      const before = problemsAt(request.params, texts);
      const problems = before.length > 0 ? [] : problemsAt(request.params, withText(texts, request.params, original));
      if (problems.length > 0) return sendProblem(reply, 422, 'shelf-refused', refused, problems);
      await shelf.takeBack(request.params, { because: request.query.because, at: context.now() });
      return { hash: hashOrNull(original) };
    },
  );
}

/** A text of a record by a name that came from outside: never what every object inherits. */
const own = (texts: Readonly<Record<string, string>>, name: string): string | undefined =>
  Object.hasOwn(texts, name) ? texts[name] : undefined;

const hashOrNull = (text: string | undefined): string | null => (text === undefined ? null : hashOf(text));

function withText(texts: StockTexts, { kind, name }: ShelfPlace, text: string | undefined): StockTexts {
  const files = Object.entries(texts[kind]).filter(([other]) => other !== name);
  return { ...texts, [kind]: Object.fromEntries(text === undefined ? files : [...files, [name, text]]) };
}

/** All that is wrong: a catalogue only shows its faults when its files are read together; a rule profile stands alone. */
function problemsAt({ kind, name }: ShelfPlace, texts: StockTexts): readonly Problem[] {
  const text = own(texts.rules, name);
  const read =
    kind === 'catalogue'
      ? readCatalogue(Object.entries(texts.catalogue).map(([file, t]) => ({ name: file, text: t })))
      : text === undefined
        ? undefined
        : readRules(text, `${name}.yaml`);
  return read === undefined || read.ok ? [] : read.problems;
}

async function lines({ store, stock }: ServerContext) {
  const shipped = textsOf(stock.shipped);
  const inForce = textsOf(await stock.inForce());
  const versions = await store.shelf.versions();
  return (['catalogue', 'rules'] as const).flatMap((kind) => {
    const changed = versions.filter((v) => v.kind === kind);
    const names = new Set([...Object.keys(shipped[kind]), ...changed.map((v) => v.name)]);
    return [...names].sort().map((name) => {
      const text = own(inForce[kind], name);
      return {
        kind,
        name,
        shipped: text !== undefined && text === own(shipped[kind], name),
        inForce: hashOrNull(text),
        original: hashOrNull(own(shipped[kind], name)),
        versions: changed
          .filter((v) => v.name === name)
          .map(({ hash, at, because: why, file }) => ({ hash, at, because: why, file })),
      };
    });
  });
}
