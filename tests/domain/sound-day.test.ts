import { describe, expect, test } from 'vitest';
import { dayOfBatches, WorkingDay, type Crew } from './support/working-day.ts';

const MINUTE_MS = 60_000;
const TEN_MINUTES_MS = 10 * MINUTE_MS;
/** Hours in which nothing sounds at all are the night's, and make no day quieter. */
const NIGHT_MS = 60 * MINUTE_MS;

/** As close as the batches of the demo day: nine in 160 minutes. */
const APART_MIN = 18;
/** Long enough for the last loaf out of the cold. */
const HOURS = 30;

/** Common practice as the writers of this test understand it, not measured. */
const CREW: Crew = {
  hands: 4,
  comesS: { least: 10, most: 60 },
  seesAheadS: 60,
  heldUp: { share: 0.1, leastS: 90, mostS: 240 },
  hearsS: { least: 5, most: 20 },
};

/** How long the day was that was not night, from the first sound to the last. */
function wakingMs(soundsMs: readonly number[]): number {
  const gaps = soundsMs.slice(1).map((atMs, index) => atMs - (soundsMs[index] ?? atMs));
  return gaps.filter((gapMs) => gapMs < NIGHT_MS).reduce((sum, gapMs) => sum + gapMs, 0);
}

function mostInTenMinutes(soundsMs: readonly number[]): number {
  return Math.max(...soundsMs.map((fromMs) => soundsMs.filter((atMs) => atMs >= fromMs && atMs < fromMs + TEN_MINUTES_MS).length));
}

// Targets informed by EEMUA 191's figures for alarms of one operator, from memory; no conformance is claimed.
describe('S17 a day of 20 batches, worked by hands that follow the wall', () => {
  test.each([1, 2, 3, 4, 5, 6, 7, 8])('seed %i: under 2 sounds in ten minutes on average, and never ten in any', (seed) => {
    const { floor, soundsMs } = new WorkingDay(dayOfBatches(20, APART_MIN), CREW, seed).work(HOURS);
    const pieces = Object.values(floor.state.workpieces);
    expect(floor.recorded.filter(({ event }) => event.type === 'callSounded')).toHaveLength(soundsMs.length);
    expect(pieces.filter(({ finishedMs }) => finishedMs === null)).toEqual([]);
    expect(floor.recorded.filter(({ event }) => event.type === 'workpieceDiscarded')).toEqual([]);
    expect(soundsMs.length / (wakingMs(soundsMs) / TEN_MINUTES_MS)).toBeLessThan(2);
    expect(mostInTenMinutes(soundsMs)).toBeLessThan(10);
  });

  test('what is counted would be noticed: hands that never look ahead and come late make it too much', () => {
    const slow: Crew = { ...CREW, hands: 2, seesAheadS: 0, comesS: { least: 60, most: 240 }, hearsS: { least: 60, most: 300 } };
    const { soundsMs } = new WorkingDay(dayOfBatches(20, APART_MIN), slow, 1).work(HOURS);
    expect(mostInTenMinutes(soundsMs)).toBeGreaterThanOrEqual(10);
  });
});
