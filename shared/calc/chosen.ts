import { z } from 'zod';

/** A union by what a value has in it: the faults are those of the one form that it means to be. */
export function chosen<Value>(choose: (value: Readonly<Record<string, unknown>>) => z.ZodType<Value>): z.ZodType<Value> {
  return z.unknown().transform((value, context): Value => {
    const parsed = choose(isRecord(value) ? value : {}).safeParse(value);
    if (parsed.success) return parsed.data;
    for (const issue of parsed.error.issues) context.issues.push({ ...issue, input: value } as z.core.$ZodRawIssue);
    return z.NEVER;
  });
}

/** Whether a value is an object with fields, not a list. */
export function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
