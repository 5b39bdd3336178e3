import { describe, expect, test } from 'vitest';
import { strangeAllergens } from '../../shared/floor/mixers.ts';
import { buildDay } from '../../shared/plan/build/build-day.ts';
import type { ProposedBatch } from '../../shared/plan/build/day-input.ts';
import { solveDay } from '../../shared/plan/day/solve-day.ts';
import { built, demoFloor, emptyFloor, inputOf, MINUTE_MS, type Looked } from './support/planned-house.ts';

const COUNTRY: ProposedBatch = {
  batchKey: 'country#1',
  formulaId: 'country',
  grams: 9000,
  cuts: [{ productId: 'country-loaf', pieces: 10, grams: 9000 }],
};
const RYE: ProposedBatch = { batchKey: 'rye#1', formulaId: 'rye', grams: 5600, cuts: [{ productId: 'rye-tin', pieces: 8, grams: 5600 }] };

/** Claims of a mixer by a dough's steps, said otherwise. */
function mixing(formulaId: string, ids: readonly string[]): Parameters<typeof emptyFloor>[0] {
  return (file) => {
    const steps = file.formulas.find(({ id }) => id === formulaId)?.method ?? [];
    for (const step of steps) for (const claim of step.claims ?? []) if (claim.kind === 'mixer') claim.ids = [...ids];
  };
}

/** The set-up between two doughs in a mixer, in minutes. */
function setupMin(day: Looked, mixer: string, before: string, after: string): number {
  const resource = day.resource('mixer', mixer);
  const stateOf = (name: string): number =>
    day
      .holdsFrom('mixer', name)
      .flatMap((hold) => day.taken(hold))
      .find((taken) => taken.resource.id === mixer)?.state ?? -1;
  return (resource.setupS?.[stateOf(before)]?.[stateOf(after)] ?? 0) / 60;
}

describe('Z5 a dough has one mixer for all of its mixing', () => {
  test('from the first step that wants it to the last, one that takes so much', () => {
    expect(built(emptyFloor(), { proposed: [COUNTRY] }).holds('mixer', 'country#1')).toEqual([
      'country#1 fill-bowl start > country#1 turn-out end: spiral×1',
    ]);
  });

  test('of several that will do, one choice, the best first', () => {
    const floor = emptyFloor(mixing('country', ['spiral', 'planetary']));
    const day = built(floor, { proposed: [{ ...COUNTRY, grams: 5400, cuts: [{ productId: 'country-loaf', pieces: 6, grams: 5400 }] }] });
    const [choice] = day.day.problem.choices.filter(({ options }) =>
      options.some(({ resource }) => day.day.problem.resources[resource]?.kind === 'mixer'),
    );
    expect(choice?.options.map(({ resource, price }) => [day.day.problem.resources[resource]?.id, price])).toEqual([
      ['spiral', 0],
      ['planetary', 0.25],
    ]);
    // 9 kg are too much for the planetary.
    expect(
      built(floor, { proposed: [COUNTRY] })
        .holds('mixer', 'country#1')
        .join(),
    ).not.toContain('planetary');
  });

  test('while it stands, the mixer whose bowl comes off is free, and the bowl is not', () => {
    const floor = emptyFloor(mixing('country', ['spiral', 'planetary']));
    const small = { ...COUNTRY, grams: 5400, cuts: [{ productId: 'country-loaf', pieces: 6, grams: 5400 }] };
    const day = built(floor, { proposed: [small] });
    expect(day.holds('mixer', 'country#1')).toEqual([
      'country#1 fill-bowl start > country#1 first-speed end: spiral×1/planetary×1',
      'country#1 first-speed end > country#1 salt start: spiral×1/planetary×0',
      'country#1 salt start > country#1 turn-out end: spiral×1/planetary×1',
    ]);
    const beside = built(emptyFloor(mixing('country', ['planetary'])), { proposed: [small] });
    expect(beside.holds('mixer', 'country#1')).toEqual([
      'country#1 fill-bowl start > country#1 first-speed end: planetary×1',
      'country#1 salt start > country#1 turn-out end: planetary×1',
    ]);
    // Two bowls fit the planetary.
    expect(beside.holds('bowl', 'country#1')).toEqual(['country#1 fill-bowl start > country#1 turn-out end: bowl-1×1']);
    expect(beside.resource('bowl', 'bowl-1').capacity).toBe(2);
  });

  test('a batch that no mixer takes, or none is fast enough for, is refused by name', () => {
    const refused = buildDay(inputOf(emptyFloor(), { proposed: [RYE, { ...COUNTRY, grams: 12_500 }] }));
    expect(refused.ok ? [] : refused.fault).toEqual([
      {
        code: 'noMixer',
        batchKey: 'country#1',
        formulaId: 'country',
        productId: 'country-loaf',
        stepId: 'fill-bowl',
        grams: 12_500,
        mixerIds: ['spiral'],
      },
    ]);
    // The planetary mixer has a second speed and not the room, the spiral has the room and one speed only.
    const slow = emptyFloor((file) => {
      for (const mixer of file.kitchen.mixers) if (mixer.id === 'spiral') mixer.speeds = 1;
      for (const formulaId of ['country', 'rye', 'cheese-boats']) mixing(formulaId, ['spiral', 'planetary'])?.(file);
    });
    const tooSlow = buildDay(inputOf(slow, { proposed: [{ ...COUNTRY, grams: 8000 }] }));
    expect(tooSlow.ok ? [] : tooSlow.fault.map(({ code, batchKey }) => [code, batchKey])).toEqual([['noMixer', 'country#1']]);
  });
});

