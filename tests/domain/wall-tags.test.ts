import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { floorDateOf } from '../../display/parts/day-tag.ts';
import { longTag, shortTag, shortTagOf } from '../../display/wall/day-tags.ts';
import { leftColumns } from '../../display/wall/left-columns.ts';
import { leftContentOf } from '../../display/wall/left-content.ts';
import { fittingTag, rowModel } from '../../display/wall/row-model.ts';
import { typeSizes } from '../../display/wall/type-sizes.ts';
import { textWidthPx } from '../../display/parts/text-width.ts';
import { boardRow } from './support/board-row.ts';
import { Floor } from './support/floor.ts';
import { bringInCommand, harbourFile } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';

describe('tags of another day', () => {
  // 6 March 2026 was a Friday, 7 March a Saturday.
  const { state } = Floor.harbour();

  test('carry their weekday, those of the floor’s own day do not', () => {
    expect(longTag(state, 'C1', '2026-03-06')).toBe('Fri C1');
    expect(shortTag(state, 'C1b·2', '2026-03-06')).toBe('FrC1b·2');
    expect([longTag(state, 'C1', '2026-03-07'), shortTag(state, 'C1', '2026-03-07')]).toEqual(['C1', 'C1']);
  });

  test('a day that is planned ahead takes no names away: until a dough of it is begun, its own carry the weekday', () => {
    const floor = Floor.harbour();
    const todays = floor.id('C1');
    floor.wait(600).ok(bringInCommand(harbourFile(), floor.nowMs, '2026-03-08'), { deviceId: SERVER_DEVICE });
    const ofTomorrow = Object.values(floor.state.workpieces).filter(
      ({ serviceDate, kind }) => serviceDate === '2026-03-08' && kind === 'batch',
    );
    const tomorrows = ofTomorrow.find(({ formulaId }) => formulaId === 'country')?.id ?? '';
    expect([shortTagOf(floor.state, todays, 'C'), shortTagOf(floor.state, tomorrows, 'C')]).toEqual(['C', 'SuC']);
    floor.ok({ type: 'startStep', workpieceId: tomorrows, stepId: 'weigh' });
    expect([shortTagOf(floor.state, todays, 'C'), shortTagOf(floor.state, tomorrows, 'C')]).toEqual(['SaC', 'C']);
  });

  test('once the day is closed, what carries over says its day', () => {
    const closed = { ...state, openDates: [] };
    expect(floorDateOf(state)).toBe('2026-03-07');
    expect(longTag(closed, 'C1', '2026-03-07')).toBe('Sat C1');
  });
});

describe('the column of tags', () => {
  const screen = { diagonalInch: 43, widthPx: 1920, heightPx: 1080, distanceM: 5, arcmin: 20 };
  const sizes = typeSizes(screen, 0, 0.82);

  test('holds every tag whole, and none below the second size', () => {
    const base = leftContentOf(Floor.harbour().state);
    const tag = fc
      .record({
        letters: fc.constantFrom('C', 'Ch', 'M', 'W'),
        number: fc.integer({ min: 1, max: 30 }),
        cut: fc.constantFrom('', 'a', 'b'),
        load: fc.constantFrom('', '·1', '·12'),
        day: fc.constantFrom(['', ''] as const, ['Fri ', 'Fr'] as const, ['Wed ', 'We'] as const),
      })
      .map(({ letters, number, cut, load, day }) => day.map((said) => `${said}${letters}${number}${cut}${load}`) as [string, string]);
    fc.assert(
      fc.property(fc.array(tag, { minLength: 1, maxLength: 8 }), (tags) => {
        const columns = leftColumns({ ...base, tags: tags.map(([, short]) => short) }, sizes);
        const roomPx = columns.tagPx + columns.gapPx / 2;
        for (const [long, short] of tags) {
          const fitted = fittingTag(long, short, roomPx, sizes);
          expect([long, short]).toContain(fitted.text);
          expect(fitted.sizePx).toBeGreaterThanOrEqual(sizes.secondPx);
          expect(textWidthPx(fitted.text, fitted.sizePx)).toBeLessThanOrEqual(roomPx);
        }
      }),
    );
  });

  test('takes the weekday in full where there is room', () => {
    expect(fittingTag('Fri C1', 'FrC1', 10_000, sizes)).toEqual({ text: 'Fri C1', sizePx: sizes.glancePx });
    expect(fittingTag('Fri C1', 'FrC1', textWidthPx('FrC1', sizes.glancePx), sizes)).toEqual({ text: 'FrC1', sizePx: sizes.glancePx });
  });
});

describe('started work, told calmly', () => {
  const { state } = Floor.harbour();

  test('says how far and everybody who is on it, and is no call', () => {
    const row = boardRow(1, { verb: 'shape', phase: 'working', stationId: 'bench', helperIds: ['oven'], pieces: 10, piecesDone: 6 });
    expect(rowModel(state, [row], 0)).toMatchObject({ role: 'running', verb: 'shape', notes: ['6 of 10', 'Bench + Oven'] });
  });

  test('says what is short of what was planned', () => {
    expect(rowModel(state, [boardRow(1, { pieces: 8, shortPieces: 2 })], 0).notes).toEqual(['2 short of 10']);
    expect(rowModel(state, [boardRow(1, { pieces: 10 })], 0).notes).toEqual([]);
  });
});
