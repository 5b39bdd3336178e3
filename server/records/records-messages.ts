import type { ExportAsked } from '../../shared/records/export-asked.ts';
import type { QuestionName, RecordsProgress } from '../../shared/records/questions.ts';

/** What the records' thread is told. */
export type ToRecords =
  /** The journal has more. */
  | { readonly type: 'news' }
  | { readonly type: 'ask'; readonly askId: number; readonly name: QuestionName; readonly asked: unknown }
  /** A table is to be written; its chunks are sent one by one as `more` asks for them. `zone` is the house's. */
  | { readonly type: 'pour'; readonly pourId: number; readonly asked: ExportAsked; readonly zone: string }
  | { readonly type: 'more'; readonly pourId: number }
  /** Nobody takes the rest. */
  | { readonly type: 'enough'; readonly pourId: number }
  | { readonly type: 'close' };

/** What it says. */
export type FromRecords =
  | { readonly type: 'answer'; readonly askId: number; readonly answer: unknown; readonly progress: RecordsProgress }
  /** A table can be written, or, where the records are not made that far yet, cannot. */
  | { readonly type: 'pouring'; readonly pourId: number; readonly isReady: boolean; readonly progress: RecordsProgress }
  /** One chunk; its memory is handed over, not copied. */
  | { readonly type: 'poured'; readonly pourId: number; readonly bytes: Uint8Array<ArrayBuffer>; readonly isLast: boolean }
  | { readonly type: 'spilt'; readonly pourId: number; readonly message: string; readonly stack: string }
  /** It threw: a bug of ours, or a disk that fails. */
  | { readonly type: 'broken'; readonly askId: number; readonly message: string; readonly stack: string }
  /** The records could not be kept up; asked again, it tries again. */
  | { readonly type: 'behind'; readonly message: string };
