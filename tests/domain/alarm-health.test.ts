import { describe, expect, test } from 'vitest';
import {
  alarmHealth,
  callsByDate,
  CUSTOMARY,
  WINDOW_MS,
  workedWindows,
  type Called,
  type HealthAids,
  type Held,
} from '../../shared/records/alarm-health.ts';

const MINUTE_MS = 60_000;
/** The beginning of a window. */
const SIX = Date.UTC(2026, 2, 7, 6);

/** Takes the value that stands at the share, without anything between two: enough where counts are odd. */
const AIDS: HealthAids = {
  quantile: (values, share) => [...values].sort((a, b) => a - b)[Math.round((values.length - 1) * share)] ?? Number.NaN,
  about: (_offender, done) => ({
    verb: 'turnOut',
    nth: null,
    advice: done.length < 3 ? null : { by: 'coming', fromMin: 10, toMin: 10 + Math.round(done[0]?.afterDueMin ?? 0) },
  }),
};

function at(minutes: number): number {
  return SIX + minutes * MINUTE_MS;
}

function call(raisedMin: number, told: Partial<Called> = {}): Called {
  return {
    piece: 1,
    step: 'turn-out',
    level: 'call',
    dueMs: at(raisedMin),
    raisedMs: at(raisedMin),
    heardMs: null,
    endedMs: at(raisedMin + 2),
    became: 'done',
    formula: 'country',
    subject: { kind: 'formula', id: 'country' },
    isDoneAtOnce: true,
    pieces: null,
    ...told,
  };
}

function health(calls: readonly Called[], holds: readonly Held[] = [], taps: readonly number[] = []): ReturnType<typeof alarmHealth> {
  return alarmHealth(calls, holds, workedWindows(taps.map(at)), at(24 * 60), AIDS);
}

describe('AH2 what the standards of alarm systems measure', () => {
  test('calls in ten minutes: mean over the windows in which the house worked, the most, and floods of more than ten', () => {
    const flood = Array.from({ length: 11 }, (_, index) => call(20 + index * 0.5, { piece: index }));
    const ten = Array.from({ length: 10 }, (_, index) => call(40 + index * 0.5, { piece: index }));
    // From 06:00 to 06:59 somebody taps every half an hour: six windows; the call at 08:00 has one of its own.
    const { windows } = health([...flood, ...ten, call(120)], [], [1, 30, 59]);
    expect(windows).toEqual({
      worked: 7,
      mean: 22 / 7,
      peak: { calls: 11, fromMs: at(20) },
      inFlood: 1,
      calling: [
        { fromMs: at(20), calls: 11 },
        { fromMs: at(40), calls: 10 },
        { fromMs: at(120), calls: 1 },
      ],
    });
    expect(CUSTOMARY).toMatchObject({ mean: 1, peak: 10, shares: { call: 0.8, late: 0.15, lost: 0.05 } });
  });

  test('a pause of more than an hour is no work; one tap alone is a window', () => {
    expect([...workedWindows([at(5), at(65)])].length).toBe(7);
    expect([...workedWindows([at(65.1), at(5)])].length).toBe(2);
    expect(workedWindows([])).toEqual(new Set());
    expect(health([]).windows).toMatchObject({ worked: 0, mean: null, peak: null });
  });

  test('late after a call is a call of its own, and one story from the first call until it is done', () => {
    const story = [
      call(0, { endedMs: at(5), became: 'stronger', heardMs: null }),
      call(5, { level: 'late', dueMs: at(0), heardMs: at(7), endedMs: at(9) }),
    ];
    const found = health(story);
    expect(found.levels).toEqual({ call: 1, late: 1, lost: 0 });
    expect(found.heard).toEqual({ n: 1, medianMin: 7, ninetiethMin: 7 });
    expect(found.done).toEqual({ n: 1, medianMin: 9, ninetiethMin: 9 });
    expect(found).toMatchObject({ calls: 2, neverHeard: 0, repeats: 0 });
    expect(found.offenders).toMatchObject([{ calls: 2, late: 1, share: 1, lateMin: 9 }]);
  });

  test('never heard, and of those never answered; taken back is neither', () => {
    const found = health([
      call(0),
      call(1, { piece: 2, endedMs: null, became: null }),
      call(2, { piece: 3, heardMs: at(3) }),
      call(3, { piece: 4, became: 'undone' }),
    ]);
    expect(found).toMatchObject({ neverHeard: 2, neverAnswered: 1, undone: 1, calls: 4 });
  });

  test('chattering: the same call at the same level within a minute', () => {
    const again = (min: number, more: Partial<Called> = {}): Called => call(min, { endedMs: at(min + 0.2), ...more });
    expect(health([again(0), again(1), again(2.5)]).repeats).toBe(1);
    expect(health([again(0), again(0.5, { step: 'fold' }), again(0.6, { piece: 2 }), again(0.7, { level: 'late' })]).repeats).toBe(0);
  });

  test('standing: out for more than an hour, also what is out still', () => {
    expect(
      health([call(0, { endedMs: at(60) }), call(0, { piece: 2, endedMs: at(61) }), call(0, { piece: 3, endedMs: null, became: null })])
        .standing,
    ).toBe(2);
  });

  test('set aside is not done: its minutes count, and the call that comes back is another', () => {
    const holds: Held[] = [{ piece: 1, step: 'turn-out', fromMs: at(2), toMs: at(12) }];
    const found = health([call(0), call(12)], holds);
    expect(found.shelved).toEqual({ times: 1, minutes: 10 });
    expect(found.done).toMatchObject({ n: 1, medianMin: 2 });
    expect(found.neverAnswered).toBe(0);
  });

  test('the steps that call most, the most first, with what to write instead', () => {
    const six = Array.from({ length: 3 }, (_, index) => call(index * 30, { endedMs: at(index * 30 + 6) }));
    const { offenders } = health([call(5, { step: 'fold' }), ...six]);
    expect(offenders).toMatchObject([
      { step: 'turn-out', calls: 3, share: 0.75, lateMin: 6, advice: { fromMin: 10, toMin: 16 } },
      { step: 'fold', calls: 1, advice: null },
    ]);
    const many = Array.from({ length: 30 }, (_, index) => call(index, { step: `step-${index}` }));
    expect(health(many).offenders.length).toBe(10);
  });

  test('by date, days on which nothing was left out', () => {
    const { windows } = health([call(0), call(1), call(25 * 60)]);
    const dates = ['2026-03-06', '2026-03-07', '2026-03-08'].map((date) => ({ date, fromMs: Date.parse(`${date}T00:00Z`) }));
    expect(callsByDate(dates, windows, new Set([at(-60) / WINDOW_MS]))).toEqual([
      { date: '2026-03-07', calls: 2, peak: 2, worked: 2 },
      { date: '2026-03-08', calls: 1, peak: 1, worked: 1 },
    ]);
  });
});
