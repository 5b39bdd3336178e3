import { describe, expect, test } from 'vitest';
import { houseFaults } from '../../shared/documents/house-faults.ts';
import { faultAt, kitchenFaults, type FileFault } from '../../shared/documents/kitchen-faults.ts';
import { kitchenSchema, type Kitchen } from '../../shared/documents/kitchen.ts';
import type { CommandOf } from '../../shared/floor/commands.ts';
import { decide } from '../../shared/floor/decide.ts';
import { benchesOf, blockOn, resourceName } from '../../shared/floor/resources.ts';
import { EMPTY_STATE } from '../../shared/floor/state.ts';
import { assert } from '../../shared/result.ts';
import { MAX_UP_BYTES } from '../../shared/wire/protocol.ts';
import { commandMessageSchema } from '../../shared/wire/up.ts';
import { Floor } from './support/floor.ts';
import { given } from './support/given.ts';
import { harbourFile, OPENING_MS } from './support/harbour.ts';
import { idOf, PHONE } from './support/ids.ts';

const MINUTE_MS = 60_000;
/** The demo's kitchen and house with something changed: a copy each time. */
function kitchenWith(change: (kitchen: Kitchen) => Kitchen): Kitchen {
  return change(structuredClone(harbourFile().kitchen));
}
function adopt(kitchen: Kitchen, fromVersion = 1): CommandOf<'adoptKitchen'> {
  return { type: 'adoptKitchen', fromVersion, kitchen };
}
function without(list: 'mixers' | 'bowls' | 'restPlaces' | 'vessels' | 'stations' | 'ovens', id: string): Kitchen {
  return kitchenWith((kitchen) => ({ ...kitchen, [list]: kitchen[list].filter((thing) => thing.id !== id) }));
}
function faultsOf(floor: Floor, kitchen: Kitchen): readonly FileFault[] {
  const { decision } = floor.give(adopt(kitchen));
  assert(!decision.ok && decision.fault.code === 'documentFaulty', `the kitchen was not found faulty: ${JSON.stringify(decision)}`);
  return decision.fault.faults;
}
const trayCount = (count: number): Kitchen =>
  kitchenWith((kitchen) => ({
    ...kitchen,
    vessels: kitchen.vessels.map((vessel) => (vessel.id === 'tray' ? { ...vessel, count } : vessel)),
  }));

describe('D37 a kitchen that was edited becomes the next version', () => {
  const moreTrays = trayCount(14);

  test('with what was changed in it', () => {
    const floor = given()
      .when(() => adopt(moreTrays))
      .thenEvents([{ type: 'kitchenAdopted', version: 2, kitchen: moreTrays }]);
    expect(floor.state.kitchen).toEqual({ version: 2, document: moreTrays });
  });

  test('but not where somebody else has changed it meanwhile', () => {
    given((floor) => floor.ok(adopt(moreTrays)))
      .when(() => adopt(trayCount(15)))
      .thenRefusal({ code: 'documentChanged', version: 2 });
    given()
      .when(() => adopt(moreTrays, 7))
      .thenRefusal({ code: 'documentChanged', version: 1 });
  });

  test('and not where it says the same, in whatever order of keys', () => {
    const { ovens, ...others } = harbourFile().kitchen;
    given()
      .when(() => adopt({ ovens, ...others }))
      .thenRefusal({ code: 'nothingChanges' });
  });

  test('a floor that has no kitchen yet gets its first', () => {
    const context = {
      commandId: idOf(1),
      deviceId: PHONE,
      stationId: null,
      nowMs: OPENING_MS,
      tapMs: OPENING_MS,
      tapUncertain: false,
    };
    expect(decide(EMPTY_STATE, adopt(moreTrays, 0), context)).toEqual({
      ok: true,
      value: [{ type: 'kitchenAdopted', version: 1, kitchen: moreTrays }],
    });
  });
});

