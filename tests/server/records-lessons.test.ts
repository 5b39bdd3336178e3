import { rmSync } from 'node:fs';
import { quantileSorted } from 'd3-array';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Step } from '../../shared/documents/method.ts';
import type { FloorEvent, RecordedEvent } from '../../shared/floor/events.ts';
import { EMPTY_STATE, versionKey } from '../../shared/floor/state.ts';
import { lessonsAnswerSchema, type Lesson, type LessonsAnswer } from '../../shared/records/lessons-answer.ts';
import { Floor } from '../domain/support/floor.ts';
import { bringInCommand, harbourFile } from '../domain/support/harbour.ts';
import { idOf, SERVER_DEVICE } from '../domain/support/ids.ts';
import { TWELVE, turnedOut } from '../domain/support/turned-out.ts';
import { withTarget } from '../../shared/records/lesson-rules.ts';
import { historyArbitrary, keep, lived } from './random-history.ts';
import { askRecords } from './support/ask-records.ts';
import { bakersEvents } from './support/bakers-events.ts';
import { periodOf } from './support/period-of.ts';
import { temporaryFolder } from './support/temporary-folder.ts';
import { toldAgain, type ToldAgain } from './support/told-again.ts';

/** The same histories each time: what others show becomes a test of its own. */
const SEED = 20_260_307;

const MINUTE_MS = 60_000;

