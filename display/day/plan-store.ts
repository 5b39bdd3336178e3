import { z } from 'zod';
import { refusalSchema, type Refusal } from '../../shared/floor/refusals.ts';
import {
  keptSchema,
  planStatusSchema,
  proposalSchema,
  type PlanStatus,
  type Proposal,
  type ProposalAsk,
  type TryAsk,
} from '../../shared/plan/plan-api.ts';

/** What came of asking the planner for something. */
export type Asked<Value> =
  | { readonly phase: 'here'; readonly value: Value }
  | { readonly phase: 'missing' }
  | { readonly phase: 'forbidden' }
  | { readonly phase: 'refused'; readonly refusal: Refusal | null; readonly detail: string }
  | { readonly phase: 'failed' };

const problemSchema = z.looseObject({ detail: z.string().default(''), refusal: refusalSchema.optional().catch(undefined) });

/** The planner over HTTP. */
export class PlanStore {
  readonly #fetch: typeof fetch;

  constructor(fetching: typeof fetch) {
    this.#fetch = fetching;
  }

  /** The plan in force, and what is on offer beside it. */
  status(): Promise<Asked<PlanStatus>> {
    return this.#ask('GET', '/api/plan', planStatusSchema);
  }

  /** Begins to plan a day; what comes back still runs. */
  propose(ask: ProposalAsk): Promise<Asked<Proposal>> {
    return this.#ask('POST', '/api/plan/proposals', proposalSchema, ask);
  }

  proposal(id: string): Promise<Asked<Proposal>> {
    return this.#ask('GET', proposalPath(id), proposalSchema);
  }

  /** Stops what runs; what is done is dropped, and so is an offer. */
  drop(id: string): Promise<Asked<unknown>> {
    return this.#ask('DELETE', proposalPath(id), z.unknown());
  }

  /** The floor is to follow it. */
  keep(id: string): Promise<Asked<{ readonly sequence: number }>> {
    return this.#ask('POST', `${proposalPath(id)}/keep`, keptSchema, {});
  }

  /** Begins to play a day, or the plan in force, many times. */
  startTry<Value>(ask: TryAsk, schema: z.ZodType<Value>): Promise<Asked<Value>> {
    return this.#ask('POST', '/api/plan/tries', schema, ask);
  }

  tryOf<Value>(id: string, schema: z.ZodType<Value>): Promise<Asked<Value>> {
    return this.#ask('GET', `/api/plan/tries/${encodeURIComponent(id)}`, schema);
  }

  async #ask<Value>(method: string, path: string, schema: z.ZodType<Value>, body?: unknown): Promise<Asked<Value>> {
    const answer = await this.#answer(method, path, body);
    if (answer === null) return { phase: 'failed' };
    if (answer.status === 404) return { phase: 'missing' };
    if (answer.status === 403) return { phase: 'forbidden' };
    if (answer.status >= 400) {
      const problem = problemSchema.safeParse(answer.body);
      if (!problem.success) return { phase: 'failed' };
      return { phase: 'refused', refusal: problem.data.refusal ?? null, detail: problem.data.detail };
    }
    const parsed = schema.safeParse(answer.body);
    return parsed.success ? { phase: 'here', value: parsed.data } : { phase: 'failed' };
  }

  /** null where nothing came through, or nothing that is JSON. */
  async #answer(method: string, path: string, body: unknown): Promise<{ readonly status: number; readonly body: unknown } | null> {
    try {
      const sent = body === undefined ? {} : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
      const response = await this.#fetch(path, { method, ...sent });
      const text = await response.text();
      return { status: response.status, body: text === '' ? null : (JSON.parse(text) as unknown) };
    } catch {
      // A link that is gone, an answer cut short: all the same to the one who waits for it.
      return null;
    }
  }
}

function proposalPath(id: string): string {
  return `/api/plan/proposals/${encodeURIComponent(id)}`;
}
