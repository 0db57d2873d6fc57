import type { PackFile } from '@cloche/pack';
import type { FastifyInstance, FastifyReply } from 'fastify';
import { zipSync } from 'fflate';
import type { ServerContext } from './context.js';
import type { PackEnd, PackJob } from './pack-job.js';
import { type PackMakers, packMakers } from './pack-makers.js';
import { sendProblem } from './problem-json.js';
import { openStream } from './reply-stream.js';

/** Largest brief that is taken; readers of the engine have the same limit. */
export const bodyLimit = 2 * 1024 * 1024;

interface PackRequest {
  readonly Body: { readonly brief: string };
  readonly Querystring: { readonly file?: string };
}

const body = {
  type: 'object',
  required: ['brief'],
  additionalProperties: false,
  properties: { brief: { type: 'string' } },
} as const;
const schema = {
  body,
  querystring: { type: 'object', properties: { file: { type: 'string', maxLength: 120 } } },
} as const;

/**
 * The brief as a pack; `issued` is the server's day, never the client's.
 *
 *     POST /api/pack              one zip file
 *     POST /api/pack?file=NAME    one file of it
 *     POST /api/pack/files        line by line (JSON, one a line): each file when it is done, at last all files and the zip
 * A request that is closed by the client stops the work.
 */
export function packRoute(app: FastifyInstance, { options, stock, now }: ServerContext): void {
  const today = options.today ?? (() => now().slice(0, 10));
  const script = options.packWorker ?? new URL('./pack-worker.js', import.meta.url);
  const makers = packMakers(script, options.fonts);
  const jobOf = async (brief: string): Promise<PackJob> => ({ brief, issued: today(), stock: await stock.inForce() });
  app.addHook('onClose', () => makers.close());
  app.post<PackRequest>('/api/pack', { schema }, async (request, reply) => {
    const { file } = request.query;
    const job: PackJob = { ...(await jobOf(request.body.brief)), ...(file === undefined ? {} : { file }) };
    const end = await makers.make(job, closed(reply));
    return end === null ? reply.hijack() : answer(reply, job, end);
  });
  app.post<Pick<PackRequest, 'Body'>>('/api/pack/files', { schema: { body } }, async (request, reply) => {
    await stream(reply, makers, await jobOf(request.body.brief));
  });
}

/** Aborted when the client goes away before the answer is whole. */
function closed(reply: FastifyReply): AbortSignal {
  const controller = new AbortController();
  reply.raw.once('close', () => {
    if (!reply.raw.writableFinished) controller.abort();
  });
  return controller.signal;
}

const refused = 'The brief cannot be used as it stands.';
const fault = 'Something went wrong inside the workbench.';

function answer(reply: FastifyReply, { file, issued }: PackJob, end: PackEnd): FastifyReply {
  if (end.news === 'refused') return sendProblem(reply, 422, 'brief-refused', refused, end.problems);
  if (end.news === 'fault') return sendProblem(reply, 500, 'bug', fault);
  if (file === undefined)
    return reply
      .type('application/zip')
      .header('content-disposition', `attachment; filename="${packName(end.project)}"`)
      .send(Buffer.from(zipped(end.files, issued)));
  const found = end.files.find((f) => f.name === file);
  if (!found) return sendProblem(reply, 404, 'no-such-file', `The pack has no file ${file}.`);
  return reply.type(found.mediaType).send(Buffer.from(found.bytes));
}

/** One line of the answer, as the workbench reads it. */
type Line =
  | { readonly done: string; readonly share: number }
  | { readonly trouble: string; readonly detail: string }
  | { readonly name: string; readonly mediaType: string; readonly base64: string };

async function stream(reply: FastifyReply, makers: PackMakers, job: PackJob): Promise<void> {
  const signal = closed(reply);
  const raw = openStream(reply, 'application/x-ndjson; charset=utf-8');
  const say = (line: Line) => raw.write(`${JSON.stringify(line)}\n`);
  const end = await makers.make(job, signal, ({ done, share }) => say({ done, share }));
  if (end === null) return;
  if (end.news === 'refused') say({ trouble: refused, detail: end.problems[0]?.message ?? '' });
  else if (end.news === 'fault') say({ trouble: fault, detail: '' });
  else for (const file of withZip(end.files, end.project, job.issued)) say(lineOf(file));
  raw.end();
}

const withZip = (files: readonly PackFile[], project: string, day: string): readonly PackFile[] => [
  ...files,
  { name: packName(project), mediaType: 'application/zip', bytes: zipped(files, day) },
];

const lineOf = ({ name, mediaType, bytes }: PackFile): Line => ({
  name,
  mediaType,
  base64: Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('base64'),
});

/** Name of the zip: letters, digits and hyphens of the project's name, so that every file system takes it. */
export const packName = (project: string): string =>
  `${
    project
      .toLowerCase()
      .normalize('NFKD')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60) || 'pack'
  }.zip`;

/** Same files, same day, same bytes. */
function zipped(files: readonly PackFile[], day: string): Uint8Array {
  const entries = Object.fromEntries(files.map((f) => [f.name, f.bytes]));
  return zipSync(entries, { mtime: `${day}T12:00:00` });
}
