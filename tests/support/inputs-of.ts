import fc from 'fast-check';
import { z } from 'zod';

/** How far lists and records are drawn out, and free text; what is long is tried by name elsewhere. */
const MOST_ITEMS = 3;
const MOST_CHARACTERS = 40;
/** Where a number has no bound of its own. */
const FAR = 1e12;

type JsonSchema = z.core.JSONSchema.JSONSchema;

/**
 * Inputs of the shape that a schema asks for, made from the schema itself, so that a new message is tried without anybody writing it
 * down. What a refinement asks beyond shape and range is not looked at: some of what is drawn the schema does not take.
 */
export function inputsOf(schema: z.ZodType): fc.Arbitrary<unknown> {
  return drawnBy(z.toJSONSchema(schema, { unrepresentable: 'any', io: 'input' }));
}

function drawnBy(schema: JsonSchema | boolean | undefined): fc.Arbitrary<unknown> {
  if (typeof schema !== 'object') return fc.jsonValue();
  if (schema.const !== undefined) return fc.constant(schema.const);
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  const options = schema.anyOf ?? schema.oneOf;
  if (options !== undefined) return fc.oneof(...options.map((option) => drawnBy(option)));
  switch (schema.type) {
    case 'string':
      return strings(schema);
    case 'integer':
      return fc.integer({ min: Math.ceil(least(schema, 1)), max: Math.floor(most(schema, 1)) });
    case 'number':
      return fc.double({
        min: least(schema, Number.MIN_VALUE),
        max: most(schema, 0),
        noNaN: true,
        maxExcluded: schema.exclusiveMaximum !== undefined,
      });
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    case 'array':
      return arrays(schema);
    case 'object':
      return objects(schema);
    default:
      return fc.jsonValue();
  }
}

function least({ minimum, exclusiveMinimum }: JsonSchema, step: number): number {
  return Math.max(minimum ?? -FAR, typeof exclusiveMinimum === 'number' ? exclusiveMinimum + step : -FAR);
}

function most({ maximum, exclusiveMaximum }: JsonSchema, step: number): number {
  return Math.min(maximum ?? FAR, typeof exclusiveMaximum === 'number' ? exclusiveMaximum - step : FAR);
}

function strings({ pattern, minLength = 0, maxLength = MOST_CHARACTERS }: JsonSchema): fc.Arbitrary<string> {
  if (pattern !== undefined) return fc.stringMatching(new RegExp(pattern, /\\p\{/.test(pattern) ? 'u' : ''));
  return fc.string({ minLength, maxLength: Math.max(minLength, Math.min(maxLength, MOST_CHARACTERS)) });
}

function arrays({ items, prefixItems, minItems = 0, maxItems = Infinity }: JsonSchema): fc.Arbitrary<unknown> {
  if (prefixItems !== undefined) return fc.tuple(...prefixItems.map((item) => drawnBy(item)));
  const item = Array.isArray(items) ? drawnBy(items[0]) : drawnBy(items);
  return fc.array(item, { minLength: minItems, maxLength: Math.min(maxItems, minItems + MOST_ITEMS) });
}

function objects({ properties, required = [], additionalProperties, propertyNames }: JsonSchema): fc.Arbitrary<unknown> {
  if (properties === undefined)
    return fc.dictionary(
      propertyNames === undefined ? fc.string() : (drawnBy({ type: 'string', ...(propertyNames as JsonSchema) }) as fc.Arbitrary<string>),
      drawnBy(additionalProperties),
      { maxKeys: MOST_ITEMS },
    );
  const fields = Object.fromEntries(Object.entries(properties).map(([key, field]) => [key, drawnBy(field)]));
  return fc.record(fields, { requiredKeys: required.filter((key) => key in fields) });
}
