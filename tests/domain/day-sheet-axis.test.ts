import { describe, expect, test } from 'vitest';
import { hourPx, instantNearMs, spanOf, ticksOf } from '../../display/day/sheet-axis.ts';
import { placeByKey } from '../../display/day/sheet-keys.ts';
import { leftPx, widthPx, type Scale } from '../../display/day/sheet-lengths.ts';
import { doughLines } from '../../display/day/sheet-lines.ts';
import { sheetModel } from '../../display/day/sheet-model.ts';
import { orderMarks } from '../../display/day/sheet-orders.ts';
import { stationDays } from '../../display/day/station-model.ts';
import { heldBackBy, percentText, triedOrders } from '../../display/day/try-model.ts';
import { clockText } from '../../display/parts/clock-text.ts';
import { busyDay, demoOrders, triedDay, unplannedDay } from '../browser/harness-day-sheet/sheet-stage.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const LONDON = 'Europe/London';

describe('I27 the axis is linear, and its clock times are those of the house', () => {
  test('the same length of time is as wide everywhere', () => {
    const span = { fromMs: Date.UTC(2026, 2, 7, 3), toMs: Date.UTC(2026, 2, 7, 15) };
    const scale: Scale = { span, pxPerHour: 80, columnPx: 200 };
    for (let hour = 0; hour < 12; hour += 1) expect(leftPx(scale, span.fromMs + hour * HOUR_MS)).toBeCloseTo(80 * hour, 9);
    expect(widthPx(scale, span.fromMs + HOUR_MS, span.fromMs + 2 * HOUR_MS)).toBe(
      widthPx(scale, span.fromMs + 9 * HOUR_MS, span.fromMs + 10 * HOUR_MS),
    );
    expect(leftPx(scale, span.fromMs - HOUR_MS)).toBe(0);
  });

  test('the whole day fills the room, four hours and one hour take the same room for less', () => {
    const span = { fromMs: 0, toMs: 16 * HOUR_MS };
    expect(hourPx('fit', span, 1600)).toBe(100);
    expect(hourPx('fourHours', span, 1600)).toBe(400);
    expect(hourPx('hour', span, 1600)).toBe(1600);
    // A day of two hours is not stretched beyond the room that it has.
    expect(hourPx('fourHours', { fromMs: 0, toMs: 2 * HOUR_MS }, 800)).toBe(400);
  });

  test('clock times stand in whole steps, at least so far apart', () => {
    const span = { fromMs: Date.UTC(2026, 2, 7, 2, 50), toMs: Date.UTC(2026, 2, 7, 9, 10) };
    const texts = (pxPerHour: number): readonly string[] => ticksOf(span, pxPerHour, 80, LONDON).map(({ atMs }) => clockText(atMs, LONDON));
    expect(texts(80)).toEqual(['03:00', '04:00', '05:00', '06:00', '07:00', '08:00', '09:00']);
    expect(texts(40)).toEqual(['04:00', '06:00', '08:00']);
    expect(texts(320).slice(0, 4)).toEqual(['03:00', '03:15', '03:30', '03:45']);
  });

  test.each([
    // Clocks go forward in London at 01:00 UTC on 29 March 2026, back at 01:00 UTC on 25 October 2026.
    ['forward', Date.UTC(2026, 2, 29, 0), Date.UTC(2026, 2, 29, 4), ['00:00', '02:00', '03:00', '04:00', '05:00']],
    ['back', Date.UTC(2026, 9, 25, 0), Date.UTC(2026, 9, 25, 4), ['01:00', '02:00', '03:00', '04:00']],
  ])('when clocks go %s, the axis shows what they show', (_, fromMs, toMs, expected) => {
    const ticks = ticksOf({ fromMs, toMs }, 90, 80, LONDON);
    expect(ticks.map(({ atMs }) => clockText(atMs, LONDON))).toEqual(expected);
    expect(ticks.every(({ atMs }, index) => index === 0 || atMs > (ticks[index - 1]?.atMs ?? 0))).toBe(true);
  });

  test('a new day is named at its first clock time', () => {
    const ticks = ticksOf({ fromMs: Date.UTC(2026, 2, 7, 21), toMs: Date.UTC(2026, 2, 8, 2) }, 90, 80, LONDON);
    expect(ticks.filter(({ isNewDay }) => isNewDay).map(({ atMs }) => clockText(atMs, LONDON))).toEqual(['21:00', '00:00']);
  });

  test('NOW is on the sheet while it is near to the day, and does not stretch it from afar', () => {
    const { state, nowMs } = busyDay();
    const lines = doughLines(state, null, nowMs, null);
    const near = spanOf(lines, [], nowMs);
    expect(near.fromMs < nowMs && nowMs < near.toMs).toBe(true);
    const ahead = lines
      .map((line) => ({ ...line, bars: line.bars.filter((bar) => bar.standing === 'planned') }))
      .filter((line) => line.bars.length > 0);
    const first = Math.min(...ahead.flatMap((line) => line.bars.map((bar) => bar.fromMs)));
    expect(spanOf(ahead, [], first - 9 * HOUR_MS).fromMs).toBeGreaterThan(first - HOUR_MS);
  });

  test('a typed clock time is the nearest instant at which the clock reads so', () => {
    const nearMs = Date.UTC(2026, 2, 7, 23, 50);
    expect(instantNearMs('23:30', nearMs, LONDON)).toBe(Date.UTC(2026, 2, 7, 23, 30));
    expect(instantNearMs('00:15', nearMs, LONDON)).toBe(Date.UTC(2026, 2, 8, 0, 15));
    // In summer the same clock time is an hour earlier by UTC.
    expect(instantNearMs('04:30', Date.UTC(2026, 6, 1, 4), LONDON)).toBe(Date.UTC(2026, 6, 1, 3, 30));
  });
});

