import type { Logger } from 'pino';
import type { BackupStatus } from '../../shared/wire/backup-status.ts';
import type { Timers } from '../floor/alarm-clock.ts';
import { backupsIn, type Backup } from './backup-folder.ts';

const HOUR_MS = 3_600_000;
/** A new server is busy with its first screens; and one that is started for a minute needs no copy. */
const FIRST_AFTER_MS = 60_000;
/** Where one failed, the stick may be back soon. */
const AGAIN_AFTER_MS = 5 * 60_000;
/** Older than this the last backup is late: two were missed. */
const LATE_AFTER_MS = 2 * HOUR_MS + AGAIN_AFTER_MS;

/** Makes a backup now, at an instant of the machine's clock. */
export type MakeBackup = (nowMs: number) => Promise<Backup>;

/** Makes a backup every hour while the server runs, and says how that goes. */
export class BackupKeeper {
  readonly #folder: string;
  readonly #make: MakeBackup;
  readonly #timers: Timers;
  readonly #wallMs: () => number;
  readonly #log: Pick<Logger, 'warn'>;
  readonly #startedMs: number;
  #timer: { cancel(): void } | null = null;
  #running: Promise<void> | null = null;
  #fault: string | null = null;
  #isStopped = false;
  /** The last one that is known to have been made, without looking: a stick that hangs must not hold up the house. */
  #lastMadeMs = 0;

  constructor(folder: string, make: MakeBackup, timers: Timers, wallMs: () => number, log: Pick<Logger, 'warn'>) {
    this.#folder = folder;
    this.#make = make;
    this.#timers = timers;
    this.#wallMs = wallMs;
    this.#log = log;
    this.#startedMs = wallMs();
    this.#again(this.#firstAfterMs());
  }

  /** Whether two were missed. */
  get isLate(): boolean {
    return this.#wallMs() - Math.max(this.#lastMadeMs, this.#startedMs) > LATE_AFTER_MS;
  }

  /** As it is now. Read from the folder, so that a stick that was pulled shows. */
  status(): BackupStatus {
    const nowMs = this.#wallMs();
    const backups = this.#backups();
    const [last] = backups;
    return {
      folder: this.#folder,
      last: last === undefined ? null : { madeMs: last.madeMs, sequence: last.sequence },
      fault: this.#fault,
      isLate: nowMs - Math.max(last?.madeMs ?? 0, this.#startedMs) > LATE_AFTER_MS,
      kept: backups.length,
    };
  }

  /** Makes one at once, or waits for the one that is being made. */
  now(): Promise<void> {
    this.#running ??= this.#run();
    return this.#running;
  }

  /** No more of them; one that is being made is waited for. */
  async stop(): Promise<void> {
    this.#isStopped = true;
    this.#timer?.cancel();
    await this.#running;
  }

  async #run(): Promise<void> {
    this.#timer?.cancel();
    try {
      const { madeMs } = await this.#make(this.#wallMs());
      this.#lastMadeMs = madeMs;
      this.#fault = null;
      this.#again(HOUR_MS);
    } catch (error) {
      this.#fault = error instanceof Error ? error.message : String(error);
      this.#log.warn({ err: error, folder: this.#folder }, 'no backup could be made');
      this.#again(AGAIN_AFTER_MS);
    } finally {
      this.#running = null;
    }
  }

  #again(delayMs: number): void {
    if (!this.#isStopped) this.#timer = this.#timers.set(() => void this.now(), delayMs);
  }

  #firstAfterMs(): number {
    const [last] = this.#backups();
    this.#lastMadeMs = last?.madeMs ?? 0;
    const ageMs = last === undefined ? HOUR_MS : this.#startedMs - last.madeMs;
    return Math.min(HOUR_MS, Math.max(FIRST_AFTER_MS, HOUR_MS - Math.max(0, ageMs)));
  }

  #backups(): readonly Backup[] {
    try {
      return backupsIn(this.#folder);
    } catch (error) {
      this.#fault = error instanceof Error ? error.message : String(error);
      return [];
    }
  }
}
