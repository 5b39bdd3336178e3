import { median } from 'simple-statistics';
import type { WeeksAnswer } from '../../shared/records/answers.ts';
import { BEGUN_LATE_MIN } from '../../shared/records/day-record.ts';
import type { QuestionOf } from '../../shared/records/questions.ts';
import { kitchenInForce } from './book-in-force.ts';
import { ovenUse, type OvenStay } from './oven-use.ts';
import { number, numberOrNull, text, textOrNull, words, type RecordsReader } from './records-reader.ts';

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;
/** Weeks that are shown where nothing is said, and at most. */
const USUAL_WEEKS = 26;
const MOST_WEEKS = 170;

interface Week {
  days: Set<string>;
  batches: number;
  finished: number;
  discarded: number;
  offMin: number[];
  steps: number;
  lateSteps: number;
  lateCalls: number;
  lostCalls: number;
  stays: Map<string, OvenStay[]>;
}

/** Week by week, by service date: what was made, what was spoiled, how far off the plan it ended, how often it was late, how full the ovens were. */
export async function askWeeks(reader: RecordsReader, { from, to }: QuestionOf<'weeks'>): Promise<WeeksAnswer> {
  const newest = reader.row('SELECT max(service_date) AS date FROM workpieces');
  const last = to ?? (newest === undefined ? null : textOrNull(newest, 'date'));
  if (last === null) return { weeks: [] };
  const earliest = dateOf(Date.parse(mondayOf(last)) - (MOST_WEEKS - 1) * 7 * DAY_MS);
  const usual = dateOf(Date.parse(mondayOf(last)) - (USUAL_WEEKS - 1) * 7 * DAY_MS);
  const first = from === undefined ? usual : from < earliest ? earliest : from;
  const weeks = new Map<string, Week>();
  const weekOf = (date: string): Week => {
    const monday = mondayOf(date);
    const known = weeks.get(monday);
    if (known !== undefined) return known;
    const week: Week = {
      days: new Set(),
      batches: 0,
      finished: 0,
      discarded: 0,
      offMin: [],
      steps: 0,
      lateSteps: 0,
      lateCalls: 0,
      lostCalls: 0,
      stays: new Map(),
    };
    weeks.set(monday, week);
    return week;
  };
  const within = [first, last] as const;
  for (const row of reader.rows(
    `SELECT service_date, sum(kind = 'batch') AS batches, sum(iif(ending = 'finished', coalesce(pieces, 0), 0)) AS finished,
       sum(iif(ending = 'discarded', coalesce(pieces, 0), 0)) AS discarded
     FROM workpieces WHERE service_date BETWEEN ? AND ? AND kind <> 'ferment' GROUP BY service_date`,
    ...within,
  )) {
    const week = weekOf(text(row, 'service_date'));
    week.days.add(text(row, 'service_date'));
    week.batches += number(row, 'batches');
    week.finished += number(row, 'finished');
    week.discarded += number(row, 'discarded');
  }
  for (const row of reader.rows(
    `SELECT w.service_date, max(s.ended_ms) AS ended_ms, max(s.planned_end_ms) AS planned_ms FROM workpieces w
       JOIN steps s ON s.workpiece = w.number
     WHERE w.service_date BETWEEN ? AND ? AND w.ending = 'finished' AND w.kind <> 'ferment' AND s.planned_end_ms IS NOT NULL GROUP BY w.number`,
    ...within,
  )) {
    const endedMs = numberOrNull(row, 'ended_ms');
    if (endedMs !== null) weekOf(text(row, 'service_date')).offMin.push((endedMs - number(row, 'planned_ms')) / MINUTE_MS);
  }
  for (const row of reader.rows(
    `SELECT w.service_date, count(*) AS steps, sum(s.started_ms - s.planned_start_ms > ${BEGUN_LATE_MIN * MINUTE_MS}) AS late FROM workpieces w
       JOIN steps s ON s.workpiece = w.number
     WHERE w.service_date BETWEEN ? AND ? AND w.kind <> 'ferment' AND s.started_ms IS NOT NULL AND s.planned_start_ms IS NOT NULL
     GROUP BY w.service_date`,
    ...within,
  )) {
    const week = weekOf(text(row, 'service_date'));
    week.steps += number(row, 'steps');
    week.lateSteps += number(row, 'late');
  }
  for (const row of reader.rows(
    `SELECT w.service_date, sum(c.level = 'late') AS late, sum(c.level = 'lost') AS lost FROM workpieces w JOIN calls c ON c.workpiece = w.number
     WHERE w.service_date BETWEEN ? AND ? AND c.became IS NOT 'undone' GROUP BY w.service_date`,
    ...within,
  )) {
    const week = weekOf(text(row, 'service_date'));
    week.lateCalls += number(row, 'late');
    week.lostCalls += number(row, 'lost');
  }
  for (const row of reader.rows(
    `SELECT w.service_date, o.slots, o.from_ms, o.to_ms FROM workpieces w JOIN oven_loads o ON o.workpiece = w.number
     WHERE w.service_date BETWEEN ? AND ?`,
    ...within,
  )) {
    const date = text(row, 'service_date');
    const { stays } = weekOf(date);
    const ofDay = stays.get(date) ?? [];
    ofDay.push({ slotIds: words(row, 'slots'), fromMs: number(row, 'from_ms'), toMs: numberOrNull(row, 'to_ms') });
    stays.set(date, ofDay);
  }
  const kitchen = await kitchenInForce(reader);
  return {
    weeks: [...weeks]
      .sort(([a], [b]) => a.localeCompare(b))
      .map(([monday, week]) => {
        const uses = [...week.stays.values()].flatMap((ofDay) => ovenUse(kitchen, ofDay));
        const couldMin = uses.reduce((sum, { slots, spanMin }) => sum + slots * spanMin, 0);
        return {
          monday,
          days: week.days.size,
          batches: week.batches,
          finishedPieces: week.finished,
          discardedPieces: week.discarded,
          offMin: week.offMin.length === 0 ? null : median(week.offMin),
          lateShare: week.steps === 0 ? null : week.lateSteps / week.steps,
          lateCalls: week.lateCalls,
          lostCalls: week.lostCalls,
          ovenShare: couldMin === 0 ? null : uses.reduce((sum, { slotMin }) => sum + slotMin, 0) / couldMin,
        };
      }),
  };
}

/** The Monday of the week (ISO 8601) that a service date is in. */
export function mondayOf(date: string): string {
  const ms = Date.parse(`${date}T00:00:00Z`);
  const weekday = (new Date(ms).getUTCDay() + 6) % 7;
  return dateOf(ms - weekday * DAY_MS);
}

function dateOf(ms: number): string {
  return new Date(ms).toISOString().slice(0, 10);
}
