import type { Step } from '../../shared/documents/method.ts';
import type { Lesson, LessonGroup, Spread } from '../../shared/records/lessons-answer.ts';
import { proposedMin, takesMinutes } from '../../shared/records/lesson-rules.ts';
import { quantileOf, shrunkMedians, spreadOf, theilSen, trendOf } from './robust.ts';
import type { StepTime, StepTimes } from './step-minutes.ts';

/** Sizes are told apart where the larger batches are at least so many times the smaller, and there are so many times of each (our choices). */
const LEAST_SIZE_RATIO = 1.3;
const LEAST_OF_SIZE = 4;
/** Points for minutes a piece; pairs grow by the square. */
const MOST_POINTS = 60;

/** What to write instead of the minutes of each step, in the order of the steps; null where the evidence is not enough. */
export function minutesProposals(all: readonly StepTimes[]): readonly Lesson['proposal'][] {
  const estimates = estimatesOf(all);
  return all.map(({ step, times }, index) => {
    const spread = spreadOf(times.map(({ minutes }) => minutes));
    return spread === null ? null : proposalOf(step, spread, estimates[index] ?? spread.median);
  });
}

function proposalOf(step: Step, spread: Spread, estimate: number): Lesson['proposal'] {
  if (!takesMinutes(step)) return null;
  const toMin = proposedMin({ ...spread, estimate }, step.minutes.target);
  return toMin === null ? null : { fromMin: step.minutes.target, toMin };
}

/** What the times of each step teach, against what its document assumes. `deckOf` names the deck of a slot. */
export function minutesLessons(all: readonly StepTimes[], deckOf: (slotId: string) => string | null): readonly Lesson[] {
  const shown = all.filter(({ times }) => times.length > 0);
  const estimates = estimatesOf(shown);
  return shown.flatMap(({ subject, formula, step, nth, times, leftOut }, index): Lesson[] => {
    const minutes = times.map((time) => time.minutes);
    const spread = spreadOf(minutes);
    if (spread === null) return [];
    const assumed = step.minutes.target;
    const estimate = estimates[index] ?? spread.median;
    const planned = times.flatMap(({ plannedMin }) => plannedMin ?? []);
    return [
      {
        about: 'minutes',
        subject,
        formula,
        step: { id: step.id, verb: step.verb, kind: step.kind, nth },
        spread,
        estimate,
        trend: trendOf(times.map((time) => ({ atMs: time.atMs, value: time.minutes }))),
        assumed,
        minutesPerPiece: step.minutesPerPiece ?? 0,
        foundPerPiece: perPiece(times, step.minutesPerPiece ?? 0),
        planned: planned.length === 0 ? null : quantileOf(planned, 0.5),
        leftOut,
        groups: [...byStation(times), ...bySize(times), ...byDeck(times, deckOf)],
        proposal: proposalOf(step, spread, estimate),
        left: null,
      },
    ];
  });
}

/**
 * Each step's median drawn towards how its verb goes in this house, as a multiple of what is assumed: a step that was timed four times
 * goes by the other turning outs, one that was timed a hundred times by itself.
 */
function estimatesOf(all: readonly StepTimes[]): readonly number[] {
  const estimates: number[] = all.map(({ times }) =>
    quantileOf(
      times.map(({ minutes }) => minutes),
      0.5,
    ),
  );
  const byVerb = new Map<string, number[]>();
  all.forEach(({ step, times }, index) => {
    // Multiples are of something, and their logarithms of what is more than nothing.
    if (step.minutes.target <= 0 || times.some(({ minutes }) => minutes <= 0)) return;
    const key = `${step.verb} ${step.kind}`;
    byVerb.set(key, [...(byVerb.get(key) ?? []), index]);
  });
  for (const members of byVerb.values()) {
    const logs = members.map((member) =>
      (all[member]?.times ?? []).map(({ minutes }) => Math.log(minutes / (all[member]?.step.minutes.target ?? 1))),
    );
    shrunkMedians(logs).forEach((log, index) => {
      const member = members[index];
      if (member !== undefined) estimates[member] = (all[member]?.step.minutes.target ?? 0) * Math.exp(log);
    });
  }
  return estimates;
}

function byStation(times: readonly StepTime[]): LessonGroup[] {
  return grouped(
    'station',
    times.flatMap((time) => (time.station === null ? [] : [[time.station, time.minutes] as const])),
  );
}

function byDeck(times: readonly StepTime[], deckOf: (slotId: string) => string | null): LessonGroup[] {
  // A load over two decks says nothing of either.
  const decks = times.flatMap((time) => {
    const [deck, ...others] = new Set(time.slots.map(deckOf));
    return deck === undefined || deck === null || others.length > 0 ? [] : [[deck, time.minutes] as const];
  });
  return grouped('deck', decks);
}

/** Values by what they are of; one alone says nothing that the whole does not. */
export function grouped(by: 'station' | 'deck' | 'formula', values: readonly (readonly [id: string, value: number])[]): LessonGroup[] {
  const groups = new Map<string, number[]>();
  for (const [id, value] of values) groups.set(id, [...(groups.get(id) ?? []), value]);
  if (groups.size < 2) return [];
  const sorted = [...groups].sort(([a], [b]) => (a < b ? -1 : 1));
  const estimates = shrunkMedians(sorted.map(([, own]) => own));
  return sorted.map(([id, own], index) => {
    const median = quantileOf(own, 0.5);
    return { by, id, n: own.length, median, estimate: estimates[index] ?? median };
  });
}

/** The smaller half of the batches and the larger, where they differ. */
function bySize(times: readonly StepTime[]): LessonGroup[] {
  const unit = times.every(({ pieces }) => pieces !== null) ? 'pieces' : 'grams';
  const sized = times.map((time) => ({ size: unit === 'pieces' ? (time.pieces ?? 0) : time.grams, minutes: time.minutes }));
  const middle = quantileOf(
    sized.map(({ size }) => size),
    0.5,
  );
  const halves = [sized.filter(({ size }) => size <= middle), sized.filter(({ size }) => size > middle)];
  const [small = [], large = []] = halves;
  const sizeOf = (half: readonly { size: number }[]): number =>
    quantileOf(
      half.map(({ size }) => size),
      0.5,
    );
  if (small.length < LEAST_OF_SIZE || large.length < LEAST_OF_SIZE || sizeOf(large) < sizeOf(small) * LEAST_SIZE_RATIO) return [];
  const estimates = shrunkMedians(halves.map((half) => half.map(({ minutes }) => minutes)));
  return halves.map((half, index) => {
    const median = quantileOf(
      half.map(({ minutes }) => minutes),
      0.5,
    );
    const sizes = half.map(({ size }) => size);
    return {
      by: 'size',
      sizes: { from: Math.min(...sizes), to: Math.max(...sizes), unit },
      n: half.length,
      median,
      estimate: estimates[index] ?? median,
    };
  });
}

/** How many minutes more each piece takes, those that the document adds counted in. */
function perPiece(times: readonly StepTime[], assumed: number): Lesson['foundPerPiece'] {
  const points = times
    .flatMap(({ pieces, minutes }) => (pieces === null ? [] : [[pieces, minutes + assumed * pieces] as const]))
    .slice(0, MOST_POINTS);
  const slope = points.length < LEAST_OF_SIZE * 2 ? null : theilSen(points);
  return slope === null ? null : { minutes: slope.slope, low: slope.low, high: slope.high };
}
