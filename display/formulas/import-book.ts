import { z } from 'zod';
import { faultFactsSchema } from '../../shared/documents/fault-facts.ts';
import type { FileFault } from '../../shared/documents/kitchen-faults.ts';

/** Largest book that the server takes, in bytes. */
export const MOST_BOOK_BYTES = 32 * 1024 * 1024;

const countsSchema = z.object({ new: z.number(), changed: z.number(), unchanged: z.number() });
const broughtInSchema = z.object({ ingredients: countsSchema, formulas: countsSchema, products: countsSchema });
const problemSchema = z.object({
  detail: z.string().optional(),
  title: z.string().optional(),
  // Facts that this page does not know are left to the message.
  faults: z.array(z.object({ path: z.string(), message: z.string(), facts: faultFactsSchema.optional().catch(undefined) })).optional(),
});
/** A file that says that it is a book, whatever else is wrong with it. */
const bookLikeSchema = z.looseObject({
  format: z.number(),
  formulas: z.array(z.unknown()),
  products: z.array(z.unknown()).default([]),
  ingredients: z.array(z.unknown()),
});

/** How many documents a book in a file has. */
export interface BookHolds {
  readonly formulas: number;
  readonly products: number;
  readonly ingredients: number;
}

/** What became of a book that was sent to the server. */
export type BookOutcome =
  | { readonly kind: 'done'; readonly added: number; readonly changed: number; readonly same: number }
  | { readonly kind: 'faulty'; readonly faults: readonly FileFault[] }
  | { readonly kind: 'refused'; readonly detail: string }
  | { readonly kind: 'failed' };

/** How many documents a value holds where it is one of our books; null where it is something else. */
export function bookHolds(value: unknown): BookHolds | null {
  const book = bookLikeSchema.safeParse(value);
  if (!book.success) return null;
  const { formulas, products, ingredients } = book.data;
  return { formulas: formulas.length, products: products.length, ingredients: ingredients.length };
}

/** Sends a book to the server, which takes all of it or nothing. Never throws: what went wrong is the outcome. */
export async function sendBook(value: unknown, send: typeof fetch = (input, init) => fetch(input, init)): Promise<BookOutcome> {
  try {
    const response = await send('/api/book/import', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(value),
    });
    const body: unknown = await response.json();
    return response.ok ? broughtIn(body) : problem(body, response.status);
  } catch {
    return { kind: 'failed' };
  }
}

function broughtIn(body: unknown): BookOutcome {
  const counts = Object.values(broughtInSchema.parse(body));
  const sum = (key: 'new' | 'changed' | 'unchanged'): number => counts.reduce((total, each) => total + each[key], 0);
  return { kind: 'done', added: sum('new'), changed: sum('changed'), same: sum('unchanged') };
}

function problem(body: unknown, status: number): BookOutcome {
  const { detail, title, faults } = problemSchema.parse(body);
  if (faults !== undefined && faults.length > 0)
    return {
      kind: 'faulty',
      faults: faults.map(({ path, message, facts }) => (facts === undefined ? { path, message } : { path, message, facts })),
    };
  return { kind: 'refused', detail: detail ?? title ?? String(status) };
}
