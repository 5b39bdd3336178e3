import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coolingPicture, pictureText } from '../../display/phone/cooling-picture.ts';
import { callsToRaise } from '../../shared/floor/calls.ts';
import type { Cooling } from '../../shared/floor/cooling.ts';
import { roleAt } from '../../shared/floor/due.ts';
import { holdingOf, markAt, type Holding } from '../../shared/floor/holding.ts';
import { isToBeDiscarded, rowVerb } from '../../display/parts/row-verb.ts';
import { rowOf, type Row } from '../../shared/floor/board.ts';
import { assert } from '../../shared/result.ts';
import type { RuleSetName } from '../../shared/trade/holding-rules.ts';
import { Floor } from './support/floor.ts';
import { cheeseInTheCold, custardFromTheStove, move, readFood } from './support/kept-house.ts';
import { SERVER_DEVICE } from './support/ids.ts';

const MINUTE_MS = 60_000;
const SETS: readonly RuleSetName[] = ['us-food-code', 'england', 'australia'];

function holding(floor: Floor, tag: string): Holding {
  const found = holdingOf(floor.state, floor.piece(tag));
  assert(found !== null, `${tag} has to be kept`);
  return found;
}

/** Minutes from now until the limit; null where none runs. */
function limitMin(floor: Floor, tag: string): number | null {
  const { limit } = holding(floor, tag);
  return limit === null ? null : (limit.limitMs - floor.nowMs) / MINUTE_MS;
}

function outMin(floor: Floor, tag: string): number {
  return markAt(holding(floor, tag), floor.nowMs).outMin;
}

describe('HL1 time out of the cold is accumulated over the places where food stood, as each rule set counts it', () => {
  test.each(SETS)('%s: in the cold no time runs', (ruleSet) => {
    const floor = cheeseInTheCold({ ruleSet }).wait(300);
    expect(outMin(floor, 'Cf1')).toBe(0);
    expect(limitMin(floor, 'Cf1')).toBeNull();
    expect(markAt(holding(floor, 'Cf1'), floor.nowMs).control).toBe('cold');
  });

  test('US 3-501.19(B): 4 h from when it first came out, whatever came after', () => {
    const floor = move(cheeseInTheCold({ ruleSet: 'us-food-code' }).wait(60), 'Cf1', 'bench');
    expect(limitMin(floor, 'Cf1')).toBe(240);
    expect(holding(floor, 'Cf1').limit).toMatchObject({ why: 'time', clause: '3-501.19(B)' });
    move(floor.wait(30), 'Cf1', 'cold-room');
    expect(limitMin(floor, 'Cf1')).toBe(210);
    move(floor.wait(120), 'Cf1', 'bench');
    expect(limitMin(floor, 'Cf1')).toBe(90);
  });

  test('US 3-501.19(C): 6 h where the air was read and never above 21 °C, until that reading is too old or another is warmer', () => {
    const cool = cheeseInTheCold({ ruleSet: 'us-food-code' });
    cool.ok({ type: 'readPlace', placeId: 'bench', celsius: 18 });
    move(cool, 'Cf1', 'bench');
    // A reading of the air stands for four hours: then nobody knows any more how warm it is.
    expect(limitMin(cool, 'Cf1')).toBe(240);
    cool.wait(200).ok({ type: 'readPlace', placeId: 'bench', celsius: 19 });
    expect(limitMin(cool, 'Cf1')).toBe(160);
    expect(holding(cool, 'Cf1').limit?.limitMs).toBe(cool.nowMs + 160 * MINUTE_MS);
    cool.wait(60).ok({ type: 'readPlace', placeId: 'bench', celsius: 24 });
    expect(limitMin(cool, 'Cf1')).toBe(0);
    const unread = move(cheeseInTheCold({ ruleSet: 'us-food-code', benchC: 18 }), 'Cf1', 'bench');
    expect(limitMin(unread, 'Cf1')).toBe(240);
  });

  test('England, paragraph 5(1): 4 h once; a second time out is one too many', () => {
    const floor = move(cheeseInTheCold({ ruleSet: 'england' }), 'Cf1', 'bench');
    expect(limitMin(floor, 'Cf1')).toBe(240);
    expect(holding(floor, 'Cf1').limit).toMatchObject({ why: 'time', clause: 'paragraph 5(1)' });
    move(floor.wait(60), 'Cf1', 'cold-room');
    expect(limitMin(floor, 'Cf1')).toBeNull();
    move(floor.wait(60), 'Cf1', 'bench');
    expect(holding(floor, 'Cf1').limit).toMatchObject({ limitMs: floor.nowMs, why: 'secondSpell', clause: 'paragraph 5(1)' });
  });

  test('Australia, two-hour/four-hour rule: all times together; back into the cold within 2 h only', () => {
    const floor = move(cheeseInTheCold({ ruleSet: 'australia' }), 'Cf1', 'bench');
    move(floor.wait(50), 'Cf1', 'cold-room');
    expect(outMin(floor, 'Cf1')).toBe(50);
    expect(limitMin(floor, 'Cf1')).toBeNull();
    move(floor.wait(500), 'Cf1', 'bench');
    expect(limitMin(floor, 'Cf1')).toBe(190);
    expect(markAt(holding(floor, 'Cf1'), floor.nowMs).backByMs).toBe(floor.nowMs + 70 * MINUTE_MS);
    move(floor.wait(71), 'Cf1', 'cold-room');
    expect(holding(floor, 'Cf1').limit).toMatchObject({ limitMs: floor.nowMs, why: 'wentBackLate' });
  });

  test('the cold of each rule set is its own: 7 °C keeps food in England, not in the US or Australia', () => {
    const kept = SETS.map((ruleSet) => {
      const floor = cheeseInTheCold({ ruleSet });
      floor.ok({ type: 'readPlace', placeId: 'cold-room', celsius: 7 });
      return [ruleSet, markAt(holding(floor, 'Cf1'), floor.nowMs).control];
    });
    expect(Object.fromEntries(kept)).toEqual({ 'us-food-code': 'none', england: 'cold', australia: 'none' });
  });

  test('a door that stands open warms the air and not the food', () => {
    const floor = cheeseInTheCold({ ruleSet: 'england' });
    floor.ok({ type: 'openPlace', placeId: 'cold-room', minutes: 30 });
    expect(limitMin(floor.wait(10), 'Cf1')).toBeNull();
    expect(outMin(floor, 'Cf1')).toBe(0);
  });

  test('food that is read too warm in the cold has been out since it was last known to be cold there', () => {
    const floor = readFood(cheeseInTheCold({ ruleSet: 'australia' }).wait(60), 'Cf1', 4);
    readFood(floor.wait(90), 'Cf1', 11);
    expect(outMin(floor, 'Cf1')).toBe(90);
    readFood(floor.wait(20), 'Cf1', 5);
    expect(outMin(floor.wait(60), 'Cf1')).toBe(110);
    expect(limitMin(floor, 'Cf1')).toBeNull();
  });
});

