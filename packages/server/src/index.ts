export type { ExampleBrief, RunningServer, ServerOptions, TextFile } from './options.js';
export { buildServer, startServer } from './start-server.js';
