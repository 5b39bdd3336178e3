import { describe, expect, test } from 'vitest';
import { clockText, countdownText, nextTextChangeMs, weekdayText } from '../../display/parts/clock-text.ts';
import { temperatureText } from '../../display/parts/temperature-text.ts';
import { fittingText, textWidthPx } from '../../display/parts/text-width.ts';
import { fittingNotes, fittingTags, rowModel } from '../../display/wall/row-model.ts';
import { isHearKey, type KeyPress } from '../../display/wall/hear-key.ts';
import { DEFAULT_VIEWING, readViewing } from '../../display/wall/settings.ts';
import { VERBS } from '../../display/words/en/verbs.ts';
import { verbSchema } from '../../shared/documents/method.ts';
import { boardRow } from './support/board-row.ts';
import { Floor } from './support/floor.ts';

const MINUTE_MS = 60_000;
const NOON_MS = Date.UTC(2026, 6, 1, 12);

describe('clock times', () => {
  test('are those of the house, summer time and midnight too', () => {
    expect(clockText(NOON_MS, 'Europe/London')).toBe('13:00');
    expect(clockText(NOON_MS, 'Asia/Kathmandu')).toBe('17:45');
    expect(clockText(Date.UTC(2026, 0, 1), 'UTC')).toBe('00:00');
  });

  test('a zone that nobody knows is a fault, not another time', () => {
    expect(() => clockText(NOON_MS, 'Harbour/Town')).toThrow(RangeError);
  });

  test('weekdays are those of the service date', () => {
    expect(weekdayText('2026-03-07')).toBe('Sat');
  });
});

describe('countdowns', () => {
  test.each([
    [0, '0:00'],
    [1, '0:01'],
    [59_001, '1:00'],
    [10 * MINUTE_MS, '10:00'],
    [10 * MINUTE_MS + 1, '11 min'],
    [31 * MINUTE_MS, '31 min'],
    [180 * MINUTE_MS, '180 min'],
    [180 * MINUTE_MS + 1, '15:00'],
    [-999, '0:00'],
    [-1000, '+0:01'],
    [-132_000, '+2:12'],
  ])('%i ms before due read %s', (leftMs, text) => {
    expect(countdownText(NOON_MS + leftMs, NOON_MS, 'UTC')).toBe(text);
  });

  test('nothing reads otherwise before the next change, and something does then', () => {
    for (const leftMs of [-61_400, -1, 0, 1, 500, 59_900, 10 * MINUTE_MS, 10 * MINUTE_MS + 1, 11 * MINUTE_MS, 90 * MINUTE_MS + 7]) {
      const dueMs = NOON_MS + leftMs;
      const read = (nowMs: number): string => `${countdownText(dueMs, nowMs, 'UTC')} ${clockText(nowMs, 'UTC')}`;
      const nextMs = nextTextChangeMs([dueMs], NOON_MS);
      expect(nextMs).toBeGreaterThan(NOON_MS);
      for (let nowMs = NOON_MS; nowMs < nextMs - 1; nowMs += Math.max(1, Math.floor((nextMs - NOON_MS) / 50)))
        expect(read(nowMs)).toBe(read(NOON_MS));
      expect(read(nextMs + 1)).not.toBe(read(NOON_MS));
    }
  });
});

