import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { phaseLengthText } from '../../display/parts/moved-text.ts';
import { fittingMarks } from '../../display/phone/plot-axis.ts';
import { askedReading, readingField } from '../../display/phone/reading-model.ts';
import { placesOf } from '../../display/phone/places-model.ts';
import { ripenessCurve, type RipenessCurve } from '../../display/phone/ripeness-curve.ts';
import { ripenessTexts, taughtText } from '../../display/phone/ripeness-texts.ts';
import { ripeningTexts } from '../../display/wall/ripening-texts.ts';
import { rowOf, type Row } from '../../shared/floor/board.ts';
import { assert } from '../../shared/result.ts';
import type { Floor } from './support/floor.ts';
import { ruler } from './support/ruler-house.ts';

const MINUTE_MS = 60_000;

function read(floor: Floor, celsius: number): Floor {
  floor.ok({ type: 'readTemperature', workpieceId: floor.id('C1'), where: 'dough', celsius, despite: ['wildReading'] });
  return floor;
}

function rowAt(floor: Floor): Row {
  const row = rowOf(floor.state, floor.id('C1'), floor.nowMs);
  assert(row !== null, 'C1 has a row');
  return row;
}

function curveAt(floor: Floor): RipenessCurve {
  const curve = ripenessCurve(floor.state, floor.piece('C1'), floor.nowMs);
  assert(curve !== null, 'C1 has a curve');
  return curve;
}

describe('RS1 the wall says by how far a rest is moved, and why', () => {
  const texts = (floor: Floor, unit: 'C' | 'F' = 'C'): readonly string[] => ripeningTexts(rowAt(floor), 'UTC', unit);

  test('what was read and stays so is told from what is reckoned, each in fewer and fewer words', () => {
    // At +10 % a kelvin 120 min at 25 °C are 159.7 at 22 °C (the design's worked case).
    const steady = read(ruler({ placeC: 22 }), 22);
    expect(texts(steady)).toContainEqual(expect.stringMatching(/^\+40 min, dough read 22 °C \d\d:\d\d$/));
    expect(texts(steady)).toContain('+40 min, dough 22 °C');
    expect(texts(steady).at(-1)).toBe('+40 min');
    expect(texts(steady, 'F')).toContain('+40 min, dough 72 °F');
    const drifting = read(ruler({ placeC: 20, tauMin: 240 }), 28).wait(40);
    expect(texts(drifting)).toContainEqual(expect.stringMatching(/, dough about 2\d °C$/));
    expect(texts(drifting).some((text) => text.includes('read'))).toBe(false);
  });

  test('nothing is said of a rest that nobody read, nor of one that is moved by less than two minutes', () => {
    expect(texts(ruler({}))).toEqual([]);
    expect(texts(read(ruler({}), 25))).toEqual([]);
  });

  test('where sane models differ, from when to when it may be ripe', () => {
    const cold = texts(read(ruler({ placeC: 18 }), 18));
    expect(cold[0]).toMatch(/ · ripe \d\d:\d\d–\d\d:\d\d$/);
    expect(texts(read(ruler({ placeC: 24 }), 24)).some((text) => text.includes('–'))).toBe(false);
  });

  test('of a dough at rest for days only why is said: a clock time would mislead', () => {
    for (const text of texts(
      read(ruler({ placeC: 4, ripening: { model: 'cardinal', referenceC: 25, minC: 2.8, optC: 32.3, maxC: 45.4 } }), 4),
    ))
      expect(text).toMatch(/^dough/);
  });
});

describe('RS2 the card says the same and more, and asks for the next reading', () => {
  test('what was read, what it is now, when it is ripe, and that it was moved', () => {
    const floor = read(ruler({ placeC: 22 }), 22);
    const row = rowAt(floor);
    assert(row.ripening !== null, 'it ripens');
    const texts = ripenessTexts(row.ripening, row.dueMs, floor.nowMs, 'UTC', 'C');
    expect(texts.warmth).toMatch(/^22\s°C read \d\d:\d\d, now about 22\s°C$/);
    expect(texts.ripe).toMatch(/^ripe at \d\d:\d\d, 40 min later, as warm as it is$/);
    expect(texts.planned).toBeNull();
  });

  test('the chips of a rest begin at what it is thought to be now, and the due time moves with the tap', () => {
    const floor = read(ruler({ placeC: 20, tauMin: 240 }), 28).wait(60);
    const piece = floor.piece('C1');
    expect(askedReading(floor.state, piece)).toBe('dough');
    // A quarter of the time constant later a dough of 28 °C in a room of 20 is 8·e^−1/4 = 6.2 K above it.
    expect(readingField(floor.state, piece, 'dough', 'C', floor.nowMs).expected).toBe(26);
    const before = floor.due('C1').dueMs;
    read(floor, 21);
    expect(floor.due('C1').dueMs).toBeGreaterThan(before);
  });

  test('what bakers taught is said with its spread, and nothing where nobody has', () => {
    expect(taughtText({ factor: 1, middleHalf: null, count: 0 })).toBeNull();
    expect(taughtText({ factor: 0.92, middleHalf: null, count: 1 })).toBe('This formula’s rests: ×0.92, by 1 rest');
    expect(taughtText({ factor: 0.92, middleHalf: { least: 0.85, most: 1 }, count: 7 })).toBe(
      'This formula’s rests: ×0.92, by 7 rests, half of them between ×0.85 and ×1.00',
    );
  });
});

