import { clockTimeTyped } from '../../display/kitchen/clock-time-typed.ts';
import { describe, expect, test } from 'vitest';
import { edited, isOvertaken, onNewer, settled, type Draft } from '../../display/kitchen/draft.ts';
import { faultsOfHouse, faultsOfKitchen, faultsWithin, namedFault } from '../../display/kitchen/draft-faults.ts';
import { doughMeasure, rateMeasure, temperatureMeasure } from '../../display/desk/field.ts';
import { fieldsOf } from '../../display/kitchen/fields.ts';
import { withValueAt, valueAt } from '../../display/desk/inwards.ts';
import { cleanedKey, cleanedNames, cleanedOf } from '../../display/kitchen/cleaned.ts';
import { firstDays, withDay, withOneMore, withoutOne } from '../../display/kitchen/hours-edits.ts';
import { withAdded, withField, withMoved, withRemoved } from '../../display/kitchen/kitchen-edits.ts';
import { kitchenNow, nextChangeOfKitchenMs } from '../../display/kitchen/kitchen-now.ts';
import { placeOf } from '../../display/kitchen/chosen.ts';
import { rebased } from '../../display/desk/rebase.ts';
import type { FloorView } from '../../display/link/floor-link.ts';
import { faultMessage } from '../../shared/documents/fault-facts.ts';
import { faultAt, kitchenFaults } from '../../shared/documents/kitchen-faults.ts';
import { kitchenSchema, type Cleaning, type Kitchen } from '../../shared/documents/kitchen.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';
import { assert } from '../../shared/result.ts';
import { Floor } from './support/floor.ts';
import { harbourFile, OPENING_MS } from './support/harbour.ts';
import { idOf } from './support/ids.ts';

const KITCHEN: Kitchen = harbourFile().kitchen;
const MINUTE_MS = 60_000;
const CLEANING: Cleaning = {
  id: 'deck-top',
  name: 'Brush the top deck',
  resource: { kind: 'deck', id: 'top' },
  minutes: 20,
  station: 'oven',
  from: '14:00',
  to: '16:00',
};

describe('D37 what is edited in a draft', () => {
  test('stands where it is put, and the document given stays as it is', () => {
    const before = JSON.stringify(KITCHEN);
    const after = withValueAt(KITCHEN, ['ovens', 0, 'decks', 1, 'temperatureC'], 255);
    expect([valueAt(after, ['ovens', 0, 'decks', 1, 'temperatureC']), after.ovens[0]?.decks[0]]).toEqual([255, KITCHEN.ovens[0]?.decks[0]]);
    expect(withValueAt(KITCHEN, ['restPlaces', 1, 'room'], undefined).restPlaces[1]).not.toHaveProperty('room');
    expect(JSON.stringify(KITCHEN)).toBe(before);
  });

  test.each([
    ['mixer', null],
    ['bowl', 'planetary'],
    ['restPlace', null],
    ['vessel', null],
    ['oven', null],
    ['deck', 'hearth-oven'],
    ['slot', 'top'],
    ['station', null],
    ['cleaning', null],
  ] as const)('a new %s is right as it is added, twice as well as once, and can be taken out', (kind, withinId) => {
    const once = withAdded(KITCHEN, kind, withinId);
    const twice = once === null ? null : withAdded(once.kitchen, kind, withinId);
    assert(once !== null && twice !== null, 'nothing was added');
    for (const { kitchen } of [once, twice]) expect(kitchenFaults(kitchenSchema.parse(kitchen))).toEqual([]);
    expect(once.id).not.toBe(twice.id);
    const place = placeOf(once.kitchen, { kind, id: once.id });
    assert(place !== null, 'what was added is not there');
    expect(withRemoved(once.kitchen, place)).toEqual(KITCHEN);
  });

  test('nothing is added to an oven that is not there', () => {
    expect(withAdded(KITCHEN, 'deck', 'cellar')).toBeNull();
  });

  test('decks change their places as they stand, not beyond the first and the last', () => {
    const swapped = withMoved(KITCHEN, ['ovens', 0, 'decks', 0], 1);
    expect(swapped.ovens[0]?.decks.map((deck) => deck.id)).toEqual(['bottom', 'top']);
    expect(withMoved(KITCHEN, ['ovens', 0, 'decks', 0], -1)).toBe(KITCHEN);
    expect(withMoved(KITCHEN, ['ovens', 0, 'decks', 1], 1)).toBe(KITCHEN);
  });

  test('each field of each thing is one that the document has', () => {
    const units = harbourFile().house.units;
    const samples = {
      mixer: KITCHEN.mixers[0],
      bowl: KITCHEN.bowls[0],
      restPlace: KITCHEN.restPlaces[1],
      vessel: KITCHEN.vessels[1],
      oven: KITCHEN.ovens[0],
      deck: KITCHEN.ovens[0]?.decks[0],
      slot: KITCHEN.ovens[0]?.decks[0]?.slots[0],
      station: KITCHEN.stations[0],
      cleaning: CLEANING,
    } as const;
    for (const [kind, sample] of Object.entries(samples)) {
      const keys = fieldsOf(kind as keyof typeof samples, KITCHEN, units)
        .filter((field) => field.kind !== 'number' || !field.isOptional)
        .map((field) => field.key);
      expect(Object.keys(sample ?? {}), kind).toEqual(expect.arrayContaining(keys));
    }
  });

  // 0 °C is 32 °F and 100 °C is 212 °F; the pound is 0.45359237 kg (international agreement of 1959).
  test('numbers are shown in the units of the house, and come back as they were', () => {
    const fahrenheit = temperatureMeasure({ temperature: 'F', weight: 'lb' });
    expect([fahrenheit.shown(0), fahrenheit.shown(100), fahrenheit.stored(212)]).toEqual([32, 212, 100]);
    for (const shown of [39, 425, 450, 475, 500]) expect(fahrenheit.shown(fahrenheit.stored(shown))).toBe(shown);
    const pounds = doughMeasure({ temperature: 'F', weight: 'lb' });
    expect([pounds.shown(453.592_37), pounds.stored(10)]).toEqual([1, 4536]);
    const kilograms = doughMeasure({ temperature: 'C', weight: 'g' });
    expect([kilograms.shown(2500), kilograms.stored(2.5)]).toEqual([2.5, 2500]);
  });
});