/** A day of one tub: where it goes, and how many minutes it stands there. */
const moves = fc.array(
  fc.record({ placeId: fc.constantFrom('bench', 'warm-shelf', 'cold-room', 'cooling-rack'), minutes: fc.integer({ min: 1, max: 150 }) }),
  { minLength: 1, maxLength: 8 },
);

function wander(floor: Floor, way: readonly { readonly placeId: string; readonly minutes: number }[]): Floor {
  for (const { placeId, minutes } of way) {
    if (floor.piece('Cf1').placeId !== placeId) move(floor, 'Cf1', placeId);
    floor.wait(minutes);
  }
  return floor;
}

function limitMs(floor: Floor): number {
  return holding(floor, 'Cf1').limit?.limitMs ?? Number.POSITIVE_INFINITY;
}

describe('HL2 whatever food went through', () => {
  test('a stay split in two at a place like it changes nothing', () => {
    fc.assert(
      fc.property(fc.constantFrom(...SETS), moves, fc.integer({ min: 0, max: 7 }), (ruleSet, way, at) => {
        const like: Readonly<Record<string, string>> = { bench: 'cooling-rack', 'cooling-rack': 'bench' };
        const split = way.flatMap((stay, index) => {
          const other = like[stay.placeId];
          if (index !== at % way.length || other === undefined || stay.minutes < 2) return [stay];
          return [
            { ...stay, minutes: 1 },
            { placeId: other, minutes: stay.minutes - 1 },
          ];
        });
        const [whole, parted] = [way, split].map((one) => wander(cheeseInTheCold({ ruleSet }), one));
        expect(limitMs(parted as Floor)).toBe(limitMs(whole as Floor));
        expect(outMin(parted as Floor, 'Cf1')).toBeCloseTo(outMin(whole as Floor, 'Cf1'), 6);
      }),
      { numRuns: 60 },
    );
  });

  test('moving it into the cold never brings its limit nearer, while it may still go back', () => {
    fc.assert(
      fc.property(fc.constantFrom(...SETS), moves, (ruleSet, way) => {
        const floor = wander(cheeseInTheCold({ ruleSet }), way);
        const before = limitMs(floor);
        const { backByMs, control } = markAt(holding(floor, 'Cf1'), floor.nowMs);
        const mayGoBack = ruleSet !== 'australia' || control === 'cold' || (backByMs !== null && floor.nowMs <= backByMs);
        if (floor.piece('Cf1').placeId !== 'cold-room') move(floor, 'Cf1', 'cold-room');
        if (mayGoBack || before <= floor.nowMs) expect(limitMs(floor)).toBeGreaterThanOrEqual(Math.min(before, floor.nowMs));
        if (mayGoBack && before > floor.nowMs) expect(limitMs(floor)).toBeGreaterThanOrEqual(before);
      }),
      { numRuns: 80 },
    );
  });

  test('time alone changes nothing of a limit', () => {
    fc.assert(
      fc.property(fc.constantFrom(...SETS), moves, fc.integer({ min: 1, max: 900 }), (ruleSet, way, minutes) => {
        const floor = wander(cheeseInTheCold({ ruleSet }), way);
        const before = limitMs(floor);
        expect(limitMs(floor.wait(minutes))).toBe(before);
      }),
      { numRuns: 40 },
    );
  });
});

