// npm start: sets everything up, builds, and opens the workbench with the worked example.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { build, dependencies, needNode, root } from './setup.mjs';

needNode();
dependencies();
build();
const child = spawn(process.execPath, [join(root, 'packages/cli/bin/cloche.js'), 'serve', ...process.argv.slice(2)], {
  cwd: root,
  stdio: 'inherit',
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
child.on('exit', (code) => process.exit(code ?? 0));
