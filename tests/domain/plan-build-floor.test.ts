import { describe, expect, test } from 'vitest';
import { wayOf } from '../../shared/floor/way.ts';
import { dueOf } from '../../shared/floor/due.ts';
import type { Workpiece } from '../../shared/floor/state.ts';
import { stepsOf } from '../../shared/plan/build/proposed-steps.ts';
import { solveDay } from '../../shared/plan/day/solve-day.ts';
import { batchesFor } from '../../shared/plan/orders/batches-for.ts';
import { assert } from '../../shared/result.ts';
import { faultsOf } from '../support/plan-validator.ts';
import type { Floor } from './support/floor.ts';
import { SERVER_DEVICE } from './support/ids.ts';
import { built, demoFloor, MINUTE_MS, NEXT_DATE, order, ordered, wholeDemoFloor, type Looked } from './support/planned-house.ts';

/** Minutes after now at which something that stands where it stands begins and ends. */
function fixedMin(floor: Floor, day: Looked, tag: string, stepId: string): readonly [number, number] | null {
  const step = day.day.steps.find((each) => each.tag === tag && each.stepId === stepId);
  const activity = step === undefined ? undefined : day.day.problem.activities[step.activity];
  if (activity === undefined || activity.fixedStartS === null) return null;
  const startMin = (day.day.originMs + activity.fixedStartS * 1000 - floor.nowMs) / MINUTE_MS;
  return [startMin, startMin + activity.durationS / 60];
}

describe('Z11 what has begun stands, and what follows counts from what really happened', () => {
  test('a step under way ends when its work takes it to, or now, where that is past', () => {
    const floor = demoFloor().bringTo('R1', 'divide');
    floor.ok({ type: 'startStep', workpieceId: floor.id('R1'), stepId: 'divide' });
    floor.wait(2);
    expect(fixedMin(floor, built(floor), 'R1', 'divide')).toEqual([-2, 4]);
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('R1'), stepId: 'divide', minutes: 5 });
    expect(fixedMin(floor, built(floor), 'R1', 'divide')).toEqual([-2, 9]);
    floor.wait(30);
    expect(fixedMin(floor, built(floor), 'R1', 'divide')).toEqual([-32, 0]);
  });

  test('past its time, as much is left of it as there are pieces not done', () => {
    const floor = demoFloor().bringTo('R1', 'tin');
    floor.ok({ type: 'startStep', workpieceId: floor.id('R1'), stepId: 'tin' });
    floor.wait(5);
    floor.ok({ type: 'reportProgress', workpieceId: floor.id('R1'), stepId: 'tin', piecesDone: 4 });
    // Sixteen tins are 13 min of work: it goes on as planned while that is not over.
    expect(fixedMin(floor, built(floor), 'R1', 'tin')).toEqual([-5, 8]);
    floor.wait(10);
    expect(fixedMin(floor, built(floor), 'R1', 'tin')).toEqual([-15, 9.75]);
  });

  test('a rest under way is counted from when it began, with the time that was given since', () => {
    const floor = demoFloor().bringTo('C1', 'prove');
    floor.wait(25);
    const day = built(floor);
    expect(fixedMin(floor, day, 'C1', 'prove')).toEqual([-25, -25]);
    expect(day.lags('C1 prove', 'C1 score')).toEqual([['end', 'start', 60, 75, 110]]);
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'prove', minutes: 10 });
    expect(built(floor).lags('C1 prove', 'C1 score')).toEqual([['end', 'start', 60, 85, 110]]);
    expect(day.activity('C1 score').releaseS).toBe((floor.nowMs - day.day.originMs) / 1000);
  });

  test('a rest of a dough that was read lasts as long as its warmth says', () => {
    const floor = demoFloor().bringTo('C1', 'prove');
    floor.ok({ type: 'readTemperature', workpieceId: floor.id('C1'), where: 'dough', celsius: 21 });
    const { ripening, startedMs } = floor.due('C1');
    const minutes = (atMs: number | null | undefined): number => Math.round(((atMs ?? 0) - (startedMs ?? 0)) / 1000) / 60;
    const lags = built(floor).lags('C1 prove', 'C1 score');
    expect(lags).toEqual([['end', 'start', minutes(ripening?.earliestMs), minutes(ripening?.ripeMs), minutes(ripening?.latestMs)]]);
    expect(lags[0]?.[3]).toBeGreaterThan(80);
  });

  test('what waits for hands waits since the step before it ended', () => {
    const floor = demoFloor().bringTo('C1', 'round');
    floor.wait(7);
    const day = built(floor);
    const cut = day.step('C1 round');
    const [lag] = day.day.problem.lags.filter(({ to }) => to === cut.activity);
    const from = day.day.problem.activities[lag?.from ?? -1];
    expect([(from?.fixedStartS ?? 0) * 1000 + day.day.originMs, lag?.mostS]).toEqual([floor.nowMs - 7 * MINUTE_MS, 20 * 60]);
  });

  test('loads that stand on the floor go on by themselves, and the rest of their cut with them', () => {
    const floor = demoFloor().bringTo('R1', 'tin');
    floor.ok({ type: 'startStep', workpieceId: floor.id('R1'), stepId: 'tin' });
    floor.wait(7);
    floor.ok({ type: 'finishStep', workpieceId: floor.id('R1'), stepId: 'tin', loadPieces: 8 });
    const day = built(floor);
    expect(day.step('R1·1 seed')).toMatchObject({ workpieceId: floor.id('R1·1'), load: undefined, pieces: 8 });
    // Eight tins are left of sixteen: they go in one.
    expect(day.names().filter((name) => name.startsWith('R1 '))).toEqual(
      ['tin', 'seed', 'load', 'bake', 'take-out', 'depan', 'pack'].map((id) => `R1 ${id}`),
    );
  });

  test('a dough in its mixer and a load in its slots stay there', () => {
    const floor = demoFloor().bringTo('C1', 'second-speed');
    expect(built(floor).holds('mixer', 'C1')).toEqual(['C1 salt end > C1 turn-out end: spiral×1']);
    floor.bringTo('C1', 'load');
    floor.ok({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'load', slotIds: ['top-left', 'top-right'] });
    expect(built(floor).holds('deck', 'C1')).toEqual(['C1 load end > C1 take-out end: top×2']);
  });

  test('what somebody holds back, or puts off, is not begun before', () => {
    const floor = demoFloor();
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('O1'), stepId: 'weigh', minutes: 25 });
    const put = built(floor);
    // Planned three minutes after the opening.
    expect((put.activity('O1 weigh').releaseS * 1000 + put.day.originMs - floor.nowMs) / MINUTE_MS).toBe(28);
  });
});

