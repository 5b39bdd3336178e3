import { describe, expect, test } from 'vitest';
import { coreLines } from '../../display/phone/bake-texts.ts';
import { coreCurve } from '../../display/phone/core-curve.ts';
import { coreTexts } from '../../display/wall/core-texts.ts';
import type { CoreHeat } from '../../shared/floor/core-heat.ts';
import { assert } from '../../shared/result.ts';
import type { Floor } from './support/floor.ts';
import { ovenHouse } from './support/oven-house.ts';

const MINUTE_MS = 60_000;
const TAG = 'R1';
const PHASES = [{ minutes: 25 }];

function read(floor: Floor, minutes: number, celsius: number): Floor {
  floor.wait(minutes).ok({ type: 'readTemperature', workpieceId: floor.id(TAG), where: 'core', celsius });
  return floor;
}

function core(floor: Floor): CoreHeat {
  const found = floor.due(TAG).core;
  assert(found !== null, 'something is known of the core');
  return found;
}

/** Minutes from the start of the bake until it is due. */
function dueMin(floor: Floor): number {
  const { dueMs, startedMs } = floor.due(TAG);
  return (dueMs - (startedMs ?? 0)) / MINUTE_MS;
}

describe('OV4 readings of the core move the end of a bake', () => {
  // The design's worked case, 50 °C at 10 min, 70 °C at 14 min: 90 °C at 22.60 min with the plateau at 100 °C; computed twice, apart.
  test('50 °C at 10 min and 70 °C at 14 min have 90 °C at 22.6 min, at the sea', () => {
    const floor = ovenHouse({ phases: PHASES, coreC: 90 });
    expect(floor.due(TAG).core).toBeNull();
    read(floor, 10, 50);
    expect(core(floor).forecast.kind).toBe('needsAnother');
    expect(dueMin(floor)).toBe(25);
    read(floor, 4, 70);
    expect(dueMin(floor)).toBeCloseTo(22.6, 1);
    const { between } = core(floor);
    assert(between !== null && between.toMs !== null, 'a range is told');
    expect(between.fromMs).toBeLessThan(floor.due(TAG).dueMs);
    expect(between.toMs).toBeGreaterThan(floor.due(TAG).dueMs);
  });

  test('nothing is said while the core lags, nor by readings that fall', () => {
    const floor = read(read(ovenHouse({ phases: PHASES, coreC: 90 }), 4, 27), 2, 31);
    expect(core(floor).forecast.kind).toBe('lag');
    expect(dueMin(floor)).toBe(25);
    expect(core(read(read(ovenHouse({ phases: PHASES, coreC: 90 }), 10, 70), 4, 65)).forecast.kind).toBe('noRise');
  });

  test('never before the earliest nor after the latest of the method: the core is needed, not enough', () => {
    const quick = read(read(ovenHouse({ phases: PHASES, coreC: 90, minutes: { earliest: 24, latest: 30 } }), 10, 50), 4, 70);
    expect(dueMin(quick)).toBe(24);
    const slow = read(read(ovenHouse({ phases: PHASES, coreC: 90, minutes: { earliest: 20, latest: 30 } }), 20, 60), 4, 65);
    expect(dueMin(slow)).toBe(30);
  });

  test('read at its target it is due at once; more time counts on top', () => {
    const floor = read(ovenHouse({ phases: PHASES, coreC: 90 }), 20, 91);
    expect(core(floor)).toMatchObject({ isReached: true, reachesMs: floor.nowMs });
    expect(dueMin(floor)).toBe(20);
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id(TAG), stepId: 'take-out', minutes: 2 });
    expect(dueMin(floor)).toBe(22);
  });

  test('undone readings leave the bake as it was', () => {
    const floor = read(ovenHouse({ phases: PHASES, coreC: 90 }), 10, 50);
    const commandId = floor.wait(4).ok({ type: 'readTemperature', workpieceId: floor.id(TAG), where: 'core', celsius: 70 });
    floor.ok({ type: 'undoCommand', commandId });
    expect(dueMin(floor)).toBe(25);
  });
});