describe('HL3 what comes from the heat has to cool by its rule', () => {
  test('US 3-501.14(A): 21 °C in 2 h and 5 °C in 6 h from 57 °C, as it is read', () => {
    const floor = custardFromTheStove({ ruleSet: 'us-food-code' });
    readFood(floor, 'Cu1', 80);
    readFood(floor.wait(20), 'Cu1', 57);
    const from57Ms = floor.nowMs;
    readFood(floor.wait(100), 'Cu1', 20);
    const [first, second] = holding(floor, 'Cu1').cooling?.steps ?? [];
    expect(first).toMatchObject({ byMs: from57Ms + 120 * MINUTE_MS, isSeen: true, passes: true, clause: '3-501.14(A)(1)' });
    expect(second).toMatchObject({ byMs: from57Ms + 360 * MINUTE_MS, isSeen: false, clause: '3-501.14(A)(2)' });
    expect(holding(floor, 'Cu1').limit).toMatchObject({ limitMs: from57Ms + 360 * MINUTE_MS, why: 'cooling', clause: '3-501.14(A)(2)' });
    readFood(floor.wait(120), 'Cu1', 4.5);
    expect(holding(floor, 'Cu1').limit).toBeNull();
  });

  test('read above 21 °C after 2 h it is past its limit since then', () => {
    const floor = readFood(custardFromTheStove({ ruleSet: 'us-food-code' }), 'Cu1', 57);
    const startMs = floor.nowMs;
    readFood(floor.wait(130), 'Cu1', 30);
    expect(holding(floor, 'Cu1').limit).toMatchObject({ limitMs: startMs + 120 * MINUTE_MS, why: 'cooling', clause: '3-501.14(A)(1)' });
  });

  test('it calls at once where a reading says that it will not pass, early enough to act; where one says that it will, only before the limit', () => {
    const slow = readFood(custardFromTheStove({ ruleSet: 'australia' }), 'Cu1', 60);
    readFood(slow.wait(30), 'Cu1', 52);
    expect(holding(slow, 'Cu1').cooling?.steps[0]).toMatchObject({ passes: false, clause: '3.2.2 clause 7(3)(a)' });
    expect(holding(slow, 'Cu1').callMs).toBe(slow.nowMs);
    expect(roleAt(slow.due('Cu1'), slow.nowMs)).toBe('call');
    const quick = readFood(custardFromTheStove({ ruleSet: 'australia' }), 'Cu1', 60);
    readFood(quick.wait(30), 'Cu1', 33);
    expect(holding(quick, 'Cu1').cooling?.steps.every(({ passes }) => passes)).toBe(true);
    expect(holding(quick, 'Cu1').callMs).toBe(quick.nowMs + 60 * MINUTE_MS);
  });

  test('it is foreseen from where it stands now; of a place that nobody said as warm as the room', () => {
    const floor = readFood(custardFromTheStove({ ruleSet: 'australia' }), 'Cu1', 60);
    readFood(floor.wait(30), 'Cu1', 33);
    expect(holding(floor, 'Cu1').cooling?.ambientC).toBe(4);
    expect(holding(move(floor.wait(5), 'Cu1', 'bench'), 'Cu1').cooling).toMatchObject({ ambientC: 23 });
    expect(holding(floor, 'Cu1').cooling?.steps.some(({ passes }) => !passes)).toBe(true);
    const { id, stays, ...piece } = floor.piece('Cu1');
    const astray = { ...piece, id, placeId: null, stays: [...stays, { placeId: null, sinceMs: floor.nowMs }] };
    const unsaid = new Floor({ ...floor.state, workpieces: { ...floor.state.workpieces, [id]: astray } }, floor.nowMs);
    expect(holding(unsaid, 'Cu1').cooling).toMatchObject({ ambientC: 23 });
  });

  test('what nobody reads is not shown to be cold: by the end of the rule it is past its limit', () => {
    const floor = custardFromTheStove({ ruleSet: 'australia' });
    expect(limitMin(floor, 'Cu1')).toBe(360);
  });

  test('England, "as quickly as possible": in the cold before hot food has to be gone, and no figure after that', () => {
    const floor = custardFromTheStove({ ruleSet: 'england' });
    expect(holding(floor, 'Cu1').cooling).toBeNull();
    expect(limitMin(readFood(floor.wait(20), 'Cu1', 40), 'Cu1')).toBeNull();
    const left = move(custardFromTheStove({ ruleSet: 'england' }), 'Cu1', 'bench');
    expect(limitMin(left, 'Cu1')).toBe(120);
    expect(holding(left, 'Cu1').limit).toMatchObject({ why: 'cooling', clause: 'paragraph 7(2)' });
    move(left.wait(60), 'Cu1', 'cold-room');
    expect(limitMin(left, 'Cu1')).toBeNull();
  });
});

