import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { Lesson, LessonAbout, LessonGroup } from '../../shared/records/lessons-answer.ts';
import type { BookInForce } from './book-in-force.ts';
import { grouped } from './minutes-lessons.ts';
import type { Period } from './period.ts';
import { number, numberOrNull, text, textOrNull, type RecordsReader, type Row } from './records-reader.ts';
import { shrunkMedians, spreadOf, trendOf, type Dated } from './robust.ts';

/** Samples of one kind that are read, the newest. */
const MOST_SAMPLES = 6_000;
/** Of one subject; more only repeats what these say. */
const MOST_OF_ONE = 200;

/** One value of one subject, and of what formula it is. */
interface Told extends Dated {
  readonly subject: Lesson['subject'];
  readonly step: string | null;
  readonly formula: string | null;
}

/** What mixers, rests and places of ovens have taught in a period, and what of a dough and of its pieces was left. */
export function sampleLessons(reader: RecordsReader, period: Period, book: BookInForce, kitchen: Kitchen | null): readonly Lesson[] {
  const mixers = new Map((kitchen?.mixers ?? []).map(({ id, riseK }) => [id, riseK ?? null]));
  const decks = deckOfSlot(kitchen);
  const heat = samples(reader, period, 'slotHeat');
  return [
    ...lessonsOf('rise', samples(reader, period, 'rise').map(riseTold), ({ id }) => mixers.get(id) ?? null),
    ...lessonsOf('ripeness', samples(reader, period, 'ripeness').map(ripenessTold), () => 100, book),
    ...lessonsOf(
      'heat',
      heat.flatMap((row) => heatTold(row, 'slot', decks)),
      () => 100,
    ),
    ...lessonsOf(
      'heat',
      heat.flatMap((row) => heatTold(row, 'deck', decks)),
      () => 100,
    ),
    ...lessonsOf('leftOver', leftOver(reader, period), ({ id }) => book.formula(id)?.handlingLossPct ?? 0),
    ...lessonsOf('piecesLost', piecesLost(reader, period), () => 0),
  ];
}

/** The deck of each slot of a kitchen. */
export function deckOfSlot(kitchen: Kitchen | null): ReadonlyMap<string, string> {
  const decks = (kitchen?.ovens ?? []).flatMap((oven) => oven.decks);
  return new Map(decks.flatMap((deck) => deck.slots.map((slot) => [slot.id, deck.id] as const)));
}

function lessonsOf(
  about: LessonAbout,
  told: readonly Told[],
  assumedOf: (subject: Lesson['subject']) => number | null,
  book?: BookInForce,
): readonly Lesson[] {
  const bySubject = new Map<string, Told[]>();
  for (const one of told) {
    const key = `${one.subject.kind}\n${one.subject.id}\n${one.step ?? ''}`;
    const own = bySubject.get(key);
    if (own === undefined) bySubject.set(key, [one]);
    else if (own.length < MOST_OF_ONE) own.push(one);
  }
  const all = [...bySubject.values()];
  const estimates = shrunkMedians(all.map((own) => own.map(({ value }) => value)));
  return all.flatMap((own, index): Lesson[] => {
    const [first] = own;
    const spread = spreadOf(own.map(({ value }) => value));
    if (first === undefined || spread === null) return [];
    const { subject } = first;
    const step =
      first.step === null || subject.kind !== 'formula' ? undefined : book?.step({ kind: 'formula', id: subject.id }, first.step);
    return [
      {
        about,
        subject,
        formula: subject.kind === 'formula' ? subject.id : subject.kind === 'product' ? first.formula : null,
        step:
          first.step === null
            ? null
            : { id: first.step, verb: step?.verb ?? '', kind: step?.kind ?? '', nth: nthOf(book, subject.id, first.step) },
        spread,
        estimate: estimates[index] ?? spread.median,
        trend: trendOf(own),
        assumed: assumedOf(subject),
        minutesPerPiece: 0,
        foundPerPiece: null,
        planned: null,
        leftOut: 0,
        groups: about === 'rise' ? byFormula(own) : [],
        proposal: null,
        left: null,
      },
    ];
  });
}