describe('D37 a kitchen that cannot be is refused with each fault at its path', () => {
  test('what is wrong in itself, as in a bakehouse file', () => {
    const kitchen = kitchenWith((before) => ({
      ...before,
      mixers: before.mixers.map((mixer) => (mixer.id === 'spiral' ? { ...mixer, station: 'cellar', leastG: 50_000 } : mixer)),
    }));
    expect(kitchenFaults(kitchen).map(({ path }) => path)).toEqual(['kitchen.mixers[0].station', 'kitchen.mixers[0].leastG']);
    given()
      .when(() => adopt(kitchen))
      .thenRefusal({ code: 'documentFaulty', faults: kitchenFaults(kitchen) });
  });

  test('nothing is wrong with the demo kitchen', () => {
    expect(kitchenFaults(harbourFile().kitchen)).toEqual([]);
  });

  test.each([
    ['a rest place', without('restPlaces', 'warm-shelf'), 'kitchen.restPlaces', /^Warm shelf is still needed by .*Country sourdough/],
    ['a station', without('stations', 'fillings'), 'kitchen.stations', /^Fillings is still needed by /],
    ['an oven', without('ovens', 'hearth-oven'), 'kitchen.ovens', /^Hearth is still needed by /],
  ])('%s that a method still names', (_what, kitchen, path, message) => {
    const faults = faultsOf(Floor.harbour(), kitchen);
    expect(faults.map((fault) => fault.path)).toContain(path);
    expect(faults.find((fault) => fault.path === path)?.message).toMatch(message);
  });

  test('a mixer that a method still names, with the bowls that fit it', () => {
    const kitchen = without('mixers', 'spiral');
    expect(faultsOf(Floor.harbour(), kitchen).map((fault) => fault.path)).toEqual(['kitchen.bowls[0].fits[0]', 'kitchen.mixers']);
  });

  test('a deck of an oven that stays is told at that oven, a slot with a load in it at its deck', () => {
    const noBottom = kitchenWith((kitchen) => ({
      ...kitchen,
      ovens: kitchen.ovens.map((oven) =>
        oven.id === 'deck-oven' ? { ...oven, decks: oven.decks.filter((deck) => deck.id !== 'bottom') } : oven,
      ),
    }));
    expect(faultsOf(Floor.harbour(), noBottom)).toContainEqual({
      path: 'kitchen.ovens[0].decks',
      message: expect.stringMatching(/^Bottom is still needed by /) as string,
      facts: { code: 'stillNeeded', name: 'Bottom', by: expect.arrayContaining(['Country loaf']) as string[] },
    });
    const noLeft = kitchenWith((kitchen) => ({
      ...kitchen,
      ovens: kitchen.ovens.map((oven) => ({
        ...oven,
        decks: oven.decks.map((deck) => ({ ...deck, slots: deck.slots.filter((slot) => slot.id !== 'top-left') })),
      })),
    }));
    const floor = Floor.harbour();
    expect(floor.give(adopt(noLeft)).decision.ok).toBe(true);
    const loaded = Floor.harbour();
    loaded.record({ type: 'ovenLoaded', workpieceId: loaded.id('C1'), stepId: 'load', atMs: loaded.nowMs, slotIds: ['top-left'] });
    expect(faultsOf(loaded, noLeft)).toEqual([
      faultAt('kitchen.ovens[0].decks[0].slots', { code: 'stillNeeded', name: 'Top left', by: ['C1'] }),
    ]);
  });

  test('what a dough stands in is told with its tag; once it is off the floor nothing holds it', () => {
    const extra = kitchenWith((kitchen) => ({
      ...kitchen,
      restPlaces: [...kitchen.restPlaces, { id: 'window', name: 'Window sill', kind: 'bench', temperatureC: 18 }],
    }));
    const floor = Floor.harbour();
    floor.ok(adopt(extra));
    floor.record({ type: 'workpieceMoved', workpieceId: floor.id('C1'), placeId: 'window', atMs: floor.nowMs });
    const { decision } = floor.give(adopt(harbourFile().kitchen, 2));
    expect(decision).toEqual({
      ok: false,
      fault: { code: 'documentFaulty', faults: [faultAt('kitchen.restPlaces', { code: 'stillNeeded', name: 'Window sill', by: ['C1'] })] },
    });
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('C1'), reason: 'dropped' });
    floor.ok(adopt(harbourFile().kitchen, 2));
  });

  test('fewer vessels than doughs hold are too few, as many are enough', () => {
    const floor = Floor.harbour();
    floor.record({ type: 'vesselsTaken', workpieceId: floor.id('C1'), vesselId: 'tray', count: 4, atMs: floor.nowMs });
    floor.record({ type: 'vesselsTaken', workpieceId: floor.id('C2'), vesselId: 'tray', count: 3, atMs: floor.nowMs });
    expect(faultsOf(floor, trayCount(6))).toEqual([faultAt('kitchen.vessels[3].count', { code: 'vesselsHeld', name: null, heldCount: 7 })]);
    expect(faultsOf(floor, without('vessels', 'tray'))).toContainEqual(
      faultAt('kitchen.vessels', { code: 'vesselsHeld', name: 'Tray', heldCount: 7 }),
    );
    floor.ok(adopt(trayCount(7)));
  });
});

