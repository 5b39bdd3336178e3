import type { QuestionOf } from '../../shared/records/questions.ts';
import type { LotsAnswer } from '../../shared/records/trace-answer.ts';
import { number, text, type RecordsReader } from './records-reader.ts';

/** Lots that are offered to choose from. */
const LOTS_OFFERED = 40;
/** Without a beginning of a number, the newest lots stand among so many that were weighed last. */
const WEIGHED_LAST = 4_000;

/** Lot numbers that were weighed, the last used first. */
export function askLots(reader: RecordsReader, asked: QuestionOf<'lots'>): LotsAnswer {
  const rows = asked.text === undefined ? lastWeighed(reader, asked.ingredient) : beginningWith(reader, asked.text, asked.ingredient);
  return {
    lots: rows.map((row) => ({
      ingredient: text(row, 'ingredient'),
      lot: text(row, 'lot'),
      firstMs: number(row, 'first_ms'),
      lastMs: number(row, 'last_ms'),
      times: number(row, 'times'),
    })),
  };
}

const SUMMED = `SELECT ingredient, lot, min(at_ms) AS first_ms, max(at_ms) AS last_ms, count(*) AS times, max(sequence) AS newest`;
const NEWEST_FIRST = `GROUP BY lot, ingredient ORDER BY newest DESC LIMIT ${LOTS_OFFERED}`;

function lastWeighed(reader: RecordsReader, ingredient: string | undefined): ReturnType<RecordsReader['rows']> {
  const only = ingredient === undefined ? '' : 'WHERE ingredient = ?';
  const offered = reader.rows(
    `SELECT ingredient, lot FROM (SELECT ingredient, lot, replaced_by, sequence FROM lots ${only} ORDER BY sequence DESC LIMIT ${WEIGHED_LAST})
     WHERE replaced_by IS NULL GROUP BY ingredient, lot ORDER BY max(sequence) DESC LIMIT ${LOTS_OFFERED}`,
    ...(ingredient === undefined ? [] : [ingredient]),
  );
  return offered.flatMap((row) =>
    reader.rows(`${SUMMED} FROM lots WHERE lot = ? AND ingredient = ? AND replaced_by IS NULL`, text(row, 'lot'), text(row, 'ingredient')),
  );
}

/** Whoever types a number types it in small letters. */
function beginningWith(reader: RecordsReader, start: string, ingredient: string | undefined): ReturnType<RecordsReader['rows']> {
  return reader.rows(
    `${SUMMED} FROM lots WHERE lot LIKE ? ESCAPE '!' AND replaced_by IS NULL AND (? IS NULL OR ingredient = ?) ${NEWEST_FIRST}`,
    `${start.replaceAll(/[!%_]/g, '!$&')}%`,
    ingredient ?? null,
    ingredient ?? null,
  );
}
