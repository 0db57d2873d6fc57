export { isLoopback } from './access/guard-access.js';
export type { ExampleBrief, OpenedBrief, RunningServer, ServerOptions, TextFile } from './options.js';
export { buildServer, startServer } from './start-server.js';
