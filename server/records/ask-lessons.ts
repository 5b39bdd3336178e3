import type { Step } from '../../shared/documents/method.ts';
import { isLeft } from '../../shared/records/lesson-rules.ts';
import type { Lesson, LessonsAnswer, MinutesChange } from '../../shared/records/lessons-answer.ts';
import type { QuestionOf } from '../../shared/records/questions.ts';
import { kitchenInForce, type Subject } from './book-in-force.ts';
import { minutesLessons } from './minutes-lessons.ts';
import { periodOf, zoneOf, type Period } from './period.ts';
import { number, text, type RecordsReader } from './records-reader.ts';
import { deckOfSlot, sampleLessons } from './sample-lessons.ts';
import { stepTimes } from './step-minutes.ts';

/** Lessons that were left are remembered this far back. */
const MOST_LEFT = 500;
/** Versions of documents that are looked through for changed minutes, the newest. */
const MOST_VERSIONS = 200;

/** What the days of a period teach, what of it was taken over, and what was left as it is. */
export async function askLessons(reader: RecordsReader, asked: QuestionOf<'lessons'>): Promise<LessonsAnswer> {
  const period = periodOf(reader, await zoneOf(reader), asked);
  const kitchen = await kitchenInForce(reader);
  const { book, all } = await stepTimes(reader, period);
  const decks = deckOfSlot(kitchen);
  const left = await leftLessons(reader);
  const minutes = minutesLessons(all, (slotId) => decks.get(slotId) ?? null).map((lesson) => withLeft(lesson, left));
  return {
    from: period.from,
    to: period.to,
    lessons: [...minutes, ...sampleLessons(reader, period, book, kitchen)].sort(byWeight),
    changes: await changesOf(reader, period),
    losses: reader
      .rows(
        'SELECT what, sum(grams) AS grams, count(*) AS times FROM losses WHERE at_ms >= ? AND at_ms < ? GROUP BY what ORDER BY grams DESC',
        period.fromMs,
        period.toMs,
      )
      .map((row) => ({ what: text(row, 'what'), grams: number(row, 'grams'), times: number(row, 'times') })),
  };
}

/** What is proposed first, and of that what it changes most; then what rests on most. */
function byWeight(a: Lesson, b: Lesson): number {
  const moved = ({ proposal, left }: Lesson): number =>
    proposal === null || left !== null ? 0 : Math.abs(proposal.toMin - proposal.fromMin) / Math.max(1, proposal.fromMin);
  return moved(b) - moved(a) || b.spread.n - a.spread.n || keyOf(a).localeCompare(keyOf(b));
}

function keyOf({ about, subject, step }: Lesson): string {
  return `${about} ${subject.kind} ${subject.id} ${step?.id ?? ''}`;
}

interface Left {
  readonly assumedMin: number;
  readonly foundMin: number;
  readonly atMs: number;
}

function withLeft(lesson: Lesson, left: ReadonlyMap<string, Left>): Lesson {
  if (lesson.proposal === null) return lesson;
  const known = left.get(`${lesson.subject.kind} ${lesson.subject.id} ${lesson.step?.id ?? ''}`);
  if (known === undefined || !isLeft(known, lesson.proposal)) return lesson;
  return { ...lesson, left: { foundMin: known.foundMin, atMs: known.atMs } };
}

/** What was left as it is, the last word on each step. */
async function leftLessons(reader: RecordsReader): Promise<ReadonlyMap<string, Left>> {
  const rows = reader.rows("SELECT sequence FROM house_events WHERE type = 'lessonLeft' ORDER BY sequence DESC LIMIT ?", MOST_LEFT);
  const events = await reader.events(rows.map((row) => number(row, 'sequence')).sort((a, b) => a - b));
  const left = new Map<string, Left>();
  for (const { event } of events) {
    if (event.type !== 'lessonLeft') continue;
    const { subject, stepId, assumedMin, foundMin, atMs } = event;
    left.set(`${subject.kind} ${subject.id} ${stepId}`, { assumedMin, foundMin, atMs });
  }
  return left;
}

/** Where a step's minutes were written otherwise since a period began, the newest first: what is assumed is what is in force now. */
async function changesOf(reader: RecordsReader, { fromMs }: Period): Promise<MinutesChange[]> {
  const versions = reader.rows(
    `SELECT d.sequence, (SELECT max(b.sequence) FROM documents b WHERE b.kind = d.kind AND b.id = d.id AND b.version = d.version - 1) AS before
     FROM documents d WHERE d.kind IN ('formula', 'product') AND d.version > 1 ORDER BY d.sequence DESC LIMIT ?`,
    MOST_VERSIONS,
  );
  const wanted = new Set(versions.flatMap((row) => [row['sequence'], row['before']].filter((one) => typeof one === 'number')));
  const events = await reader.events([...wanted].sort((a, b) => a - b));
  const bySequence = new Map(events.map((recorded) => [recorded.sequence, recorded.event]));
  return versions
    .flatMap((row): MinutesChange[] => {
      const [is, was] = [bySequence.get(number(row, 'sequence')), bySequence.get(Number(row['before']))];
      if (is?.type === 'formulaAdopted' && was?.type === 'formulaAdopted')
        return changed({ kind: 'formula', id: is.formula.id }, was.formula.method, is.formula.method, is.version, is.atMs ?? null);
      if (is?.type === 'productAdopted' && was?.type === 'productAdopted')
        return changed({ kind: 'product', id: is.product.id }, was.product.way, is.product.way, is.version, is.atMs ?? null);
      return [];
    })
    .filter(({ atMs }) => atMs === null || atMs >= fromMs);
}

function changed(subject: Subject, was: readonly Step[], is: readonly Step[], version: number, atMs: number | null): MinutesChange[] {
  return is.flatMap((step) => {
    const before = was.find(({ id }) => id === step.id);
    if (before === undefined || before.minutes.target === step.minutes.target) return [];
    return [{ subject, step: step.id, fromMin: before.minutes.target, toMin: step.minutes.target, version, atMs }];
  });
}
