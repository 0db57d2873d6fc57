import type { z } from 'zod';
import type { Problem } from '../floor/problem.js';
import type { Area, ReadDocument } from './document.js';
import { byLikeness, meantHint } from './nearest.js';
import { type Path, pathText, valueAt } from './path.js';
import { hintMark } from './quantity.js';
import { fieldsOf, schemaAt } from './schema-at.js';

type Issue = z.core.$ZodIssue;

interface Reading {
  readonly area: Area;
  readonly schema: z.ZodType;
  readonly document: ReadDocument;
  /** Where in the document the checked value stands: not empty for one item of a list. */
  readonly base: Path;
}

/**
 * Every fault that a schema found, as problems for people: what is wrong, what to do, and where it stands.
 *
 * @param error    what the schema check returned [-]
 * @param reading  the schema, the document and the place of the checked value in it [-]
 * @returns        problems in the order of the text; codes `unknown-field`, `missing`, `wrong-type`, `unknown-word`,
 *                 `wrong-version`, `out-of-range`, `malformed` after the area's name, and the codes of quantities
 */
export function problemsOf(error: z.ZodError, reading: Reading): Problem[] {
  return error.issues
    .flatMap((issue) => problemsOfIssue(issue, [], reading))
    .sort((a, b) => a.place!.line - b.place!.line || a.place!.column - b.place!.column);
}

function problemsOfIssue(issue: Issue, above: Path, reading: Reading): Problem[] {
  const path = [...above, ...(issue.path as Path)];
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownField(key, path, reading));
  if (issue.code === 'invalid_union') return ofUnion(issue, path, reading);
  return [say(wordsFor(issue, path, reading), path, reading)];
}

interface Words {
  readonly code: string;
  readonly message: string;
  readonly hint: string;
  readonly on?: 'key' | 'value';
}

function say(words: Words, path: Path, { area, document, base }: Reading): Problem {
  const full = [...base, ...path];
  return {
    // Checks of single values are shared by all kinds of file and speak of the brief.
    code: words.code.replace(/^brief\//, `${area}/`),
    path: full,
    message: words.message,
    hint: words.hint,
    place: document.place(full, words.on),
    ...(document.file === undefined ? {} : { file: document.file }),
  };
}

const what = (path: Path, { base }: Reading): string => pathText([...base, ...path]) || 'the document';

function unknownField(key: string, path: Path, reading: Reading): Problem {
  const here = valueAt(reading.document.data, [...reading.base]);
  const fields = fieldsOf(schemaAt(reading.schema, path, here));
  const where = path.length + reading.base.length === 0 ? 'the document' : what(path, reading);
  return say(
    {
      code: 'brief/unknown-field',
      message: `${/^[\w-]+$/.test(key) ? key : shown(key)} is no field of ${where}.`,
      hint: meantHint(key, fields),
      on: 'key',
    },
    [...path, key],
    reading,
  );
}

/** A union says what each alternative lacked; only the alternative that was meant is of use. */
function ofUnion(issue: Extract<Issue, { code: 'invalid_union' }>, path: Path, reading: Reading): Problem[] {
  const given = valueAt(reading.document.data, [...reading.base, ...path]);
  if (issue.discriminator !== undefined) {
    const options = (issue as { readonly options?: readonly unknown[] }).options ?? [];
    return [say(given === undefined ? missing(path, reading, options) : unknownWord(given, options), path, reading)];
  }
  const meant = issue.errors.filter((issues) => !issues.every((i) => i.path.length === 0 && i.code === 'invalid_type'));
  const words = meant.flat().flatMap((i) => (i.code === 'invalid_value' ? i.values : []));
  if (words.length > 0 && given !== undefined) return [say(unknownWord(given, words), path, reading)];
  if (meant.length === 1) return meant[0]!.flatMap((i) => problemsOfIssue(i, path, reading));
  const expected = issue.errors.flat().flatMap((i) => (i.code === 'invalid_type' ? [i.expected] : []));
  return [say(given === undefined ? missing(path, reading) : wrongType(given, expected, path), path, reading)];
}

function wordsFor(issue: Issue, path: Path, reading: Reading): Words {
  const given = valueAt(reading.document.data, [...reading.base, ...path]);
  const [message = '', hint] = issue.message.split(hintMark);
  if (issue.code === 'custom')
    return { code: String(issue.params?.code ?? 'brief/unusable'), message, hint: hint ?? 'Check this value.' };
  if (given === undefined) return missing(path, reading, issue.code === 'invalid_value' ? issue.values : []);
  switch (issue.code) {
    case 'invalid_type':
      return wrongType(given, [issue.expected], path);
    case 'invalid_value':
      return path.at(-1) === 'cloche' ? wrongVersion(given, issue.values) : unknownWord(given, issue.values);
    case 'too_small':
    case 'too_big':
      return outOfRange(given, issue, path);
    case 'invalid_format':
      return hint === undefined
        ? {
            code: 'brief/malformed',
            message: `${shown(given)} is not written as a ${issue.format} is.`,
            hint: issue.format === 'date' ? 'Write year, month and day: 2026-10-01.' : 'Check how it is written.',
          }
        : { code: 'brief/malformed', message: `${shown(given)}: ${message}`, hint };
    default:
      return { code: 'brief/unusable', message: `${shown(given)} cannot be used here.`, hint: message };
  }
}

function missing(path: Path, reading: Reading, words: readonly unknown[] = []): Words {
  const example = words.length > 0 ? `: ${words.map(String).join(', ')}` : '';
  const around = what(path.slice(0, -1), reading);
  return {
    code: 'brief/missing',
    message: `${String(path.at(-1))} is missing in ${around}.`,
    hint: `Add the field ${String(path.at(-1))}${example}.`,
  };
}

const typeNames: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'yes or no (true, false)',
  array: 'a list',
  tuple: 'a list',
  object: 'a record of named fields',
  record: 'a record of named fields',
};

