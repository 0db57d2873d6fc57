import type { NewStep } from '@cloche/store';
import type { ServerOptions } from '../src/index.js';
import { type RunningServer, startServer } from '../src/index.js';
import { repositoryOptions } from './options.js';

/** A running server and short ways to ask it. */
export interface Client {
  readonly server: RunningServer;
  readonly options: ServerOptions;
  readonly get: (path: string, headers?: Record<string, string>) => Promise<Response>;
  readonly send: (method: string, path: string, body?: unknown, headers?: Record<string, string>) => Promise<Response>;
  readonly bytes: (path: string, body: Uint8Array, type?: string) => Promise<Response>;
  /** A new project of a text. */
  readonly project: (text?: string) => Promise<string>;
}

export async function startClient(over: Partial<ServerOptions> = {}): Promise<Client> {
  const options = repositoryOptions(over);
  const server = await startServer(options);
  const send: Client['send'] = (method, path, body, headers = {}) =>
    fetch(`${server.url}${path}`, {
      method,
      ...(body === undefined
        ? { headers }
        : { headers: { 'content-type': 'application/json', ...headers }, body: JSON.stringify(body) }),
    });
  return {
    server,
    options,
    get: (path, headers = {}) => fetch(`${server.url}${path}`, { headers }),
    send,
    bytes: (path, body, type = 'application/octet-stream') =>
      fetch(`${server.url}${path}`, { method: 'POST', headers: { 'content-type': type }, body: new Uint8Array(body) }),
    async project(text = 'cloche: 1\n') {
      return ((await (await send('POST', '/api/projects', { text })).json()) as { id: string }).id;
    },
  };
}

export const put = (at: number, text: string, more: Partial<NewStep> = {}): NewStep => ({
  window: 'w1',
  group: 'g1',
  kind: 'edit',
  splices: [{ at, out: '', in: text }],
  ...more,
});

interface ProblemBody {
  readonly type: string;
  readonly status: number;
  readonly problems?: readonly { readonly code: string; readonly path: readonly (string | number)[] }[];
}

/** Status, type and codes of a problem document. */
export async function problemOf(answer: Response): Promise<readonly [number, string, ...string[]]> {
  const body = (await answer.json()) as ProblemBody;
  return [answer.status, body.type.replace('urn:cloche:', ''), ...(body.problems ?? []).map((p) => p.code)];
}
