import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { slotsInOrder } from '../../shared/floor/slot-order.ts';
import { bakeFactor, slotsByHeat } from '../../shared/floor/slot-heats.ts';
import { slotHeat, type HeatSample } from '../../shared/trade/slot-heat.ts';
import { Floor } from './support/floor.ts';
import { ovenHouse } from './support/oven-house.ts';
import { normals } from './support/normals.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;
const NOW_MS = 400 * DAY_MS;
const TAG = 'R1';
const PHASES = [{ minutes: 50 }];

function bakes(...shares: readonly number[]): readonly HeatSample[] {
  return shares.map((minutesShare, index) => ({ minutesShare, atMs: NOW_MS - (shares.length - index) * HOUR_MS, kind: 'bake' }));
}

describe('HS1 what a slot has been is learned from bakes, robustly', () => {
  test('nothing is known of a slot in which nothing was baked; bakes as the reference change nothing', () => {
    expect(slotHeat([], NOW_MS)).toEqual({ factor: 1, between: null, count: 0 });
    expect(slotHeat(bakes(1, 1, 1, 1), NOW_MS).factor).toBe(1);
  });

  test('one bake moves it by a third of what it said, ten by most of it', () => {
    expect(Math.log(slotHeat([{ minutesShare: 0.8, atMs: NOW_MS, kind: 'bake' }], NOW_MS).factor)).toBeCloseTo(Math.log(0.8) / 3, 9);
    expect(slotHeat(bakes(...Array.from({ length: 10 }, () => 0.8)), NOW_MS).factor).toBeCloseTo(0.8, 1);
  });

  test('a slot of any heat is known within a tenth after twelve bakes that scatter by 6 %, two of them wild', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.8, max: 1.25, noNaN: true }), fc.nat(), (heat, seed) => {
        const noise = normals(seed);
        const shares = Array.from({ length: 12 }, (_, index) => (index % 6 === 2 ? 1.9 : heat * Math.exp(0.06 * noise())));
        const { factor } = slotHeat(bakes(...shares), NOW_MS);
        expect(Math.abs(Math.log(factor / heat))).toBeLessThan(0.12);
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  test('the range holds nine of ten slots, and is narrower the more was baked', () => {
    const noise = normals(11);
    let held = 0;
    for (let round = 0; round < 400; round += 1) {
      const heat = Math.exp(0.08 * noise());
      const { between } = slotHeat(bakes(...Array.from({ length: 8 }, () => heat * Math.exp(0.08 * noise()))), NOW_MS);
      if (between !== null && between.least <= heat && heat <= between.most) held += 1;
    }
    expect(held / 400).toBeGreaterThan(0.85);
    const width = (count: number): number => {
      const { between } = slotHeat(bakes(...Array.from({ length: count }, (_, index) => (index % 2 === 0 ? 0.85 : 0.95))), NOW_MS);
      return between === null ? Number.NaN : between.most - between.least;
    };
    expect(width(16)).toBeLessThan(width(4));
  });

  test('it is held between 0.7 and 1.4, whatever was said', () => {
    expect(slotHeat(bakes(...Array.from({ length: 60 }, () => 0.3)), NOW_MS).factor).toBe(0.7);
    expect(slotHeat(bakes(...Array.from({ length: 60 }, () => 3)), NOW_MS).factor).toBe(1.4);
  });
});

describe('HS2 a test piece says how the oven stands now, and fades', () => {
  const piece: HeatSample = { minutesShare: 0.8, atMs: NOW_MS, kind: 'testPiece' };

  test('it weighs as six bakes at once, as less than two after six hours, as one in the habit of the slot', () => {
    const weightAt = (hours: number): number => {
      const log = Math.log(slotHeat([piece], NOW_MS + hours * HOUR_MS).factor) / Math.log(0.8);
      return (2 * log) / (1 - log);
    };
    expect(weightAt(0)).toBeCloseTo(6, 6);
    expect(weightAt(6)).toBeLessThan(2);
    expect(weightAt(24)).toBeCloseTo(1, 1);
  });

  test('time alone brings a slot back to the reference', () => {
    const factors = [0, 1, 5, 24, 24 * 30, 24 * 365].map((hours) => slotHeat([piece], NOW_MS + hours * HOUR_MS).factor);
    expect(factors).toEqual([...factors].sort((a, b) => a - b));
    expect(factors.at(-1)).toBeCloseTo(1, 3);
  });
});

