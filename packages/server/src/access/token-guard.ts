import { createHash, timingSafeEqual } from 'node:crypto';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { sendProblem } from '../problem-json.js';
import { failedTries } from './failed-tries.js';

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();

/** Compares in a time that tells nothing of where they differ: by digests, which are equally long. */
const same = (a: string, b: string): boolean => timingSafeEqual(digest(a), digest(b));

/** Cookies of one host are shared by its ports: two workbenches keep theirs apart. */
const cookieName = (request: FastifyRequest): string => `cloche-${request.socket.localPort ?? 0}`;

const cookieOf = (request: FastifyRequest): string | undefined =>
  request.headers.cookie
    ?.split(';')
    .map((part) => part.trim().split('='))
    .find(([name]) => name === cookieName(request))?.[1];

const year = 365 * 24 * 3600;

/**
 * Lets in only browsers that have once brought the token, and requests of our own pages.
 *
 * The link with the token gives a cookie and leads on to the address without it. It leads on by a page, not by a redirect: a link
 * that was clicked in a mail starts a chain of foreign origin, in which a browser would hold the strict cookie back.
 */
export function guardToken(app: FastifyInstance, token: string): void {
  const pass = createHash('sha256').update(`cookie:${token}`).digest('hex');
  const tries = failedTries();
  app.addHook('onRequest', async (request, reply) => {
    const { origin, host } = request.headers;
    if (origin !== undefined && origin.replace(/^https?:\/\//, '') !== host)
      return sendProblem(reply, 403, 'foreign-origin', 'This workbench answers only to its own pages.');
    const cookie = cookieOf(request);
    if (cookie !== undefined && same(cookie, pass)) return undefined;
    const wait = tries.wait(request.ip);
    if (wait > 0) {
      reply.header('retry-after', wait);
      return sendProblem(reply, 429, 'too-many-tries', 'Too many wrong tries. Wait a minute.');
    }
    const brought = tokenIn(request);
    if (brought !== undefined && same(brought, token)) return welcome(reply, `${cookieName(request)}=${pass}`);
    if (brought !== undefined || cookie !== undefined) tries.count(request.ip);
    return turnAway(request, reply);
  });
}

/** The token of a link to the first page; of no other address. */
function tokenIn({ url, query }: FastifyRequest): string | undefined {
  const { token } = query as { readonly token?: unknown };
  return url.split('?')[0] === '/' && typeof token === 'string' ? token : undefined;
}

const welcome = (reply: FastifyReply, cookie: string): FastifyReply =>
  reply
    .header('set-cookie', `${cookie}; Path=/; HttpOnly; SameSite=Strict; Max-Age=${year}`)
    .header('refresh', '0; url=/')
    .header('cache-control', 'no-store')
    .type('text/html; charset=utf-8')
    .send('<!doctype html><meta http-equiv="refresh" content="0; url=/"><title>Cloche</title><a href="/">Cloche</a>');

const closed = 'This workbench opens with the link that Cloche printed where it was started.';

const turnAway = (request: FastifyRequest, reply: FastifyReply): FastifyReply =>
  request.url.startsWith('/api/')
    ? sendProblem(reply, 401, 'no-token', closed)
    : reply.code(401).type('text/plain; charset=utf-8').header('cache-control', 'no-store').send(`${closed}\n`);
