import type { FastifyInstance } from 'fastify';
import type { ServerContext } from '../context.js';
import { sendProblem } from '../problem-json.js';
import { sendNoProject } from '../project-state.js';
import { openStream } from '../reply-stream.js';
import { inProject, record, seq, window } from '../shapes.js';
import type { LiveEvent } from './live-hub.js';

/** Shorter than the idle times of proxies and browsers [ms]. */
const heartbeat = 20_000;
/** A window that takes nothing any more is let go; it comes back and is told what it missed [bytes]. */
const mostUnread = 8 * 1024 * 1024;

/**
 * What happens to a project, as server-sent events: `steps`, `revision`, `gone`.
 *
 * The first event is always `steps`: all since the number in `Last-Event-ID` or `?after`; without either none, and the head.
 * Source: HTML Living Standard, 9.2 Server-sent events (from memory).
 */
export function liveRoute(app: FastifyInstance, context: ServerContext): void {
  app.get<{
    Params: { readonly id: string };
    Querystring: { readonly window?: string; readonly after?: number };
  }>(
    '/api/projects/:id/live',
    {
      schema: { params: inProject, querystring: record({ window, after: seq }, ['window', 'after']) },
      // A stream has no head that ends.
      exposeHeadRoute: false,
    },
    async (request, reply) => {
      const { id } = request.params;
      const waiting: LiveEvent[] = [];
      let hear = (event: LiveEvent): void => {
        waiting.push(event);
      };
      const leave = context.live.listen(id, (event) => hear(event));
      if (!leave) return sendProblem(reply, 503, 'too-many-windows', 'Too many windows look at this project.');
      const seen = lastSeen(request.headers['last-event-id'], request.query.after);
      const missed = await context.store.steps.since(id, seen);
      if (!missed) {
        leave();
        return sendNoProject(reply, context, id);
      }
      const raw = openStream(reply, 'text/event-stream; charset=utf-8');
      const beat = setInterval(() => raw.write(': \n\n'), heartbeat);
      raw.once('close', () => {
        clearInterval(beat);
        leave();
      });
      hear = (event) => {
        // What was told while the missed steps were read is among them.
        if (event.event === 'steps' && event.id <= missed.seq) return;
        raw.write(wire(event));
        if (raw.writableLength > mostUnread) raw.destroy();
      };
      raw.write(`retry: 1000\n\n${wire({ event: 'steps', id: missed.seq, data: missed })}`);
      for (const event of waiting) hear(event);
      return reply;
    },
  );
}

/** The last step that a window has seen; one that says nothing wants only what comes. */
function lastSeen(header: unknown, after: number | undefined): number {
  if (typeof header === 'string' && /^\d{1,9}$/.test(header)) return Number(header);
  return after ?? Number.MAX_SAFE_INTEGER;
}

/** JSON holds no line breaks of its own, so that one `data` line is enough. */
const wire = (event: LiveEvent): string =>
  `${'id' in event ? `id: ${event.id}\n` : ''}event: ${event.event}\ndata: ${JSON.stringify(event.data)}\n\n`;
