import type { FastifyInstance } from 'fastify';
import type { ServerContext } from './context.js';
import { attachmentType } from './magic-bytes.js';
import { sendProblem } from './problem-json.js';
import { sendNoProject } from './project-state.js';
import { fileName, inAttachment, inProject, record } from './shapes.js';

export const largestAttachment = 16 * 1024 * 1024;
/** All attachments of a project together: so that its archive can be taken back in [bytes]. */
export const mostAttached = 48 * 1024 * 1024;
export const mostAttachments = 200;

/** Pictures and drawings of a project. Every body is taken as bytes, whatever it is called. */
export function attachmentRoutes(app: FastifyInstance, context: ServerContext): void {
  const { attachments, projects } = context.store;
  app.post<{
    Params: { readonly id: string };
    Querystring: { readonly name: string };
    Body: Buffer | undefined;
  }>(
    '/api/projects/:id/attachments',
    { schema: { params: inProject, querystring: record({ name: fileName }) }, bodyLimit: largestAttachment },
    async (request, reply) => {
      const { id } = request.params;
      if ((await projects.state(id)) !== 'there') return sendNoProject(reply, context, id);
      const bytes = new Uint8Array(request.body ?? []);
      const mediaType = attachmentType(bytes);
      if (!mediaType)
        return sendProblem(reply, 415, 'wrong-kind', 'This file is no PNG, JPEG or WebP picture and no DXF drawing.');
      const kept = await attachments.list(id);
      const size = kept.reduce((sum, file) => sum + file.size, bytes.length);
      if (size > mostAttached || kept.length >= mostAttachments)
        return sendProblem(
          reply,
          413,
          'too-much-attached',
          `A project has room for ${mostAttachments} files of ${mostAttached / 1024 / 1024} MB together.`,
        );
      const { at: _, ...file } = await attachments.add(id, {
        bytes,
        name: request.query.name,
        mediaType,
        at: context.now(),
      });
      return reply.code(201).send(file);
    },
  );
  app.get<{ Params: { readonly id: string; readonly hash: string } }>(
    '/api/projects/:id/attachments/:hash',
    { schema: { params: inAttachment } },
    async (request, reply) => {
      const { id, hash } = request.params;
      if ((await projects.state(id)) !== 'there') return sendNoProject(reply, context, id);
      const file = await attachments.get(id, hash);
      if (!file) return sendProblem(reply, 404, 'no-such-attachment', 'This project has no such file.');
      const shown = file.mediaType === 'image/vnd.dxf' ? 'attachment' : 'inline';
      return reply
        .type(file.mediaType)
        .header('content-security-policy', "sandbox; default-src 'none'")
        .header('content-disposition', `${shown}; filename*=UTF-8''${headerName(file.name)}`)
        .send(Buffer.from(file.bytes));
    },
  );
}

/** A name as a header may carry it. Source: RFC 8187 3.2.1 (from memory): these four are no `attr-char`. */
const headerName = (name: string): string =>
  encodeURIComponent(name).replace(/['()*]/g, (c) => `%${c.charCodeAt(0).toString(16).toUpperCase()}`);
