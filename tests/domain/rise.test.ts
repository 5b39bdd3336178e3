import { describe, expect, test } from 'vitest';
import type { CommandOf, FloorCommand } from '../../shared/floor/commands.ts';
import { evolveAll } from '../../shared/floor/evolve.ts';
import { riseOf } from '../../shared/floor/rise.ts';
import { EMPTY_STATE } from '../../shared/floor/state.ts';
import { Random } from '../simulation/support/random.ts';
import type { Floor } from './support/floor.ts';
import { lasting, PLAIN_20, levainFloor, type Listed } from './support/levain-house.ts';
import { changedFloor, LEVAIN_POT, mixingFloor, PLAIN_10, POOLISH_5 } from './support/mixing-house.ts';

const WATER: Omit<CommandOf<'takeWater'>, 'workpieceId'> = {
  type: 'takeWater',
  waterC: 19,
  waterG: 6500,
  iceG: 0,
  flourC: 22,
  roomC: 22,
};

function water(floor: Floor, tag: string, said: Partial<CommandOf<'takeWater'>> = {}): FloorCommand {
  return { ...WATER, workpieceId: floor.id(tag), ...said };
}

function dough(floor: Floor, tag: string, celsius: number, isSure = false): FloorCommand {
  return { type: 'readTemperature', workpieceId: floor.id(tag), where: 'dough', celsius, ...(isSure ? { despite: ['wildReading'] } : {}) };
}

function refusalOf(floor: Floor, command: FloorCommand): unknown {
  const { decision } = floor.give(command);
  return decision.ok ? 'accepted' : decision.fault;
}

/** A dough with its water in, just mixed. */
function mixed(...listed: readonly Listed[]): Floor {
  const floor = mixingFloor(...listed);
  floor.ok(water(floor, 'A1'));
  return floor.bringTo('A1', 'turn-out');
}

function typesOf(floor: Floor, command: FloorCommand): unknown {
  const { decision } = floor.give(command);
  return decision.ok ? decision.value.map((event) => event.type) : decision.fault;
}

describe('Q11 the water that was taken is kept with what it was reckoned from', () => {
  test('given a dough, when its water is in, then the mixer that it will be on and the rise that is expected are kept', () => {
    const floor = mixingFloor(PLAIN_10);
    expect(floor.give(water(floor, 'A1', { iceG: 800, prefermentC: 12 })).decision).toEqual({
      ok: true,
      value: [
        {
          type: 'waterTaken',
          workpieceId: floor.id('A1'),
          mixerId: 'spiral',
          waterC: 19,
          waterG: 6500,
          iceG: 800,
          flourC: 22,
          roomC: 22,
          prefermentC: 12,
          riseK: 4,
          atMs: floor.nowMs,
        },
      ],
    });
    floor.ok(water(floor, 'A1', { mixerId: 'fork' }));
    expect(floor.piece('A1').water).toMatchObject({ mixerId: 'fork', riseK: 2, iceG: 0 });
  });

  test('no mixer that is not there, no more ice than water, no water at all, none once the first speed runs', () => {
    const floor = mixingFloor(PLAIN_10);
    expect(refusalOf(floor, water(floor, 'A1', { mixerId: 'whisk' }))).toEqual({ code: 'mixerUnknown', tag: 'A1', mixerId: 'whisk' });
    expect(refusalOf(floor, water(floor, 'A1', { iceG: 6501 }))).toEqual({
      code: 'moreThanThere',
      tag: 'A1',
      fromTag: 'A1',
      neededG: 6501,
      hasG: 6500,
    });
    expect(refusalOf(floor, water(floor, 'A1', { waterG: 0 }))).toEqual({ code: 'nothingChanges', tag: 'A1' });
    floor.bringTo('A1', 'first-speed');
    expect(refusalOf(floor, water(floor, 'A1'))).toEqual({ code: 'alreadyMixed', tag: 'A1' });
  });

  test('a pot is fed without a mixer: there is nothing to learn of', () => {
    const floor = mixingFloor(LEVAIN_POT);
    expect(refusalOf(floor, water(floor, 'L1'))).toEqual({ code: 'nothingChanges', tag: 'L1' });
  });

  test('pieces are past it', () => {
    const floor = mixingFloor(POOLISH_5).bringTo('P1', 'divide');
    floor.finish('P1', 'divide');
    expect(refusalOf(floor, water(floor, 'P1a'))).toEqual({ code: 'pastMixing', tag: 'P1a' });
  });

  test('undo takes it back', () => {
    const floor = mixingFloor(PLAIN_10);
    const before = lasting(floor.state);
    const commandId = floor.ok(water(floor, 'A1'));
    floor.ok({ type: 'undoCommand', commandId });
    expect(lasting(floor.state)).toEqual(before);
  });
});

