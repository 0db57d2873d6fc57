import type { NewRevision } from '@cloche/store';
import type { FastifyInstance } from 'fastify';
import type { ServerContext } from './context.js';
import { sendProblem } from './problem-json.js';
import { sendNoProject } from './project-state.js';
import { inProject, inRevision, newRevision } from './shapes.js';
import { textsOf } from './stock.js';

/** Figures of a revision, not documents. */
const largestRevision = 64 * 1024;

/** Immutable states of a project. */
export function revisionRoutes(app: FastifyInstance, context: ServerContext): void {
  const { projects, revisions } = context.store;
  app.get<{ Params: { readonly id: string } }>(
    '/api/projects/:id/revisions',
    { schema: { params: inProject } },
    async (request, reply) => {
      const { id } = request.params;
      return (await projects.state(id)) === 'there' ? revisions.list(id) : sendNoProject(reply, context, id);
    },
  );
  app.get<{ Params: { readonly id: string; readonly number: number } }>(
    '/api/projects/:id/revisions/:number',
    { schema: { params: inRevision } },
    async (request, reply) => {
      const { id, number } = request.params;
      if ((await projects.state(id)) !== 'there') return sendNoProject(reply, context, id);
      const revision = await revisions.get(id, number);
      return revision ?? sendProblem(reply, 404, 'no-such-revision', `This project has no revision ${number}.`);
    },
  );
  app.post<{ Params: { readonly id: string }; Body: Omit<NewRevision, 'cost'> & { readonly cost?: unknown } }>(
    '/api/projects/:id/revisions',
    { schema: { params: inProject, body: newRevision }, bodyLimit: largestRevision },
    async (request, reply) => {
      const { id } = request.params;
      const made = { ...request.body, cost: request.body.cost ?? null, at: context.now() };
      const number = await revisions.add(id, { ...made, stock: textsOf(await context.stock.inForce()) });
      if (number === undefined) return sendNoProject(reply, context, id);
      if (number === 'no-step')
        return sendProblem(reply, 422, 'no-such-step', `The project has no step ${request.body.seq} yet.`);
      context.live.tell(id, { event: 'revision', data: { number } });
      return reply.code(201).send({ number });
    },
  );
}
