import { describe, expect, test } from 'vitest';
import { axisX } from '../../display/wall/axis.ts';
import { rowModel } from '../../display/wall/row-model.ts';
import { stripModel, type StripModel } from '../../display/wall/strip-model.ts';
import { textWidthPx } from '../../display/parts/text-width.ts';
import { rowOf } from '../../shared/floor/board.ts';
import type { Floor } from './support/floor.ts';
import { levainFloor, feedPot, POT } from './support/levain-house.ts';

const MINUTE_MS = 60_000;
const WIDTH_PX = 900;
const NEAR_PX = 42;

function stripOf(floor: Floor, tag: string): StripModel {
  const row = rowOf(floor.state, floor.id(tag), floor.nowMs);
  if (row === null) throw new Error(`${tag} is off the floor`);
  return stripModel(floor.state, [row], floor.nowMs, WIDTH_PX, NEAR_PX);
}

const at = (minutes: number): number => axisX(minutes * MINUTE_MS, WIDTH_PX);

describe('the strip of a ferment', () => {
  test('shows from when to when it is ripe, by the method’s earliest and latest', () => {
    const floor = levainFloor(POT);
    expect(stripOf(floor, 'L1').ripe).toBeNull();
    feedPot(floor, 'L1');
    const strip = stripOf(floor, 'L1');
    // The house's levain ripens from 6 h to 14 h after its feed; the axis reaches 12 h.
    expect(strip.ripe).toEqual({ fromPx: at(360), toPx: WIDTH_PX });
    expect(strip.name).toBe('Levain · ripe 09:00–17:00');
    floor.wait(400);
    expect(stripOf(floor, 'L1').ripe).toEqual({ fromPx: 0, toPx: at(440) });
    floor.wait(440);
    expect(stripOf(floor, 'L1')).toMatchObject({ ripe: null, name: 'Levain' });
  });
});

describe('the strip of a side prep', () => {
  const BUNS = { formula: 'buns', min: 60, doughG: 5000, cuts: [{ product: 'bun', pieces: 40 }] };

  test('ends where it joins, with the tag of its dough beside it', () => {
    const floor = levainFloor(BUNS);
    const strip = stripOf(floor, 'S1');
    // Weighing takes 5 min from 04:00 on; the soaker goes in at the step after it.
    expect(strip.join).toMatchObject({ fromPx: at(65), toPx: at(65), text: 'B1' });
    expect(strip.join?.textPx).toBeGreaterThan(at(65));
    expect(strip.way?.toPx).toBe(at(65));
    expect(stripOf(floor, 'B1').join).toBeNull();
  });

  test('the tag stays on the axis where the prep joins at its end', () => {
    const floor = levainFloor({ ...BUNS, min: 650 });
    const { join } = stripOf(floor, 'S1');
    expect(join).not.toBeNull();
    expect((join?.textPx ?? 0) + textWidthPx('B1', NEAR_PX)).toBeLessThanOrEqual(WIDTH_PX);
  });

  test('a row of a prep past its limit says so', () => {
    const floor = levainFloor(BUNS);
    const row = rowOf(floor.state, floor.id('S1'), floor.nowMs);
    if (row === null) throw new Error('S1 is off the floor');
    expect(rowModel(floor.state, [{ ...row, role: 'lost', stage: 'prep' }], floor.nowMs).notes).toContain('past limit');
  });
});
