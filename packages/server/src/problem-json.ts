import type { Problem } from '@cloche/engine';
import type { FastifyReply } from 'fastify';

/**
 * Answers with a problem document.
 * Source: RFC 9457 (read): `type`, `title`, `status`, `detail`; `problems` is our extension member.
 */
export function sendProblem(
  reply: FastifyReply,
  status: number,
  type: string,
  title: string,
  problems: readonly Problem[] = [],
): FastifyReply {
  const detail = problems[0]?.message;
  return reply
    .code(status)
    .type('application/problem+json')
    .send({ type: `urn:cloche:${type}`, title, status, ...(detail === undefined ? {} : { detail, problems }) });
}