describe('OV5 what cannot be reached here is said, and a bake is read anew', () => {
  // Water boils at 94.65 °C at 1600 m (psychrolib; the design's table).
  test('96 °C at 1600 m, before anybody reads', () => {
    const floor = ovenHouse({ phases: PHASES, coreC: 96, altitudeM: 1600 });
    expect(core(floor)).toMatchObject({ forecast: { kind: 'unreachable' }, reachesMs: null });
    expect(core(floor).plateauC).toBeCloseTo(94.65, 1);
    expect(dueMin(read(floor, 20, 93))).toBe(25);
    expect(coreTexts(core(floor), 'UTC', 'C')).toEqual(['core target cannot be reached here']);
  });

  test('what was read of the dough before it went in is none of the bake', () => {
    const floor = ovenHouse({ phases: PHASES, coreC: 90 });
    read(floor, 10, 70)
      .wait(1)
      .ok({
        type: 'correctTime',
        workpieceId: floor.id(TAG),
        stepId: 'bake',
        edge: 'start',
        toMs: floor.nowMs,
      });
    expect(floor.due(TAG).core).toBeNull();
  });

  test('without a target nothing is reckoned', () => {
    const floor = read(ovenHouse({ phases: PHASES, coreC: null }), 10, 70);
    expect(floor.due(TAG).core).toBeNull();
  });
});

describe('OV6 wall and card say what was read and when the core is there', () => {
  test('the same in fewer and fewer words', () => {
    const floor = read(read(ovenHouse({ phases: PHASES, coreC: 90 }), 10, 50), 4, 60);
    const texts = coreTexts(core(floor), 'UTC', 'C');
    expect(texts[0]).toMatch(/^core read 60 °C \d\d:\d\d · 90 °C \d\d:\d\d–\d\d:\d\d$/);
    expect(texts).toContainEqual(expect.stringMatching(/^90 °C about \d\d:\d\d$/));
    expect(texts.at(-1)).toBe('core 60 °C');
    expect(coreTexts(core(read(floor, 9, 90.5)), 'UTC', 'F')[0]).toMatch(/^core read 195 °F \d\d:\d\d · 194 °F reached$/);
  });

  test('the card says it whole, or why nothing can be said', () => {
    const lines = (floor: Floor): readonly string[] => coreLines(core(floor), 'UTC', 'C');
    const floor = read(ovenHouse({ phases: PHASES, coreC: 90 }), 10, 50);
    expect(lines(floor)[1]).toBe('One more reading tells when.');
    expect(lines(read(floor, 4, 70))).toEqual([
      expect.stringMatching(/^core read 70 °C \d\d:\d\d$/),
      expect.stringMatching(/^90 °C about \d\d:\d\d$/),
      expect.stringMatching(/^it may be \d\d:\d\d to \d\d:\d\d$/),
    ]);
    expect(lines(ovenHouse({ phases: PHASES, coreC: 96, altitudeM: 1600 }))).toEqual([
      'core 96 °C cannot be reached here: water boils at 95 °C',
    ]);
  });

  test('the curve goes through two readings, up to the target when it is there; its end holds the whole range', () => {
    const floor = read(read(ovenHouse({ phases: PHASES, coreC: 90 }), 10, 50), 4, 70);
    const curve = coreCurve(core(floor), floor.due(TAG).dueMs, floor.nowMs);
    assert(curve !== null, 'there is a curve');
    const at = (atMs: number): number => nearest(curve.points, atMs);
    for (const { atMs, celsius } of curve.readings) expect(Math.abs(at(atMs) - celsius)).toBeLessThan(2.5);
    expect(Math.abs(at(curve.reachesMs ?? 0) - 90)).toBeLessThan(1.5);
    expect(curve.toMs).toBeGreaterThan(curve.between?.toMs ?? Number.POSITIVE_INFINITY);
    expect(coreCurve(core(ovenHouse({ phases: PHASES, coreC: 96, altitudeM: 1600 })), 0, 0)).toBeNull();
  });
});

function nearest(points: readonly { readonly atMs: number; readonly coreC: number }[], atMs: number): number {
  return [...points].sort((a, b) => Math.abs(a.atMs - atMs) - Math.abs(b.atMs - atMs))[0]?.coreC ?? Number.NaN;
}