describe('Z6 a mixer is cleaned between doughs by the rule of the floor', () => {
  test('where the next dough has not what was in it, and only there', () => {
    const floor = demoFloor((file) => {
      const spiral = file.kitchen.mixers.find(({ id }) => id === 'spiral');
      if (spiral !== undefined) spiral.changeOverMin = 7;
    });
    const day = built(floor);
    const [mixer] = floor.state.kitchen?.document.mixers.filter(({ id }) => id === 'spiral') ?? [];
    // The floor's own decider says, of every pair, whether it would ask for a change-over.
    const spiralDoughs = ['C1', 'R1', 'Ch1'];
    let asked = 0;
    for (const before of spiralDoughs) {
      for (const after of spiralDoughs) {
        const stirred = demoFloor().bringTo(before, 'second-speed').state.residues['spiral'];
        const state = { ...floor.state, residues: stirred === undefined ? {} : { spiral: stirred } };
        const strange = mixer === undefined ? [] : strangeAllergens(state, mixer, floor.piece(after), floor.nowMs);
        expect([before, after, setupMin(day, 'spiral', `${before} fill-bowl`, `${after} fill-bowl`)]).toEqual([
          before,
          after,
          strange.length > 0 ? 7 : 0,
        ]);
        asked += strange.length;
      }
    }
    expect(asked).toBeGreaterThan(0);
  });

  test('what has been in it since stands against the first dough, until somebody cleans it', () => {
    const floor = demoFloor().bringTo('M1', 'bulk');
    const day = built(floor);
    expect(day.holds('mixer', 'now')).toEqual(['now now start > now now end: planetary×1']);
    const atFirst = day.resource('mixer', 'planetary');
    const next = day.holdsFrom('mixer', 'O1 fill-bowl').flatMap((hold) => day.taken(hold))[0]?.state ?? -1;
    expect(atFirst.setupS?.[atFirst.stateAtFirst ?? -1]?.[next]).toBe(10 * 60);
    floor.ok({ type: 'blockResource', resource: { kind: 'mixer', id: 'planetary' }, why: 'cleaning', minutes: 10 });
    expect(built(floor).resource('mixer', 'planetary').stateAtFirst).toBeNull();
    floor.wait(11);
    expect(built(floor).resource('mixer', 'planetary').stateAtFirst).toBeNull();
  });
});

