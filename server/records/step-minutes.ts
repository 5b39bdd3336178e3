import { verbSchema, type Step } from '../../shared/documents/method.ts';
import { BookInForce, type Subject } from './book-in-force.ts';
import type { Period } from './period.ts';
import { number, numberOrNull, text, textOrNull, type RecordsReader, type Row } from './records-reader.ts';

const MINUTE_MS = 60_000;
/** Steps of a period that are read, the newest; and of one step of one document. More only repeats what these say. */
const MOST_STEPS = 40_000;
const MOST_OF_ONE = 200;
/** Longer than so many times what is assumed, and by so many minutes: somebody forgot to say that it was done (our choices). */
const FORGOTTEN_TIMES = 4;
const FORGOTTEN_MIN = 60;
/** Shorter than this share of what is assumed, and than so many minutes: begun and done were tapped one after the other (our choices). */
const AT_ONCE_SHARE = 0.1;
const AT_ONCE_MIN = 0.5;

/** How long a step took, once. */
export interface StepTime {
  /** From its begin to its end, without what the document in force adds for its pieces. */
  readonly minutes: number;
  readonly atMs: number;
  readonly station: string | null;
  readonly pieces: number | null;
  readonly grams: number;
  readonly plannedMin: number | null;
  /** Of a bake: its minutes as a multiple of its programme's, and the slots that it lay in. */
  readonly share: number | null;
  readonly slots: readonly string[];
}

/** All times of one step of one document. */
export interface StepTimes {
  readonly subject: Subject;
  /** What the document is, or is made of. */
  readonly formula: string;
  readonly step: Step;
  /** The how manieth of its verb it is in its document; null where it is the only one. */
  readonly nth: number | null;
  readonly times: readonly StepTime[];
  readonly leftOut: number;
}

/**
 * How long steps took in a period, by the documents in force; steps that are no longer in them are left out. Of some verbs alone, where
 * those are named.
 */
export async function stepTimes(
  reader: RecordsReader,
  period: Period,
  verbs: readonly string[] = verbSchema.options,
): Promise<{ readonly book: BookInForce; readonly all: readonly StepTimes[] }> {
  const rows = reader.rows(STEPS, period.fromMs, period.toMs, JSON.stringify(verbs), MOST_STEPS);
  const book = await BookInForce.read(
    reader,
    new Set(rows.map((row) => text(row, 'formula'))),
    new Set(rows.flatMap((row) => textOrNull(row, 'product') ?? [])),
  );
  const slots = slotsOf(reader, period);
  const groups = new Map<string, OneStep | null>();
  const seen = new Set<string>();
  for (const row of rows) {
    const [formula, product, stepId] = [text(row, 'formula'), textOrNull(row, 'product'), text(row, 'step')];
    const isPart = number(row, 'is_part') === 1;
    const group = groupOf(groups, book, formula, product, isPart, stepId);
    if (group === null || group.rows.length >= MOST_OF_ONE) continue;
    // A load has the steps of what it was made of, and doughs that were joined end with one tap: one piece of work each, of the most pieces.
    const work = `${formula} ${stepId} ${number(row, 'started_ms')} ${number(row, 'ended_ms')} ${text(row, 'ended_by')}`;
    if (seen.has(work)) continue;
    seen.add(work);
    group.rows.push(row);
  }
  const all = [...new Set(groups.values())].flatMap((group) => {
    if (group === null) return [];
    const { subject, step } = group;
    const lateMin = (book.stepAfter(subject, step.id) ?? step).toleranceMin.late;
    const times = group.rows.flatMap((row) => timeOf(row, step, lateMin, slots) ?? []);
    const formula = subject.kind === 'formula' ? subject.id : (book.formulaOf(subject.id) ?? '');
    return { subject, formula, step, nth: book.nthOf(subject, step.id), times, leftOut: group.rows.length - times.length };
  });
  return { book, all };
}

/** The rows of one step of one document. */
interface OneStep {
  readonly subject: Subject;
  readonly step: Step;
  readonly rows: Row[];
}

/** The group that rows of a dough at a step belong to; null where its document in force has no such step, as a load has none of its whole dough's. */
function groupOf(
  groups: Map<string, OneStep | null>,
  book: BookInForce,
  formula: string,
  product: string | null,
  isPart: boolean,
  stepId: string,
): OneStep | null {
  const of = `${formula} ${product ?? ''} ${isPart ? 'part' : 'whole'} ${stepId}`;
  const known = groups.get(of);
  if (known !== undefined) return known;
  const subject = book.subjectOf(formula, product, isPart, stepId);
  const step = book.step(subject, stepId);
  // Doughs of one product and of several have the steps of their formula in common.
  const alike = [...groups.values()].find(
    (group) => group?.subject.kind === subject.kind && group.subject.id === subject.id && group.step.id === stepId,
  );
  const group = step === undefined ? null : (alike ?? { subject, step, rows: [] });
  groups.set(of, group);
  return group;
}

