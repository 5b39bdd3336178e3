import { describe, expect, test } from 'vitest';
import { leftColumns, deckNamePx, type LeftContent } from '../../display/wall/left-columns.ts';
import { leftContentOf } from '../../display/wall/left-content.ts';
import { mainLine } from '../../display/wall/main-line.ts';
import { rowModel, type RowModel } from '../../display/wall/row-model.ts';
import { typeSizes, widthSizes, type Screen } from '../../display/wall/type-sizes.ts';
import { textWidthPx } from '../../display/parts/text-width.ts';
import { boardRows } from '../../shared/floor/board.ts';
import { openDues } from '../../shared/floor/due.ts';
import { VERBS } from '../../display/words/en/verbs.ts';
import { Floor } from './support/floor.ts';
import { boardRow } from './support/board-row.ts';
import { dayOf, workedFloor } from '../browser/harness/staged-wall.ts';

const SCREEN: Screen = { diagonalInch: 43, widthPx: 1920, heightPx: 1080, distanceM: 5, arcmin: 20 };

describe('what may have to be written left of NOW', () => {
  test('has every call that a day of all the house’s methods brings, those of rests and judged steps too', () => {
    const called = new Set<string>();
    const measured = new Set<string>();
    for (const untilMin of [60, 120, 180, 240, 300, 360]) {
      const floor = workedFloor(dayOf(9, 5), { untilMin });
      leftContentOf(floor.state).calls.forEach((call) => measured.add(call));
      // Everything that is open, as if nobody came to it for six hours.
      const laterMs = floor.nowMs + 6 * 3_600_000;
      for (const row of boardRows(floor.state, laterMs)) called.add(rowModel(floor.state, [row], laterMs).verb);
      expect(openDues(floor.state).length).toBeGreaterThan(0);
    }
    expect(called.size).toBeGreaterThan(5);
    expect([...called].filter((call) => !measured.has(call) && call === call.toUpperCase())).toEqual([]);
  });

  test('has the call of a judged step that follows a rest', () => {
    const { state } = Floor.harbour();
    const [key, product] = Object.entries(state.products)[0] ?? [];
    if (key === undefined || product === undefined) throw new Error('the house has no product');
    const [first] = product.way;
    if (first === undefined) throw new Error('the product has no way');
    const rest = { ...first, id: 'night', verb: 'retard', kind: 'timed' } as const;
    const judged = { ...first, id: 'warm', verb: 'temper', kind: 'judged', check: 'Soft to the touch.' } as const;
    const calls = (way: typeof product.way): readonly string[] =>
      leftContentOf({ ...state, products: { [key]: { ...product, way } } }).calls;
    expect(calls([first, rest, judged])).toContain(VERBS.temper.call);
    // It begins by itself after work of hands: then nobody is called for it.
    expect(calls([first, judged])).not.toContain(VERBS.temper.call);
  });
});

describe('verb and countdown on one line', () => {
  const content: LeftContent = {
    tags: ['C1'],
    calls: ['DIVIDE'],
    running: ['a very long name of work', 'fold'],
    stages: ['proving'],
    decks: [{ name: 'Top', temperature: '235 °C' }],
  };
  const sizes = typeSizes(SCREEN, 0, 0.82);
  const columns = leftColumns(content, sizes);
  const model = (verb: string, countdown: string): RowModel => ({
    ...rowModel(Floor.harbour().state, [boardRow(1)], 0),
    verb,
    countdown,
  });

  test('stand in their own sizes where they fit', () => {
    expect(mainLine(model('DIVIDE', '+12:34'), columns, columns.leastPx, sizes)).toEqual({
      verb: 'DIVIDE',
      isVerbSmall: false,
      isCountdownSmall: false,
    });
  });

  test('never overlap: first the verb gets smaller, then the countdown, at last the verb is shortened', () => {
    const wide = widthSizes(sizes);
    for (let linePx = columns.leastPx; linePx <= columns.totalPx; linePx += 10) {
      for (const countdown of ['0:00', '9:59', '39 min', '180 min', '+00:00']) {
        for (const verb of ['a very long name of work', 'fold']) {
          const main = mainLine(model(verb, countdown), columns, linePx, sizes);
          const verbPx = textWidthPx(main.verb, main.isVerbSmall ? wide.secondPx : wide.verbPx);
          const countdownPx = textWidthPx(countdown, main.isCountdownSmall ? wide.secondPx : wide.glancePx);
          const roomPx = linePx - columns.edgePx - columns.markPx - columns.tagPx - 5 * columns.gapPx;
          expect(verbPx + countdownPx).toBeLessThanOrEqual(roomPx + 1);
          if (countdown === '0:00' || countdown === '9:59') expect(main.verb).toBe(verb);
        }
      }
    }
  });

  test('a font that is wider than ours takes more room', () => {
    const stretched = leftColumns(content, typeSizes({ ...SCREEN, fontStretch: 1.2 }, 0, 0.82));
    expect(stretched.verbPx / columns.verbPx).toBeCloseTo(1.2, 2);
    expect(stretched.countdownPx / columns.countdownPx).toBeCloseTo(1.2, 2);
  });

  test('temperatures stand under the verbs, unless a deck’s name wants more', () => {
    const verbsAtPx = columns.markPx + columns.tagPx + columns.gapPx;
    expect(deckNamePx(content, columns, sizes, 1100)).toBe(verbsAtPx);
    const long = { ...content, decks: [{ name: 'Hearth of stone', temperature: '235 °C' }] };
    expect(deckNamePx(long, leftColumns(long, sizes), sizes, 1920)).toBeGreaterThan(verbsAtPx);
  });
});
