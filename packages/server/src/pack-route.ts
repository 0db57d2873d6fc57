import { designFrom } from '@cloche/engine';
import { makePack, type PackFile } from '@cloche/pack';
import type { FastifyInstance } from 'fastify';
import { zipSync } from 'fflate';
import type { ServerOptions } from './options.js';
import { sendProblem } from './problem-json.js';

/** Largest brief that is taken; readers of the engine have the same limit. */
export const bodyLimit = 2 * 1024 * 1024;

interface PackRequest {
  readonly Body: { readonly brief: string };
  readonly Querystring: { readonly file?: string };
}

const schema = {
  body: {
    type: 'object',
    required: ['brief'],
    additionalProperties: false,
    properties: { brief: { type: 'string' } },
  },
  querystring: { type: 'object', properties: { file: { type: 'string', maxLength: 120 } } },
} as const;

const serverDay = (): string => new Date().toISOString().slice(0, 10);

/** The brief as a pack in one zip file, or one file of it; `issued` is the server's day, never the client's. */
export function packRoute(app: FastifyInstance, options: ServerOptions): void {
  const today = options.today ?? serverDay;
  app.post<PackRequest>('/api/pack', { schema }, async (request, reply) => {
    const made = designFrom({
      briefText: request.body.brief,
      catalogueFiles: options.catalogueFiles,
      ruleTexts: options.rulesFiles,
    });
    if (!made.ok)
      return sendProblem(reply, 422, 'brief-refused', 'The brief cannot be used as it stands.', made.problems);
    const { design, findings, catalogue, rules, revision } = made.value;
    const { file } = request.query;
    const files = await makePack(
      {
        design,
        findings,
        catalogue,
        rules,
        issued: today(),
        fonts: options.fonts,
        revision: { name: 'draft', hash: revision },
      },
      file === undefined ? {} : { only: [file] },
    );
    if (file === undefined)
      return reply
        .type('application/zip')
        .header('content-disposition', `attachment; filename="${packName(design.project.name)}"`)
        .send(zipped(files, today()));
    const found = files.find((f) => f.name === file);
    if (!found) return sendProblem(reply, 404, 'no-such-file', `The pack has no file ${file}.`);
    return reply.type(found.mediaType).send(found.bytes);
  });
}

/** Name of the zip: letters, digits and hyphens of the project's name, so that every file system takes it. */
export const packName = (project: string): string =>
  `${
    project
      .toLowerCase()
      .normalize('NFKD')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60) || 'pack'
  }.zip`;

/** Same files, same day, same bytes. */
function zipped(files: readonly PackFile[], day: string): Uint8Array {
  const entries = Object.fromEntries(files.map((f) => [f.name, f.bytes]));
  return zipSync(entries, { mtime: `${day}T12:00:00` });
}