describe('HL4 what is filled takes the clock of its filling along', () => {
  /** Buns that are filled with custard which has been out for so long. */
  function filledBuns(ruleSet: RuleSetName, waitsMin: number): Floor {
    const floor = readFood(custardFromTheStove({ ruleSet }), 'Cu1', 55);
    readFood(floor.wait(90), 'Cu1', 15);
    readFood(floor.wait(60), 'Cu1', 4);
    floor.bringTo('Cu1', 'keep');
    floor.bringTo('M1', 'divide').finish('M1');
    floor.bringTo('M1b', 'fill');
    move(floor, 'Cu1', 'bench').wait(waitsMin);
    floor.finish('M1b');
    return floor;
  }

  test.each([
    ['us-food-code' as const, 180],
    ['australia' as const, null],
  ])('%s: the hour on the bench counts in the buns', (ruleSet, minutes) => {
    const floor = filledBuns(ruleSet, 60);
    expect(floor.piece('M1b').steps['fill']?.status).toBe('done');
    expect(outMin(floor, 'M1b')).toBe(60);
    expect(limitMin(floor, 'M1b')).toBe(minutes);
  });

  test.each([60, -60])('a clock that is set by %i min leaves it just as long, also where the tub has left the floor', (byMin) => {
    const floor = filledBuns('us-food-code', 60);
    expect(floor.piece('Cu1').finishedMs).not.toBeNull();
    floor.ok({ type: 'noteClockJump', byMs: byMin * MINUTE_MS }, { deviceId: SERVER_DEVICE });
    floor.nowMs += byMin * MINUTE_MS;
    expect(outMin(floor, 'M1b')).toBe(60);
    expect(limitMin(floor, 'M1b')).toBe(180);
  });

  test('plain buns of the same dough have no clock', () => {
    const floor = filledBuns('us-food-code', 10);
    expect(holdingOf(floor.state, floor.piece('M1a'))).toBeNull();
  });
});