describe('D37 what is wrong with a draft is known while it is typed', () => {
  const { state } = Floor.harbour();

  test('at its field, in words, with the thing that has it', () => {
    const nothing = withValueAt(KITCHEN, ['mixers', 0, 'leastG'], Number.NaN);
    const answer = faultsOfKitchen(nothing, state);
    expect(answer).toEqual({ isSendable: false, faults: [{ path: 'kitchen.mixers[0].leastG', message: 'a number is needed' }] });
    expect(answer.faults.map((fault) => namedFault(fault, { kitchen: nothing, house: harbourFile().house }))).toEqual([
      'Spiral: a number is needed',
    ]);
    const few = faultsOfKitchen(withValueAt(KITCHEN, ['vessels', 0, 'count'], 0), state);
    expect(few.faults).toEqual([{ path: 'kitchen.vessels[0].count', message: 'at least 1' }]);
    expect(faultsWithin(few.faults, 'kitchen', ['vessels', 0])).toEqual(few.faults);
    expect(faultsWithin(few.faults, 'kitchen', ['vessels', 1])).toEqual([]);
  });

  test('T1 a form that a text must have is told in the words of the page, not of a schema', () => {
    const badKey = faultsOfKitchen(withValueAt(KITCHEN, ['vessels', 0, 'id'], 'Big Tub'), state);
    expect(badKey).toEqual({
      isSendable: false,
      faults: [{ path: 'kitchen.vessels[0].id', message: 'lower case letters, digits, hyphens' }],
    });
    const badTime = faultsOfHouse(withValueAt(harbourFile().house, ['sound', 'testAt'], '25:00'));
    expect(badTime).toEqual({ isSendable: false, faults: [{ path: 'house.sound.testAt', message: 'a time is needed, such as 05:00' }] });
  });

  test('what the house would refuse can be sent all the same', () => {
    const answer = faultsOfKitchen(withValueAt(KITCHEN, ['mixers', 0, 'leastG'], 50_000), state);
    expect(answer).toEqual({
      isSendable: true,
      faults: [faultAt('kitchen.mixers[0].leastG', { code: 'leastOverMost' })],
    });
  });

  test('the demo kitchen as it is has no fault', () => {
    expect(faultsOfKitchen(KITCHEN, state)).toEqual({ isSendable: true, faults: [] });
  });
});

