import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { idSchema } from '../../shared/ids.ts';

/** What a backup says of itself, beside its files. Written last: a folder without it is no backup. */
export const BACKUP_FILE = 'backup.json';
/** A backup that is being made. */
export const UNFINISHED = '.unfinished';
const NAME = /^\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2}Z$/;

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** One an hour is kept for a day, one a day for thirty. Our choice. */
const HOURLY_KEPT_MS = DAY_MS;
const DAILY_KEPT_MS = 30 * DAY_MS;

const backupSchema = z.strictObject({
  format: z.literal(1),
  kitchenId: idSchema,
  /** Of its journal's last event, with that event's hash. */
  sequence: z.number().int().min(0),
  hash: z.string(),
  /** When it was made, by the machine's clock. */
  madeMs: z.number().int(),
});
export type BackupFacts = z.infer<typeof backupSchema>;

/** A backup that was made whole and found right. */
export interface Backup extends BackupFacts {
  readonly folder: string;
}

/** The name of a backup made at an instant: ISO 8601 in UTC, without what file systems do not take. */
export function backupName(madeMs: number): string {
  return `${new Date(madeMs).toISOString().slice(0, 19).replaceAll(':', '-')}Z`;
}

/** The backups in a folder, the newest first. What is half made or does not say what it is counts for nothing. */
export function backupsIn(folder: string): readonly Backup[] {
  if (!existsSync(folder)) return [];
  const backups = readdirSync(folder).flatMap((name): Backup[] => {
    const facts = NAME.test(name) ? factsIn(join(folder, name)) : null;
    return facts === null ? [] : [{ ...facts, folder: join(folder, name) }];
  });
  return backups.sort((a, b) => b.madeMs - a.madeMs);
}

/** What a backup's folder says of it; null where it is none. */
export function factsIn(folder: string): BackupFacts | null {
  const path = join(folder, BACKUP_FILE);
  if (!existsSync(path)) return null;
  try {
    return backupSchema.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch (error) {
    // Torn or of another program: no backup. Everything else, a disk that cannot be read, is for whoever asked.
    if (error instanceof SyntaxError || error instanceof z.ZodError) return null;
    throw error;
  }
}

/**
 * Which backups go: of each hour of the last day and of each day of the last thirty the newest stays, and the newest of all whatever its
 * age. `backups` come newest first.
 */
export function toBeThinned(backups: readonly Backup[], nowMs: number): readonly Backup[] {
  const kept = new Set<string>();
  return backups.filter(({ madeMs }, index) => {
    const ageMs = nowMs - madeMs;
    const slot = ageMs < HOURLY_KEPT_MS ? `h${Math.floor(madeMs / HOUR_MS)}` : `d${Math.floor(madeMs / DAY_MS)}`;
    const stays = index === 0 || (ageMs < DAILY_KEPT_MS && !kept.has(slot));
    if (stays) kept.add(slot);
    return !stays;
  });
}
