import type { z } from 'zod';
import { accepted, refused, type Result } from '../result.ts';
import type { CalcFault, CalcFaultCode } from '../trade/calc-part.ts';

/** The field of a fault that is about the whole of the input. */
const WHOLE = 'body';

/** A body in the shape that a sum takes; the first thing that is not so is the fault, with its field. */
export function readBody<Schema extends z.ZodType>(schema: Schema, body: unknown): Result<z.output<Schema>, CalcFault> {
  const parsed = schema.safeParse(body);
  if (parsed.success) return accepted(parsed.data);
  const [issue] = parsed.error.issues;
  return refused(issue === undefined ? { code: 'wrongType', field: WHOLE, message: 'the input is not right' } : issueFault(issue, body));
}

function issueFault(issue: z.core.$ZodIssue, body: unknown): CalcFault {
  const extra = issue.code === 'unrecognized_keys' ? issue.keys.slice(0, 1) : [];
  const path = [...issue.path, ...extra];
  return { ...said(issue, valueAt(body, path)), field: fieldOf(path) };
}

function said(issue: z.core.$ZodIssue, value: unknown): { readonly code: CalcFaultCode; readonly message: string } {
  switch (issue.code) {
    case 'unrecognized_keys':
      return { code: 'fieldUnknown', message: 'there is no such field here' };
    case 'invalid_type':
      return wrongType(issue.expected, value);
    case 'invalid_value':
      if (value === undefined) return wrongType('string', value);
      return { code: 'wordUnknown', message: `one of: ${issue.values.map(String).join(', ')}` };
    case 'too_small':
      if (issue.minimum === 0 && issue.inclusive === false) return moreThanNothing(value);
      if (issue.minimum === 0) return { code: 'negative', message: 'not negative' };
      return { code: 'outOfRange', message: `at least ${issue.minimum}` };
    case 'too_big':
      return { code: 'outOfRange', message: `at most ${issue.maximum}` };
    default:
      return { code: 'wrongType', message: issue.message };
  }
}

function moreThanNothing(value: unknown): { readonly code: CalcFaultCode; readonly message: string } {
  return { code: value === 0 ? 'outOfRange' : 'negative', message: 'more than 0' };
}

function wrongType(expected: string, value: unknown): { readonly code: CalcFaultCode; readonly message: string } {
  if (value === undefined) return { code: 'fieldMissing', message: `missing: expected ${expected}` };
  if (typeof value === 'number' && !Number.isFinite(value)) return { code: 'notFinite', message: 'a finite number' };
  return { code: 'wrongType', message: `expected ${expected}` };
}

function valueAt(body: unknown, path: readonly PropertyKey[]): unknown {
  let value: unknown = body;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = Reflect.get(value, key);
  }
  return value;
}

function fieldOf(path: readonly PropertyKey[]): string {
  if (path.length === 0) return WHOLE;
  return path.map((key, index) => (typeof key === 'number' ? `[${key}]` : `${index === 0 ? '' : '.'}${String(key)}`)).join('');
}

/** Numbers that went out of what can be written are no result; anything else is. */
export function finite(result: Readonly<Record<string, unknown>>): Result<object, CalcFault> {
  const isFinite = Object.values(result).every((value) => typeof value !== 'number' || Number.isFinite(value));
  if (isFinite) return accepted(result);
  return refused({ code: 'notFinite', field: WHOLE, message: 'the numbers are too large, or too small, to be reckoned with' });
}