describe('HL5 it calls before its limit, and there is a plain stop from it on', () => {
  function atLimit(): Floor {
    return move(cheeseInTheCold({ ruleSet: 'england' }), 'Cf1', 'bench').wait(240);
  }

  test('a call half an hour before, late ten minutes before, past limit from then on', () => {
    const floor = move(cheeseInTheCold({ ruleSet: 'england' }), 'Cf1', 'bench');
    const roles = [209, 210, 229, 230, 239, 240].map((minutes) => [minutes, roleAt(floor.due('Cf1'), floor.nowMs + minutes * MINUTE_MS)]);
    expect(roles).toEqual([
      [209, 'running'],
      [210, 'call'],
      [229, 'call'],
      [230, 'late'],
      [239, 'late'],
      [240, 'lost'],
    ]);
    floor.wait(240);
    expect(callsToRaise(floor.state, floor.nowMs)).toContainEqual(
      expect.objectContaining({ type: 'raiseCall', workpieceId: floor.id('Cf1'), level: 'lost' }),
    );
    expect(rowOf(floor.state, floor.id('Cf1'), floor.nowMs)?.stage).toBe('prep');
    expect(rowOf(floor.state, floor.id('Cf1'), floor.nowMs)?.holding).toMatchObject({
      ruleSet: 'england',
      limitMs: floor.nowMs,
      isNear: true,
    });
  });

  test('from there on wall and phone call for nothing but to discard it, until somebody responsible has decided; out of the oven it comes first', () => {
    const floor = atLimit();
    const row = (): Row => {
      const found = rowOf(floor.state, floor.id('Cf1'), floor.nowMs);
      assert(found !== null, 'Cf1 has a row');
      return found;
    };
    expect(row()).toMatchObject({ role: 'lost', holding: { isPast: true } });
    expect(rowVerb(row())).toBe('DISCARD');
    expect(isToBeDiscarded({ ...row(), verb: 'takeOut' })).toBe(false);
    floor.ok({ type: 'decideHolding', workpieceId: floor.id('Cf1'), reason: 'kept on ice, read 3 °C', minutes: 30 });
    expect(row()).toMatchObject({ holding: { isPast: false } });
    expect(rowVerb(row())).not.toBe('DISCARD');
  });

  test('what would use it is refused with the rule; reading, moving and discarding are not', () => {
    const floor = atLimit();
    const refusal = {
      code: 'pastHoldingLimit',
      tag: 'Cf1',
      limitMs: floor.nowMs,
      ruleSet: 'england',
      clause: 'paragraph 5(1)',
      why: 'time',
    };
    const into = floor.bringTo('Ch1', 'bulk-1').id('Ch1');
    const uses = [
      { type: 'finishStep' as const, workpieceId: floor.id('Cf1'), stepId: 'keep' },
      { type: 'drawFrom' as const, fromWorkpieceId: floor.id('Cf1'), toWorkpieceId: into, grams: 200 },
      { type: 'skipStep' as const, workpieceId: floor.id('Cf1'), stepId: 'keep', reason: 'used' },
    ];
    for (const command of uses) expect(floor.give(command).decision).toEqual({ ok: false, fault: refusal });
    readFood(floor, 'Cf1', 19);
    move(floor, 'Cf1', 'cold-room');
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('Cf1'), reason: 'Past its limit' });
  });

  test('a tap from before the limit counts, whenever it comes', () => {
    const floor = atLimit();
    const into = floor.id('Ch1');
    const draw = { type: 'drawFrom' as const, fromWorkpieceId: floor.id('Cf1'), toWorkpieceId: into, grams: 200 };
    expect(floor.give(draw, { tapMs: floor.nowMs - MINUTE_MS }).decision.ok).toBe(true);
  });

  test('the decision of the person responsible opens it for its minutes, with its reason; then the stop is back', () => {
    const floor = atLimit();
    const workpieceId = floor.id('Cf1');
    const commandId = floor.ok({ type: 'decideHolding', workpieceId, reason: 'Read 9 °C all the time', minutes: 20 });
    expect(floor.recorded.at(-1)?.event).toMatchObject({
      type: 'holdingDecided',
      ruleSet: 'england',
      clause: 'paragraph 5(1)',
      reason: 'Read 9 °C all the time',
      limitMs: floor.nowMs,
      untilMs: floor.nowMs + 20 * MINUTE_MS,
    });
    expect(limitMin(floor, 'Cf1')).toBe(20);
    const draw = { type: 'drawFrom' as const, fromWorkpieceId: workpieceId, toWorkpieceId: floor.id('Ch1'), grams: 200 };
    expect(floor.wait(19).give(draw).decision.ok).toBe(true);
    expect(floor.wait(1).give(draw).decision).toMatchObject({ ok: false, fault: { code: 'pastHoldingLimit' } });
    expect(commandId).not.toBe('');
  });

  test('what was filled while it was decided is used for as long, and no longer', () => {
    const floor = atLimit();
    floor.ok({ type: 'decideHolding', workpieceId: floor.id('Cf1'), reason: 'Read 9 °C', minutes: 30 });
    floor.ok({ type: 'drawFrom', fromWorkpieceId: floor.id('Cf1'), toWorkpieceId: floor.id('Ch1'), grams: 200 });
    expect(limitMin(floor, 'Ch1')).toBe(30);
  });

  test('undo takes a decision back; without a limit that runs there is nothing to decide', () => {
    const floor = atLimit();
    const commandId = floor.ok({ type: 'decideHolding', workpieceId: floor.id('Cf1'), reason: 'Read 9 °C', minutes: 20 });
    floor.ok({ type: 'undoCommand', commandId });
    expect(limitMin(floor, 'Cf1')).toBe(0);
    const cold = cheeseInTheCold({ ruleSet: 'england' });
    const decide = { type: 'decideHolding' as const, workpieceId: cold.id('Cf1'), reason: 'cold', minutes: 20 };
    expect(cold.give(decide).decision).toEqual({ ok: false, fault: { code: 'nothingChanges', tag: 'Cf1' } });
  });

  test('of two tubs the one that is not past its limit is drawn', () => {
    const floor = atLimit();
    const commandId = floor.ok({ type: 'planBatches', serviceDate: floor.piece('Cf1').serviceDate, batches: [batchOf(floor)] });
    expect(commandId).not.toBe('');
    const other = Object.values(floor.state.workpieces).find(({ formulaId, tag }) => formulaId === 'cheese-filling' && tag !== 'Cf1');
    assert(other !== undefined, 'a second tub is planned');
    floor.bringTo(other.tag, 'keep').bringTo('Ch1', 'top');
    const before = floor.piece(other.tag).grams;
    floor.finish('Ch1');
    expect(floor.piece(other.tag).grams).toBeLessThan(before);
  });

  function batchOf(floor: Floor): { formulaId: string; plannedStartMs: number; grams: number; cuts: [] } {
    return { formulaId: 'cheese-filling', plannedStartMs: floor.nowMs, grams: 8000, cuts: [] };
  }

  test('from the oven it comes out whatever its limit says', () => {
    const floor = move(cheeseInTheCold({ ruleSet: 'england' }), 'Cf1', 'bench').bringTo('Ch1', 'bake');
    const { startedMs } = floor.due('Ch1');
    expect(startedMs).not.toBeNull();
    floor.wait(600).finish('Ch1', 'take-out', { deviceId: SERVER_DEVICE });
    expect(floor.piece('Ch1').slotIds).toEqual([]);
    expect(limitMin(floor, 'Ch1')).toBe(120);
  });
});

