import type { FastifyInstance } from 'fastify';
import { archiveMaker } from './archive/archive-maker.js';
import { hashesOf, shelfDifferences, textsByHash } from './archive/shelf-differences.js';
import type { ServerContext } from './context.js';
import { packName } from './pack-route.js';
import { sendProblem } from './problem-json.js';
import { sendNoProject } from './project-state.js';
import { inProject } from './shapes.js';
import { textsOf } from './stock.js';

export const largestArchive = 64 * 1024 * 1024;

/** A whole project on its way out and in. Every body is taken as bytes, whatever it is called. */
export function archiveRoutes(app: FastifyInstance, context: ServerContext): void {
  const { whole } = context.store;
  const maker = archiveMaker(context.options.archiveWorker ?? new URL('./archive-worker.js', import.meta.url));
  app.addHook('onClose', () => maker.close());
  app.get<{ Params: { readonly id: string } }>(
    '/api/projects/:id/export',
    { schema: { params: inProject } },
    async (request, reply) => {
      const project = await whole.read(request.params.id);
      if (!project) return sendNoProject(reply, context, request.params.id);
      const inForce = textsOf(await context.stock.inForce());
      const texts = { ...project.texts, ...textsByHash(inForce) };
      const zip = await maker.ask({ ask: 'pack', project: { ...project, texts, stock: hashesOf(inForce) } });
      if (!zip) return sendProblem(reply, 500, 'bug', 'The archive could not be made.');
      return reply
        .type('application/zip')
        .header('content-disposition', `attachment; filename="${packName(project.name).replace(/^pack/, 'project')}"`)
        .send(Buffer.from(zip));
    },
  );
  app.post<{ Body: Buffer | undefined }>(
    '/api/projects/import',
    { bodyLimit: largestArchive },
    async (request, reply) => {
      const zip = new Uint8Array(request.body ?? []);
      const read = await maker.ask({ ask: 'unpack', zip });
      const refused = 'This archive cannot be taken in.';
      if (!read) return sendProblem(reply, 422, 'archive-refused', refused);
      if (!read.ok) return sendProblem(reply, 422, 'archive-refused', refused, read.problems);
      const id = await whole.add(read.value);
      return reply.code(201).send({ id, shelf: await shelfDifferences(read.value, context) });
    },
  );
}