function nthOf(book: BookInForce | undefined, formula: string, stepId: string): number | null {
  return book?.nthOf({ kind: 'formula', id: formula }, stepId) ?? null;
}

function byFormula(told: readonly Told[]): LessonGroup[] {
  return grouped(
    'formula',
    told.flatMap(({ formula, value }) => (formula === null ? [] : [[formula, value] as const])),
  );
}

function samples(reader: RecordsReader, { fromMs, toMs }: Period, kind: string): readonly Row[] {
  return reader.rows(
    `SELECT subject, formula, step, value, at_ms FROM samples WHERE kind = ? AND at_ms >= ? AND at_ms < ?
     ORDER BY at_ms DESC, sequence DESC LIMIT ?`,
    kind,
    fromMs,
    toMs,
    MOST_SAMPLES,
  );
}

function riseTold(row: Row): Told {
  return {
    subject: { kind: 'mixer', id: text(row, 'subject') },
    step: null,
    formula: text(row, 'formula'),
    value: number(row, 'value'),
    atMs: number(row, 'at_ms'),
  };
}

function ripenessTold(row: Row): Told {
  const formula = text(row, 'subject');
  return {
    subject: { kind: 'formula', id: formula },
    step: textOrNull(row, 'step'),
    formula,
    value: number(row, 'value') * 100,
    atMs: number(row, 'at_ms'),
  };
}

/** A load that lay in several slots tells of each; of a deck, where it lay in one alone. */
function heatTold(row: Row, kind: 'slot' | 'deck', decks: ReadonlyMap<string, string>): readonly Told[] {
  const slots = text(row, 'subject').split(' ');
  const told = { step: null, formula: null, value: number(row, 'value') * 100, atMs: number(row, 'at_ms') };
  if (kind === 'slot') return slots.map((id) => ({ ...told, subject: { kind, id } }));
  const [deck, ...others] = new Set(slots.map((slot) => decks.get(slot)));
  return deck === undefined || others.length > 0 ? [] : [{ ...told, subject: { kind, id: deck } }];
}

/** Per cent of a dough that no piece was made of: what was left at the divide and trimmed after it, of that and the pieces. */
function leftOver(reader: RecordsReader, { fromMs, toMs }: Period): readonly Told[] {
  const rows = reader.rows(
    `SELECT w.formula, w.scrap_g, w.ended_ms, (SELECT sum(grams) FROM edges e WHERE e.source = w.number AND e.kind = 'divide') AS pieces_g
     FROM workpieces w WHERE w.ended_ms >= ? AND w.ended_ms < ? AND w.ending = 'divided' ORDER BY w.ended_ms DESC, w.number DESC LIMIT ?`,
    fromMs,
    toMs,
    MOST_SAMPLES,
  );
  return rows.flatMap((row) => {
    const piecesG = numberOrNull(row, 'pieces_g');
    if (piecesG === null || piecesG <= 0) return [];
    const scrapG = number(row, 'scrap_g');
    const formula = text(row, 'formula');
    return [
      {
        subject: { kind: 'formula' as const, id: formula },
        step: null,
        formula,
        value: (100 * scrapG) / (piecesG + scrapG),
        atMs: number(row, 'ended_ms'),
      },
    ];
  });
}

/** Per cent of the pieces that were planned and not made, of doughs that went to their end as one product. */
function piecesLost(reader: RecordsReader, { fromMs, toMs }: Period): readonly Told[] {
  const rows = reader.rows(
    `SELECT w.formula, w.product, w.pieces, w.planned_pieces, w.ended_ms FROM workpieces w
     WHERE w.ended_ms >= ? AND w.ended_ms < ? AND w.ending = 'finished' AND w.product IS NOT NULL AND w.planned_pieces > 0 AND w.pieces IS NOT NULL
     ORDER BY w.ended_ms DESC, w.number DESC LIMIT ?`,
    fromMs,
    toMs,
    MOST_SAMPLES,
  );
  return rows.map((row) => {
    const planned = number(row, 'planned_pieces');
    return {
      subject: { kind: 'product', id: text(row, 'product') },
      step: null,
      formula: text(row, 'formula'),
      value: (100 * (planned - number(row, 'pieces'))) / planned,
      atMs: number(row, 'ended_ms'),
    };
  });
}