describe('RS3 a rest has its curve', () => {
  test('through every reading, ripeness only rising, at 100 per cent where the step is due', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 16, max: 30 }),
        fc.array(fc.record({ afterMin: fc.integer({ min: 2, max: 25 }), celsius: fc.integer({ min: 18, max: 29 }) }), {
          minLength: 1,
          maxLength: 3,
        }),
        (placeC, readings) => {
          const floor = ruler({ placeC });
          for (const { afterMin, celsius } of readings) read(floor.wait(afterMin), celsius);
          const curve = curveAt(floor);
          expect(curve.readings).toHaveLength(readings.length);
          for (const { atMs, celsius } of curve.readings) {
            const after = curve.points.findLast((point) => point.atMs === atMs);
            expect(after?.doughC).toBeCloseTo(celsius, 3);
          }
          for (const [index, { ripePct }] of curve.points.entries())
            expect(ripePct).toBeGreaterThanOrEqual((curve.points[index - 1]?.ripePct ?? 0) - 1e-6);
          const { dueMs } = floor.due('C1');
          expect(Math.abs(curve.ripeMs - dueMs)).toBeLessThan(MINUTE_MS);
          expect(curve.points.find(({ atMs }) => atMs === curve.ripeMs)?.ripePct).toBeCloseTo(100, 1);
        },
      ),
      { numRuns: 15 },
    );
  });

  test('there is none of a dough that nobody read', () => {
    const floor = ruler({});
    expect(ripenessCurve(floor.state, floor.piece('C1'), floor.nowMs)).toBeNull();
  });

  test('texts on its axis never touch, and the more telling one stays', () => {
    const mark = fc.record({
      words: fc.constantFrom('now', '04:10', 'ripe at 04:10'),
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      isStrong: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(mark, { minLength: 1, maxLength: 5 }), (marks) => {
        const placed = fittingMarks(marks);
        expect(placed[0]).toMatchObject(marks[0] ?? {});
        const spans = placed.map(({ words, at, edge }) => {
          const width = words.length * 0.031;
          const from = edge === 'first' ? 0 : edge === 'last' ? 1 - width : at - width / 2;
          return { from, to: from + width };
        });
        for (const [index, span] of spans.entries()) {
          expect(span.from).toBeGreaterThanOrEqual(0);
          expect(span.to).toBeLessThanOrEqual(1 + 1e-9);
          for (const other of spans.slice(index + 1)) expect(span.to <= other.from || other.to <= span.from).toBe(true);
        }
      }),
    );
  });
});

describe('RS4 places tell their air', () => {
  const air = (floor: Floor, placeId: string) => placesOf(floor.state, floor.nowMs).places.find(({ place }) => place.id === placeId)?.air;

  test('as the kitchen says, until somebody reads it; a door that stands open is told', () => {
    const floor = ruler({ placeC: 28 });
    expect(air(floor, 'warm-shelf')).toMatchObject({ ambientC: 28, read: null, openToMs: null });
    floor.ok({ type: 'readPlace', placeId: 'warm-shelf', celsius: 25 });
    expect(air(floor, 'warm-shelf')).toMatchObject({ ambientC: 25, read: { celsius: 25, atMs: floor.nowMs } });
    floor.ok({ type: 'openPlace', placeId: 'cold-room', minutes: 10 });
    expect(air(floor, 'cold-room')).toMatchObject({ openToMs: floor.nowMs + 10 * MINUTE_MS });
  });

  test('the length of a phase of a programme is told as it is', () => {
    expect([480, 210, 45, 61].map(phaseLengthText)).toEqual(['8 h', '210 min', '45 min', '61 min']);
  });

  test('what stands there is due later at once', () => {
    const floor = read(ruler({ placeC: 28 }), 27);
    const before = floor.due('C1').dueMs;
    floor.ok({ type: 'readPlace', placeId: 'warm-shelf', celsius: 20 });
    expect(floor.due('C1').dueMs).toBeGreaterThan(before);
  });
});
