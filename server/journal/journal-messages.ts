import type { JournalEntry, JournalError, JournalHead } from './journal.ts';

/** What a journal's thread is told. */
export type ToJournalThread =
  | {
      readonly type: 'append';
      readonly callId: number;
      readonly kitchenId: string;
      readonly expectedSequence: number;
      readonly group: readonly JournalEntry[];
    }
  /** Closes the file and ends. */
  | { readonly type: 'close' };

/** What it says to each append. */
export type FromJournalThread =
  | { readonly type: 'kept'; readonly callId: number; readonly head: JournalHead }
  | { readonly type: 'refused'; readonly callId: number; readonly code: JournalError['code']; readonly message: string }
  /** The append threw: a bug of ours, with what it said. */
  | { readonly type: 'broken'; readonly callId: number; readonly message: string; readonly stack: string };
