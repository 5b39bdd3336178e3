import { z } from 'zod';
import { bookFormulaSchema, bookIndexSchema, type BookFormula, type BookIndex } from '../../shared/book/book-api.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import { refusalSchema, type Refusal } from '../../shared/floor/refusals.ts';
import type { Id } from '../../shared/ids.ts';
import { answerTo } from '../parts/answer-to.ts';

/** What came of asking for something. */
export type Fetched<Value> =
  | { readonly phase: 'here'; readonly value: Value }
  | { readonly phase: 'missing' }
  | { readonly phase: 'failed' };

/** What the house said to a command. `unsent`: nobody knows; the same command may be given again with the same id. */
export type Given =
  | { readonly phase: 'done' }
  | { readonly phase: 'refused'; readonly refusal: Refusal }
  | { readonly phase: 'forbidden' }
  | { readonly phase: 'unsent' };

const refusedSchema = z.looseObject({ refusal: refusalSchema });

/** The book over HTTP. */
export class BookStore {
  readonly #fetch: typeof fetch;

  constructor(fetching: typeof fetch) {
    this.#fetch = fetching;
  }

  /** Every formula of the book by name, and the ingredients. */
  index(): Promise<Fetched<BookIndex>> {
    return this.#get('/api/book', bookIndexSchema);
  }

  /** One formula with what belongs to it; in force where no version is named. */
  formula(id: string, version: number | null = null): Promise<Fetched<BookFormula>> {
    const asked = version === null ? '' : `?version=${version}`;
    return this.#get(`/api/book/formulas/${encodeURIComponent(id)}${asked}`, bookFormulaSchema);
  }

  /** Gives a command to the house. The same id is answered the same again. */
  async give(commandId: Id, command: ClientCommand): Promise<Given> {
    const answer = await answerTo(this.#fetch, 'POST', '/api/commands', { commandId, command });
    if (answer === null) return { phase: 'unsent' };
    if (answer.status === 200) return { phase: 'done' };
    if (answer.status === 403) return { phase: 'forbidden' };
    const refused = answer.status === 409 ? refusedSchema.safeParse(answer.body) : null;
    return refused?.success === true ? { phase: 'refused', refusal: refused.data.refusal } : { phase: 'unsent' };
  }

  async #get<Value>(path: string, schema: z.ZodType<Value>): Promise<Fetched<Value>> {
    const answer = await answerTo(this.#fetch, 'GET', path);
    if (answer?.status === 404) return { phase: 'missing' };
    if (answer?.status !== 200) return { phase: 'failed' };
    const parsed = schema.safeParse(answer.body);
    return parsed.success ? { phase: 'here', value: parsed.data } : { phase: 'failed' };
  }
}
