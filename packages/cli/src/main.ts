import { engineVersion } from '@cloche/engine';
import { Command, CommanderError } from 'commander';

const program = new Command('cloche')
  .description(
    'Plans, checks and documents the space around optical tables.\nThe tool assists; the appointed laser safety officer, engineer, electrician and fire authority decide.',
  )
  .version(engineVersion)
  .showHelpAfterError('(cloche --help shows what there is)')
  .exitOverride();

const finish = (code: number): void => {
  process.exitCode = code;
};

const briefOptions = (command: Command): Command =>
  command
    .option('--catalogue <DIR>', 'folder of catalogue files (default: the invented demo catalogue)')
    .option('--rules <FILE>', 'site rule profile (default: the one that the brief names)')
    .option('--json', 'results and problems as JSON');

briefOptions(
  program
    .command('design')
    .argument('<BRIEF>', 'brief in YAML or JSON')
    .description('compute, and write the pack: drawings, lists, report, models'),
)
  .option('--out <DIR>', 'folder for the pack', 'out')
  .option('--force', 'replace files that Cloche did not write')
  .option('--no-pdf', 'leave out the report')
  .option('--issued <DATE>', 'date of issue on sheets, YYYY-MM-DD (default: today)')
  .action(async (file: string, options) => finish(await (await import('./commands/design.js')).design(file, options)));

briefOptions(program.command('check').argument('<BRIEF>', 'brief in YAML or JSON').description('findings only')).action(
  async (file: string, options) => finish((await import('./commands/check.js')).check(file, options)),
);

program
  .command('calc')
  .argument('[TOPIC]', 'which calculation; without it, all are listed')
  .argument('[inputs...]', 'name=value ...')
  .description('one calculation without a project, with its steps')
  .option('--json', 'the calculation as JSON')
  .option('-h, --help', 'inputs of the topic')
  .helpOption(false)
  .action(async (topic: string | undefined, inputs: string[], options) =>
    finish((await import('./commands/calc.js')).calc(topic, inputs, options)),
  );

briefOptions(
  program
    .command('compare')
    .argument('<A>', 'brief as it was')
    .argument('<B>', 'brief as it is')
    .description(
      'what differs between two briefs: geometry, findings, parts, cost\nExit code 2 when something fails in B, or is asked for and not assessed, that was in order in A.',
    )
    .summary('what differs between two briefs: geometry, findings, parts, cost'),
).action(async (a: string, b: string, options) =>
  finish((await import('./commands/compare.js')).compare(a, b, options)),
);

program
  .command('prove')
  .argument('<LOG...>')
  .description('particle-counter logs against the promise (not built yet)')
  .option('--brief <FILE>', 'brief with the promise')
  .action(() => {
    process.stderr.write('cloche prove is not built yet. Nothing was read or written.\n');
    finish(1);
  });

program
  .command('serve')
  .argument('[BRIEF]', 'brief to open (default: the worked example)')
  .description('the workbench on this machine')
  .option('--port <PORT>', 'port to listen on', '4173')
  .option('--data <DIR>', 'folder for projects (default: the one for data of this user)')
  .option('--host <HOST>', 'name or address to listen on; any but this machine needs the link that is printed')
  .option('--no-open', 'do not open a browser window')
  .action(async (file: string | undefined, options) =>
    finish(await (await import('./commands/serve.js')).serve(file, options)),
  );

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? 0 : 1;
  else {
    // Problems are returned; what is thrown is a bug. It is caught here alone, and nothing was half written.
    const detail = error instanceof Error ? (error.stack ?? error.message) : String(error);
    process.stderr.write(`This is a bug in Cloche, not in your brief. Please report it with the brief.\n\n${detail}\n`);
    process.exitCode = 1;
  }
}