describe('Y4 what a plan has to know of a kitchen is edited there', () => {
  const { state } = Floor.harbour();
  const BENCH = { kind: 'station', id: 'bench' } as const;
  const faultsOf = (kitchen: Kitchen): readonly (readonly [string, string])[] =>
    faultsOfKitchen(kitchen, state).faults.map(({ path, message }) => [path, message]);

  test('hours of a station stand field by field; the last one taken away leaves none said', () => {
    const one = withField(KITCHEN, BENCH, 'hours', withOneMore([], 'hours'));
    const typed = withField(withField(one, BENCH, 'hours.0.from', '05:00'), BENCH, 'hours.0.to', '13:30');
    expect(typed.stations[1]?.hours).toEqual([{ from: '05:00', to: '13:30' }]);
    const onSome = withField(typed, BENCH, 'hours.0.weekdays', firstDays(false));
    expect(onSome.stations[1]?.hours?.[0]?.weekdays).toEqual([1, 2, 3, 4, 5]);
    expect(withField(onSome, BENCH, 'hours.0.weekdays', firstDays(true))).toEqual(typed);
    expect(withField(typed, BENCH, 'hours', withoutOne(typed.stations[1]?.hours ?? [], 0))).toEqual(KITCHEN);
    for (const kitchen of [one, typed, onSome]) expect(faultsOf(kitchen)).toEqual([]);
  });

  test('one more is what the last hours leave of the day, or a break as long, later; weekdays keep their order', () => {
    expect(withOneMore([{ from: '21:00', to: '09:00', weekdays: [6] }], 'hours')[1]).toEqual({ from: '09:00', to: '21:00', weekdays: [6] });
    expect(withOneMore([{ from: '22:30', to: '22:50' }], 'breaks')[1]).toEqual({ from: '02:30', to: '02:50' });
    expect(withOneMore([{ from: '22:3', to: '22:50' }], 'breaks')[1]).toEqual({ from: '08:00', to: '08:20' });
    expect(withDay([1, 5], 3, true)).toEqual([1, 3, 5]);
    expect(withDay([1, 5], 5, false)).toEqual([1]);
  });

  test('what is no clock time yet stays as it was typed, and is told at its field', () => {
    const one = withField(KITCHEN, BENCH, 'breaks', [{ from: '25:0', to: '08:20' }]);
    expect(faultsOf(one)).toEqual([['kitchen.stations[1].breaks[0].from', 'a time is needed, such as 05:00']]);
    const same = withField(KITCHEN, BENCH, 'breaks', [{ from: '08:00', to: '08:00' }]);
    expect(faultsOf(same)).toEqual([['kitchen.stations[1].breaks[0].to', faultMessage({ code: 'hoursEmpty', at: '08:00' })]]);
    const never = withField(KITCHEN, BENCH, 'hours', [{ from: '08:00', to: '12:00', weekdays: [] }]);
    expect(faultsOf(never)).toEqual([['kitchen.stations[1].hours[0].weekdays', 'choose one at least']]);
  });

  test('the bench is there once somebody counts, and gone when nobody does any more', () => {
    const { bench: _bench, ...none } = KITCHEN;
    const counted = withField(none, { kind: 'bench' }, 'room', 3);
    expect(counted.bench).toEqual({ room: 3 });
    expect(withField(counted, { kind: 'bench' }, 'room', undefined)).toEqual(none);
    const uncounted = withField(none, { kind: 'bench' }, 'changeOverMin', 5);
    const [fault, ...others] = faultsOfKitchen(uncounted, state).faults;
    assert(fault !== undefined && others.length === 0, 'one fault is expected');
    expect(fault.path).toBe('kitchen.bench.room');
    expect(namedFault(fault, { kitchen: uncounted, house: harbourFile().house })).toBe('Work on the bench: a number is needed');
  });

  test('a cleaning is of any mixer, bench or deck, by hands or nobody’s', () => {
    const kitchen = { ...KITCHEN, cleanings: [CLEANING] };
    const chosen = { kind: 'cleaning', id: CLEANING.id } as const;
    for (const [key, name] of Object.entries(cleanedNames(kitchen))) {
      const other = withField(kitchen, chosen, 'resource', key);
      expect(faultsOf(other), name).toEqual([]);
      expect(cleanedKey(other.cleanings?.[0]?.resource ?? CLEANING.resource)).toBe(key);
    }
    expect(cleanedOf('deck:top')).toEqual(CLEANING.resource);
    expect(withField(kitchen, chosen, 'station', '').cleanings?.[0]).not.toHaveProperty('station');
    expect(faultsOf(withField(kitchen, chosen, 'minutes', 130))).toEqual([
      ['kitchen.cleanings[0].minutes', faultMessage({ code: 'cleaningTooLong', minutes: 130, windowMin: 120 })],
    ]);
    const emptied = withRemoved(kitchen, ['cleanings', 0]);
    expect(emptied).not.toHaveProperty('cleanings');
  });

  // A difference of 1 K is one of 1.8 °F.
  test('a deck heats and cools by the house’s degrees a minute, and never by none', () => {
    const rate = rateMeasure({ temperature: 'F', weight: 'lb' });
    expect([rate.unit, rate.shown(5), rate.stored(9)]).toEqual(['°F/min', 9, 5]);
    const still = withField(KITCHEN, { kind: 'deck', id: 'top' }, 'heatKPerMin', 0);
    expect(faultsOf(still)).toEqual([['kitchen.ovens[0].decks[0].heatKPerMin', 'more than 0']]);
  });
});