describe('words', () => {
  test('every verb of the trade has its three forms, calls in capitals', () => {
    for (const verb of verbSchema.options) {
      const { call, running, done } = VERBS[verb];
      expect([call, running, done].every((text) => text.trim() === text && text !== '')).toBe(true);
      expect(call.replace(/^\d+(st|nd|re|e|\.)/, '')).toBe(call.replace(/^\d+(st|nd)/, '').toUpperCase());
      expect(running).toBe(running.toLowerCase());
    }
  });

  test('a judged step that is due reads CHECK with the step, one that runs reads the step', () => {
    const { state } = Floor.harbour();
    const due = boardRow(1, { verb: 'secondSpeed', role: 'call', phase: 'judging', isCheck: true });
    expect(rowModel(state, [due], 0)).toMatchObject({ verb: 'CHECK', notes: ['2nd speed'] });
    const runs = boardRow(1, { verb: 'secondSpeed', phase: 'judging', stationId: 'mixer' });
    expect(rowModel(state, [runs], 0)).toMatchObject({ verb: '2nd speed', notes: ['Mixer'] });
  });

  test('started work says who and how far, what is being lost says how, what is heard says so', () => {
    const { state } = Floor.harbour();
    const works = boardRow(1, { verb: 'shape', phase: 'working', stationId: 'bench', pieces: 30, piecesDone: 18 });
    expect(rowModel(state, [works], 0).notes).toEqual(['18 of 30', 'Bench']);
    const lost = boardRow(1, { verb: 'takeOut', role: 'lost', stage: 'oven', heardMs: 1 });
    expect(rowModel(state, [lost], 0)).toMatchObject({
      verb: 'OUT',
      roleWord: 'in too long',
      isHeard: true,
      notes: ['in too long', 'heard'],
    });
  });

  test('dough of another day says which with its tag, in full and run together', () => {
    const { state } = Floor.harbour();
    expect(rowModel(state, [boardRow(1, { serviceDate: '2026-03-06' })], 0)).toMatchObject({
      tags: ['Fri C1'],
      shortTags: ['FrC1'],
      notes: [],
    });
    expect(rowModel(state, [boardRow(1)], 0)).toMatchObject({ tags: ['C1'], shortTags: ['C1'] });
  });

  test('temperatures are in the unit of the house', () => {
    expect(temperatureText(230, 'C')).toBe('230 °C');
    expect(temperatureText(230, 'F')).toBe('446 °F');
  });
});

describe('texts that have to fit', () => {
  test('are shortened to the width, or left alone', () => {
    const name = 'Seeded rye in tins';
    expect(fittingText(name, 42, 1000)).toBe(name);
    const short = fittingText(name, 42, 250);
    expect(short).toMatch(/^Seeded( rye)?…$/);
    expect(textWidthPx(short, 42)).toBeLessThanOrEqual(250);
  });

  test('tags become a count, notes go from the last', () => {
    expect(fittingTags(['C1', 'C2', 'C3', 'C4'], 72, 10_000)).toBe('C1 C2 C3 C4');
    expect(fittingTags(['C1', 'C2', 'C3', 'C4'], 72, 330)).toBe('C1 C2 +2');
    expect(fittingTags(['C1', 'C2', 'C3', 'C4'], 72, 10)).toBe('C1 +3');
    expect(fittingNotes(['late', 'heard', 'Fri'], 42, 240)).toBe('late · heard');
  });
});

describe('settings of the wall', () => {
  test('come from the address, else from what was kept, else they are the defaults', () => {
    expect(readViewing(new URLSearchParams(''), null).viewing).toEqual(DEFAULT_VIEWING);
    const kept = JSON.stringify({ inch: 55, metres: 4, arcmin: 26 });
    expect(readViewing(new URLSearchParams('metres=3'), kept).viewing).toEqual({ inch: 55, metres: 3, arcmin: 26 });
  });

  test('nonsense is left out, and named', () => {
    const { viewing, rejected } = readViewing(new URLSearchParams('inch=big&metres=&arcmin=2'), '{"inch":');
    expect(viewing).toEqual(DEFAULT_VIEWING);
    expect(rejected).toEqual(['inch=big', 'metres=', 'arcmin=2']);
  });
});

describe('keys on the wall', () => {
  const press = (more: Partial<KeyPress>): KeyPress => ({
    key: 'a',
    code: 'KeyA',
    repeat: false,
    ctrlKey: false,
    altKey: false,
    metaKey: false,
    ...more,
  });

  test.each([
    [{ key: 'Enter', code: 'Enter' }, true],
    [{ key: ' ', code: 'Space' }, true],
    [{ key: '7', code: 'Numpad7' }, true],
    [{ key: 'PageDown', code: 'PageDown' }, true],
    [{ key: 'Enter', code: 'Enter', repeat: true }, false],
    [{ key: 'Enter', code: 'Enter', ctrlKey: true }, false],
    [{ key: 'a', code: 'KeyA' }, false],
  ])('%o means heard: %s', (more, isHeard) => {
    expect(isHearKey(press(more))).toBe(isHeard);
  });
});
