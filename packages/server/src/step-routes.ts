import type { NewStep } from '@cloche/store';
import type { FastifyInstance } from 'fastify';
import type { ServerContext } from './context.js';
import { sendProblem } from './problem-json.js';
import { textBody } from './project-routes.js';
import { sendNoProject } from './project-state.js';
import { inProject, newStep, record, seq } from './shapes.js';

interface InProject {
  readonly Params: { readonly id: string };
}

/** Splices of one request: each one copies the text, while nobody else is answered. */
const mostSplices = 5000;

/** The one history of a project. An answer that steps were taken comes when they are durable. */
export function stepRoutes(app: FastifyInstance, context: ServerContext): void {
  const { steps } = context.store;
  app.get<InProject & { Querystring: { readonly after?: number } }>(
    '/api/projects/:id/steps',
    { schema: { params: inProject, querystring: record({ after: seq }, ['after']) } },
    async (request, reply) => {
      const { id } = request.params;
      return (await steps.since(id, request.query.after ?? 0)) ?? sendNoProject(reply, context, id);
    },
  );
  app.post<InProject & { Body: { readonly base: number; readonly steps: readonly NewStep[] } }>(
    '/api/projects/:id/steps',
    {
      schema: {
        params: inProject,
        body: record({ base: seq, steps: { type: 'array', minItems: 1, maxItems: 500, items: newStep } }),
      },
      bodyLimit: textBody,
    },
    async (request, reply) => {
      const { id } = request.params;
      if (request.body.steps.reduce((sum, step) => sum + step.splices.length, 0) > mostSplices)
        return sendProblem(reply, 413, 'too-many-splices', `At most ${mostSplices} splices are taken at once.`);
      const made = await steps.append(id, { ...request.body, at: context.now() });
      switch (made.outcome) {
        case 'missing':
          return sendNoProject(reply, context, id);
        case 'unfit':
          return sendProblem(reply, 422, 'step-refused', 'The change does not fit the text.', made.problems);
        case 'behind':
          return reply.code(409).type('application/problem+json').send({
            type: 'urn:cloche:behind',
            title: 'Another window was first.',
            status: 409,
            seq: made.seq,
            steps: made.steps,
          });
        case 'appended':
          context.live.tell(id, { event: 'steps', id: made.seq, data: { seq: made.seq, steps: made.steps } });
          return { seq: made.seq };
      }
    },
  );
}
