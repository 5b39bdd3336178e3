import type { z } from 'zod';
import { faultFactsSchema, type FaultFacts } from './fault-facts.ts';
import type { FileFault } from './kitchen-faults.ts';
import { pathText } from './path-text.ts';

/**
 * What a schema says of a form while somebody types: each fault at its path under `root`, in facts where there are any,
 * so that screens say it in their own language.
 */
export function formFaults(root: string, error: z.ZodError): FileFault[] {
  return error.issues
    .flatMap((issue) => innermost(issue, []))
    .map(({ path, issue }) => ({ path: pathText([root, ...path]), message: issue.message, facts: factsOfIssue(issue) }));
}

interface PlacedIssue {
  readonly path: readonly PropertyKey[];
  readonly issue: z.core.$ZodIssue;
}

/** Where one of several shapes was nearly right, what is wrong with that one: a line's weight, not the line. */
function innermost(issue: z.core.$ZodIssue, above: readonly PropertyKey[]): readonly PlacedIssue[] {
  const path = [...above, ...issue.path];
  if (issue.code !== 'invalid_union') return [{ path, issue }];
  const nearest = issue.errors
    .filter((inner) => !inner.some((each) => each.code === 'unrecognized_keys'))
    .toSorted((a, b) => a.length - b.length)[0];
  if (nearest === undefined || nearest.length === 0) return [{ path, issue }];
  return nearest.flatMap((inner) => innermost(inner, path));
}

/** One fault of a shape in facts; undefined where only files can have it. */
export function factsOfIssue(issue: z.core.$ZodIssue): FaultFacts | undefined {
  switch (issue.code) {
    case 'too_small':
      return tooSmall(issue.origin, Number(issue.minimum));
    case 'too_big':
      if (issue.origin === 'string') return { code: 'textTooLong', most: Number(issue.maximum) };
      return { code: issue.origin === 'array' ? 'tooMany' : 'atMost', most: Number(issue.maximum) };
    case 'invalid_type':
      return { code: issue.expected === 'int' ? 'wholeNeeded' : issue.expected === 'string' ? 'textNeeded' : 'numberNeeded' };
    case 'invalid_format':
      return { code: issue.path.at(-1) === 'letters' ? 'lettersForm' : 'keyForm' };
    case 'invalid_value':
    case 'invalid_union':
      return { code: 'choiceNeeded' };
    case 'custom': {
      if (issue.path.at(-1) === 'pieceG' && issue.params === undefined) return { code: 'weightNeeded' };
      const said = faultFactsSchema.safeParse(issue.params?.['facts']);
      return said.success ? said.data : undefined;
    }
    default:
      return undefined;
  }
}

function tooSmall(origin: string, least: number): FaultFacts {
  switch (origin) {
    case 'array':
      return { code: 'oneNeeded' };
    case 'string':
      return { code: 'textNeeded' };
    default:
      return { code: 'atLeast', least };
  }
}