describe('I28 arrow keys go along a row and from row to row', () => {
  const { state, nowMs } = busyDay();
  const rows = sheetModel({ state, proposal: null, cleanings: [], nowMs, serviceDate: null }, 'dough')?.rows ?? [];
  const [first, second] = rows;
  if (first === undefined || second === undefined) throw new Error('there are no rows');

  test('from the head to the last step and back, and no further', () => {
    let at = { rowKey: first.key, barKey: '' };
    const seen: string[] = [];
    for (let step = 0; step <= first.placed.length + 2; step += 1) {
      at = placeByKey(rows, at, 'ArrowRight') ?? at;
      seen.push(at.barKey);
    }
    const keys = first.placed.map(({ bar }) => bar.key);
    expect([...new Set(seen)]).toEqual(keys);
    expect(at.barKey).toBe(keys.at(-1));
    expect(placeByKey(rows, at, 'Home')).toEqual({ rowKey: first.key, barKey: '' });
    expect(placeByKey(rows, { rowKey: first.key, barKey: '' }, 'End')).toEqual(at);
    expect(placeByKey(rows, { rowKey: first.key, barKey: '' }, 'ArrowLeft')?.barKey).toBe('');
  });

  test('down and up to what is nearest in time', () => {
    const from = first.placed.at(-1)?.bar;
    if (from === undefined) throw new Error('the first row is empty');
    const middleMs = (from.fromMs + from.toMs) / 2;
    const down = placeByKey(rows, { rowKey: first.key, barKey: from.key }, 'ArrowDown');
    const reached = second.placed.find(({ bar }) => bar.key === down?.barKey)?.bar;
    const away = (bar: { fromMs: number; toMs: number }): number => Math.max(bar.fromMs - middleMs, middleMs - bar.toMs, 0);
    expect(reached).toBeDefined();
    expect(reached === undefined ? Infinity : away(reached)).toBe(Math.min(...second.placed.map(({ bar }) => away(bar))));
    expect(placeByKey(rows, { rowKey: second.key, barKey: '' }, 'ArrowUp')).toEqual({ rowKey: first.key, barKey: '' });
  });

  test('no other key leads anywhere', () => {
    expect(placeByKey(rows, { rowKey: first.key, barKey: '' }, 'a')).toBeNull();
    expect(placeByKey(rows, { rowKey: 'gone', barKey: '' }, 'ArrowDown')).toBeNull();
  });
});