describe('Z12 pins, and orders that come first', () => {
  test('a step begins when somebody wants it to; a pin on a rest is one on the end of what comes before it', () => {
    const floor = demoFloor();
    const startMs = floor.nowMs + 300 * MINUTE_MS;
    floor.ok({ type: 'setPin', pin: { kind: 'startsAt', workpieceId: floor.id('C1'), stepId: 'divide', startMs } });
    floor.ok({ type: 'setPin', pin: { kind: 'startsAt', workpieceId: floor.id('M1'), cut: 1, stepId: 'prove', startMs } });
    const day = built(floor);
    const pinnedMs = (name: string): number => (day.activity(name).pinnedStartS ?? 0) * 1000 + day.day.originMs;
    expect(pinnedMs('C1 divide')).toBe(startMs);
    expect(pinnedMs('M1b shape')).toBe(startMs - 9.5 * MINUTE_MS);
    expect(day.day.problem.activities.filter((activity) => activity.pinnedStartS !== null)).toHaveLength(2);
  });

  test('a pin set on what a dough will be divided into goes with the cut', () => {
    const floor = demoFloor();
    const startMs = floor.nowMs + 300 * MINUTE_MS;
    floor.ok({ type: 'setPin', pin: { kind: 'startsAt', workpieceId: floor.id('M1'), cut: 1, stepId: 'wash', startMs } });
    floor.bringTo('M1', 'divide').finish('M1');
    const day = built(floor);
    expect((day.activity('M1b wash').pinnedStartS ?? 0) * 1000 + day.day.originMs).toBe(startMs);
    expect(day.activity('M1a wash').pinnedStartS).toBeNull();
  });

  test('a pin that is only tried names its activity', () => {
    const floor = demoFloor();
    const key = `${floor.id('C2')}|||shape`;
    const day = built(floor, { pins: [{ key, startMs: floor.nowMs + 60 * MINUTE_MS }] });
    expect((day.activity('C2 shape').pinnedStartS ?? 0) * 1000 + day.day.originMs - floor.nowMs).toBe(60 * MINUTE_MS);
  });
});