const kindOf = (value: unknown): string => {
  if (value === null) return 'empty';
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' ? 'a record' : shown(value);
};

function wrongType(given: unknown, expected: readonly string[], path: Path): Words {
  const wanted = [...new Set(expected.map((name) => typeNames[name] ?? name))].join(' or ');
  return {
    code: 'brief/wrong-type',
    message: `${String(path.at(-1) ?? 'It')} is ${kindOf(given)}; ${wanted} is needed here.`,
    hint: given === null ? 'Fill it in, or leave the field out.' : `Write ${wanted}.`,
  };
}

function unknownWord(given: unknown, words: readonly unknown[]): Words {
  const ordered = byLikeness(String(given), words.map(String));
  return {
    code: 'brief/unknown-word',
    message: `${shown(given)} is not one of the words used here.`,
    hint: `Use one of: ${ordered.join(', ')}.`,
  };
}

const wrongVersion = (given: unknown, versions: readonly unknown[]): Words => ({
  code: 'brief/wrong-version',
  message: `The file says version ${shown(given)}; this engine reads version ${versions.map(String).join(', ')}.`,
  hint: `Write "cloche: ${String(versions[0])}" if the file was made for it, or use the engine of its version.`,
});

function outOfRange(
  given: unknown,
  issue: Extract<Issue, { code: 'too_small' }> | Extract<Issue, { code: 'too_big' }>,
  path: Path,
): Words {
  const small = issue.code === 'too_small';
  const limit = Number(small ? issue.minimum : issue.maximum);
  const name = String(path.at(-1) ?? 'It');
  const bound = `${small ? 'at least' : 'at most'} ${limit}`;
  const above = issue.inclusive === false ? `${small ? 'above' : 'below'} ${limit}` : bound;
  if (issue.origin === 'array' || issue.origin === 'tuple')
    return {
      code: 'brief/out-of-range',
      message: `${name} has ${Array.isArray(given) ? given.length : 0} entries; ${bound} are needed.`,
      hint: small ? 'Add what is missing.' : 'Leave out what is too many.',
    };
  if (issue.origin === 'string')
    return {
      code: 'brief/out-of-range',
      message: given === '' ? `${name} is an empty text.` : `${shown(given)} has more than ${limit} letters.`,
      hint: small ? 'Fill it in, or leave the field out.' : 'Shorten it.',
    };
  return {
    code: 'brief/out-of-range',
    message: `${name} is ${shown(given)}; it must be ${above}.`,
    hint: 'Check the number.',
  };
}

/** A value as it is quoted in a message: texts in quotes, long ones cut. */
function shown(value: unknown): string {
  const text = typeof value === 'string' ? JSON.stringify(value) : String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
