import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { textWidthPx } from '../../display/parts/text-width.ts';
import { packIn } from '../../display/wall/deck-loads.ts';
import type { LoadBlock } from '../../display/wall/deck-model.ts';
import { placeLoadTexts, type LoadText, type NamedLoad } from '../../display/wall/load-texts.ts';

const WIDTH_PX = 800;
const SIZE_PX = 42;
const LANES = 2;

interface Drawn {
  readonly fromPx: number;
  readonly lengthPx: number;
  readonly lane: number;
  readonly lanes: number;
}

/** Loads as a deck has them: what would overlap in a lane clashes. */
function loadsOf(drawn: readonly Drawn[]): NamedLoad[] {
  const blocks = drawn.map(({ fromPx, lengthPx, lane, lanes }, index): LoadBlock => {
    const first = Math.min(lane, LANES - lanes);
    return { key: `${index}`, fromPx, toPx: Math.min(WIDTH_PX, fromPx + lengthPx), lane: first, lanes, look: 'booked' };
  });
  return blocks.map((block, index) => ({
    block: { ...block, look: blocks.some((other) => other !== block && meet(other, block)) ? 'clash' : 'booked' },
    tag: `C${index}`,
    clock: '05:42',
  }));
}

function meet(a: LoadBlock, b: LoadBlock): boolean {
  return a.lane < b.lane + b.lanes && b.lane < a.lane + a.lanes && a.fromPx < b.toPx && b.fromPx < a.toPx;
}

function endPx(text: LoadText): number {
  return text.leftPx + textWidthPx(text.text, SIZE_PX);
}

/** How many loads the texts name or count. */
function told(texts: readonly LoadText[]): number {
  const words = texts.flatMap((text) => text.text.split(' '));
  return words.reduce((sum, word) => sum + (word.startsWith('+') ? Number(word) : word.startsWith('C') ? 1 : 0), 0);
}

const drawn = fc.record({
  fromPx: fc.integer({ min: 0, max: WIDTH_PX - 12 }),
  lengthPx: fc.integer({ min: 12, max: 260 }),
  lane: fc.constantFrom(0, 1),
  lanes: fc.constantFrom(1, 1, 2),
});
const deck = fc.array(drawn, { maxLength: 14 });

describe('the texts of loads', () => {
  test('W-G4 every load is named once or counted, however close they lie', () => {
    fc.assert(
      fc.property(deck, (given) => {
        const loads = loadsOf(given);
        expect(told(placeLoadTexts(loads, WIDTH_PX, SIZE_PX))).toBe(loads.length);
      }),
    );
  });

  test('no text stands on another, on what is reserved, or off the axis', () => {
    const reserved = [{ lane: 1, fromPx: 20, toPx: 320 }];
    fc.assert(
      fc.property(deck, (given) => {
        const texts = placeLoadTexts(loadsOf(given), WIDTH_PX, SIZE_PX, reserved);
        const stretches = [
          ...texts.flatMap((text) =>
            Array.from({ length: text.lanes }, (_, index) => ({ lane: text.lane + index, fromPx: text.leftPx, toPx: endPx(text), text })),
          ),
          ...reserved.map((stretch) => ({ ...stretch, text: null })),
        ];
        for (const one of stretches) {
          expect(one.fromPx).toBeGreaterThanOrEqual(0);
          // The last texts may use half of the air beyond the axis' end.
          expect(one.toPx).toBeLessThanOrEqual(WIDTH_PX + SIZE_PX / 2);
          for (const other of stretches) {
            if (one.text === other.text || one.lane !== other.lane) continue;
            // Half a pixel is lost where taken stretches are told apart by whole ones.
            expect(one.toPx <= other.fromPx + 0.5 || other.toPx <= one.fromPx + 0.5).toBe(true);
          }
        }
      }),
    );
  });

  test('only what clashes, or lies closer than any text has room, is written over', () => {
    fc.assert(
      fc.property(deck, (given) => {
        const loads = loadsOf(given);
        for (const text of placeLoadTexts(loads, WIDTH_PX, SIZE_PX)) {
          if (text.where === 'over') continue;
          for (const { block } of loads) {
            const isHere = block.lane <= text.lane && text.lane < block.lane + block.lanes;
            const isOwn = text.where === 'inside' && text.key === block.key;
            if (isHere && !isOwn && text.key !== 'rest') expect(block.toPx <= text.leftPx || block.fromPx >= endPx(text)).toBe(true);
          }
        }
      }),
    );
  });

  test('a load with room around it has tag and clock time', () => {
    const [alone] = loadsOf([{ fromPx: 100, lengthPx: 40, lane: 0, lanes: 1 }]);
    expect(alone === undefined ? [] : placeLoadTexts([alone], WIDTH_PX, SIZE_PX)).toMatchObject([{ text: 'C0 05:42', where: 'right' }]);
  });

  test('neighbours without room for each are named together, in their order', () => {
    const loads = loadsOf([0, 1, 2].map((index) => ({ fromPx: 600 + index * 20, lengthPx: 12, lane: 0, lanes: 1 })));
    const texts = placeLoadTexts(loads, WIDTH_PX, SIZE_PX).toSorted((a, b) => a.leftPx - b.leftPx);
    expect(texts.length).toBeLessThan(3);
    expect(texts.map(({ text }) => text.replace(' 05:42', '')).join(' ')).toBe('C0 C1 C2');
  });

  test('what clashes is told as one', () => {
    const loads = loadsOf([
      { fromPx: 300, lengthPx: 80, lane: 0, lanes: 1 },
      { fromPx: 340, lengthPx: 80, lane: 0, lanes: 1 },
    ]);
    expect(placeLoadTexts(loads, WIDTH_PX, SIZE_PX).map(({ text }) => text)).toEqual(['C0 × C1 05:42']);
  });
});

describe('a deck with fewer lanes than it wants', () => {
  test('W-G4 draws what it can in the lanes it has, and counts the rest', () => {
    fc.assert(
      fc.property(deck, deck, (shown, leftOut) => {
        const loads = loadsOf(shown);
        const others = loadsOf(leftOut).map((load) => ({
          ...load,
          tag: `C9${load.block.key}`,
          block: { ...load.block, key: `x${load.block.key}` },
        }));
        const before = loads.length;
        const unplaced = packIn(loads, others, LANES);
        expect(loads.length + unplaced).toBe(before + others.length);
        for (const { block } of loads.slice(before))
          expect(loads.some((load) => load.block !== block && meet(load.block, block))).toBe(false);
        expect(told(placeLoadTexts(loads, WIDTH_PX, SIZE_PX, [], unplaced))).toBe(before + others.length);
      }),
    );
  });
});
