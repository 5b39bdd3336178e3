import type { z } from 'zod';
import { QUESTIONS, type QuestionName, type RecordsProgress } from '../../shared/records/questions.ts';
import { assert } from '../../shared/result.ts';
import { ANSWERS } from './questions-answered.ts';
import { RecordsBuilder } from './records-builder.ts';
import type { FromRecords, ToRecords } from './records-messages.ts';
import { RecordsReader } from './records-reader.ts';

/** So long after something new the records take it in: taps come in bursts, and nobody waits for the records. */
const NEWS_AFTER_MS = 250;
/** Fewer events than these behind, and a question waits until the records are level. */
const SOON_LEVEL = 4_000;

/** How a desk lets others have their turn, and waits. */
export interface DeskTimers {
  /** Resolves when whatever waits has had its turn. */
  turn(): Promise<void>;
  later(run: () => void, delayMs: number): void;
}

/**
 * The records' end of their thread: takes in what is new a page at a time, and answers between pages. Whatever it is asked, the house that
 * writes the journal is not held up by it.
 */
export class RecordsDesk {
  readonly #folder: string;
  readonly #say: (message: FromRecords) => void;
  readonly #timers: DeskTimers;
  #builder: RecordsBuilder | null = null;
  #reader: RecordsReader | null = null;
  #progress: RecordsProgress = { sequence: 0, of: 0 };
  /** One thing after another: a page, an answer. */
  #tail: Promise<unknown> = Promise.resolve();
  #isNewsKnown = false;
  #isClosed = false;

  constructor(folder: string, say: (message: FromRecords) => void, timers: DeskTimers) {
    this.#folder = folder;
    this.#say = say;
    this.#timers = timers;
  }

  /** Takes one message. Resolves once `close` has closed everything. */
  async take(message: ToRecords): Promise<void> {
    switch (message.type) {
      case 'news':
        if (this.#isNewsKnown) return;
        this.#isNewsKnown = true;
        this.#timers.later(() => {
          this.#isNewsKnown = false;
          void this.#catchUp();
        }, NEWS_AFTER_MS);
        return;
      case 'ask':
        await this.#answer(message.askId, message.name, message.asked);
        return;
      case 'close':
        this.#isClosed = true;
        await this.#inTurn(() => this.#close());
        return;
    }
  }

  /** Pages, with a turn for others after each, until nothing is new. */
  async #catchUp(): Promise<void> {
    try {
      do {
        await this.#inTurn(() => this.#page());
        await this.#timers.turn();
      } while (!this.#isClosed && this.#progress.sequence < this.#progress.of);
    } catch (error) {
      this.#say({ type: 'behind', message: error instanceof Error ? error.message : String(error) });
    }
  }

  async #page(): Promise<void> {
    if (this.#isClosed) return;
    this.#builder ??= await RecordsBuilder.open(this.#folder);
    if (this.#builder !== null) this.#progress = await this.#builder.page();
  }

  async #answer(askId: number, name: QuestionName, asked: unknown): Promise<void> {
    try {
      // Just behind, it is worth waiting for; records that are being made anew answer with what they have, and say how far they are.
      do {
        await this.#inTurn(() => this.#page());
      } while (!this.#isClosed && this.#progress.sequence < this.#progress.of && this.#progress.of - this.#progress.sequence < SOON_LEVEL);
      const answer = await this.#inTurn(async () => {
        const reader = await this.#opened();
        return reader === null ? null : await answered(reader, name, asked);
      });
      this.#say({ type: 'answer', askId, answer, progress: this.#progress });
      if (this.#progress.sequence < this.#progress.of) void this.#catchUp();
    } catch (error) {
      const { message, stack = '' } = error instanceof Error ? error : new Error(String(error));
      this.#say({ type: 'broken', askId, message, stack });
    }
  }

  async #opened(): Promise<RecordsReader | null> {
    if (this.#builder === null) return null;
    this.#reader ??= await RecordsReader.open(this.#folder);
    return this.#reader;
  }

  async #close(): Promise<void> {
    await this.#reader?.close();
    await this.#builder?.close();
  }

  /** Runs when what was given before has run; a failure of that one is its own. */
  #inTurn<Value>(work: () => Promise<Value>): Promise<Value> {
    const result = this.#tail.then(work);
    this.#tail = result.catch(() => {});
    return result;
  }
}

/** The answer to one question; what it is asked with was checked where it came from, and is checked again. */
async function answered(reader: RecordsReader, name: QuestionName, asked: unknown): Promise<unknown> {
  const schema: z.ZodType = QUESTIONS[name];
  const parsed = schema.safeParse(asked);
  assert(parsed.success, `the question ${name} is asked as it should be`);
  return await ANSWERS[name](reader, parsed.data as never);
}
