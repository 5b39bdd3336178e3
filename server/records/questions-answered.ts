import type { QuestionName, QuestionOf } from '../../shared/records/questions.ts';
import { askBatch } from './ask-batch.ts';
import { askBatches } from './ask-batches.ts';
import { askCalls } from './ask-calls.ts';
import { askLessons } from './ask-lessons.ts';
import { askDay } from './ask-day.ts';
import { askLots } from './ask-lots.ts';
import { askNames } from './ask-names.ts';
import { askTrace } from './ask-trace.ts';
import { askWeeks } from './ask-weeks.ts';
import type { RecordsReader } from './records-reader.ts';

/** Who answers what; null where what was asked about is not in the records. */
export const ANSWERS: { readonly [Name in QuestionName]: (reader: RecordsReader, asked: QuestionOf<Name>) => unknown } = {
  names: (reader) => askNames(reader),
  batches: askBatches,
  batch: askBatch,
  lessons: askLessons,
  calls: askCalls,
  lots: askLots,
  trace: askTrace,
  day: askDay,
  weeks: askWeeks,
};