describe('HL6 a cooling has its picture', () => {
  function cooling(floor: Floor): Cooling {
    const found = holding(floor, 'Cu1').cooling;
    assert(found !== null, 'the custard cools');
    return found;
  }

  test('its readings lie on it, the foreseen curve begins at the last and only falls, and the same is said in words', () => {
    const floor = readFood(custardFromTheStove({ ruleSet: 'us-food-code' }), 'Cu1', 78);
    expect(coolingPicture(cooling(custardFromTheStove({ ruleSet: 'us-food-code' })), floor.nowMs)).toBeNull();
    readFood(floor.wait(25), 'Cu1', 61);
    const picture = coolingPicture(cooling(floor), floor.nowMs);
    assert(picture !== null, 'it was read');
    const last = picture.dots[1];
    const curve = picture.foreseen.split(' ').map((pair) => pair.split(',').map(Number));
    expect(picture.dots).toHaveLength(2);
    expect(curve[0]).toEqual([last?.x, last?.y]);
    expect(last?.x).toBe(picture.nowX);
    for (const [index, [, y]] of curve.entries()) expect(y).toBeGreaterThanOrEqual(curve[Math.max(0, index - 1)]?.[1] ?? 0);
    expect(picture.corridor.map(({ toC }) => toC)).toEqual([21, 5]);
    const text = pictureText(cooling(floor), 'UTC', 'C');
    expect(text).toMatch(/^Cooling: 61 °C \d\d:\d\d\. 21 °C by \d\d:\d\d: will not pass, expected/);
  });
});
