import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { fileSchemas, schemaText } from './schemas.js';

const at = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url));
const read = (path: string) => readFileSync(at(path), 'utf8');
const yamlIn = (folder: string) => readdirSync(at(folder)).filter((name) => name.endsWith('.yaml'));

const schemas = fileSchemas();
const validator = (name: string) => {
  // Formats are told apart by their pattern; the only unknown word is our own note of the dimension.
  const ajv = new Ajv2020({ allErrors: true, validateFormats: false, strictTypes: false, keywords: ['x-dimension'] });
  const validate = ajv.compile(schemas[name]!);
  return (data: unknown) =>
    validate(data) ? [] : (validate.errors ?? []).map((e) => `${e.instancePath} ${e.message}`);
};

test.each(Object.keys(schemas))('%s is written as the engine has it now', (name) => {
  expect(read(`schemas/${name}`)).toBe(schemaText(schemas[name]!));
});

// A general-purpose validator of JSON Schema 2020-12 accepts what ships with the tool.
describe('files that ship with the tool are valid for another program', () => {
  test.each([
    ['examples', 'brief.schema.json'],
    ['catalogue', 'catalogue.schema.json'],
    ['rules', 'rules.schema.json'],
  ])('%s by %s', (folder, schema) => {
    const faults = validator(schema);
    const names = yamlIn(folder);
    expect(names.length).toBeGreaterThan(1);
    for (const name of names) expect([name, faults(parse(read(`${folder}/${name}`)))]).toEqual([name, []]);
  });
});

describe('what the reader refuses, the schemas refuse as well', () => {
  const brief = () => parse(read('examples/close-enclosure.yaml'));

  test('an unknown field', () => {
    expect(validator('brief.schema.json')({ ...brief(), colour: 'red' })).toHaveLength(1);
  });

  test('a bare number in place of a quantity', () => {
    const data = brief();
    data.room.height = 3;
    expect(validator('brief.schema.json')(data)).toEqual(['/room/height must be string']);
  });

  test('a missing rule', () => {
    const data = parse(read('rules/eu.yaml'));
    delete data.rules['way.headroom'];
    expect(validator('rules.schema.json')(data)).toHaveLength(1);
  });

  test('a negative price', () => {
    const data = parse(read('catalogue/track.yaml'));
    data.items[0].stock[0].price = '-1.00 EUR';
    expect(validator('catalogue.schema.json')(data).length).toBeGreaterThan(0);
  });
});
