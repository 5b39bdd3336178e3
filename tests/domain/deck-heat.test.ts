import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { deckHeatTexts } from '../../display/parts/deck-heat-text.ts';
import { deckHeatAt } from '../../shared/floor/deck-heat.ts';
import { ovenLanes, type DeckLanes } from '../../shared/floor/oven-lanes.ts';
import { assert } from '../../shared/result.ts';
import { deckAt, minutesTo, type DeckCourse } from '../../shared/trade/deck-heat.ts';
import type { Floor } from './support/floor.ts';
import { DECK_RATES, ovenHouse } from './support/oven-house.ts';

const MINUTE_MS = 60_000;

function lanes(floor: Floor, deckId: string): DeckLanes {
  const found = ovenLanes(floor.state, floor.nowMs).find(({ deck }) => deck.id === deckId);
  assert(found !== undefined, `there is ${deckId}`);
  return found;
}

describe('OV8 a deck heats and cools by its rates, and loses heat to what is loaded', () => {
  const course: DeckCourse = { ...DECK_RATES, fromMin: 0, fromC: 200, setC: 250, drops: [] };

  test('50 K up at 5 K a minute take 10 minutes, 50 K down at 3 K a minute 16 2/3', () => {
    expect(deckAt(course, 4)).toEqual({ celsius: 220, readyMin: 10 });
    expect(deckAt(course, 30)).toEqual({ celsius: 250, readyMin: 30 });
    expect(minutesTo(DECK_RATES, 250, 200)).toBeCloseTo(50 / 3, 9);
    expect(minutesTo({}, 250, 200)).toBe(0);
  });

  test('a load takes from it, and it is back after as long as the rate says; two at once take twice', () => {
    const loaded = { ...course, fromC: 250, drops: [{ atMin: 10, byK: 15 }] };
    expect(deckAt(loaded, 10)).toEqual({ celsius: 235, readyMin: 13 });
    expect(deckAt(loaded, 12).celsius).toBe(245);
    expect(deckAt({ ...loaded, drops: [...loaded.drops, { atMin: 10, byK: 15 }] }, 10).readyMin).toBe(16);
  });

  test('looked at twice on the way it is where it is when looked at once; what is still to come changes nothing', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 150, max: 300 }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        (fromC, first, second) => {
          const whole = deckAt({ ...course, fromC, drops: [{ atMin: 1000, byK: 40 }] }, first + second).celsius;
          const half = deckAt({ ...course, fromC }, first).celsius;
          expect(deckAt({ ...course, fromC: half, fromMin: first }, first + second).celsius).toBeCloseTo(whole, 9);
        },
      ),
      { seed: 3 },
    );
  });
});

describe('OV9 wall and station say what to set a deck to and by when, and when it is hot', () => {
  test('set from 235 to 245 °C, a deck of 5 K a minute is there two minutes later', () => {
    const floor = ovenHouse({ to: 'prove' });
    floor.ok({ type: 'setDeck', deckId: 'top', temperatureC: 245 });
    expect(lanes(floor, 'top').readyMs).toBe(floor.nowMs + 2 * MINUTE_MS);
    expect(deckHeatTexts({ wants: null, readyMs: lanes(floor, 'top').readyMs }, floor.nowMs, 'UTC', 'C').join()).toMatch(/^hot \d\d:\d\d$/);
    expect(lanes(floor.wait(2), 'top').readyMs).toBeNull();
  });

  test('a load that has just gone in, with steam, has taken from its deck; its recovery is told', () => {
    const floor = ovenHouse();
    const deck = lanes(floor, 'bottom').deck;
    // One of two slots: half of 15 K, and 5 K of steam, back at 5 K a minute.
    expect(deckHeatAt(floor.state, deck, floor.nowMs)).toMatchObject({
      celsius: 245 - 12.5,
      setC: 245,
      readyMs: floor.nowMs + 2.5 * MINUTE_MS,
    });
    expect(deckHeatAt(floor.state, deck, floor.nowMs + 3 * MINUTE_MS).readyMs).toBeNull();
  });

  test('the next load wants another heat: the deck is to be set as long before as it takes to cool there', () => {
    const floor = ovenHouse({ to: 'prove' });
    const deck = lanes(floor, 'bottom');
    const next = deck.lanes.flatMap(({ bookings }) => bookings).find(({ tag }) => tag.startsWith('R1'));
    assert(next !== undefined && deck.wants !== null, 'rye is booked and wants another heat');
    expect(deck.wants).toMatchObject({ celsius: 235 });
    expect(deck.wants.setByMs).toBe(Math.round(next.fromMs - (10 / 3) * MINUTE_MS));
    expect(deckHeatTexts(deck, deck.wants.setByMs - 10 * MINUTE_MS, 'UTC', 'C').join('; ')).toMatch(
      /^set 235 °C by \d\d:\d\d; set 235 °C$/,
    );
    expect(deckHeatTexts(deck, deck.wants.setByMs, 'UTC', 'C')).toEqual(['set 235 °C']);
    expect(deckHeatTexts(deck, deck.wants.setByMs - 31 * MINUTE_MS, 'UTC', 'C')).toEqual([]);
    floor.ok({ type: 'setDeck', deckId: 'bottom', temperatureC: 235 });
    expect(lanes(floor, 'bottom').wants).toBeNull();
  });
});
