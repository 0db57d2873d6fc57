import type { FastifyInstance } from 'fastify';
import type { ServerOptions } from './options.js';

/** What the workbench computes from: catalogue, site rules, examples and the brief to open. */
export function dataRoutes(app: FastifyInstance, options: ServerOptions): void {
  const { catalogueFiles, rulesFiles, examples, openBrief } = options;
  app.get('/api/catalogue', async () => catalogueFiles);
  app.get('/api/rules', async () => rulesFiles);
  app.get('/api/examples', async () => examples);
  app.get('/api/opened', async () => openBrief ?? examples[0] ?? { name: 'brief.yaml', text: '' });
}