describe('Z7 hands by station and hours; the bench', () => {
  test('work has the hands of its station; what is judged or waits has none', () => {
    const day = built(emptyFloor(), { proposed: [COUNTRY] });
    expect(day.holds('station', 'country#1')).toContain('country#1 shape start > country#1 shape end: bench×1');
    expect(day.holds('station', 'country#1').filter((text) => text.includes('speed'))).toEqual([]);
  });

  test('as many as there are, only while somebody is there, and all of them behind what calendars reach', () => {
    const floor = emptyFloor((file) => {
      const bench = file.kitchen.stations.find(({ id }) => id === 'bench');
      if (bench !== undefined) bench.hands = 2;
    });
    const at = (minutes: number): number => floor.nowMs + minutes * MINUTE_MS;
    const spans = [
      { fromMs: at(30), toMs: at(120) },
      { fromMs: at(150), toMs: at(300) },
    ];
    const calendars = { stations: { bench: spans }, cleanings: [] };
    const day = built(floor, { proposed: [COUNTRY], calendars, calendarsEndMs: floor.nowMs + 600 * MINUTE_MS });
    const bench = day.resource('station', 'bench');
    const fromOrigin = (at(0) - day.day.originMs) / 1000;
    expect(bench.calendar?.map(({ fromS, capacity }) => [(fromS - fromOrigin) / 60, capacity])).toEqual([
      [0, 0],
      [30, 2],
      [120, 0],
      [150, 2],
      [300, 0],
      [600, 2],
    ]);
    expect(day.resource('station', 'oven').calendar).toBeNull();
  });

  test('as many hands as a step claims, of one of the stations that it names', () => {
    const floor = emptyFloor((file) => {
      const bench = file.kitchen.stations.find(({ id }) => id === 'bench');
      if (bench !== undefined) bench.hands = 2;
      const shape = file.products.find(({ id }) => id === 'country-loaf')?.way.find(({ id }) => id === 'shape');
      shape?.claims?.push({ kind: 'hands', ids: ['bench', 'oven'], count: 2 });
    });
    // The oven has one pair of hands only.
    expect(built(floor, { proposed: [COUNTRY] }).holds('station', 'country#1')).toContain(
      'country#1 shape start > country#1 shape end: bench×2',
    );
  });

  test('the bench has room for so many doughs; where it is cleaned between them, each has a place of its own', () => {
    const room = (changeOverMin?: number) =>
      built(
        emptyFloor((file) => {
          file.kitchen.bench = changeOverMin === undefined ? { room: 2 } : { room: 2, changeOverMin };
        }),
        { proposed: [COUNTRY, RYE] },
      );
    expect(room().holds('bench', 'country#1')).toEqual([
      'country#1 fold-1 start > country#1 fold-1 end: bench×1',
      'country#1 fold-2 start > country#1 fold-2 end: bench×1',
      'country#1 divide start > country#1 divide end: bench×1',
      'country#1 round start > country#1 round end: bench×1',
      'country#1 shape start > country#1 shape end: bench×1',
    ]);
    expect(room().resource('bench', 'bench').capacity).toBe(2);
    const parts = room(5).day.problem.resources.filter(({ kind }) => kind === 'bench');
    expect(parts.map(({ id, capacity }) => [id, capacity])).toEqual([
      ['bench', 1],
      ['bench-2', 1],
    ]);
  });
});

