import {
  briefSchema,
  catalogueFileSchema,
  type Dimension,
  dimensions,
  itemSchema,
  knownRules,
  ruleProfileSchema,
} from '@cloche/engine';
import { z } from 'zod';

type Json = Record<string, unknown>;

/** What our own schemas say about a value that JSON Schema has no word for. */
interface Told {
  readonly dimension?: Dimension;
  readonly limits?: { readonly min?: number; readonly max?: number; readonly above?: number };
  readonly what?: 'point' | 'money';
}

function quantity(dimension: Dimension, limits: Told['limits'] = {}): Json {
  const { si, example } = dimensions[dimension];
  const bounds = [
    limits.above === undefined ? [] : [`above ${limits.above} ${si}`],
    limits.min === undefined ? [] : [`at least ${limits.min} ${si}`],
    limits.max === undefined ? [] : [`at most ${limits.max} ${si}`],
  ].flat();
  return {
    type: 'string',
    minLength: 1,
    description: `Text with unit, ${dimension}${bounds.length > 0 ? `; ${bounds.join(' and ')}` : ''}.`,
    examples: example.split(', '),
    'x-dimension': dimension,
  };
}

const money: Json = {
  type: 'string',
  pattern: '^\\d+(\\.\\d+)? [A-Z]{3}$',
  description: 'Amount and ISO 4217 currency.',
  examples: ['12.50 EUR'],
};

/** Puts what is written in files in place of what our schemas turn it into. */
function rewrite(json: Json): void {
  const { dimension, limits, what } = json as Told;
  const found = dimension !== undefined ? quantity(dimension, limits) : what === 'money' ? money : undefined;
  if (found) for (const key of Object.keys(json)) delete json[key];
  if (found) Object.assign(json, found);
  else if (what !== undefined) delete json.what;
}

const schemaOf = (schema: z.ZodType, name: string, title: string): Json => {
  const body = z.toJSONSchema(schema, {
    target: 'draft-2020-12',
    io: 'input',
    unrepresentable: 'any',
    override: ({ jsonSchema }) => rewrite(jsonSchema as Json),
  }) as Json;
  const { $schema, ...rest } = body;
  return { $schema, $id: `https://cloche.invalid/schemas/1/${name}.schema.json`, title, ...rest };
};

/** Each rule by its name, with the form that its value takes. */
function ruleProfile(): Json {
  const schema = schemaOf(ruleProfileSchema, 'rules', 'Profile of site rules');
  const properties = schema.properties as Json;
  const entry = (properties.rules as Json).additionalProperties as Json;
  const rules = Object.entries(knownRules).map(([id, { shape, meaning }]) => {
    const value =
      'dimension' in shape
        ? quantity(shape.dimension)
        : 'number' in shape
          ? { type: 'number', minimum: 0 }
          : 'choice' in shape
            ? { enum: [...shape.choice] }
            : { type: 'boolean' };
    const fields = { ...(entry.properties as Json), value };
    return [id, { ...entry, description: meaning, properties: fields }];
  });
  const named = Object.fromEntries(rules);
  const closed = { type: 'object', properties: named, required: Object.keys(named), additionalProperties: false };
  return { ...schema, properties: { ...properties, rules: closed } };
}

/** JSON Schema 2020-12 of every kind of file that people write, by file name; for editors and other programs. */
export const fileSchemas = (): Readonly<Record<string, Json>> => ({
  'brief.schema.json': schemaOf(briefSchema, 'brief', 'Brief: survey, needs and layout'),
  'catalogue.schema.json': schemaOf(
    catalogueFileSchema.extend({ items: z.array(itemSchema).min(1) }),
    'catalogue',
    'File of a catalogue',
  ),
  'rules.schema.json': ruleProfile(),
});

export const schemaText = (schema: Json): string => `${JSON.stringify(schema, null, 2)}\n`;
