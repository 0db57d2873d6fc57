import type { FastifyInstance } from 'fastify';
import { sendProblem } from '../problem-json.js';

const names = new Set(['127.0.0.1', 'localhost', '[::1]']);

/** True when a Host header, or the authority of an Origin, names this machine itself. */
export function isThisMachine(authority: string | undefined): boolean {
  const match = /^(\[[0-9a-f:]+\]|[^:]+)(?::\d{1,5})?$/i.exec(authority ?? '');
  return match !== null && names.has(match[1]!.toLowerCase());
}

/**
 * Refuses requests that reach the loopback address under a foreign name, and posts that a foreign page sends.
 * A page elsewhere can point its own host name at 127.0.0.1 and would then be same-origin with us (DNS rebinding); the
 * Host header gives it away.
 */
export function guardHost(app: FastifyInstance): void {
  app.addHook('onRequest', async (request, reply) => {
    if (!isThisMachine(request.headers.host))
      return sendProblem(reply, 421, 'foreign-host', 'This workbench answers only under the name of this machine.');
    const { origin } = request.headers;
    if (origin !== undefined && !isThisMachine(origin.replace(/^https?:\/\//, '')))
      return sendProblem(reply, 403, 'foreign-origin', 'This workbench answers only to its own pages.');
    return undefined;
  });
}