describe('I29 orders stand at the instant at which they are wanted, late ones marked', () => {
  test('together where they are wanted together', () => {
    const { state } = busyDay();
    const marks = orderMarks(state, null, null);
    expect(marks.map(({ orders }) => orders.length)).toEqual([2, 1, 1, 1, 1]);
    expect(marks.flatMap(({ orders }) => orders).length).toBe(demoOrders().length);
    expect(marks.filter(({ isLate }) => isLate).map(({ readyMs }) => readyMs)).toEqual([marks[0]?.readyMs]);
    const [late] = marks[0]?.orders.filter(({ lateMin }) => lateMin !== null) ?? [];
    expect([late?.productName, late?.lateMin]).toEqual(['Milk buns, plain', 20]);
  });

  test('only those of the day, and the warnings of the day that is tried', () => {
    const { state, proposal } = triedDay();
    expect(orderMarks(state, null, '2026-03-08')).toEqual([]);
    const tried = orderMarks(state, proposal, null);
    expect(tried.some(({ isLate }) => isLate)).toBe(false);
    const first = tried.flatMap(({ orders }) => orders).filter(({ firstPinId }) => firstPinId !== null);
    expect(first.map(({ firstPinId }) => firstPinId === '')).toEqual([false, true]);
  });
});

describe('I30 a station’s list has its hands in their order', () => {
  test.each([
    ['planned', busyDay],
    ['without a plan', unplannedDay],
  ])('each step of hands that is ahead is on one list, in the order of the clock: %s', (_, dayOf) => {
    const { state, nowMs } = dayOf();
    const days = stationDays({ state, proposal: null, cleanings: [], nowMs, serviceDate: null });
    expect(days.map(({ id }) => id)).toEqual(state.kitchen?.document.stations.map(({ id }) => id));
    for (const { bars } of days) expect(bars.every((bar, index) => index === 0 || bar.fromMs >= (bars[index - 1]?.fromMs ?? 0))).toBe(true);
    const all = doughLines(state, null, nowMs, null).flatMap((line) => line.bars);
    const hands = all.filter((bar) => bar.standing !== 'done' && (bar.step.kind === 'hands' || bar.step.kind === 'judged'));
    expect(days.flatMap(({ bars }) => bars.map(({ key }) => key)).sort()).toEqual(hands.map(({ key }) => key).sort());
  });
});

describe('I31 what trying the day found is told as it is', () => {
  const { state } = busyDay();
  const [one, two] = demoOrders();
  const result = {
    runs: 400,
    orders: [
      { orderId: one?.id ?? '', lateShare: 0, medianLateMin: 0, p90LateMin: 0 },
      { orderId: two?.id ?? '', lateShare: 0.25, medianLateMin: 8, p90LateMin: 14 },
      { orderId: 'gone', lateShare: 1, medianLateMin: 8, p90LateMin: 14 },
    ],
    resources: [
      { kind: 'station', id: 'bench', share: 0.2 },
      { kind: 'deck', id: 'top', share: 0.798 },
      { kind: 'mixer', id: 'spiral', share: 0.002 },
    ],
    spoilShare: 0,
    spreads: [],
  };

  test('the orders that are late most often first, those that nobody knows any more left off', () => {
    expect(triedOrders(state, result).map(({ marked, lateRuns }) => [marked.order.id, lateRuns])).toEqual([
      [two?.id, 100],
      [one?.id, 0],
    ]);
  });

  test('what holds the day back most first, what hardly counts left off', () => {
    expect(heldBackBy(result).map(({ id }) => id)).toEqual(['top', 'bench']);
  });

  test.each([
    [0, '0'],
    [0.002, '<1'],
    [0.12, '12'],
    [0.999, '>99'],
    [1, '100'],
  ])('%d is %s per cent: never nothing nor all unless it is', (share, text) => {
    expect(percentText(share)).toBe(text);
  });
});
