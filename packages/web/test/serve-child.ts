import { readFileSync } from 'node:fs';
import { valueOf } from '@cloche/engine';
import { type ServerOptions, startServer } from '@cloche/server';
import { openStore } from '@cloche/store';

/**
 * The workbench's server as a process of its own, to be killed.
 *
 *     serve-child FOLDER OPTIONS PORT      OPTIONS: a JSON file of what the server serves; no packs are made here
 */
const [folder, optionsFile, port] = process.argv.slice(2) as [string, string, string];
const options = JSON.parse(readFileSync(optionsFile, 'utf8')) as Omit<ServerOptions, 'fonts' | 'store' | 'port'>;
const store = valueOf(await openStore(folder));
const none = new Uint8Array();
const server = await startServer({ ...options, port: Number(port), store, fonts: { regular: none, medium: none } });
process.stdout.write(`${server.url}\n`);
