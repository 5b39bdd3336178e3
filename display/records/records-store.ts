import type { z } from 'zod';
import { answeredSchema } from '../../shared/records/answers.ts';
import type { QuestionName, RecordsProgress } from '../../shared/records/questions.ts';
import { answerTo } from '../parts/answer-to.ts';

/** What came of a question to the records. */
export type Asked<Value> =
  | { readonly phase: 'asking' | 'failed' | 'forbidden' | 'missing' | 'unavailable' }
  | { readonly phase: 'here'; readonly answer: Value; readonly progress: RecordsProgress };

/** What a question is asked with: words of its schema, as text; what is empty or undefined is not said. */
export type AskedWith = Readonly<Record<string, string | undefined>>;

/** Asks the house's records. Never rejects. */
export type AskRecords = <Value>(name: QuestionName, asked: AskedWith, schema: z.ZodType<Value>) => Promise<Asked<Value>>;

/** Asks by http. */
export function askRecordsBy(fetching: typeof fetch): AskRecords {
  return async (name, asked, schema) => {
    const query = new URLSearchParams();
    for (const [key, value] of Object.entries(asked)) if (value !== undefined && value !== '') query.set(key, value);
    const got = await answerTo(fetching, 'GET', `/api/records/${name}${query.size === 0 ? '' : `?${query.toString()}`}`);
    switch (got?.status) {
      case 200:
        break;
      case 403:
        return { phase: 'forbidden' };
      case 400:
      case 404:
        return { phase: 'missing' };
      case 503:
        return { phase: 'unavailable' };
      default:
        return { phase: 'failed' };
    }
    const answered = answeredSchema.safeParse(got.body);
    if (!answered.success) return { phase: 'failed' };
    // Records that are only being made may know nothing of it yet.
    const answer = schema.safeParse(answered.data.answer);
    const { progress } = answered.data;
    if (!answer.success) return { phase: progress.sequence < progress.of ? 'asking' : 'failed' };
    return { phase: 'here', answer: answer.data, progress };
  };
}
