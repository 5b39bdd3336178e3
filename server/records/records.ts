import type { Logger } from 'pino';
import type { QuestionName, RecordsProgress } from '../../shared/records/questions.ts';
import { unreachable } from '../../shared/result.ts';
import type { FromRecords } from './records-messages.ts';
import type { RecordsPort, StartRecordsThread } from './start-records-thread.ts';

/** A question came to nothing, because of a bug or because the thread ended; what it said is in the log. */
export class RecordsBroken extends Error {
  override readonly name = 'RecordsBroken';
}

/** An answer, and how far the records are that it is made of. `answer` is null where what was asked about is not there. */
export interface Answered {
  readonly answer: unknown;
  readonly progress: RecordsProgress;
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
  #port: RecordsPort | null = null;
  #nextAskId = 1;
  #isStopped = false;

  constructor(options: RecordsOptions) {
    this.#options = options;
    // What happened while no server ran, or before there were records, is taken in at once.
    this.news();
  }

  /** The journal has more. */
  news(): void {
    if (!this.#isStopped) this.#started().say({ type: 'news' });
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

  async stop(): Promise<void> {
    this.#isStopped = true;
    const port = this.#port;
    this.#port = null;
    this.#forget('the server goes down');
    await port?.stop();
  }

  #started(): RecordsPort {
    this.#port ??= this.#options.start(this.#options.dataFolder, {
      hear: (message) => this.#hear(message),
      died: (error) => {
        this.#options.log.error({ err: error }, 'the thread that keeps the records ended; the next question starts it again');
        this.#port = null;
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

  #forget(why: string): void {
    for (const { reject } of this.#pending.values()) reject(new RecordsBroken(why));
    this.#pending.clear();
  }
}