describe('D37 two who edit one kitchen', () => {
  const inForce = { version: 1, document: KITCHEN };
  const setTrays = (kitchen: Kitchen, count: number): Kitchen => withValueAt(kitchen, ['vessels', 3, 'count'], count);
  const draftOf = (change: (kitchen: Kitchen) => Kitchen): Draft<Kitchen> => {
    const draft = edited(null, inForce, change);
    assert(draft !== null, 'nothing was edited');
    return draft;
  };

  test('what one changed and what the other changed are both in, thing by thing and field by field', () => {
    const mine = withValueAt(setTrays(KITCHEN, 20), ['mixers', 0, 'name'], 'Big spiral');
    const theirs = withRemoved(withValueAt(KITCHEN, ['mixers', 0, 'mostG'], 15_000), ['bowls', 2]);
    const added = withAdded(theirs, 'slot', 'hearth');
    assert(added !== null, 'nothing was added');
    const both = rebased(KITCHEN, mine, added.kitchen);
    expect(both.mixers[0]).toMatchObject({ name: 'Big spiral', mostG: 15_000 });
    expect(both.vessels[3]?.count).toBe(20);
    expect(both.bowls.map((bowl) => bowl.id)).toEqual(['spiral-bowl', 'bowl-1']);
    expect(both.ovens[1]?.decks[0]?.slots).toHaveLength(3);
  });

  test('where both changed one field, or one took out what the other changed, it is as in mine', () => {
    expect(rebased(KITCHEN, setTrays(KITCHEN, 20), setTrays(KITCHEN, 30)).vessels[3]?.count).toBe(20);
    const without = withRemoved(KITCHEN, ['vessels', 3]);
    expect(rebased(KITCHEN, without, setTrays(KITCHEN, 30)).vessels).toHaveLength(4);
    expect(rebased(KITCHEN, setTrays(KITCHEN, 20), without).vessels.find((vessel) => vessel.id === 'tray')?.count).toBe(20);
  });

  test('lines of a formula are told apart by what they are of, and each keeps its place', () => {
    const part = (name: string, ...lines: readonly (readonly [string, number])[]) => ({
      name,
      items: lines.map(([item, g]) => ({ item, g })),
    });
    const base = { parts: [part('Dough', ['flour', 1000], ['water', 650], ['salt', 20])] };
    const mine = { parts: [part('Poolish', ['flour', 200]), part('Dough', ['salt', 20], ['flour', 800], ['water', 650])] };
    const theirs = { parts: [part('Soaker', ['seeds', 90]), part('Dough', ['flour', 1000], ['malt', 5], ['water', 700], ['salt', 20])] };
    expect(rebased(base, mine, theirs)).toEqual({
      parts: [
        part('Soaker', ['seeds', 90]),
        part('Poolish', ['flour', 200]),
        part('Dough', ['salt', 20], ['flour', 800], ['malt', 5], ['water', 700]),
      ],
    });
    const twice = { parts: [part('Dough', ['flour', 1], ['flour', 2])] };
    expect(rebased(base, twice, theirs).parts.find(({ name }) => name === 'Dough')).toEqual(twice.parts[0]);
  });

  test('a draft that leads back to how it was is none; one of an older version is overtaken', () => {
    const draft = draftOf((kitchen) => setTrays(kitchen, 20));
    expect(edited(draft, inForce, (kitchen) => setTrays(kitchen, 10))).toBeNull();
    expect(isOvertaken(draft, inForce)).toBe(false);
    const newer = { version: 2, document: withValueAt(KITCHEN, ['mixers', 0, 'name'], 'Big spiral') };
    expect(isOvertaken(draft, newer)).toBe(true);
    expect(onNewer(draft, newer)).toMatchObject({ version: 2, base: newer.document, mine: { mixers: [{ name: 'Big spiral' }, {}] } });
    expect(onNewer(draft, { version: 2, document: setTrays(KITCHEN, 20) })).toBeNull();
  });

  test('a draft that was sent waits for its answer, and stays where the house said no', () => {
    const sent: Draft<Kitchen> = { ...draftOf((kitchen) => setTrays(kitchen, 20)), isSent: true };
    const command = { type: 'adoptKitchen', fromVersion: 1, kitchen: sent.mine } as const;
    const tap = { commandId: idOf(1), command };
    const view = (kept: boolean, outcome: Outcome | null): FloorView =>
      ({
        kept: kept ? [{ ...tap, tapMs: 0, isSent: true }] : [],
        lastAnswer: outcome === null ? null : { ...tap, outcome },
      }) as unknown as FloorView;
    expect(settled(sent, view(true, null), 'adoptKitchen', inForce)).toBe(sent);
    expect(settled(sent, view(false, { ok: true, sequence: 9, undoable: false }), 'adoptKitchen', inForce)).toBeNull();
    const faults = [{ path: 'kitchen.vessels[3].count', message: 'doughs hold 30 of them' }];
    const no = settled(sent, view(false, { ok: false, refusal: { code: 'documentFaulty', faults } }), 'adoptKitchen', inForce);
    expect(no).toMatchObject({ isSent: false, told: faults, mine: sent.mine });
    const late = settled(sent, view(false, { ok: false, refusal: { code: 'documentChanged', version: 2 } }), 'adoptKitchen', inForce);
    expect(late).toMatchObject({ isSent: false, told: [] });
  });
});

