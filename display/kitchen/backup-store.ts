import { backupStatusSchema, type BackupStatus } from '../../shared/wire/backup-status.ts';
import { answerTo } from '../parts/answer-to.ts';

/** What is shown of the house's backups. */
export type BackupsShown =
  | { readonly phase: 'asking' }
  | { readonly phase: 'making' }
  /** This server makes none. */
  | { readonly phase: 'none' }
  | { readonly phase: 'forbidden' }
  /** The server did not answer, or with nothing that can be read. */
  | { readonly phase: 'failed' }
  | { readonly phase: 'here'; readonly status: BackupStatus; readonly atMs: number };

/** Asks how the backups stand; `isNow`: after one more was made. Never rejects: what went wrong is what is shown. */
export async function askBackups(fetching: typeof fetch, isNow: boolean, wallMs: () => number): Promise<BackupsShown> {
  const answer = isNow ? await answerTo(fetching, 'POST', '/api/backups', {}) : await answerTo(fetching, 'GET', '/api/backups');
  if (answer === null) return { phase: 'failed' };
  if (answer.status === 403) return { phase: 'forbidden' };
  if (answer.status === 404) return { phase: 'none' };
  // One that could not be made is answered with how things stand, and why.
  const parsed = backupStatusSchema.safeParse(answer.body);
  return parsed.success ? { phase: 'here', status: parsed.data, atMs: wallMs() } : { phase: 'failed' };
}