/** A floor with the demo's day and the next one's orders, planned as one and kept. */
function plannedFloor(): Floor {
  const floor = wholeDemoFloor();
  const orders = [
    order(1, 'country-loaf', 20, 8),
    order(2, 'rye-tin', 13, 9),
    order(3, 'custard-bun', 20, 10),
    order(4, 'country-loaf-cold', 10, 8),
  ];
  floor.state = ordered(floor.state, ...orders);
  const batches = batchesFor(floor.state, orders, floor.nowMs);
  assert(batches.ok, 'the orders can be made');
  const day = built(floor, { proposed: batches.value });
  const steps = stepsOf(day.day, solveDay(day.day.problem, { schedules: 20, seed: 1 }));
  const startMs = (key: string): number =>
    Math.min(...steps.filter(({ batchKey }) => batchKey === key).map(({ plannedStartMs }) => plannedStartMs));
  floor.ok(
    {
      type: 'adoptProposal',
      serviceDate: NEXT_DATE,
      batches: batches.value.map(({ batchKey, formulaId, grams, cuts }) => ({
        batchKey,
        formulaId,
        grams,
        cuts: cuts.map((cut) => ({ ...cut })),
        plannedStartMs: startMs(batchKey),
      })),
      steps,
      warnings: [],
    },
    { deviceId: SERVER_DEVICE },
  );
  return floor;
}

/** The next thing that is due, done as planned: work begun or ended. */
function doNext(floor: Floor): Workpiece | null {
  const dues = Object.values(floor.state.workpieces).flatMap((workpiece) => dueOf(floor.state, workpiece) ?? []);
  const isEnd = (phase: string): number => (phase === 'working' || phase === 'judging' ? 0 : 1);
  const [due] = dues.sort((a, b) => a.dueMs - b.dueMs || isEnd(a.phase) - isEnd(b.phase));
  if (due === undefined) return null;
  const { workpiece, action, phase } = due;
  floor.until(Math.max(floor.nowMs, due.dueMs));
  const on = {
    workpieceId: workpiece.id,
    stepId: action.id,
    despite: ['changeOver', 'vesselsShort', 'withoutSource', 'lastOfFerment'] as const,
  };
  if (isEnd(phase) === 1) floor.ok({ type: 'startStep', ...on, despite: [...on.despite] });
  else floor.ok({ type: 'finishStep', ...on, despite: [...on.despite] });
  return workpiece;
}

describe('Z13 the plan in force is where everything was', () => {
  test('every step of a kept plan comes back as planned, and breaks nothing, all day long as it is done', () => {
    const floor = plannedFloor();
    let looked = 0;
    for (let done = 0; done < 140 && doNext(floor) !== null; done += 1) {
      if (done % 20 !== 0) continue;
      const { problem, previous, steps } = built(floor).day;
      assert(previous !== null, 'there is a plan');
      const away = problem.activities.filter(
        (activity, index) => activity.previousStartS !== null && activity.previousStartS !== previous.startsS[index],
      );
      const unknown = steps.filter(
        ({ activity, status, workpieceId }) =>
          status === 'ahead' && workpieceId !== null && problem.activities[activity]?.previousStartS === null,
      );
      expect([away, unknown.map(({ tag, stepId }) => `${tag} ${stepId}`), faultsOf(problem, previous)]).toEqual([[], [], []]);
      looked += 1;
    }
    expect(looked).toBe(7);
  });

  test('what begins within ten minutes has been told', () => {
    const floor = plannedFloor();
    let count = 0;
    for (let done = 0; done < 12; done += 1) {
      doNext(floor);
      const { problem, originMs } = built(floor).day;
      const nowS = (floor.nowMs - originMs) / 1000;
      const told = problem.activities.filter(({ isToldAlready }) => isToldAlready);
      const soon = problem.activities.filter(
        ({ previousStartS, fixedStartS }) => fixedStartS === null && previousStartS !== null && previousStartS <= nowS + 600,
      );
      expect(told).toEqual(soon);
      count += told.length;
    }
    expect(count).toBeGreaterThan(0);
  });

  test('the feeds of a pot are told apart, whatever was fed before them', () => {
    const floor = demoFloor();
    const feedMs = floor.nowMs + 1440 * MINUTE_MS;
    const movedMs = feedMs + 5 * 60 * MINUTE_MS;
    const planned = built(floor).day.steps.filter(({ tag, stepId }) => tag === 'L1' && stepId === 'feed');
    const [first, next] = planned.map(({ workpieceId, load, stepId }) => ({ workpieceId: workpieceId ?? '', load, stepId }));
    assert(first !== undefined && next !== undefined, 'the demo feeds its pot twice');
    expect(first.load).toBeUndefined();
    const start = (place: typeof next, plannedStartMs: number) => ({
      workpieceId: place.workpieceId,
      stepId: place.stepId,
      plannedStartMs,
      resources: [],
      ...(place.load === undefined ? {} : { load: place.load }),
    });
    floor.record({
      type: 'planAdopted',
      planId: floor.id('C1'),
      isWhole: true,
      starts: [start(first, floor.nowMs), start(next, movedMs)],
      moved: [],
      warnings: [],
      atMs: floor.nowMs,
    });
    const nextMs = (): number => {
      const { day } = built(floor);
      const step = day.steps.find(({ tag, stepId, load }) => tag === 'L1' && stepId === 'feed' && load === next.load);
      return (day.problem.activities[step?.activity ?? -1]?.previousStartS ?? 0) * 1000 + day.originMs;
    };
    expect(nextMs()).toBe(movedMs);
    floor.bringTo('L1', 'ripen');
    expect(nextMs()).toBe(movedMs);
    // It calls when the plan has its next feed, not for when that was meant; a feed that the plan has not, for that.
    expect(floor.due('L1').dueMs).toBe(movedMs);
    floor.ok({ type: 'planFeed', workpieceId: floor.id('L1'), feedMs: feedMs - 600 * MINUTE_MS, grams: 900 });
    expect(floor.due('L1').dueMs).toBe(feedMs - 600 * MINUTE_MS);
    expect(
      built(floor).day.steps.filter(({ tag, stepId, status }) => tag === 'L1' && stepId === 'feed' && status === 'ahead'),
    ).toHaveLength(2);
    expect(nextMs()).toBe(movedMs);
  });

  test('a pot that is being fed again ripens once more, and that feed is no longer to come', () => {
    const floor = demoFloor().bringTo('L1', 'ripen');
    floor.wait(1380);
    floor.ok({ type: 'startStep', workpieceId: floor.id('L1'), stepId: 'feed' });
    const { day } = built(floor);
    const told = day.steps.filter(({ tag, stepId }) => tag === 'L1' && stepId === 'feed').map(({ status, grams }) => [status, grams]);
    expect(told).toEqual([['begun', 1500]]);
    expect(day.rests.filter(({ tag }) => tag === 'L1').map(({ stepId, status }) => `${stepId} ${status}`)).toEqual(['ripen ahead']);
  });

  test('without a plan, a batch is where it was planned to begin', () => {
    const floor = demoFloor();
    const { day } = built(floor);
    expect(day.previous).toBeNull();
    expect(((built(floor).activity('C1 weigh').previousStartS ?? 0) * 1000 + day.originMs - floor.nowMs) / MINUTE_MS).toBe(245);
  });
});

