import type { FastifyInstance } from 'fastify';
import { guardHost } from './host-guard.js';
import { guardToken } from './token-guard.js';

/** True for names and addresses that reach no further than this machine. */
export const isLoopback = (host: string): boolean => /^(localhost|127(\.\d{1,3}){3}|::1|\[::1\])$/i.test(host);

/**
 * Who may ask: this machine under its own names, or whoever has brought the token.
 * An address that other machines reach without a token is a mistake of the caller and is thrown.
 */
export function guardAccess(app: FastifyInstance, host: string, token: string | undefined): void {
  if (token !== undefined) guardToken(app, token);
  else if (isLoopback(host)) guardHost(app);
  else throw new Error(`listening on ${host} needs a token`);
}
