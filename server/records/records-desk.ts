import type { z } from 'zod';
import type { ExportAsked } from '../../shared/records/export-asked.ts';
import { QUESTIONS, type QuestionName, type RecordsProgress } from '../../shared/records/questions.ts';
import { assert } from '../../shared/result.ts';
import { ANSWERS } from './questions-answered.ts';
import { RecordsBuilder } from './records-builder.ts';
import { Pour } from './pour.ts';
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
  readonly #pours = new Map<number, Pour>();
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
      case 'pour':
        await this.#beginPour(message.pourId, message.asked, message.zone);
        return;
      case 'more':
        // Others have their turn between two chunks: a question, a page of what is new.
        await this.#timers.turn();
        await this.#inTurn(async () => this.#pour(message.pourId));
        return;
      case 'enough':
        await this.#inTurn(async () => this.#endPour(message.pourId));
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
      } while (!this.#isClosed && this.#isBehind);
    } catch (error) {
      this.#say({ type: 'behind', message: error instanceof Error ? error.message : String(error) });
    }
  }

  async #page(): Promise<void> {
    if (this.#isClosed) return;
    this.#builder ??= await RecordsBuilder.open(this.#folder);
    try {
      if (this.#builder !== null) this.#progress = await this.#builder.page();
    } catch (error) {
      // Its rows were not kept, and it has gone on: another one begins where rows and fold were the same.
      const broken = this.#builder;
      this.#builder = null;
      await broken?.close();
      throw error;
    }
  }

  async #answer(askId: number, name: QuestionName, asked: unknown): Promise<void> {
    try {
      await this.#waitForLevel();
      const answer = await this.#inTurn(async () => {
        const reader = await this.#opened();
        return reader === null ? null : await answered(reader, name, asked);
      });
      this.#say({ type: 'answer', askId, answer, progress: this.#progress });
      if (this.#isBehind) void this.#catchUp();
    } catch (error) {
      this.#say({ type: 'broken', askId, ...told(error) });
    }
  }

  /** Just behind, it is worth waiting for; records that are being made anew answer with what they have, and say how far they are. */
  async #waitForLevel(): Promise<void> {
    do {
      await this.#inTurn(() => this.#page());
    } while (!this.#isClosed && this.#isBehind && this.#progress.of - this.#progress.sequence < SOON_LEVEL);
  }

  /** A file of half a table would not say so: where the records are not level, nothing is written. */
  async #beginPour(pourId: number, asked: ExportAsked, zone: string): Promise<void> {
    try {
      await this.#waitForLevel();
      await this.#inTurn(async () => {
        const reader = this.#isClosed || this.#isBehind ? null : await this.#opened();
        if (reader !== null) this.#pours.set(pourId, new Pour(reader, asked, zone));
      });
      this.#say({ type: 'pouring', pourId, isReady: this.#pours.has(pourId), progress: this.#progress });
      if (this.#isBehind) void this.#catchUp();
    } catch (error) {
      this.#say({ type: 'spilt', pourId, ...told(error) });
    }
  }

  #pour(pourId: number): void {
    const pour = this.#pours.get(pourId);
    if (pour === undefined) return;
    try {
      const chunk = pour.next();
      if (chunk.isLast) this.#endPour(pourId);
      this.#say({ type: 'poured', pourId, ...chunk });
    } catch (error) {
      this.#endPour(pourId);
      this.#say({ type: 'spilt', pourId, ...told(error) });
    }
  }

  #endPour(pourId: number): void {
    this.#pours.get(pourId)?.close();
    this.#pours.delete(pourId);
  }

  get #isBehind(): boolean {
    return this.#progress.sequence < this.#progress.of;
  }

  async #opened(): Promise<RecordsReader | null> {
    if (this.#builder === null) return null;
    this.#reader ??= await RecordsReader.open(this.#folder);
    return this.#reader;
  }

  async #close(): Promise<void> {
    for (const pourId of this.#pours.keys()) this.#endPour(pourId);
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

function told(error: unknown): { readonly message: string; readonly stack: string } {
  const { message, stack = '' } = error instanceof Error ? error : new Error(String(error));
  return { message, stack };
}

/** The answer to one question; what it is asked with was checked where it came from, and is checked again. */
async function answered(reader: RecordsReader, name: QuestionName, asked: unknown): Promise<unknown> {
  const schema: z.ZodType = QUESTIONS[name];
  const parsed = schema.safeParse(asked);
  assert(parsed.success, `the question ${name} is asked as it should be`);
  return await ANSWERS[name](reader, parsed.data as never);
}
