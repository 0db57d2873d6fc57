// npm test: sets up what it needs, then types, weaknesses and licences of packages, lint, layers, unit, property, golden and case tests, and the browser test.
import { audit } from './audit.mjs';
import { build, dependencies, needNode, root, run, testTools } from './setup.mjs';

needNode();
dependencies();
testTools();
const steps = [
  ['types', () => run('npx', ['tsc', '-b'])],
  ['audit', () => audit(root)],
  ['lint', () => run('npx', ['biome', 'check', '--error-on-warnings', '.'])],
  ['build', build],
  // Left alone, vitest takes one worker on two cores. A browser needs more than one core itself; these tests do not.
  ['tests', () => run('npx', ['vitest', 'run', '--project', 'node', '--maxWorkers', '2'])],
  ['browser', () => run('npx', ['vitest', 'run', '--project', 'browser'])],
];
for (const [name, step] of steps) {
  const start = performance.now();
  try {
    step();
  } catch (error) {
    console.error(`\n${name}: ${error.message}`);
    process.exit(1);
  }
  console.log(`${name}: ${((performance.now() - start) / 1000).toFixed(1)} s`);
}
