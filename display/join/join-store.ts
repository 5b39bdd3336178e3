import { accessStatusSchema, joinedSchema, type AccessStatus, type Joined } from '../../shared/wire/access.ts';
import { answerTo } from '../parts/answer-to.ts';

/** What somebody has typed, with what the wall's picture brought along. */
export interface JoinTry {
  readonly code: string;
  readonly ticket: string | null;
  readonly as: 'wall' | 'phone';
  readonly name: string | null;
}

/** What came of it. */
export type JoinAnswer =
  | { readonly kind: 'joined'; readonly joined: Joined }
  | { readonly kind: 'wrongCode' | 'joiningClosed' | 'badName' | 'failed' }
  | { readonly kind: 'tooManyTries'; readonly minutes: number };

const MINUTE_S = 60;

/** How the house stands to this browser; null where it did not answer. */
export async function askAccess(fetching: typeof fetch): Promise<AccessStatus | null> {
  const answer = await answerTo(fetching, 'GET', '/api/access');
  const parsed = accessStatusSchema.safeParse(answer?.body);
  return parsed.success ? parsed.data : null;
}

/** Asks to be let in. Never rejects. */
export async function askToJoin(fetching: typeof fetch, asked: JoinTry): Promise<JoinAnswer> {
  const answer = await answerTo(fetching, 'POST', '/api/join', asked);
  switch (answer?.status) {
    case 200: {
      const parsed = joinedSchema.safeParse(answer.body);
      return parsed.success ? { kind: 'joined', joined: parsed.data } : { kind: 'failed' };
    }
    case 400:
      return { kind: 'badName' };
    case 403:
      return { kind: 'wrongCode' };
    case 409:
      return { kind: 'joiningClosed' };
    case 429:
      return { kind: 'tooManyTries', minutes: Math.ceil(retryS(answer.body) / MINUTE_S) };
    default:
      return { kind: 'failed' };
  }
}

function retryS(body: unknown): number {
  const said = typeof body === 'object' && body !== null && 'retryS' in body ? body.retryS : null;
  return typeof said === 'number' ? said : MINUTE_S;
}