describe('D37 the house is adopted in the same way', () => {
  const { house } = harbourFile();
  const inFahrenheit = { ...house, units: { ...house.units, temperature: 'F' as const } };

  test('as its next version, or not at all', () => {
    const floor = given()
      .when(() => ({ type: 'adoptHouse', fromVersion: 1, house: inFahrenheit }))
      .thenEvents([{ type: 'houseAdopted', version: 2, house: inFahrenheit }]);
    expect(floor.give({ type: 'adoptHouse', fromVersion: 1, house }).decision).toEqual({
      ok: false,
      fault: { code: 'documentChanged', version: 2 },
    });
    expect(floor.give({ type: 'adoptHouse', fromVersion: 2, house: inFahrenheit }).decision).toEqual({
      ok: false,
      fault: { code: 'nothingChanges' },
    });
  });

  // The names of zones are those of the IANA time zone database; Node carries them in its ICU data.
  test.each([
    ['Europe/London', true],
    ['Pacific/Auckland', true],
    ['UTC', true],
    ['Europe/Londen', false],
    ['three', false],
  ])('the zone %s is one: %s', (zone, isZone) => {
    expect(houseFaults({ ...house, zone }).map(({ path }) => path)).toEqual(isZone ? [] : ['house.zone']);
    const { decision } = Floor.harbour().give({ type: 'adoptHouse', fromVersion: 1, house: { ...house, name: 'Quay bakehouse', zone } });
    expect(decision.ok).toBe(isZone);
  });
});

