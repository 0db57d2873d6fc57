import type { FastifyReply } from 'fastify';
import type { ServerContext } from './context.js';
import { sendProblem } from './problem-json.js';

/** Answers for a project that is not there: 410 when it can be taken out of the bin, else 404. */
export async function sendNoProject(reply: FastifyReply, { store }: ServerContext, id: string): Promise<FastifyReply> {
  return (await store.projects.state(id)) === 'removed'
    ? sendProblem(reply, 410, 'project-removed', 'This project is in the bin.')
    : sendProblem(reply, 404, 'no-such-project', 'There is no such project.');
}
