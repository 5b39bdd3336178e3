import type { Logger } from 'pino';
import type { ExportAsked } from '../../shared/records/export-asked.ts';
import type { QuestionName, RecordsProgress } from '../../shared/records/questions.ts';
import { unreachable } from '../../shared/result.ts';
import type { FromRecords } from './records-messages.ts';
import type { RecordsPort, StartRecordsThread } from './start-records-thread.ts';
import { TableStream } from './table-stream.ts';

/** Tables that are written at once; one more waits until one is done. Each has a chunk or two in memory. */
export const POURS_AT_ONCE = 4;

/** A question came to nothing, because of a bug or because the thread ended; what it said is in the log. */
export class RecordsBroken extends Error {
  override readonly name = 'RecordsBroken';
}

/** An answer, and how far the records are that it is made of. `answer` is null where what was asked about is not there. */
export interface Answered {
  readonly answer: unknown;
  readonly progress: RecordsProgress;
}

/** A table on its way out. `stream` is null where the records are not made that far yet. */
export interface Poured {
  readonly stream: TableStream | null;
  readonly progress: RecordsProgress;
}

interface PendingPour {
  readonly stream: TableStream;
  readonly resolve: (poured: Poured) => void;
  readonly reject: (error: RecordsBroken) => void;
}

interface Pending {
  readonly resolve: (answered: Answered) => void;
  readonly reject: (error: RecordsBroken) => void;
}

export interface RecordsOptions {
  readonly dataFolder: string;
  readonly start: StartRecordsThread;
  readonly log: Pick<Logger, 'error' | 'warn'>;
}

/** The house's end of the records' thread. Told of what is new, and asked; it never waits for either. */
export class Records {
  readonly #options: RecordsOptions;
  readonly #pending = new Map<number, Pending>();
  readonly #pours = new Map<number, PendingPour>();
  #port: RecordsPort | null = null;
  #nextAskId = 1;
  #nextPourId = 1;
  #isStopped = false;
  /** A thread that ended is started again by a question, not by each tap. */
  #hasDied = false;

  constructor(options: RecordsOptions) {
    this.#options = options;
    // What happened while no server ran, or before there were records, is taken in at once.
    this.news();
  }

  /** The journal has more. */
  news(): void {
    if (!this.#isStopped && !this.#hasDied) this.#started().say({ type: 'news' });
  }

  /** Asks a question, with what its schema says. Rejects with RecordsBroken. */
  ask(name: QuestionName, asked: unknown): Promise<Answered> {
    const askId = this.#nextAskId;
    this.#nextAskId += 1;
    return new Promise((resolve, reject) => {
      this.#pending.set(askId, { resolve, reject });
      this.#started().say({ type: 'ask', askId, name, asked });
    });
  }

  /**
   * Writes a table out, as what asks for it says; `zone` is the house's. Null where POURS_AT_ONCE are being written. Whoever is given a stream
   * takes it to its end or destroys it. Rejects with RecordsBroken.
   */
  pour(asked: ExportAsked, zone: string): Promise<Poured> | null {
    if (this.#pours.size >= POURS_AT_ONCE) return null;
    const pourId = this.#nextPourId;
    this.#nextPourId += 1;
    const stream = new TableStream({
      more: () => this.#port?.say({ type: 'more', pourId }),
      over: (isTakenWhole) => {
        this.#pours.delete(pourId);
        if (!isTakenWhole) this.#port?.say({ type: 'enough', pourId });
      },
    });
    return new Promise((resolve, reject) => {
      this.#pours.set(pourId, { stream, resolve, reject });
      this.#started().say({ type: 'pour', pourId, asked, zone });
    });
  }

  async stop(): Promise<void> {
    this.#isStopped = true;
    const port = this.#port;
    this.#port = null;
    this.#forget('the server goes down');
    await port?.stop();
  }

  #started(): RecordsPort {
    this.#hasDied = false;
    this.#port ??= this.#options.start(this.#options.dataFolder, {
      hear: (message) => this.#hear(message),
      died: (error) => {
        this.#options.log.error({ err: error }, 'the thread that keeps the records ended; the next question starts it again');
        this.#port = null;
        this.#hasDied = true;
        this.#forget(error.message);
      },
    });
    return this.#port;
  }

  #hear(message: FromRecords): void {
    switch (message.type) {
      case 'answer':
        this.#settle(message.askId)?.resolve({ answer: message.answer, progress: message.progress });
        return;
      case 'pouring': {
        const pour = this.#pours.get(message.pourId);
        if (!message.isReady) this.#pours.delete(message.pourId);
        pour?.resolve({ stream: message.isReady ? pour.stream : null, progress: message.progress });
        return;
      }
      case 'poured':
        this.#pours.get(message.pourId)?.stream.arrived(message.bytes, message.isLast);
        return;
      case 'spilt':
        this.#options.log.error({ message: message.message, stack: message.stack }, 'a table of the records could not be written');
        this.#spill(message.pourId, message.message);
        return;
      case 'broken':
        this.#options.log.error({ message: message.message, stack: message.stack }, 'a question to the records failed');
        this.#settle(message.askId)?.reject(new RecordsBroken(message.message));
        return;
      case 'behind':
        this.#options.log.warn({ message: message.message }, 'the records could not take in what is new');
        return;
      default:
        unreachable(message);
    }
  }

  #settle(askId: number): Pending | undefined {
    const pending = this.#pending.get(askId);
    this.#pending.delete(askId);
    return pending;
  }

  /** Before its stream was given, nobody takes it; afterwards whoever takes it sees that it broke off. */
  #spill(pourId: number, why: string): void {
    const pour = this.#pours.get(pourId);
    this.#pours.delete(pourId);
    pour?.reject(new RecordsBroken(why));
    pour?.stream.destroy(new RecordsBroken(why));
  }

  #forget(why: string): void {
    for (const pourId of this.#pours.keys()) this.#spill(pourId, why);
    for (const { reject } of this.#pending.values()) reject(new RecordsBroken(why));
    this.#pending.clear();
  }
}