describe('D37 things can be blocked and freed on the spot', () => {
  const spiral = { kind: 'mixer', id: 'spiral' } as const;

  test('for so many minutes from the tap, or until they are freed', () => {
    const floor = given()
      .when(() => ({ type: 'blockResource', resource: spiral, why: 'cleaning', minutes: 20 }))
      .thenEvents([{ type: 'resourceBlocked', resource: spiral, why: 'cleaning', untilMs: OPENING_MS + 20 * MINUTE_MS, atMs: OPENING_MS }]);
    expect(blockOn(floor.state, spiral, OPENING_MS + 20 * MINUTE_MS - 1)?.why).toBe('cleaning');
    expect(blockOn(floor.state, spiral, OPENING_MS + 20 * MINUTE_MS)).toBeNull();
    given()
      .when(() => ({ type: 'blockResource', resource: spiral, why: 'outOfOrder' }))
      .thenEvents([{ type: 'resourceBlocked', resource: spiral, why: 'outOfOrder', atMs: OPENING_MS }]);
  });

  test('a later block takes the place of the one before', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'blockResource', resource: spiral, why: 'cleaning', minutes: 20 });
    floor.ok({ type: 'blockResource', resource: spiral, why: 'outOfOrder' });
    expect(floor.state.blocked.map(({ why }) => why)).toEqual(['outOfOrder']);
  });

  test('a bench is a rest place, and blocked once only', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'blockResource', resource: { kind: 'restPlace', id: 'bench' }, why: 'cleaning' });
    floor.ok({ type: 'blockResource', resource: { kind: 'bench', id: 'bench' }, why: 'allergenChangeOver' });
    expect(floor.state.blocked.map(({ resource, why }) => [resource.kind, why])).toEqual([['restPlace', 'allergenChangeOver']]);
    floor.ok({ type: 'freeResource', resource: { kind: 'bench', id: 'bench' } });
    expect(floor.state.blocked).toEqual([]);
  });

  test.each([
    ['mixer', 'planetary', 'Planetary'],
    ['bowl', 'bowl-1', 'Bowl 1'],
    ['restPlace', 'cold-room', 'Cold room'],
    ['vessel', 'tin', 'Rye tin'],
    ['deck', 'bottom', 'Bottom'],
    ['slot', 'bottom-left', 'Bottom left'],
    ['bench', 'bench', 'Bench'],
    ['station', 'oven', 'Oven'],
  ] as const)('a %s can be, by its name', (kind, id, name) => {
    expect(resourceName(harbourFile().kitchen, { kind, id })).toBe(name);
    expect(Floor.harbour().give({ type: 'blockResource', resource: { kind, id }, why: 'cleaning' }).decision.ok).toBe(true);
  });

  test('a bench that is cleaned between doughs is as many benches as it has places, by number; it is blocked as a whole', () => {
    const { kitchen } = harbourFile();
    const bench = (room: number, changeOverMin?: number): Kitchen => ({
      ...kitchen,
      bench: { room, ...(changeOverMin === undefined ? {} : { changeOverMin }) },
    });
    expect(benchesOf(bench(2, 5))).toEqual([
      { id: 'bench', name: 'Bench 1', room: 1 },
      { id: 'bench-2', name: 'Bench 2', room: 1 },
    ]);
    expect(benchesOf(bench(2))).toEqual([{ id: 'bench', name: 'Bench', room: 2 }]);
    expect(resourceName(bench(2, 5), { kind: 'bench', id: 'bench-2' })).toBe('Bench 2');
    expect(resourceName(bench(2), { kind: 'bench', id: 'bench-2' })).toBeNull();
    const resource = { kind: 'bench', id: 'bench-2' } as const;
    given()
      .when(() => ({ type: 'blockResource', resource, why: 'cleaning' }))
      .thenRefusal({ code: 'resourceUnknown', resource });
  });

  test('what is not there can be neither blocked nor freed', () => {
    const resource = { kind: 'mixer', id: 'bottom' } as const;
    given()
      .when(() => ({ type: 'blockResource', resource, why: 'cleaning' }))
      .thenRefusal({ code: 'resourceUnknown', resource });
    given()
      .when(() => ({ type: 'freeResource', resource }))
      .thenRefusal({ code: 'resourceUnknown', resource });
  });

  test('what is not blocked, or not any more, cannot be freed', () => {
    given()
      .when(() => ({ type: 'freeResource', resource: spiral }))
      .thenRefusal({ code: 'notBlocked', resource: spiral });
    given((floor) => floor.ok({ type: 'blockResource', resource: spiral, why: 'cleaning', minutes: 5 }) && floor.wait(5))
      .when(() => ({ type: 'freeResource', resource: spiral }))
      .thenRefusal({ code: 'notBlocked', resource: spiral });
  });

  test('a tap that comes late frees it no sooner than it was blocked', () => {
    given((floor) => floor.wait(10).ok({ type: 'blockResource', resource: spiral, why: 'outOfOrder' }))
      .when(() => ({ type: 'freeResource', resource: spiral }), { tapMs: OPENING_MS + MINUTE_MS })
      .thenEvents([{ type: 'resourceFreed', resource: spiral, atMs: OPENING_MS + 10 * MINUTE_MS }]);
  });

  test('a block goes with the thing that it was on', () => {
    const kitchen = without('bowls', 'bowl-2');
    given((floor) => floor.ok({ type: 'blockResource', resource: { kind: 'bowl', id: 'bowl-2' }, why: 'outOfOrder' }))
      .when(() => adopt(kitchen))
      .thenEvents([
        { type: 'kitchenAdopted', version: 2, kitchen },
        { type: 'resourceFreed', resource: { kind: 'bowl', id: 'bowl-2' }, atMs: OPENING_MS },
      ]);
  });
});

