import type { FastifyInstance } from 'fastify';
import type { ServerContext } from './context.js';

/** What the workbench computes from: catalogue and site rules in force, examples, and the project to open. */
export function dataRoutes(app: FastifyInstance, context: ServerContext, opened: string | null): void {
  const { options, stock, store } = context;
  app.get('/api/catalogue', async () => (await stock.inForce()).catalogueFiles);
  app.get('/api/rules', async () => (await stock.inForce()).rulesFiles);
  app.get('/api/examples', async () => options.examples);
  app.get('/api/opened', async () => {
    const project = opened === null ? undefined : await store.projects.get(opened);
    const first = options.examples[0] ?? { name: 'brief.yaml', text: '' };
    // Name and text are for a page that knows no projects.
    return project
      ? { project: project.id, name: options.openBrief?.name ?? project.name, text: project.text }
      : { project: null, name: first.name, text: first.text };
  });
}
