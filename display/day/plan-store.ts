import { z } from 'zod';
import { refusalSchema, type Refusal } from '../../shared/floor/refusals.ts';
import { answerTo } from '../parts/answer-to.ts';
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
    const answer = await answerTo(this.#fetch, method, path, body);
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
}

function proposalPath(id: string): string {
  return `/api/plan/proposals/${encodeURIComponent(id)}`;
}
