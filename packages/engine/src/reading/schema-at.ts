import type { z } from 'zod';
import type { Path } from './path.js';

/** What is needed of a schema's insides; only kinds that our schemas use. */
interface Inside {
  readonly type: string;
  readonly innerType?: z.ZodType;
  readonly getter?: () => z.ZodType;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly element?: z.ZodType;
  readonly items?: readonly z.ZodType[];
  readonly keyType?: z.ZodType;
  readonly valueType?: z.ZodType;
  readonly options?: readonly z.ZodType[];
  readonly discriminator?: string;
  readonly values?: readonly unknown[];
  readonly entries?: Readonly<Record<string, string>>;
}

const inside = (schema: z.ZodType): Inside => schema.def as unknown as Inside;

/** The schema without "may be left out", "has a default" and the like. */
function bare(schema: z.ZodType): z.ZodType {
  const { type, innerType, getter } = inside(schema);
  if (type === 'lazy' && getter) return bare(getter());
  return innerType ? bare(innerType) : schema;
}

/** The alternative of a union that the data means: by its discriminating word, else by its kind. */
function alternative(schema: z.ZodType, data: unknown): z.ZodType | undefined {
  const { options = [], discriminator } = inside(schema);
  const kind = Array.isArray(data) ? 'tuple' : typeof data;
  return options.map(bare).find((option) => {
    const { type, shape } = inside(option);
    if (discriminator === undefined) return type === kind;
    const word = shape?.[discriminator];
    const given = (data as Readonly<Record<string, unknown>> | undefined)?.[discriminator];
    return word !== undefined && (inside(word).values?.includes(given) ?? false);
  });
}

/** Walks from a schema along a path of data; undefined when the path leaves what the schema knows. */
export function schemaAt(schema: z.ZodType, path: Path, data: unknown): z.ZodType | undefined {
  const here = bare(schema);
  const { type, shape, element, items, valueType } = inside(here);
  if (type === 'union') {
    const chosen = alternative(here, data);
    return chosen ? schemaAt(chosen, path, data) : undefined;
  }
  const [step, ...rest] = path;
  if (step === undefined) return here;
  const next =
    type === 'object'
      ? shape?.[step]
      : type === 'array'
        ? element
        : type === 'tuple'
          ? items?.[Number(step)]
          : type === 'record'
            ? valueType
            : undefined;
  if (!next) return undefined;
  const value =
    typeof data === 'object' && data !== null ? (data as Readonly<Record<string, unknown>>)[step] : undefined;
  return schemaAt(next, rest, value);
}

/** Names of the fields that a record may have; empty for anything else. */
export function fieldsOf(schema: z.ZodType | undefined): string[] {
  if (!schema) return [];
  const { type, shape, keyType } = inside(bare(schema));
  if (type === 'object') return Object.keys(shape ?? {});
  return type === 'record' && keyType ? Object.values(inside(bare(keyType)).entries ?? {}) : [];
}
