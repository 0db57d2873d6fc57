import { basename } from 'node:path';
import { valueOf } from '@cloche/engine';
import { openStore } from '@cloche/store';
import helmet from '@fastify/helmet';
import fastifyStatic from '@fastify/static';
import Fastify, { type FastifyInstance } from 'fastify';
import { guardAccess } from './access/guard-access.js';
import { archiveRoutes } from './archive-routes.js';
import { attachmentRoutes } from './attachment-routes.js';
import type { ServerContext } from './context.js';
import { dataRoutes } from './data-routes.js';
import { liveHub } from './live/live-hub.js';
import { liveRoute } from './live/live-route.js';
import { projectOf } from './opened-project.js';
import type { RunningServer, ServerOptions } from './options.js';
import { bodyLimit, packRoute } from './pack-route.js';
import { sendProblem } from './problem-json.js';
import { projectRoutes } from './project-routes.js';
import { revisionRoutes } from './revision-routes.js';
import { shelfRoutes } from './shelf-routes.js';
import { stepRoutes } from './step-routes.js';
import { stockInForce } from './stock.js';

/** Nothing leaves this machine: every source is our own; blobs are pictures and files made in the page itself. */
const contentSecurityPolicy = {
  useDefaults: false,
  directives: {
    defaultSrc: ["'self'"],
    connectSrc: ["'self'"],
    workerSrc: ["'self'"],
    manifestSrc: ["'self'"],
    imgSrc: ["'self'", 'blob:', 'data:'],
    objectSrc: ["'none'"],
    baseUri: ["'none'"],
    formAction: ["'none'"],
    frameAncestors: ["'none'"],
  },
};

const thisMachine = '127.0.0.1';

/** Builds the server without opening a port; tests inject requests. */
export async function buildServer(options: ServerOptions): Promise<FastifyInstance> {
  const app = Fastify({
    bodyLimit,
    forceCloseConnections: true,
    // What is not known is refused, not left out in silence.
    ajv: { customOptions: { removeAdditional: false, allowUnionTypes: true } },
  });
  await app.register(helmet, { contentSecurityPolicy, strictTransportSecurity: false });
  guardAccess(app, options.host ?? thisMachine, options.token);
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
  await apiRoutes(app, await contextOf(app, options));
  await app.register(fastifyStatic, { root: options.webRoot, cacheControl: false, setHeaders: offlineHeaders });
  app.setNotFoundHandler((_request, reply) => sendProblem(reply, 404, 'not-found', 'There is nothing here.'));
  return app;
}

async function contextOf(app: FastifyInstance, options: ServerOptions): Promise<ServerContext> {
  const store = options.store ?? valueOf(await openStore(null));
  if (!options.store) app.addHook('onClose', () => store.close());
  const { catalogueFiles, rulesFiles } = options;
  return {
    options,
    store,
    live: liveHub(),
    stock: stockInForce({ catalogueFiles, rulesFiles }, store.shelf),
    now: options.now ?? (() => new Date().toISOString()),
  };
}

async function apiRoutes(app: FastifyInstance, context: ServerContext): Promise<void> {
  const { openBrief } = context.options;
  dataRoutes(app, context, openBrief ? await projectOf(openBrief, context.store, context.now()) : null);
  packRoute(app, context);
  projectRoutes(app, context);
  stepRoutes(app, context);
  liveRoute(app, context);
  revisionRoutes(app, context);
  shelfRoutes(app, context);
  await app.register(async (bytes) => {
    bytes.removeAllContentTypeParsers();
    bytes.addContentTypeParser('*', { parseAs: 'buffer' }, (_request, body, done) => done(null, body));
    attachmentRoutes(bytes, context);
    archiveRoutes(bytes, context);
  });
}

/** The script that keeps the workbench usable without a connection may speak for the whole of it, and is never an old one. */
function offlineHeaders(response: { setHeader: (name: string, value: string) => unknown }, path: string): void {
  if (basename(path) !== 'sw.js') return;
  response.setHeader('service-worker-allowed', '/');
  response.setHeader('cache-control', 'no-cache');
}

/** Serves the workbench: on this machine alone, or wherever the options say. */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const app = await buildServer(options);
  const url = await app.listen({ port: options.port, host: options.host ?? thisMachine });
  return { url, close: () => app.close() };
}
