import type { FastifyReply } from 'fastify';

/** Takes an answer out of the framework's hands, to write it piece by piece; with the headers that the hooks have set. */
export function openStream(reply: FastifyReply, contentType: string): FastifyReply['raw'] {
  reply.hijack();
  for (const [name, value] of Object.entries(reply.getHeaders()))
    if (value !== undefined) reply.raw.setHeader(name, value);
  reply.raw.writeHead(200, { 'content-type': contentType, 'cache-control': 'no-store' });
  return reply.raw;
}