describe('Z14 a solution is told as steps', () => {
  test('each step of every batch once, rests too, with start, end and what it takes', () => {
    const floor = demoFloor();
    const day = built(floor);
    const steps = stepsOf(day.day, solveDay(day.day.problem, { schedules: 20, seed: 1 }));
    const keys = steps.map(({ batchKey, cut, load, stepId }) => `${batchKey}|${cut ?? ''}|${load ?? ''}|${stepId}`);
    expect(new Set(keys).size).toBe(keys.length);
    const c1 = steps
      .filter(({ batchKey }) => batchKey === floor.id('C1'))
      .sort((a, b) => a.plannedStartMs - b.plannedStartMs || a.plannedEndMs - b.plannedEndMs);
    expect(c1.map(({ stepId }) => stepId)).toEqual(wayOf(floor.state, floor.piece('C1')).map(({ id }) => id));
    for (const [index, step] of c1.entries()) expect(step.plannedEndMs).toBeLessThanOrEqual(c1[index + 1]?.plannedStartMs ?? Infinity);
    const taken = (stepId: string): readonly string[] =>
      c1
        .find((step) => step.stepId === stepId)
        ?.resources.map(({ kind, id }) => `${kind} ${id}`)
        .sort() ?? [];
    expect(taken('first-speed')).toEqual(['mixer spiral']);
    expect(taken('stand')).toEqual(['mixer spiral']);
    expect(taken('turn-out')).toEqual(['mixer spiral', 'station mixer']);
    expect(taken('prove')).toEqual(['restPlace warm-shelf']);
    expect(taken('shape')).toEqual(['restPlace bench', 'station bench', 'vessel banneton']);
    expect(taken('bake').map((text) => text.split(' ')[0])).toEqual(['deck']);
    expect(taken('load').filter((text) => text.startsWith('deck'))).toEqual(taken('bake'));
  });

  test('cleanings and marks are no steps of a batch', () => {
    const floor = demoFloor();
    const day = built(floor);
    const ids = new Set(Object.keys(floor.state.workpieces));
    const zeros = { startsS: new Int32Array(day.day.problem.activities.length), options: new Int32Array(day.day.problem.choices.length) };
    expect(stepsOf(day.day, zeros).filter(({ batchKey }) => !ids.has(batchKey))).toEqual([]);
  });
});