describe('D37 a deck is set on the spot', () => {
  test('to what somebody says, and no second time to the same', () => {
    const floor = given()
      .when(() => ({ type: 'setDeck', deckId: 'top', temperatureC: 250 }))
      .thenEvents([{ type: 'deckSet', deckId: 'top', temperatureC: 250, atMs: OPENING_MS }]);
    expect(floor.give({ type: 'setDeck', deckId: 'top', temperatureC: 250 }).decision).toEqual({
      ok: false,
      fault: { code: 'nothingChanges' },
    });
  });

  test('nor to what the kitchen says already', () => {
    given()
      .when(() => ({ type: 'setDeck', deckId: 'top', temperatureC: 235 }))
      .thenRefusal({ code: 'nothingChanges' });
  });

  test('where there is one', () => {
    given()
      .when(() => ({ type: 'setDeck', deckId: 'attic', temperatureC: 250 }))
      .thenRefusal({ code: 'deckUnknown', deckId: 'attic' });
  });
});

describe('D60 the air of a place is said as somebody finds it', () => {
  test('how warm it is, for how long its door is open, that its programme begins', () => {
    const floor = given()
      .when(() => ({ type: 'readPlace', placeId: 'bench', celsius: 19 }))
      .thenTypes(['placeRead']);
    floor.wait(10).ok({ type: 'openPlace', placeId: 'cold-room', minutes: 20 });
    floor.ok({ type: 'beginProgramme', placeId: 'cold-room' });
    expect(floor.state.placeAir).toMatchObject({
      bench: { readings: [{ celsius: 19, atMs: floor.nowMs - 10 * MINUTE_MS }] },
      'cold-room': {
        openings: [{ fromMs: floor.nowMs, toMs: floor.nowMs + 20 * MINUTE_MS }],
        programme: { begunMs: floor.nowMs, phases: [{ temperatureC: 4 }, { temperatureC: 12 }, { temperatureC: 22 }] },
      },
    });
  });

  test('only of a place of the kitchen, and a programme only where its document has one', () => {
    for (const type of ['readPlace', 'openPlace', 'beginProgramme'] as const)
      given()
        .when(() => ({ type, placeId: 'attic', celsius: 20, minutes: 5 }))
        .thenRefusal({ code: 'placeUnknown', placeId: 'attic' });
    given()
      .when(() => ({ type: 'beginProgramme', placeId: 'bench' }))
      .thenRefusal({ code: 'programmeMissing', placeId: 'bench' });
  });
});

describe('D37 a large kitchen fits into one message', () => {
  test('twenty ovens of five decks with six slots, and all that a plant has beside', () => {
    const name = (index: number): string => `Thing with a long name, number ${index}`;
    const times = <Thing>(count: number, make: (index: number) => Thing): Thing[] =>
      Array.from({ length: count }, (_, index) => make(index));
    const kitchen: Kitchen = {
      stations: times(20, (index) => ({ id: `station-${index}`, name: name(index), hands: 2 })),
      mixers: times(12, (index) => ({
        id: `mixer-${index}`,
        name: name(index),
        kind: 'spiral' as const,
        leastG: 5000,
        mostG: 120_000,
        bowlComesOff: true,
        changeOverMin: 15,
        station: 'station-0',
      })),
      bowls: times(30, (index) => ({ id: `bowl-${index}`, name: name(index), litres: 200, fits: ['mixer-0', 'mixer-1'] })),
      restPlaces: times(40, (index) => ({ id: `place-${index}`, name: name(index), kind: 'prover' as const, temperatureC: 28, room: 20 })),
      vessels: times(40, (index) => ({ id: `vessel-${index}`, name: name(index), kind: 'tin' as const, count: 400, turnRoundMin: 20 })),
      ovens: times(20, (oven) => ({
        id: `oven-${oven}`,
        name: name(oven),
        decks: times(5, (deck) => ({
          id: `deck-${oven}-${deck}`,
          name: `Deck ${deck + 1}`,
          temperatureC: 240,
          slots: times(6, (slot) => ({ id: `slot-${oven}-${deck}-${slot}`, name: `${slot + 1}` })),
        })),
      })),
    };
    expect(kitchenFaults(kitchenSchema.parse(kitchen))).toEqual([]);
    const message = commandMessageSchema.parse({
      type: 'command',
      commandId: idOf(1),
      tap: { agoMonotonicMs: 0, agoWallMs: 0 },
      command: adopt(kitchen),
    });
    expect(new TextEncoder().encode(JSON.stringify(message)).length).toBeLessThan(MAX_UP_BYTES);
  });
});