describe('Z8 decks have slots, programmes and heat', () => {
  const heated = emptyFloor((file) => {
    for (const oven of file.kitchen.ovens) for (const deck of oven.decks) Object.assign(deck, { heatKPerMin: 5, coolKPerMin: 2 });
  });

  test('a stay holds its slots from the loading to the end of the taking out, on one of the decks that will do', () => {
    expect(built(heated, { proposed: [COUNTRY] }).holds('deck', 'country#1')).toEqual([
      'country#1 load start > country#1 take-out end: bottom×2/top×2',
    ]);
  });

  test('as many slots as the pieces need on that deck', () => {
    const floor = emptyFloor((file) => {
      const loaf = file.products.find(({ id }) => id === 'country-loaf');
      if (loaf !== undefined)
        Object.assign(loaf, {
          deckRoom: [
            { deck: 'top', piecesPerSlot: 4 },
            { deck: 'bottom', piecesPerSlot: 10 },
          ],
        });
    });
    // Ten pieces are three slots of the top deck, which has two: it does not do.
    expect(built(floor, { proposed: [COUNTRY] }).holds('deck', 'country#1')).toEqual([
      'country#1 load start > country#1 take-out end: bottom×1',
    ]);
  });

  test('what a product prefers costs less than what it does not', () => {
    const floor = emptyFloor((file) => {
      const loaf = file.products.find(({ id }) => id === 'country-loaf');
      if (loaf !== undefined) Object.assign(loaf, { prefersSlots: ['top-left'] });
    });
    const day = built(floor, { proposed: [COUNTRY] });
    const [hold] = day.holdsFrom('deck', 'country#1 load');
    const price = new Map(hold === undefined ? [] : day.taken(hold).map((taken) => [taken.resource.id, taken.price]));
    expect(price.get('top') ?? 99).toBeLessThan(price.get('bottom') ?? 0);
  });

  test('a deck goes from where one programme ends to where the next begins, as fast as it heats and cools', () => {
    const day = built(heated, { proposed: [COUNTRY, RYE] });
    const stateOn = (name: string): number =>
      day
        .holdsFrom('deck', name)
        .flatMap((hold) => day.taken(hold))
        .find(({ resource }) => resource.id === 'bottom')?.state ?? -1;
    const bottom = day.resource('deck', 'bottom');
    const setupMin = (from: number, to: number): number => (bottom.setupS?.[from]?.[to] ?? 0) / 60;
    const [loaves, tins] = [stateOn('country#1 load'), stateOn('rye#1 load')];
    // Loaves: 245 then 235 °C. Tins: 235 then 225 °C. The deck is set to 245 °C.
    expect(loaves).not.toBe(tins);
    expect(setupMin(loaves, tins)).toBe(0);
    expect(setupMin(tins, loaves)).toBe((245 - 225) / 5);
    // The same again begins hotter than it ended.
    expect(setupMin(loaves, loaves)).toBe((245 - 235) / 5);
    expect(setupMin(tins, tins)).toBe((235 - 225) / 5);
    expect(setupMin(bottom.stateAtFirst ?? -1, tins)).toBe((245 - 235) / 2);
    expect(setupMin(bottom.stateAtFirst ?? -1, loaves)).toBe(0);
    expect(bottom.sharesOneState).toBe(true);
  });

  test('programmes agree that have the same temperatures and steam, however long they last', () => {
    const day = built(demoFloor());
    const stateOf = (name: string): number | null | undefined => day.holdsFrom('deck', name).flatMap((hold) => day.taken(hold))[0]?.state;
    // Both buns at 200 °C, 14 and 13 min.
    expect(stateOf('M1a load')).toBe(stateOf('M1b load'));
    expect(stateOf('C1 load')).not.toBe(stateOf('R1·1 load'));
  });

  test('what no deck takes at once is refused by name', () => {
    const pieces = 13;
    const refused = buildDay(
      inputOf(emptyFloor(), { proposed: [{ ...COUNTRY, grams: 11_700, cuts: [{ productId: 'country-loaf', pieces, grams: 11_700 }] }] }),
    );
    expect(refused.ok ? [] : refused.fault).toEqual([
      {
        code: 'noDeck',
        batchKey: 'country#1',
        formulaId: 'country',
        productId: 'country-loaf',
        stepId: 'load',
        deckIds: ['bottom', 'top'],
        slotsNeeded: 3,
        mostSlots: 2,
      },
    ]);
  });
});

describe('Z9 counted vessels and room', () => {
  test('a vessel is held from the step that claims it to the one that gives it back, and is away for its turn-round', () => {
    const day = built(demoFloor());
    expect(day.holds('vessel', 'C1')).toEqual(['C1 shape start > C1 load end: banneton×10']);
    expect(day.holdsFrom('vessel', 'C1 shape').map(({ afterS }) => afterS)).toEqual([30 * 60]);
    // Trays of 15, given back when they are taken out.
    expect(day.holds('vessel', 'M1a')).toEqual(['M1a round start > M1a take-out end: tray×2']);
  });

  test('what is in use counts until it comes back', () => {
    const floor = demoFloor().bringTo('C1', 'prove');
    expect(built(floor).holds('vessel', 'C1')).toEqual(['C1 shape end > C1 load end: banneton×10']);
    floor.bringTo('C1', 'bake');
    const [step] = built(floor).resource('vessel', 'banneton').calendar ?? [];
    expect(step?.capacity).toBe(20);
  });

  test('more than the kitchen has is refused by name', () => {
    const tins = { ...RYE, grams: 11_900, cuts: [{ productId: 'rye-tin', pieces: 17, grams: 11_900 }] };
    const refused = buildDay(inputOf(emptyFloor(), { proposed: [tins] }));
    expect(refused.ok ? [] : refused.fault.map((fault) => ({ ...fault }))).toMatchObject([
      { code: 'tooFewVessels', vesselIds: ['tin'], needed: 17, most: 16 },
    ]);
  });

  test('a rest takes room where somebody counts it', () => {
    const day = built(demoFloor());
    expect(day.holds('restPlace', 'C1')).toContain('C1 shape end > C1 score start: warm-shelf×1');
    expect(day.holds('restPlace', 'C3')).toContain('C3 shape end > C3 temper start: cold-room×1');
    expect(day.resource('restPlace', 'warm-shelf').capacity).toBe(12);
    // Nobody counts the bench's room as a rest place.
    expect(day.day.problem.resources.some(({ kind, id }) => kind === 'restPlace' && id === 'bench')).toBe(false);
  });
});

