import { readBrief } from '@cloche/engine';
import { type Summary, textProblems } from '@cloche/store';
import type { FastifyInstance } from 'fastify';
import type { ServerContext } from './context.js';
import { sendProblem } from './problem-json.js';
import { sendNoProject } from './project-state.js';
import { briefText, id, inProject, keepable, projectName, record, seq, verdicts } from './shapes.js';

/** A text of the longest kind, as JSON that escapes much of it. */
export const textBody = 5 * 1024 * 1024;
/** Projects that are thrown away at once: fewer than the values that a statement may hold. */
const mostDiscarded = 10_000;
/** Largest picture of a project, in characters of SVG. */
const largestPicture = 300_000;

interface InProject {
  readonly Params: { readonly id: string };
}

/** The name that a new project has until a window tells another: what its brief says, if it can be read. */
export function nameIn(text: string): string {
  const brief = readBrief(text);
  const name = brief.ok ? brief.value.project.name.slice(0, projectName.maxLength) : '';
  // Escapes may name characters that the text itself does not hold, and a cut may part one.
  return textProblems(name).length === 0 ? name : '';
}

/** The list of projects, each with its text, its summary and its way into the bin and out of it. */
export function projectRoutes(app: FastifyInstance, context: ServerContext): void {
  const { projects } = context.store;
  app.get<{ Querystring: { readonly removed?: string } }>(
    '/api/projects',
    { schema: { querystring: record({ removed: { type: 'string', enum: ['1'] } }, ['removed']) } },
    (request) => projects.list(request.query.removed === '1'),
  );
  app.post<{ Body: { readonly text: string } }>(
    '/api/projects',
    { schema: { body: record({ text: briefText }) }, bodyLimit: textBody },
    async (request, reply) => {
      const { text } = request.body;
      const problems = textProblems(text);
      if (problems.length > 0) return sendProblem(reply, 422, 'text-refused', 'This text cannot be kept.', problems);
      const id = await projects.create({ text, name: nameIn(text), at: context.now() });
      return reply.code(201).send({ id });
    },
  );
  app.get<InProject>('/api/projects/:id', { schema: { params: inProject } }, async (request, reply) => {
    const project = await projects.get(request.params.id);
    return project ?? sendNoProject(reply, context, request.params.id);
  });
  app.delete<InProject>('/api/projects/:id', { schema: { params: inProject } }, async (request, reply) => {
    const { id } = request.params;
    if (!(await projects.remove(id, context.now()))) return sendNoProject(reply, context, id);
    context.live.tell(id, { event: 'gone', data: {} });
    return { id };
  });
  app.post<InProject>('/api/projects/:id/restore', { schema: { params: inProject } }, async (request, reply) => {
    const { id } = request.params;
    if (await projects.restore(id)) return { id };
    return (await projects.state(id)) === 'there' ? { id } : sendNoProject(reply, context, id);
  });
  app.post<{ Body: { readonly ids: readonly string[] } }>(
    '/api/bin/empty',
    { schema: { body: record({ ids: { type: 'array', maxItems: mostDiscarded, items: id } }) } },
    async (request) => ({ emptied: await projects.discard(request.body.ids) }),
  );
  summaryRoutes(app, context);
}

function summaryRoutes(app: FastifyInstance, context: ServerContext): void {
  const { projects } = context.store;
  const summary = record({
    seq,
    name: projectName,
    picture: {
      type: ['string', 'null'],
      maxLength: largestPicture,
      pattern: `^\\s*(<\\?xml[^>]*>\\s*)?<svg[\\s>/]${keepable}`,
    },
    verdicts,
  });
  app.put<InProject & { Body: Summary }>(
    '/api/projects/:id/summary',
    { schema: { params: inProject, body: summary } },
    async (request, reply) => {
      const { id } = request.params;
      if (await projects.summarise(id, request.body)) return { seq: request.body.seq };
      return sendNoProject(reply, context, id);
    },
  );
  app.get<InProject>('/api/projects/:id/picture', { schema: { params: inProject } }, async (request, reply) => {
    const picture = await projects.picture(request.params.id);
    if (picture === undefined) return sendProblem(reply, 404, 'no-picture', 'This project has no picture yet.');
    // A picture came from a window: opened by itself it may draw, and do nothing else.
    return reply
      .type('image/svg+xml')
      .header('content-security-policy', "sandbox; default-src 'none'; style-src 'unsafe-inline'")
      .send(picture);
  });
}