describe('HS3 a bake goes by the heat of its slots', () => {
  function withTestPiece(floor: Floor, slotId: string, minutes: number): Floor {
    floor.ok({ type: 'startTestPiece', slotId, referenceMin: 10 });
    floor.wait(minutes).ok({ type: 'endTestPiece', slotId, isDone: true });
    return floor;
  }

  test('a test piece in its slot moves the end of a bake at once, within its phases', () => {
    const floor = ovenHouse({ phases: PHASES });
    const [slotId = ''] = floor.piece(TAG).slotIds;
    const { startedMs } = floor.due(TAG);
    withTestPiece(floor, slotId, 8);
    const factor = Math.exp((Math.log(0.8) * 6) / 8);
    expect((floor.due(TAG).dueMs - (startedMs ?? 0)) / MINUTE_MS).toBeCloseTo(50 * factor, 2);
    expect(floor.state.testPieces).toEqual({});
  });

  test('one that is thrown away says nothing; a second one takes the place of the first', () => {
    const floor = ovenHouse({ phases: PHASES });
    const [slotId = ''] = floor.piece(TAG).slotIds;
    floor.ok({ type: 'startTestPiece', slotId, referenceMin: 10 });
    floor.wait(3).ok({ type: 'startTestPiece', slotId, referenceMin: 6 });
    expect(floor.state.testPieces[slotId]).toEqual({ referenceMin: 6, startedMs: floor.nowMs });
    floor.wait(8).ok({ type: 'endTestPiece', slotId, isDone: false });
    expect(floor.state.slotHeat).toEqual({});
    // Nor one that was forgotten.
    floor.ok({ type: 'startTestPiece', slotId, referenceMin: 6 });
    floor.wait(30).ok({ type: 'endTestPiece', slotId, isDone: true });
    expect(floor.state.slotHeat).toEqual({});
  });

  test('what cannot be is refused', () => {
    const floor = ovenHouse();
    const [slotId = ''] = floor.piece(TAG).slotIds;
    expect(floor.give({ type: 'startTestPiece', slotId: 'attic', referenceMin: 5 }).decision).toMatchObject({
      fault: { code: 'noSuchSlot', slotId: 'attic' },
    });
    expect(floor.give({ type: 'endTestPiece', slotId, isDone: true }).decision).toMatchObject({ fault: { code: 'noTestPiece', slotId } });
  });

  test('a load in a warm and a cool slot is as long as the cool one makes it', () => {
    const floor = withTestPiece(withTestPiece(ovenHouse(), 'top-left', 8), 'top-right', 12);
    const cool = bakeFactor(floor.state, ['top-right'], floor.nowMs);
    expect(cool).toBeGreaterThan(1);
    expect(bakeFactor(floor.state, ['top-left', 'top-right'], floor.nowMs)).toBe(cool);
    expect(bakeFactor(floor.state, [], floor.nowMs)).toBe(1);
  });
});

describe('HS4 ordinary bakes teach their slots', () => {
  test('taken out by the baker before its time, the slot was hotter; undone, nothing was said', () => {
    const floor = ovenHouse({ phases: PHASES });
    const [slotId = ''] = floor.piece(TAG).slotIds;
    const commandId = floor.wait(40).finish(TAG);
    expect(floor.state.slotHeat[slotId]).toMatchObject([{ kind: 'bake', minutesShare: 0.8 }]);
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.state.slotHeat).toEqual({});
  });

  test('more time that somebody gave counts; one that was only left in says nothing', () => {
    const more = ovenHouse({ phases: PHASES }).wait(49);
    more.ok({ type: 'giveMoreTime', workpieceId: more.id(TAG), stepId: 'take-out', minutes: 5 });
    more.wait(6).finish(TAG);
    expect(Object.values(more.state.slotHeat)[0]).toMatchObject([{ minutesShare: 1.1 }]);
    const left = ovenHouse({ phases: PHASES }).wait(70);
    left.finish(TAG);
    expect(left.state.slotHeat).toEqual({});
  });

  test('a clock that was set ages nothing', () => {
    const floor = ovenHouse({ phases: PHASES }).wait(40);
    const [slotId = ''] = floor.piece(TAG).slotIds;
    floor.finish(TAG);
    const before = bakeFactor(floor.state, [slotId], floor.nowMs);
    floor.ok({ type: 'noteClockJump', byMs: -365 * DAY_MS });
    expect(bakeFactor(floor.state, [slotId], floor.nowMs - 365 * DAY_MS)).toBe(before);
  });
});

describe('HS5 the slots of an oven by their heat', () => {
  test('the hottest first; unknown ones stand with the reference', () => {
    const floor = ovenHouse({ phases: PHASES }).wait(40);
    floor.finish(TAG);
    floor.ok({ type: 'startTestPiece', slotId: 'top-right', referenceMin: 10 });
    floor.wait(12).ok({ type: 'endTestPiece', slotId: 'top-right', isDone: true });
    const order = slotsByHeat(floor.state, 'deck-oven', floor.nowMs).map(({ slotId, heat }) => [slotId, heat.count]);
    expect(order[0]).toEqual(['bottom-left', 1]);
    expect(order.at(-1)).toEqual(['top-right', 1]);
    expect(order).toHaveLength(4);
  });

  test('a load is put into the slot nearest to the reference, unless its product prefers another', () => {
    const floor = Floor.harbour().bringTo('R1', 'load');
    const load = floor.due('R1').action;
    const slots = (): readonly string[] =>
      slotsInOrder(floor.state, floor.piece('R1'), load, floor.nowMs).flatMap(({ slotIds }) => slotIds);
    const before = slots();
    expect(before.slice(0, 2)).toEqual(['bottom-left', 'bottom-right']);
    floor.ok({ type: 'startTestPiece', slotId: 'bottom-left', referenceMin: 10 });
    floor.wait(8).ok({ type: 'endTestPiece', slotId: 'bottom-left', isDone: true });
    expect(slots().slice(0, 2)).toEqual(['bottom-right', 'bottom-left']);
    floor.finish('R1');
    expect(floor.piece('R1').slotIds[0]).toBe('bottom-right');
  });
});
