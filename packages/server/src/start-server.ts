import helmet from '@fastify/helmet';
import fastifyStatic from '@fastify/static';
import Fastify, { type FastifyInstance } from 'fastify';
import { dataRoutes } from './data-routes.js';
import { guardHost } from './host-guard.js';
import type { RunningServer, ServerOptions } from './options.js';
import { bodyLimit, packRoute } from './pack-route.js';
import { sendProblem } from './problem-json.js';

/** Nothing leaves this machine: every source is our own; blobs are pictures and files made in the page itself. */
const contentSecurityPolicy = {
  useDefaults: false,
  directives: {
    defaultSrc: ["'self'"],
    imgSrc: ["'self'", 'blob:', 'data:'],
    objectSrc: ["'none'"],
    baseUri: ["'none'"],
    formAction: ["'none'"],
    frameAncestors: ["'none'"],
  },
};

/** Builds the server without opening a port; tests inject requests. */
export async function buildServer(options: ServerOptions): Promise<FastifyInstance> {
  const app = Fastify({ bodyLimit, forceCloseConnections: true });
  guardHost(app);
  await app.register(helmet, { contentSecurityPolicy, strictTransportSecurity: false });
  app.addHook('onSend', async (request, reply) => {
    if (request.url.startsWith('/api/')) reply.header('cache-control', 'no-store');
  });
  app.setErrorHandler((error: Error & { statusCode?: number }, _request, reply) => {
    const status = error.statusCode ?? 500;
    return sendProblem(
      reply,
      status,
      status >= 500 ? 'bug' : 'bad-request',
      status >= 500 ? 'Something went wrong inside the workbench.' : error.message,
    );
  });
  dataRoutes(app, options);
  packRoute(app, options);
  await app.register(fastifyStatic, { root: options.webRoot, cacheControl: false });
  app.setNotFoundHandler((_request, reply) => sendProblem(reply, 404, 'not-found', 'There is nothing here.'));
  return app;
}

/** Serves the workbench on this machine alone. */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const app = await buildServer(options);
  const url = await app.listen({ port: options.port, host: options.host ?? '127.0.0.1' });
  return { url, close: () => app.close() };
}
