import { describe, expect, test } from 'vitest';
import { ovenLanes } from '../../shared/floor/oven-lanes.ts';
import { projectionOf } from '../../shared/floor/projection.ts';
import { Floor } from './support/floor.ts';
import { OPENING_MS } from './support/harbour.ts';

const MINUTE_MS = 60_000;

/** What each slot holds, as `tag from-to`, minutes from the opening; `!` for a clash, `*` for what is in. */
function lanes(floor: Floor): Record<string, string[]> {
  const min = (ms: number): number => (ms - OPENING_MS) / MINUTE_MS;
  return Object.fromEntries(
    ovenLanes(floor.state, floor.nowMs).flatMap((deck) =>
      deck.lanes.map((lane) => [
        lane.slot.id,
        lane.bookings.map(
          (booking) =>
            `${booking.tag} ${min(booking.fromMs)}-${min(booking.toMs)}${booking.isIn ? '*' : ''}${booking.clashesWith.map((tag) => `!${tag}`).join('')}`,
        ),
      ]),
    ),
  );
}

describe('D19 what is expected follows from the state, the methods and the time', () => {
  test('a dough’s way ahead takes each step’s target, one after another', () => {
    const floor = Floor.harbour().bringTo('R1', 'bulk');
    const projection = projectionOf(floor.state, floor.piece('R1'), floor.nowMs + 10 * MINUTE_MS);
    const ahead = projection?.stretches.map((stretch) => [
      stretch.stepId,
      (stretch.fromMs - floor.nowMs) / MINUTE_MS,
      (stretch.toMs - floor.nowMs) / MINUTE_MS,
    ]);
    expect(ahead?.slice(0, 5)).toEqual([
      ['bulk', 0, 45],
      ['divide', 45, 51],
      ['tin', 51, 58],
      ['prove', 58, 118],
      ['seed', 118, 120],
    ]);
    expect(projection?.stretches[0]?.isUnderWay).toBe(true);
  });

  test('what is overdue is taken to happen now', () => {
    const floor = Floor.harbour().bringTo('R1', 'bulk').wait(100);
    const projection = projectionOf(floor.state, floor.piece('R1'), floor.nowMs);
    expect(projection?.stretches.slice(0, 2).map((stretch) => stretch.toMs - floor.nowMs)).toEqual([0, 6 * MINUTE_MS]);
  });

  test('a dough that will be divided is expected in the oven as each of its cuts', () => {
    const floor = Floor.harbour();
    const projection = projectionOf(floor.state, floor.piece('M1'), floor.nowMs);
    expect(projection?.stays.map((stay) => [stay.tag, stay.slotsNeeded, stay.deckIds])).toEqual([
      ['M1a', 1, ['top']],
      ['M1b', 1, ['top']],
    ]);
  });

  test('what is off the floor is expected nowhere', () => {
    const floor = Floor.harbour().only('C1');
    expect(projectionOf(floor.state, floor.piece('R1'), floor.nowMs)).toBeNull();
  });

  test('each expected load books the first slots free for its whole stay', () => {
    expect(lanes(Floor.harbour().only('R1', 'M1', 'O1'))).toEqual({
      'top-left': ['M1a 182-196'],
      'top-right': ['M1b 184.5-197.5'],
      'bottom-left': ['R1 142-197', 'O1 228.2-235.2'],
      'bottom-right': [],
      back: ['O1 290-295.5'],
      front: [],
    });
  });

  test('what is in lies where it was put, from its bake’s start to its due time, or now where that is past', () => {
    const floor = Floor.harbour().only('C1').bringTo('C1', 'bake');
    expect(lanes(floor)).toMatchObject({ 'bottom-left': ['C1 253-298*'], 'bottom-right': ['C1 253-298*'] });
    floor.wait(50);
    expect(lanes(floor)).toMatchObject({ 'bottom-left': ['C1 253-303*'], 'bottom-right': ['C1 253-303*'] });
  });

  test('while it is being taken out it still lies there, and its later bake stays booked', () => {
    const floor = Floor.harbour().only('O1').bringTo('O1', 'part-bake').wait(7);
    floor.ok({ type: 'startStep', workpieceId: floor.id('O1'), stepId: 'out-part-baked' });
    const now = (floor.nowMs - OPENING_MS) / MINUTE_MS;
    expect(lanes(floor)['bottom-left']?.map((text) => text.split(' ')[0])).toEqual(['O1']);
    expect(lanes(floor)['back']).toEqual([`O1 ${now + 1 + 20 + 2.8 + 30 + 1}-${now + 1 + 20 + 2.8 + 30 + 1 + 5.5}`]);
  });

  test('where no slot is free for the whole stay the clash is shown, on both sides of nothing else', () => {
    const floor = Floor.harbour().only('C1', 'C2', 'R1').bringTo('C1', 'load').bringTo('C2', 'load').bringTo('R1', 'load');
    // Ten slots’ worth wanted at once: five slots wanted at the same time, four there.
    const booked = lanes(floor);
    const clashing = Object.values(booked)
      .flat()
      .filter((text) => text.includes('!'));
    expect(Object.values(booked).flat()).toHaveLength(5);
    expect(clashing).toHaveLength(1);
    expect(clashing[0]).toMatch(/^R1 .*!C[12]$/);
  });

  test('decks as they stand, with the temperature that was set last and the time at which they come free', () => {
    const floor = Floor.harbour().only('C1').bringTo('C1', 'bake');
    floor.record({ type: 'deckSet', deckId: 'top', temperatureC: 220, atMs: floor.nowMs });
    expect(
      ovenLanes(floor.state, floor.nowMs).map((deck) => [
        deck.ovenName,
        deck.deck.name,
        deck.temperatureC,
        deck.freeMs === null ? null : (deck.freeMs - floor.nowMs) / MINUTE_MS,
      ]),
    ).toEqual([
      ['Deck oven', 'Top', 220, null],
      ['Deck oven', 'Bottom', 245, 45],
      ['Hearth oven', 'Hearth', 390, null],
    ]);
  });

  test('a kitchen of which nothing is known has no ovens', () => {
    const floor = new Floor();
    expect(ovenLanes(floor.state, floor.nowMs)).toEqual([]);
  });
});
