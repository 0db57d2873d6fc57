import { calculate, dimensions, problem, type Topic, topics } from '@cloche/engine';
import { calculationText } from '../show/calculation.js';
import { failWith } from '../show/problems.js';

const shapeText = (input: Topic['inputs'][number]): string =>
  'dimension' in input.shape
    ? dimensions[input.shape.dimension].example
    : 'choice' in input.shape
      ? input.shape.choice.join(' | ')
      : 'number';

/** What a topic takes, with an example of each input. */
export const topicHelp = (topic: Topic): string =>
  [
    `cloche calc ${topic.name}`,
    `  ${topic.about}`,
    '',
    ...topic.inputs.map((i) => {
      const need = i.default !== undefined ? ` [${i.default}]` : i.optional ? ' [optional]' : '';
      return `  ${i.name.padEnd(22)} ${i.about}${need}\n  ${''.padEnd(22)} ${shapeText(i)}`;
    }),
  ].join('\n');

export const topicsHelp = (): string => topics.map((t) => `  ${t.name.padEnd(28)} ${t.about}`).join('\n');

/** `cloche calc`: one calculation without a project, with its steps. */
export function calc(
  name: string | undefined,
  pairs: readonly string[],
  options: { readonly json?: boolean; readonly help?: boolean },
): number {
  if (name === undefined) {
    process.stdout.write(`Calculations:\n${topicsHelp()}\n\nInputs of one: cloche calc TOPIC --help\n`);
    return 0;
  }
  const topic = topics.find((t) => t.name === name);
  if (topic && options.help) {
    process.stdout.write(`${topicHelp(topic)}\n`);
    return 0;
  }
  const wrong = pairs.filter((p) => !p.includes('='));
  if (wrong.length > 0)
    return failWith(
      wrong.map((p) =>
        problem(
          'calc/not-a-pair',
          [p],
          `"${p}" is no input.`,
          'Write inputs as name=value, with quotes round a value that has spaces.',
        ),
      ),
      options.json ?? false,
    );
  const given = Object.fromEntries(
    pairs.map((p) => [p.slice(0, p.indexOf('=')).trim(), p.slice(p.indexOf('=') + 1).trim()]),
  );
  const result = calculate(name, given);
  if (!result.ok) return failWith(result.problems, options.json ?? false);
  process.stdout.write(`${options.json ? JSON.stringify(result.value, null, 2) : calculationText(result.value)}\n`);
  return 0;
}