describe('Z10 what is out of use is not there', () => {
  test('a deck out of order, a slot, a mixer being cleaned: for as long as somebody said', () => {
    const floor = demoFloor();
    floor.ok({ type: 'blockResource', resource: { kind: 'deck', id: 'bottom' }, why: 'outOfOrder' });
    floor.ok({ type: 'blockResource', resource: { kind: 'slot', id: 'top-left' }, why: 'outOfOrder', minutes: 60 });
    floor.ok({ type: 'blockResource', resource: { kind: 'mixer', id: 'spiral' }, why: 'cleaning', minutes: 20 });
    const day = built(floor, { calendarsEndMs: floor.nowMs + 600 * MINUTE_MS });
    const calendar = (kind: string, id: string) =>
      day.resource(kind, id).calendar?.map(({ fromS, capacity }) => [Math.round(fromS / 60), capacity]);
    expect(calendar('deck', 'bottom')).toEqual([
      [0, 0],
      [600, 2],
    ]);
    expect(calendar('deck', 'top')).toEqual([
      [0, 1],
      [60, 2],
    ]);
    expect(calendar('mixer', 'spiral')).toEqual([
      [0, 0],
      [20, 1],
    ]);
  });

  test('what lies in it lies there, and nothing waits for that', () => {
    const floor = demoFloor().bringTo('C1', 'prove');
    floor.ok({ type: 'blockResource', resource: { kind: 'restPlace', id: 'warm-shelf' }, why: 'outOfOrder' });
    const day = built(floor);
    expect(day.holds('restPlace', 'C1').filter((text) => text.includes('warm-shelf'))).toEqual([]);
    expect(day.holds('restPlace', 'C2').filter((text) => text.includes('warm-shelf')).length).toBeGreaterThan(0);
    // What has to wait for the shelf waits for the end of what calendars reach, two days on, and not for ever.
    expect(Math.max(...solveDay(day.day.problem, { schedules: 5, seed: 1 }).startsS)).toBeLessThan(80 * 3600);
  });

  test('more than there should be is where it is', () => {
    const floor = demoFloor((file) => {
      for (const place of file.kitchen.restPlaces) if (place.id === 'warm-shelf') place.room = 1;
    });
    floor.bringTo('R1', 'bulk').bringTo('C1', 'bulk-1');
    const held = [...built(floor).holds('restPlace', 'R1'), ...built(floor).holds('restPlace', 'C1')].filter((text) =>
      text.includes('bulk'),
    );
    // One of both counts: the shelf has no room for another.
    expect(held.filter((text) => /^(R1 bulk|C1 bulk-1) end/.test(text))).toHaveLength(1);
  });

  test('a cleaning takes all of it and a pair of hands, within its window', () => {
    const floor = emptyFloor((file) => {
      file.kitchen.cleanings = [
        { id: 'scrape', name: 'Scrape', resource: { kind: 'deck', id: 'top' }, minutes: 15, station: 'oven', from: '05:00', to: '06:00' },
      ];
    });
    const window = { id: 'scrape', fromMs: floor.nowMs + 120 * MINUTE_MS, toMs: floor.nowMs + 180 * MINUTE_MS };
    const calendars = { stations: {}, cleanings: [window] };
    const day = built(floor, { calendars });
    const name = `clean>scrape@${window.fromMs} clean`;
    expect(day.activity(name)).toMatchObject({
      durationS: 15 * 60,
      releaseS: day.day.problem.activities[0] === undefined ? 0 : (window.fromMs - day.day.originMs) / 1000,
    });
    expect(day.holds('deck', name.split(' ')[0] ?? '')).toEqual([`${name} start > ${name} end: top×2`]);
    expect(day.holds('station', name.split(' ')[0] ?? '')).toEqual([`${name} start > ${name} end: oven×1`]);
    const [lag] = day.day.problem.lags.filter(({ to }) => to === day.step(name).activity);
    expect([lag?.toEdge, ((lag?.mostS ?? 0) - 1) / 60]).toEqual(['end', 180]);
    // Once somebody has taken the deck out of use to clean it, or the window is over, it is not asked for again.
    floor.until(window.fromMs + MINUTE_MS);
    floor.ok({ type: 'blockResource', resource: { kind: 'deck', id: 'top' }, why: 'cleaning', minutes: 15 });
    expect(built(floor, { calendars }).names()).toEqual([]);
    expect(built(emptyFloor().until(window.toMs), { calendars }).names()).toEqual([]);
  });
});