describe('D37 the kitchen as it stands', () => {
  test('doughs are where they are, vessels are held, on their way back, or free', () => {
    const floor = Floor.harbour();
    const [c1, c2] = [floor.id('C1'), floor.id('C2')];
    floor.record({ type: 'workpieceMoved', workpieceId: c1, placeId: 'warm-shelf', atMs: floor.nowMs });
    floor.record({ type: 'workpieceMoved', workpieceId: c2, placeId: 'warm-shelf', atMs: floor.nowMs });
    floor.record({ type: 'vesselsTaken', workpieceId: c1, vesselId: 'tray', count: 5, atMs: floor.nowMs });
    const freeMs = floor.nowMs + 10 * MINUTE_MS;
    floor.record({ type: 'vesselsReturned', workpieceId: c1, vesselId: 'tray', count: 2, freeMs, atMs: floor.nowMs });
    floor.record({ type: 'ovenLoaded', workpieceId: c2, stepId: 'load', slotIds: ['top-left'], atMs: floor.nowMs });
    const now = kitchenNow(floor.state, OPENING_MS);
    expect(now.tagsAt({ kind: 'restPlace', id: 'warm-shelf' })).toEqual(['C1']);
    expect(now.tagsAt({ kind: 'slot', id: 'top-left' })).toEqual(['C2']);
    expect(now.tagsAt({ kind: 'slot', id: 'top-right' })).toEqual([]);
    expect(now.vessels('tray')).toEqual({ held: 3, returning: 2, backMs: freeMs });
    expect(nextChangeOfKitchenMs(floor.state, OPENING_MS)).toBe(freeMs);
    expect(kitchenNow(floor.state, freeMs).vessels('tray')).toEqual({ held: 3, returning: 0, backMs: null });
    expect(nextChangeOfKitchenMs(floor.state, freeMs)).toBe(Infinity);
  });
});

describe('S12 a clock time as it is typed', () => {
  test.each([
    ['05:00', '05:00'],
    ['5:00', '05:00'],
    ['5.30', '05:30'],
    ['0530', '05:30'],
    ['530', '05:30'],
    ['22h15', '22:15'],
    ['22h', '22:00'],
    [' 7 ', '07:00'],
    ['00:00', '00:00'],
  ])('%s is %s', (text, clockTime) => {
    expect(clockTimeTyped(text)).toBe(clockTime);
  });

  test.each(['', '24:00', '5:60', 'five', '5:0', '12:345'])('%j is none yet', (text) => {
    expect(clockTimeTyped(text)).toBeNull();
  });
});