const STEPS = `SELECT s.workpiece, s.step, s.kind, s.station, s.started_ms, s.ended_ms, s.ended_by, s.planned_start_ms, s.planned_end_ms, s.target_min,
    s.factor, s.more_min, w.formula, w.product, w.parent IS NOT NULL AS is_part, w.pieces, w.scaled_to_g
  FROM steps s INDEXED BY steps_by_time JOIN workpieces w ON w.number = s.workpiece
  WHERE s.ended_ms >= ? AND s.ended_ms < ? AND s.status = 'done' AND s.inferred = 0 AND s.started_ms IS NOT NULL
    AND s.verb IN (SELECT value FROM json_each(?))
    AND NOT EXISTS (SELECT 1 FROM edges e WHERE s.kind = 'hands' AND e.kind = 'load' AND e.source = s.workpiece AND e.at_ms > s.started_ms AND e.at_ms <= s.ended_ms)
    AND NOT EXISTS (SELECT 1 FROM edges e WHERE s.kind = 'hands' AND e.kind = 'load' AND e.target = s.workpiece AND e.at_ms > s.started_ms AND e.at_ms <= s.ended_ms)
  ORDER BY s.ended_ms DESC, w.pieces DESC, s.workpiece DESC LIMIT ?`;

/** The time that a row tells; null where it does not tell how long it takes. */
function timeOf(row: Row, step: Step, lateMin: number, slots: ReadonlyMap<number, readonly InOven[]>): StepTime | null {
  const [startedMs, endedMs] = [number(row, 'started_ms'), number(row, 'ended_ms')];
  const whole = (endedMs - startedMs) / MINUTE_MS;
  const pieces = numberOrNull(row, 'pieces');
  const forPieces = (step.minutesPerPiece ?? 0) * (pieces ?? 0);
  const assumed = step.minutes.target + forPieces;
  if (whole > assumed * FORGOTTEN_TIMES && whole > assumed + FORGOTTEN_MIN) return null;
  if (whole < 0 || (whole < assumed * AT_ONCE_SHARE && whole < AT_ONCE_MIN)) return null;
  const target = numberOrNull(row, 'target_min') ?? assumed;
  const dueMin = target * (numberOrNull(row, 'factor') ?? 1) + number(row, 'more_min');
  // What is waited for ends when somebody comes: late, with nobody having asked for more time, it says nothing of how long it should be.
  const isWaiting = step.kind === 'timed' || step.kind === 'bake';
  if (isWaiting && number(row, 'more_min') === 0 && whole > dueMin + lateMin) return null;
  const [fromMs, toMs] = [numberOrNull(row, 'planned_start_ms'), numberOrNull(row, 'planned_end_ms')];
  const lain = step.kind === 'bake' ? (slots.get(number(row, 'workpiece')) ?? []).findLast(({ atMs }) => atMs < endedMs) : undefined;
  return {
    minutes: whole - forPieces,
    atMs: endedMs,
    station: textOrNull(row, 'station'),
    pieces,
    grams: number(row, 'scaled_to_g'),
    plannedMin: fromMs === null || toMs === null ? null : (toMs - fromMs) / MINUTE_MS,
    share: step.kind === 'bake' && target > 0 ? whole / target : null,
    slots: lain?.slots ?? [],
  };
}

interface InOven {
  readonly atMs: number;
  readonly slots: readonly string[];
}

/** Where loads lay, by workpiece, in the order in which they went in. Bakes that end in the period went in at most two days before it. */
function slotsOf(reader: RecordsReader, { fromMs, toMs }: Period): ReadonlyMap<number, readonly InOven[]> {
  const rows = reader.rows(
    'SELECT workpiece, slots, from_ms FROM oven_loads WHERE from_ms >= ? AND from_ms < ? ORDER BY from_ms',
    fromMs - 2 * 1440 * MINUTE_MS,
    toMs,
  );
  const byPiece = new Map<number, InOven[]>();
  for (const row of rows) {
    const piece = number(row, 'workpiece');
    byPiece.set(piece, [...(byPiece.get(piece) ?? []), { atMs: number(row, 'from_ms'), slots: text(row, 'slots').split(' ') }]);
  }
  return byPiece;
}
