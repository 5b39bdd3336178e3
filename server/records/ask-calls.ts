import { alarmHealth, callsByDate, workedWindows, type Called, type DoneLate, type Held } from '../../shared/records/alarm-health.ts';
import type { CallsAnswer, Offender } from '../../shared/records/calls-answer.ts';
import { proposedMin, takesMinutes } from '../../shared/records/lesson-rules.ts';
import type { QuestionOf } from '../../shared/records/questions.ts';
import { BookInForce } from './book-in-force.ts';
import { minutesProposals } from './minutes-lessons.ts';
import { datesOf, periodOf, zoneOf, type Period } from './period.ts';
import { number, numberOrNull, text, textOrNull, type RecordsReader } from './records-reader.ts';
import { quantileOf, spreadOf } from './robust.ts';
import { stepTimes } from './step-minutes.ts';

/** Calls of a period that are read, the newest: more than a house is called in a year. */
const MOST_CALLS = 60_000;

/** How the calls of a period were, and what to write otherwise so that there are fewer. */
export async function askCalls(reader: RecordsReader, asked: QuestionOf<'calls'>): Promise<CallsAnswer> {
  const period = periodOf(reader, await zoneOf(reader), asked);
  const { calls, book } = await callsOf(reader, period);
  const worked = workedWindows(tapsOf(reader, period));
  const late = new Map<string, readonly DoneLate[]>();
  const found = alarmHealth(calls, holdsOf(reader, period), worked, period.toMs, {
    quantile: quantileOf,
    about: ({ subject, step }, done) => {
      late.set(`${subject.kind} ${subject.id} ${step}`, done);
      return { verb: book.step(subject, step)?.verb ?? '', nth: book.nthOf(subject, step), advice: null };
    },
  });
  // Each step's minutes are drawn towards how its verb goes in this house: all of those verbs, and no others.
  const { all } = await stepTimes(reader, period, [...new Set(found.offenders.map(({ verb }) => verb))]);
  const proposals = minutesProposals(all);
  const offenders = found.offenders.map((offender) => {
    const { subject, step } = offender;
    const known = all.findIndex((one) => one.subject.kind === subject.kind && one.subject.id === subject.id && one.step.id === step);
    const proposal = proposals[known] ?? null;
    const inForce = book.step(subject, step);
    const byWork: Offender['advice'] = proposal === null ? null : { by: 'work', ...proposal };
    const done = late.get(`${subject.kind} ${subject.id} ${step}`) ?? [];
    return { ...offender, advice: byWork ?? (inForce === undefined ? null : byComing(inForce, done)) };
  });
  const health = { ...found, offenders };
  return { from: period.from, to: period.to, health, days: callsByDate(datesOf(period), health.windows, worked) };
}

/** Hands that are over so long after they were due, each time: planned for that long, they no longer call late. */
function byComing(step: NonNullable<ReturnType<BookInForce['step']>>, done: readonly DoneLate[]): Offender['advice'] {
  if (step.kind !== 'hands' || !takesMinutes(step)) return null;
  const minutes = done.map(({ afterDueMin, pieces }) => afterDueMin - (step.minutesPerPiece ?? 0) * (pieces ?? 0));
  const spread = spreadOf(minutes);
  if (spread === null) return null;
  const toMin = proposedMin({ ...spread, estimate: spread.median }, step.minutes.target);
  // Who comes sooner than was planned need not be planned otherwise for the calls' sake.
  return toMin === null || toMin < step.minutes.target ? null : { by: 'coming', fromMin: step.minutes.target, toMin };
}

async function callsOf(
  reader: RecordsReader,
  { fromMs, toMs }: Period,
): Promise<{ readonly calls: readonly Called[]; readonly book: BookInForce }> {
  const rows = reader.rows(
    `SELECT c.workpiece, c.step, c.level, c.due_ms, c.raised_ms, c.heard_ms, c.ended_ms, c.became, w.formula, w.product,
       w.parent IS NOT NULL AS is_part, w.pieces, s.status, s.started_ms
     FROM calls c JOIN workpieces w ON w.number = c.workpiece
     LEFT JOIN steps s INDEXED BY steps_by_time ON s.ended_ms = c.ended_ms AND s.workpiece = c.workpiece AND s.step = c.step
     WHERE c.raised_ms >= ? AND c.raised_ms < ? ORDER BY c.raised_ms DESC, c.sequence DESC LIMIT ?`,
    fromMs,
    toMs,
    MOST_CALLS,
  );
  const book = await BookInForce.read(
    reader,
    new Set(rows.map((row) => text(row, 'formula'))),
    new Set(rows.flatMap((row) => textOrNull(row, 'product') ?? [])),
  );
  const calls = rows.map((row): Called => ({
    piece: number(row, 'workpiece'),
    step: text(row, 'step'),
    level: text(row, 'level') as Called['level'],
    dueMs: number(row, 'due_ms'),
    raisedMs: number(row, 'raised_ms'),
    heardMs: numberOrNull(row, 'heard_ms'),
    endedMs: numberOrNull(row, 'ended_ms'),
    became: textOrNull(row, 'became') as Called['became'],
    formula: text(row, 'formula'),
    subject: book.subjectOf(text(row, 'formula'), textOrNull(row, 'product'), number(row, 'is_part') === 1, text(row, 'step')),
    isDoneAtOnce: row['status'] === 'done' && row['started_ms'] === null,
    pieces: numberOrNull(row, 'pieces'),
  }));
  return { calls, book };
}

/** What was set aside, until it was taken up again, its time was over, or its dough had moved on. */
function holdsOf(reader: RecordsReader, { fromMs, toMs }: Period): readonly Held[] {
  const rows = reader.rows(
    `SELECT h.workpiece, h.step, h.at_ms, min(h.until_ms, coalesce(h.released_ms, h.until_ms), coalesce(w.ended_ms, h.until_ms),
       coalesce((SELECT min(CASE WHEN s.started_ms >= h.at_ms THEN s.started_ms ELSE s.ended_ms END) FROM steps s
         WHERE s.workpiece = h.workpiece AND s.step = h.step AND (s.started_ms >= h.at_ms OR s.ended_ms >= h.at_ms)), h.until_ms)) AS to_ms
     FROM holds h JOIN workpieces w ON w.number = h.workpiece WHERE h.at_ms >= ? AND h.at_ms < ? ORDER BY h.at_ms`,
    fromMs,
    toMs,
  );
  return rows.map((row) => {
    const heldMs = number(row, 'at_ms');
    return { piece: number(row, 'workpiece'), step: text(row, 'step'), fromMs: heldMs, toMs: Math.max(heldMs, number(row, 'to_ms')) };
  });
}

/** When somebody tapped on a step, or heard a call. */
function tapsOf(reader: RecordsReader, { fromMs, toMs }: Period): readonly number[] {
  const rows = reader.rows(
    `SELECT ended_ms AS at_ms FROM steps WHERE ended_ms >= ? AND ended_ms < ? AND inferred = 0
     UNION SELECT started_ms FROM steps WHERE ended_ms >= ? AND ended_ms < ? AND started_ms >= ?
     UNION SELECT heard_ms FROM calls WHERE raised_ms >= ? AND raised_ms < ? AND heard_ms IS NOT NULL`,
    fromMs,
    toMs,
    fromMs,
    toMs,
    fromMs,
    fromMs,
    toMs,
  );
  return rows.map((row) => number(row, 'at_ms'));
}
