import { backupStatusSchema, type BackupStatus } from '../../shared/wire/backup-status.ts';

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
  const answer = await answerTo(fetching, isNow);
  if (answer === null) return { phase: 'failed' };
  if (answer.status === 403) return { phase: 'forbidden' };
  if (answer.status === 404) return { phase: 'none' };
  // One that could not be made is answered with how things stand, and why.
  const parsed = backupStatusSchema.safeParse(answer.body);
  return parsed.success ? { phase: 'here', status: parsed.data, atMs: wallMs() } : { phase: 'failed' };
}

/** null where nothing came through, or nothing that is JSON: all the same to the one who waits for it. */
async function answerTo(fetching: typeof fetch, isNow: boolean): Promise<{ readonly status: number; readonly body: unknown } | null> {
  const init = isNow ? { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}' } : {};
  try {
    const response = await fetching('/api/backups', init);
    return { status: response.status, body: (await response.json()) as unknown };
  } catch {
    return null;
  }
}