describe('Q12 the dough’s temperature after mixing teaches', () => {
  test('given the water, when the dough is read, then its rise is what is over the mean of its temperatures', () => {
    const floor = mixed(PLAIN_10);
    expect(floor.give(dough(floor, 'A1', 26)).decision).toEqual({
      ok: true,
      value: [
        { type: 'temperatureRead', workpieceId: floor.id('A1'), where: 'dough', celsius: 26, atMs: floor.nowMs },
        // 26 − (22 + 22 + 19) ÷ 3.
        {
          type: 'riseLearned',
          workpieceId: floor.id('A1'),
          mixerId: 'spiral',
          formulaId: 'plain',
          loadG: 16_500,
          riseK: 5,
          atMs: floor.nowMs,
        },
      ],
    });
  });

  test('ice counts for what it takes up: 1.002 kg of it in 10 kg of 20 °C are water of 10 °C (trade.md)', () => {
    const floor = mixingFloor(PLAIN_10);
    floor.ok(water(floor, 'A1', { waterC: 20, waterG: 10_000, iceG: 1002 }));
    floor.bringTo('A1', 'turn-out');
    floor.ok(dough(floor, 'A1', 22));
    const learned = floor.recorded.map(({ event }) => event).findLast((event) => event.type === 'riseLearned');
    expect(learned?.riseK).toBeCloseTo(22 - (22 + 22 + 10) / 3, 2);
  });

  test('the next dough’s water is reckoned with it, of this formula, and of others on this mixer; not on another mixer', () => {
    const floor = mixed(PLAIN_10, { ...PLAIN_10, min: 60 }, { ...POOLISH_5, min: 60 });
    floor.ok(dough(floor, 'A1', 26.5));
    expect(riseOf(floor.state, 'spiral', 'plain', 16_500)).toMatchObject({ riseK: 5.5, count: 1, from: 'load' });
    expect(riseOf(floor.state, 'spiral', 'plain', 50_000)).toMatchObject({ riseK: 5.5, from: 'formula' });
    expect(riseOf(floor.state, 'spiral', 'poolish-loaf', 16_500)).toMatchObject({ riseK: 5.5, from: 'mixer' });
    expect(riseOf(floor.state, 'fork', 'plain', 16_500)).toMatchObject({ riseK: 2, from: 'document' });
    floor.ok(water(floor, 'A2'));
    expect(floor.piece('A2').water?.riseK).toBe(5.5);
  });

  test('read again, the last counts; undone, the one before does again', () => {
    const floor = mixed(PLAIN_10);
    floor.ok(dough(floor, 'A1', 26));
    const commandId = floor.ok(dough(floor, 'A1', 25));
    expect(riseOf(floor.state, 'spiral', 'plain', 16_500)).toMatchObject({ riseK: 4, count: 1 });
    floor.ok({ type: 'undoCommand', commandId });
    expect(riseOf(floor.state, 'spiral', 'plain', 16_500)).toMatchObject({ riseK: 5, count: 1 });
    expect(evolveAll(EMPTY_STATE, floor.recorded).rises).toEqual(floor.state.rises);
  });

  test('only of the dough, only from the last speed on, only for ten minutes of its rest, only where its water was said', () => {
    const floor = mixingFloor(PLAIN_10, { ...PLAIN_10, min: 60 });
    floor.ok(water(floor, 'A1'));
    floor.bringTo('A1', 'first-speed');
    expect(typesOf(floor, dough(floor, 'A1', 22))).toEqual(['temperatureRead']);
    floor.bringTo('A1', 'second-speed');
    expect(typesOf(floor, { type: 'readTemperature', workpieceId: floor.id('A1'), where: 'room', celsius: 22 })).toEqual([
      'temperatureRead',
    ]);
    expect(typesOf(floor, dough(floor, 'A1', 25.5))).toEqual(['temperatureRead', 'riseLearned']);
    floor.bringTo('A1', 'turn-out');
    floor.finish('A1', 'turn-out');
    expect(typesOf(floor.wait(10), dough(floor, 'A1', 25))).toEqual(['temperatureRead', 'riseLearned']);
    expect(typesOf(floor.wait(1), dough(floor, 'A1', 25))).toEqual(['temperatureRead']);
    floor.bringTo('A2', 'turn-out');
    expect(typesOf(floor, dough(floor, 'A2', 25))).toEqual(['temperatureRead']);
  });

  test('a dough elsewhere, without any water said, is only read', () => {
    const floor = levainFloor(PLAIN_20);
    floor.bringTo('P1', 'bulk');
    expect(typesOf(floor, dough(floor, 'P1', 25))).toEqual(['temperatureRead']);
  });
});

