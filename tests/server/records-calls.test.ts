import { quantileSorted } from 'd3-array';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TWELVE, turnedOut } from '../domain/support/turned-out.ts';
import { callsAnswerSchema, type CallsAnswer, type Offender } from '../../shared/records/calls-answer.ts';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { historyArbitrary, keep, lived } from './random-history.ts';
import { bakersEvents } from './support/bakers-events.ts';
import { askRecords } from './support/ask-records.ts';
import { toldAgain, type ToldCall } from './support/told-again.ts';
import { periodOf } from './support/period-of.ts';
import { temporaryFolder } from './support/temporary-folder.ts';
import { rmSync } from 'node:fs';

/** The same histories each time: what others show becomes a test of its own. */
const SEED = 20_260_307;

const MINUTE_MS = 60_000;
const TEN_MS = 10 * MINUTE_MS;

async function callsOf(events: readonly RecordedEvent[]): Promise<CallsAnswer> {
  const folder = temporaryFolder();
  try {
    await keep(folder, events);
    return callsAnswerSchema.parse(await askRecords(folder, 'calls', {}));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function quantile(values: readonly number[], share: number): number | null {
  return values.length === 0
    ? null
    : (quantileSorted(
        [...values].sort((a, b) => a - b),
        share,
      ) ?? null);
}

/** Chains of calls of one step of one dough, each stronger than the one before. */
function chains(calls: readonly ToldCall[]): readonly (readonly ToldCall[])[] {
  const found: ToldCall[][] = [];
  for (const call of calls) {
    const before = found.findLast((chain) => chain[0]?.pieceId === call.pieceId && chain[0].stepId === call.stepId);
    if (before?.at(-1)?.became === 'stronger') before.push(call);
    else found.push([call]);
  }
  return found;
}

/** Reckons every figure once more from the events. Answers how many calls there were. */
async function expectAsTold(recorded: readonly RecordedEvent[]): Promise<number> {
  const told = toldAgain(recorded);
  const { health, days, from, to } = await callsOf(recorded);
  const [fromMs, toMs] = periodOf(told.state, { from, to });
  const within = told.calls.filter(({ raisedMs }) => raisedMs >= fromMs && raisedMs < toMs).sort((a, b) => a.raisedMs - b.raisedMs);
  expect(health.calls).toBe(within.length);
  for (const level of ['call', 'late', 'lost'] as const)
    expect(health.levels[level]).toBe(within.filter((call) => call.level === level).length);
  expect(health.undone).toBe(within.filter(({ became }) => became === 'undone').length);
  const windows = new Map<number, number>();
  for (const { raisedMs } of within) windows.set(Math.floor(raisedMs / TEN_MS), (windows.get(Math.floor(raisedMs / TEN_MS)) ?? 0) + 1);
  expect(health.windows.peak?.calls ?? 0).toBe(Math.max(0, ...windows.values()));
  expect(health.windows.inFlood).toBe([...windows.values()].filter((calls) => calls > 10).length);
  expect(days.reduce((sum, day) => sum + day.calls, 0)).toBe(within.length);
  // Minute by minute, and not from tap to tap: at work is who tapped in the hour before, and taps again in time.
  const taps = told.lives.flatMap(({ life }) => {
    if (life.endedMs === null || life.endedMs < fromMs || life.endedMs >= toMs) return [];
    const ends = life.inferred ? [] : [life.endedMs];
    return life.startedMs === null || life.startedMs < fromMs ? ends : [...ends, life.startedMs];
  });
  const all = [...taps, ...within.flatMap(({ heardMs }) => heardMs ?? [])].sort((a, b) => a - b);
  const worked = new Set(windows.keys());
  all.forEach((tap, index) => {
    worked.add(Math.floor(tap / TEN_MS));
    const next = all[index + 1] ?? Infinity;
    if (next - tap <= 60 * MINUTE_MS) for (let at = tap; at < next; at += TEN_MS / 2) worked.add(Math.floor(at / TEN_MS));
  });
  expect(health.windows.worked).toBe(worked.size);
  expect(health.windows.mean ?? 0).toBeCloseTo(worked.size === 0 ? 0 : within.length / worked.size, 9);
  const holds = told.standing.flatMap(({ event }) =>
    event.type === 'workpieceHeld' && event.atMs >= fromMs && event.atMs < toMs ? [event] : [],
  );
  const isHeldAt = ({ pieceId, stepId, endedMs }: ToldCall): boolean =>
    holds.some((hold) => hold.workpieceId === pieceId && hold.stepId === stepId && hold.atMs === endedMs);
  const chained = chains(within);
  const heard = chained.flatMap((chain) => {
    const first = chain.find(({ heardMs }) => heardMs !== null)?.heardMs ?? null;
    return first === null ? [] : [(first - (chain[0]?.raisedMs ?? 0)) / MINUTE_MS];
  });
  const isDone = (chain: readonly ToldCall[]): boolean => {
    const last = chain.at(-1);
    return last?.became === 'done' && !isHeldAt(last);
  };
  const done = chained.filter(isDone).map((chain) => ((chain.at(-1)?.endedMs ?? 0) - (chain[0]?.raisedMs ?? 0)) / MINUTE_MS);
  // A clock that was set between a hold and the end of its call moves one of them alone: then who held is not told.
  const isJumped = recorded.some(({ event }) => event.type === 'clockJumped');
  expect(health.heard.n).toBe(heard.length);
  expect(health.heard.medianMin ?? 0).toBeCloseTo(quantile(heard, 0.5) ?? 0, 6);
  expect(health.heard.ninetiethMin ?? 0).toBeCloseTo(quantile(heard, 0.9) ?? 0, 6);
  if (!isJumped) {
    expect(health.done.n).toBe(done.length);
    expect(health.done.medianMin ?? 0).toBeCloseTo(quantile(done, 0.5) ?? 0, 6);
    expect(health.done.ninetiethMin ?? 0).toBeCloseTo(quantile(done, 0.9) ?? 0, 6);
    expect(health.shelved.times).toBe(holds.filter(({ workpieceId }) => told.pieces.has(workpieceId)).length);
  }
  expect(health.neverHeard).toBe(
    chained.filter((chain) => chain.every((call) => call.heardMs === null && call.became !== 'undone')).length,
  );
  const repeats = within.filter((call, index) =>
    within.slice(0, index).some((b, at) => {
      const isAlike = b.pieceId === call.pieceId && b.stepId === call.stepId && b.level === call.level;
      const isLast = !within
        .slice(at + 1, index)
        .some((c) => c.pieceId === call.pieceId && c.stepId === call.stepId && c.level === call.level);
      return isAlike && isLast && call.raisedMs - b.raisedMs <= MINUTE_MS;
    }),
  );
  expect(health.repeats).toBe(repeats.length);
  expect(health.standing).toBe(
    chained.filter((chain) => (chain.at(-1)?.endedMs ?? toMs) - (chain[0]?.raisedMs ?? 0) > 60 * MINUTE_MS).length,
  );
  const most = Math.max(0, ...health.offenders.map(({ calls }) => calls));
  expect(health.offenders[0]?.calls ?? 0).toBe(most);
  expect(health.offenders.reduce((sum, { calls }) => sum + calls, 0)).toBeLessThanOrEqual(within.length);
  return within.length;
}

describe('AH1 how calls were is what the events say, reckoned once more', () => {
  it('after whatever devices do', async () => {
    let seen = 0;
    await fc.assert(
      fc.asyncProperty(historyArbitrary, async (history) => {
        seen += await expectAsTold(lived(history).recorded);
      }),
      { numRuns: 6, endOnFailure: true, seed: SEED },
    );
    expect(seen).toBeGreaterThan(10);
  });

  it('after days of bakers who come late, hear some calls and are held up', async () => {
    const calls = await expectAsTold(await bakersEvents(2));
    expect(calls).toBeGreaterThan(100);
  });
});

describe('AH4 what to write instead', () => {
  const offender = async (events: readonly RecordedEvent[]): Promise<Offender | undefined> =>
    (await callsOf(events)).health.offenders.find(({ step }) => step === 'turn-out');

  it('what takes longer than it was written, by how long it takes', async () => {
    expect(await offender(turnedOut(TWELVE).recorded)).toMatchObject({
      verb: 'turnOut',
      calls: 12,
      advice: { by: 'work', fromMin: 3, toMin: 10 },
    });
  });

  it('what nobody says to have begun, by how long after it was due it is over, each time', async () => {
    expect(await offender(turnedOut(TWELVE, false).recorded)).toMatchObject({
      lateMin: 12,
      advice: { by: 'coming', fromMin: 3, toMin: 12 },
    });
  });

  it('nothing of few calls, and nothing where it goes as it is written', async () => {
    expect(await offender(turnedOut(TWELVE.slice(0, 7), false).recorded)).toMatchObject({ calls: 7, advice: null });
    expect(
      await offender(
        turnedOut(
          TWELVE.map(() => 1.5),
          false,
        ).recorded,
      ),
    ).toMatchObject({ advice: null });
  });
});