async function lessonsOf(events: readonly RecordedEvent[], asked: object = {}): Promise<LessonsAnswer> {
  const folder = temporaryFolder();
  try {
    await keep(folder, events);
    return lessonsAnswerSchema.parse(await askRecords(folder, 'lessons', asked));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function quantile(values: readonly number[], share: number): number {
  return (
    quantileSorted(
      [...values].sort((a, b) => a - b),
      share,
    ) ?? Number.NaN
  );
}

/** Which minutes each step of each document in force took, with how many of its times say nothing. */
function minutesTold(told: ToldAgain, fromMs: number, toMs: number): ReadonlyMap<string, { minutes: number[]; out: number }> {
  const { state } = told;
  const found = new Map<string, { minutes: number[]; out: number }>();
  const works = new Set<string>();
  const splits = told.standing.flatMap(({ event }) => (event.type === 'loadsMade' ? [event] : []));
  const newest = (id: string | null, of: 'formula' | 'product'): readonly Step[] =>
    id === null
      ? []
      : of === 'formula'
        ? (state.formulas[versionKey(id, state.formulaVersions[id] ?? 0)]?.method ?? [])
        : (state.products[versionKey(id, state.productVersions[id] ?? 0)]?.way ?? []);
  for (const { piece, stepId, life } of [...told.lives].sort((a, b) => (b.piece.pieces ?? -1) - (a.piece.pieces ?? -1))) {
    const { startedMs, endedMs, status, inferred } = life;
    if (status !== 'done' || inferred || startedMs === null || endedMs === null || endedMs < fromMs || endedMs >= toMs) continue;
    // What a load brought along was done on what it was a part of.
    const before = told.pieces.get(piece.parentId ?? '')?.steps[stepId];
    if (piece.kind === 'load' && before?.startedMs === startedMs && before.endedMs === endedMs) continue;
    const method = newest(piece.formulaId, 'formula');
    const isOwn = piece.parentId === null && method.some(({ id }) => id === stepId);
    const isFormula = piece.productId === null || isOwn;
    const way = isFormula ? method : newest(piece.productId, 'product');
    const index = way.findIndex(({ id }) => id === stepId);
    const step = way[index];
    // As its version then had it: loads were made in the middle of a work of hands.
    const began = [...newest(piece.formulaId, 'formula'), ...newest(piece.productId, 'product')].find(({ id }) => id === stepId);
    const isSplit = splits.some(
      ({ workpieceId, children, atMs }) =>
        (workpieceId === piece.id || children.some((child) => child.workpieceId === piece.id)) && atMs > startedMs && atMs <= endedMs,
    );
    if (began?.kind === 'hands' && isSplit) continue;
    const work = [piece.formulaId, stepId, startedMs, endedMs, life.endedBy].join(' ');
    if (works.has(work) || step === undefined) continue;
    works.add(work);
    const key = `${isFormula ? `formula ${piece.formulaId}` : `product ${piece.productId ?? ''}`} ${stepId}`;
    const own = found.get(key) ?? { minutes: [], out: 0 };
    found.set(key, own);
    const forPieces = (step.minutesPerPiece ?? 0) * (piece.pieces ?? 0);
    const assumed = step.minutes.target + forPieces;
    const whole = (endedMs - startedMs) / MINUTE_MS;
    const isForgotten = whole > 4 * assumed && whole > assumed + 60;
    const isAtOnce = whole < 0 || (whole < assumed / 10 && whole < 0.5);
    const late = (way[index + 1] ?? step).toleranceMin.late;
    const due = (life.pins?.targetMin ?? assumed) * (life.pins?.factor ?? 1) + life.moreMin;
    const isWaitedOn = (step.kind === 'timed' || step.kind === 'bake') && life.moreMin === 0 && whole > due + late;
    if (isForgotten || isAtOnce || isWaitedOn) own.out += 1;
    else own.minutes.push(whole - forPieces);
  }
  return found;
}

function expectSpread(lesson: Lesson, values: readonly number[]): void {
  expect(lesson.spread.n).toBe(values.length);
  const { median, quarter, threeQuarters, tenth, nineTenths } = lesson.spread;
  for (const [at, figure] of [
    [0.5, median],
    [0.25, quarter],
    [0.75, threeQuarters],
    [0.1, tenth],
    [0.9, nineTenths],
  ] as const)
    expect(figure).toBeCloseTo(quantile(values, at), 6);
}

async function expectAsTold(recorded: readonly RecordedEvent[]): Promise<number> {
  const told = toldAgain(recorded);
  const answer = await lessonsOf(recorded);
  const [fromMs, toMs] = periodOf(told.state, answer);
  const isWithin = (atMs: number): boolean => atMs >= fromMs && atMs < toMs;
  const about = (what: Lesson['about']): readonly Lesson[] => answer.lessons.filter((lesson) => lesson.about === what);
  const keyOf = ({ subject, step }: Lesson): string => [subject.kind, subject.id, ...(step === null ? [] : [step.id])].join(' ');

  const minutes = [...minutesTold(told, fromMs, toMs)].filter(([, own]) => own.minutes.length > 0);
  expect(about('minutes').map(keyOf).sort()).toEqual(minutes.map(([key]) => key).sort());
  for (const [key, own] of minutes) {
    const lesson = about('minutes').find((one) => keyOf(one) === key);
    if (lesson === undefined) continue;
    expectSpread(lesson, own.minutes);
    expect(lesson.leftOut).toBe(own.out);
  }

  const facts = told.standing.map(({ event }) => event);
  const samples = new Map<string, number[]>();
  const add = (key: string, value: number): void => void samples.set(key, [...(samples.get(key) ?? []), value]);
  for (const event of facts) {
    if (!('atMs' in event) || event.atMs === undefined || !isWithin(event.atMs)) continue;
    if (event.type === 'riseLearned') add(`rise mixer ${event.mixerId}`, event.riseK);
    if (event.type === 'ripenessLearned') add(`ripeness formula ${event.formulaId} ${event.stepId}`, event.factor * 100);
    if (event.type === 'slotHeatLearned') for (const slot of event.slotIds) add(`heat slot ${slot}`, event.minutesShare * 100);
  }
  for (const piece of told.pieces.values()) {
    if (piece.finishedMs === null || !isWithin(piece.finishedMs)) continue;
    const cutG = facts.flatMap((event) => (event.type === 'workpieceDivided' && event.workpieceId === piece.id ? event.children : []));
    const piecesG = cutG.reduce((sum, { grams }) => sum + grams, 0);
    if (piece.ending === 'divided' && piecesG > 0)
      add(`leftOver formula ${piece.formulaId}`, (100 * piece.scrapG) / (piecesG + piece.scrapG));
    if (piece.ending === 'finished' && piece.productId !== null && piece.pieces !== null && (piece.plannedPieces ?? 0) > 0)
      add(`piecesLost product ${piece.productId}`, 100 - (100 * piece.pieces) / (piece.plannedPieces ?? 1));
  }
  const others = answer.lessons.filter((lesson) => lesson.about !== 'minutes' && lesson.subject.kind !== 'deck');
  expect(others.map((lesson) => `${lesson.about} ${keyOf(lesson)}`).sort()).toEqual([...samples.keys()].sort());
  for (const lesson of others) expectSpread(lesson, samples.get(`${lesson.about} ${keyOf(lesson)}`) ?? []);

  const lost = (what: string): number =>
    facts.reduce((sum, event: FloorEvent) => {
      if (event.type === 'fermentFed' && what === 'seed' && isWithin(event.atMs)) return sum + event.discardedG;
      return event.type === 'lossNamed' && event.what === what && isWithin(event.atMs) ? sum + event.grams : sum;
    }, 0);
  for (const { what, grams } of answer.losses) expect(grams).toBeCloseTo(lost(what), 3);
  return minutes.length + samples.size;
}

describe('LS2 what the days teach is what the events say, reckoned once more', () => {
  it('after whatever devices do', async () => {
    await fc.assert(
      fc.asyncProperty(historyArbitrary, async (history) => {
        const { recorded } = lived(history);
        // A clock that is set moves open work and not what was said of it before: then figures of both are not told apart here.
        if (recorded.some(({ event }) => event.type === 'clockJumped')) return;
        await expectAsTold(recorded);
      }),
      { numRuns: 10, endOnFailure: true, seed: SEED },
    );
  });

  it('after days of bakers who come late and give a little more', async () => {
    expect(await expectAsTold(await bakersEvents(3))).toBeGreaterThan(20);
  });
});

function lessonOf({ lessons }: LessonsAnswer, stepId: string): Lesson | undefined {
  return lessons.find((lesson) => lesson.about === 'minutes' && lesson.step?.id === stepId);
}

describe('LS3 what is found against what is assumed', () => {
  it('twelve turnings out of about 10 min, where the formula says 3: a proposal; what goes as it is written: none', async () => {
    const answer = await lessonsOf(turnedOut(TWELVE).recorded);
    const lesson = lessonOf(answer, 'turn-out');
    expect(lesson).toMatchObject({
      subject: { kind: 'formula', id: 'country' },
      formula: 'country',
      step: { id: 'turn-out', verb: 'turnOut', kind: 'hands', nth: null },
      spread: { n: 12, median: 10, quarter: 9.75, threeQuarters: 11, tenth: 9, medianLow: 9, medianHigh: 11 },
      assumed: 3,
      leftOut: 0,
      proposal: { fromMin: 3, toMin: 10 },
      left: null,
    });
    expect(lesson?.groups.filter(({ by }) => by === 'station').map(({ id, n }) => [id, n])).toEqual([
      ['bench', 6],
      ['mixers', 6],
    ]);
    expect(Math.abs(lesson?.trend?.perMonth ?? 9)).toBeLessThan(3);
    expect(lesson?.trend?.low).toBeLessThan(0);
    expect(lesson?.trend?.high).toBeGreaterThan(0);
    expect(answer.lessons[0]).toBe(lesson);
    expect(lessonOf(answer, 'first-speed')?.step?.nth).toBeNull();
    expect(lessonOf(answer, 'first-speed')).toMatchObject({ spread: { median: 4 }, proposal: null });
    // Weighing was never said to have begun, so nothing is known of how long it takes.
    expect(lessonOf(answer, 'weigh')).toBeUndefined();
    expect([answer.from, answer.to]).toEqual(['2026-02-06', '2026-03-19']);
  });

  it('seven are not enough; two taps at once and a tap forgotten over night are left out', async () => {
    expect(lessonOf(await lessonsOf(turnedOut(TWELVE.slice(0, 7)).recorded), 'turn-out')).toMatchObject({
      spread: { n: 7 },
      proposal: null,
    });
    const wild = lessonOf(await lessonsOf(turnedOut([...TWELVE, 0.1, 300]).recorded), 'turn-out');
    expect(wild).toMatchObject({ spread: { n: 12, median: 10 }, leftOut: 2 });
  });

  it('only the days that are asked about', async () => {
    const { recorded } = turnedOut(TWELVE);
    const answer = await lessonsOf(recorded, { from: '2026-03-08', to: '2026-03-11' });
    expect(lessonOf(answer, 'turn-out')?.spread).toMatchObject({ n: 4, median: 10 });
    expect(await lessonsOf(recorded, { from: '2020-01-01', to: '2026-03-19' })).toMatchObject({ from: '2025-03-15' });
  });

  it('what is taken over is told, and asks for nothing more; what is left is not asked again until more has changed', async () => {
    const floor = turnedOut(TWELVE);
    const leave = {
      type: 'leaveLesson',
      subject: { kind: 'formula', id: 'country' },
      stepId: 'turn-out',
      assumedMin: 3,
      foundMin: 10,
    } as const;
    const left = Object.assign(new Floor(floor.state, floor.nowMs), { recorded: [...floor.recorded] });
    left.ok(leave, { commandId: idOf(800_000) });
    expect(lessonOf(await lessonsOf(left.recorded), 'turn-out')).toMatchObject({
      proposal: { fromMin: 3, toMin: 10 },
      left: { foundMin: 10, atMs: left.nowMs },
    });
    const formula = floor.state.formulas['country@1'];
    if (formula === undefined) throw new Error('no country dough');
    floor.ok({ type: 'adoptFormula', fromVersion: 1, formula: { ...formula, method: withTarget(formula.method, 'turn-out', 10) } });
    const answer = await lessonsOf(floor.recorded);
    expect(lessonOf(answer, 'turn-out')).toMatchObject({ assumed: 10, proposal: null });
    expect(answer.changes).toEqual([
      { subject: { kind: 'formula', id: 'country' }, step: 'turn-out', fromMin: 3, toMin: 10, version: 2, atMs: floor.nowMs },
    ]);
  });
});

describe('LS4 a night in which the clock is set', () => {
  it.each([
    ['back', Date.UTC(2026, 9, 25, 1), '2026-10-24'],
    ['forward', Date.UTC(2026, 2, 29, 1), '2026-03-28'],
  ])('%s: a bake across it has its true minutes, and the day its own length', async (_way, changeMs, date) => {
    const floor = new Floor(EMPTY_STATE, changeMs - 285 * MINUTE_MS);
    floor.ok(bringInCommand(harbourFile(), floor.nowMs, date), { deviceId: SERVER_DEVICE });
    floor.only('C1').bringTo('C1', 'take-out');
    floor.finish('C1');
    const life = floor.piece('C1').steps['bake'];
    expect(life?.startedMs).toBeLessThan(changeMs);
    expect(life?.endedMs).toBeGreaterThan(changeMs);
    const bake = lessonOf(await lessonsOf(floor.recorded), 'bake');
    expect(bake).toMatchObject({ spread: { n: 1, median: 45 }, assumed: 45, proposal: null });
  });
});