describe('Q13 a wild reading is asked about, not swallowed', () => {
  test('given water for 25 °C, when 31 °C is read, then it is refused with what was to be expected; said knowingly, it counts', () => {
    const floor = mixed(PLAIN_10);
    expect(refusalOf(floor, dough(floor, 'A1', 31))).toEqual({ code: 'wildReading', tag: 'A1', celsius: 31, expectedC: 25 });
    expect(refusalOf(floor, dough(floor, 'A1', 20.9))).toEqual({ code: 'wildReading', tag: 'A1', celsius: 20.9, expectedC: 25 });
    expect(floor.state.rises).toEqual({});
    expect(typesOf(floor, dough(floor, 'A1', 29))).toEqual(['temperatureRead', 'riseLearned']);
    floor.ok(dough(floor, 'A1', 31, true));
    expect(floor.recorded.map(({ event }) => event).findLast((event) => event.type === 'temperatureRead')).toMatchObject({
      celsius: 31,
      despite: ['wildReading'],
    });
    expect(riseOf(floor.state, 'spiral', 'plain', 16_500)).toMatchObject({ riseK: 10, count: 1 });
  });

  test('said knowingly where nothing was wild, it is an ordinary reading', () => {
    const floor = mixed(PLAIN_10);
    floor.ok(dough(floor, 'A1', 25.5, true));
    expect(floor.recorded.at(-2)?.event).not.toHaveProperty('despite');
  });

  test('without water, only what no bakehouse has is asked about', () => {
    const floor = mixingFloor(PLAIN_10);
    const read = (where: CommandOf<'readTemperature'>['where'], celsius: number): unknown =>
      refusalOf(floor, { type: 'readTemperature', workpieceId: floor.id('A1'), where, celsius });
    expect(read('dough', 44)).toBe('accepted');
    expect(read('dough', 77)).toEqual({ code: 'wildReading', tag: 'A1', celsius: 77, expectedC: 45 });
    expect(read('tap', -1)).toEqual({ code: 'wildReading', tag: 'A1', celsius: -1, expectedC: 0 });
    expect(read('core', 98)).toBe('accepted');
    expect(read('core', 230)).toEqual({ code: 'wildReading', tag: 'A1', celsius: 230, expectedC: 120 });
  });
});

describe('Q14 what was learned can be forgotten', () => {
  test('of one formula on a mixer, or of all; refused where there is nothing, or no such mixer', () => {
    const floor = mixed(PLAIN_10, POOLISH_5);
    floor.ok(dough(floor, 'A1', 26));
    const forget = (said: Partial<CommandOf<'forgetRise'>>): FloorCommand => ({ type: 'forgetRise', mixerId: 'spiral', ...said });
    expect(refusalOf(floor, forget({ formulaId: 'rich' }))).toEqual({ code: 'nothingChanges' });
    expect(refusalOf(floor, forget({ mixerId: 'fork' }))).toEqual({ code: 'nothingChanges' });
    expect(refusalOf(floor, forget({ mixerId: 'whisk' }))).toEqual({ code: 'mixerUnknown', mixerId: 'whisk' });
    floor.ok(forget({ formulaId: 'plain' }));
    expect(riseOf(floor.state, 'spiral', 'plain', 16_500)).toMatchObject({ riseK: 4, from: 'custom' });
    floor.ok(dough(floor, 'A1', 26));
    floor.ok(forget({}));
    expect(floor.state.rises).toEqual({});
  });
});

