import type { QuestionName, RecordsProgress } from '../../shared/records/questions.ts';

/** What the records' thread is told. */
export type ToRecords =
  /** The journal has more. */
  | { readonly type: 'news' }
  | { readonly type: 'ask'; readonly askId: number; readonly name: QuestionName; readonly asked: unknown }
  | { readonly type: 'close' };

/** What it says. */
export type FromRecords =
  | { readonly type: 'answer'; readonly askId: number; readonly answer: unknown; readonly progress: RecordsProgress }
  /** It threw: a bug of ours, or a disk that fails. */
  | { readonly type: 'broken'; readonly askId: number; readonly message: string; readonly stack: string }
  /** The records could not be kept up; asked again, it tries again. */
  | { readonly type: 'behind'; readonly message: string };
