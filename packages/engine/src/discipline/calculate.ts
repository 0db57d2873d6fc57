import type { Calculation } from '../floor/calculation.js';
import { type Outcome, type Problem, problem, refuse } from '../floor/problem.js';
import type { Topic, TopicArguments, TopicInput } from '../floor/topic.js';
import { dimensions, parseQuantity } from '../floor/units.js';
import { meantHint } from '../reading/nearest.js';
import { disciplines } from './list.js';

/** Every calculation that stands without a project, by discipline. */
export const topics: readonly Topic[] = disciplines.flatMap((discipline) => discipline.topics);

const hintFor = (input: TopicInput): string => {
  if ('dimension' in input.shape)
    return `Write ${input.name}="${dimensions[input.shape.dimension].example.split(', ')[0]}".`;
  if ('choice' in input.shape) return `Write ${input.name} as one of: ${input.shape.choice.join(', ')}.`;
  return `Write ${input.name} as a number.`;
};

function readInput(input: TopicInput, text: string): Outcome<number | string> {
  const wrong = (message: string) => refuse([problem('calc/wrong-value', [input.name], message, hintFor(input))]);
  if ('choice' in input.shape)
    return input.shape.choice.includes(text) ? { ok: true, value: text } : wrong(`"${text}" is no ${input.name}.`);
  if ('number' in input.shape) {
    const value = Number(text.replace(',', '.'));
    return text.trim() !== '' && Number.isFinite(value) ? { ok: true, value } : wrong(`"${text}" is no number.`);
  }
  const read = parseQuantity(text, input.shape.dimension);
  return read.ok ? read : refuse(read.problems.map((p) => ({ ...p, path: [input.name] })));
}

/**
 * Runs one calculation from texts as typed (`wavelength` = `1064 nm`).
 * @returns the calculation with its steps, or every problem at once: `calc/unknown-topic`, `calc/unknown-input`, `calc/missing-input`,
 *          `calc/wrong-value`, the problems of units, and those of the calculation itself
 */
export function calculate(name: string, given: Readonly<Record<string, string>>): Outcome<Calculation> {
  const topic = topics.find((t) => t.name === name);
  if (!topic) {
    const hint = meantHint(
      name,
      topics.map((t) => t.name),
    );
    return refuse([problem('calc/unknown-topic', ['topic'], `There is no calculation "${name}".`, hint)]);
  }
  const problems: Problem[] = [];
  const names = topic.inputs.map((i) => i.name);
  for (const key of Object.keys(given))
    if (!names.includes(key))
      problems.push(
        problem('calc/unknown-input', [key], `${topic.name} has no input "${key}".`, meantHint(key, names)),
      );
  const read: Record<string, number | string | undefined> = {};
  for (const input of topic.inputs) {
    const text = given[input.name] ?? input.default;
    if (text === undefined) {
      if (!input.optional)
        problems.push(
          problem('calc/missing-input', [input.name], `${input.name} is missing: ${input.about}.`, hintFor(input)),
        );
      continue;
    }
    const value = readInput(input, text);
    if (value.ok) read[input.name] = value.value;
    else problems.push(...value.problems);
  }
  return problems.length > 0 ? refuse(problems) : topic.run(read satisfies TopicArguments);
}