describe('Q15 the floor learns a mixer that it does not know', () => {
  /** Doughs one after another on the floor, each with the water that the floor says, out of a mixer that warms by `trueK`. */
  function mornings(trueK: number, noiseK: readonly number[]): Floor {
    const listed = noiseK.map((_, index) => ({ ...PLAIN_10, min: index * 30 }));
    const floor = changedFloor(() => {}, ...listed);
    for (const [index, offK] of noiseK.entries()) {
      const tag = `A${index + 1}`;
      const { riseK } = riseOf(floor.state, 'spiral', 'plain', 16_500);
      const waterC = 3 * (25 - riseK) - 44;
      floor.ok(water(floor, tag, { waterC }));
      floor.bringTo(tag, 'turn-out');
      const readC = Math.round(((44 + waterC) / 3 + trueK + offK) * 10) / 10;
      floor.ok(dough(floor, tag, readC, true));
      floor.finish(tag, 'turn-out');
    }
    return floor;
  }

  const learnedK = (floor: Floor): number => riseOf(floor.state, 'spiral', 'plain', 16_500).riseK;

  test('whatever it is, within half a kelvin after five doughs of which each is off by up to half a kelvin', () => {
    const random = new Random(5, 'rise');
    for (let mixer = 0; mixer < 60; mixer += 1) {
      const trueK = random.whole(10, 90) / 10;
      const floor = mornings(
        trueK,
        Array.from({ length: 5 }, () => random.whole(-50, 50) / 100),
      );
      expect(Math.abs(learnedK(floor) - trueK)).toBeLessThanOrEqual(0.5);
    }
  });

  test('one dough that is 8 K off does not move it by more than half a kelvin', () => {
    const random = new Random(5, 'outlier');
    for (let mixer = 0; mixer < 60; mixer += 1) {
      const trueK = random.whole(20, 80) / 10;
      const noiseK = Array.from({ length: 5 }, () => random.whole(-50, 50) / 100);
      const outlierK = random.chance(0.5) ? 8 : -8;
      const [calm, startled] = [mornings(trueK, noiseK), mornings(trueK, [...noiseK, outlierK])];
      expect(Math.abs(learnedK(startled) - learnedK(calm))).toBeLessThanOrEqual(0.5);
    }
  });

  test('how sure it is, is said: doughs that differ more spread more', () => {
    const spreadOf = (...noiseK: readonly number[]): number =>
      riseOf(mornings(5, noiseK).state, 'spiral', 'plain', 16_500).spreadK ?? Number.NaN;
    expect(spreadOf(-0.1, 0.1, 0, 0.1, -0.1)).toBeLessThan(spreadOf(-1.5, 1.5, 0.2, 1.2, -1.2));
  });

  test('a mixer that has always varied may vary: four spreads of it are not wild', () => {
    const floor = mornings(5, [-1.5, 1.5, 0.5, 1.4, -1.4, 0]);
    const { riseK, spreadK } = riseOf(floor.state, 'spiral', 'plain', 16_500, floor.id('A6'));
    expect(spreadK ?? 0).toBeGreaterThan(1);
    const last = floor.piece('A6').water;
    const expectedC = (44 + (last?.waterC ?? 0)) / 3 + riseK;
    const within = Math.round((expectedC + 4 * (spreadK ?? 0) - 0.2) * 10) / 10;
    expect(typesOf(floor, dough(floor, 'A6', within))).toEqual(['temperatureRead', 'riseLearned']);
    expect(refusalOf(floor, dough(floor, 'A6', within + 0.5))).toMatchObject({ code: 'wildReading' });
  });
});
