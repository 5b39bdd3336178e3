import type { BatchesAnswer } from '../../shared/records/answers.ts';
import { ROWS_AT_ONCE, type QuestionOf } from '../../shared/records/questions.ts';
import { PIECE_COLUMNS, pieceRow } from './piece-rows.ts';
import { number, text, type RecordsReader } from './records-reader.ts';

type Value = string | number | null;

/** Any part of a batch may fit: a cut's product, a load's place. What is listed is the batch. */
const OF_ROOT = 'EXISTS (SELECT 1 FROM workpieces p';

/** Batches, preps and pots that fit all of what is said, the newest day first. */
export function askBatches(reader: RecordsReader, asked: QuestionOf<'batches'>): BatchesAnswer {
  const conditions: string[] = ['w.parent IS NULL'];
  const values: Value[] = [];
  const only = (condition: string, ...given: readonly Value[]): void => {
    conditions.push(condition);
    values.push(...given);
  };
  if (asked.from !== undefined) only('w.service_date >= ?', asked.from);
  if (asked.to !== undefined) only('w.service_date <= ?', asked.to);
  if (asked.formula !== undefined) only('w.formula = ?', asked.formula);
  if (asked.tag !== undefined) only(`${OF_ROOT} WHERE p.root = w.number AND p.tag = ? COLLATE NOCASE)`, asked.tag);
  if (asked.product !== undefined) only('w.number IN (SELECT root FROM workpieces WHERE product = ?)', asked.product);
  if (asked.lot !== undefined)
    only(
      'w.number IN (SELECT p.root FROM lots l JOIN workpieces p ON p.number = l.workpiece WHERE l.lot = ? AND l.replaced_by IS NULL)',
      asked.lot,
    );
  if (asked.place !== undefined)
    only(
      `(${OF_ROOT} JOIN steps s ON s.workpiece = p.number WHERE p.root = w.number AND s.place = ?)
        OR ${OF_ROOT} JOIN uses u ON u.workpiece = p.number WHERE p.root = w.number AND u.resource = ?))`,
      asked.place,
      asked.place,
    );
  if (asked.device !== undefined)
    only(
      `${OF_ROOT} JOIN steps s ON s.workpiece = p.number WHERE p.root = w.number AND (s.started_by = ? OR s.ended_by = ?))`,
      asked.device,
      asked.device,
    );
  if (asked.reason !== undefined)
    only(
      `w.number IN (SELECT p.root FROM reasons r JOIN workpieces p ON p.number = r.workpiece WHERE r.reason LIKE ? ESCAPE '!')`,
      `%${asked.reason.replaceAll(/[!%_]/g, '!$&')}%`,
    );
  if (asked.before !== undefined) {
    const [date = '', piece = ''] = asked.before.split(' ');
    only('(w.service_date, w.number) < (?, ?)', date, Number(piece));
  }
  const rows = reader.rows(
    `SELECT ${PIECE_COLUMNS} FROM workpieces w WHERE ${conditions.join(' AND ')} ORDER BY w.service_date DESC, w.number DESC LIMIT ?`,
    ...values,
    ROWS_AT_ONCE + 1,
  );
  const shown = rows.slice(0, ROWS_AT_ONCE);
  const last = rows.length > ROWS_AT_ONCE ? shown.at(-1) : undefined;
  return {
    pieces: shown.map(pieceRow),
    before: last === undefined ? null : `${text(last, 'service_date')} ${number(last, 'number')}`,
  };
}
