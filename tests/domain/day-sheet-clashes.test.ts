import { describe, expect, test } from 'vitest';
import type { Bar, DoughLine, StepResource } from '../../display/day/sheet-bar.ts';
import { clashesOf } from '../../display/day/sheet-clashes.ts';
import { closedOf } from '../../display/day/sheet-closed.ts';
import { sheetModel, type SheetModel } from '../../display/day/sheet-model.ts';
import { usesOf } from '../../display/day/sheet-uses.ts';
import { sheetRows } from '../../display/day/sheet-rows.ts';
import { thingAloneText } from '../../display/day/sheet-texts.ts';
import { stationDays } from '../../display/day/station-model.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { Step } from '../../shared/documents/method.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { PlannedCleaning } from '../../shared/plan/planned-cleaning.ts';
import { assert } from '../../shared/result.ts';
import { busyDay } from '../browser/harness-day-sheet/sheet-stage.ts';
import { Floor } from './support/floor.ts';

const MINUTE_MS = 60_000;
/** A Saturday in March at 03:00, in winter time. */
const AT_MS = Date.UTC(2026, 2, 7, 3);

const STEP: Step = {
  id: 'work',
  verb: 'fold',
  kind: 'hands',
  minutes: { target: 10 },
  toleranceMin: { late: 5 },
  claims: [],
  additions: [],
};

/** A dough with one step, by minutes after 03:00. */
function dough(
  tag: string,
  fromMin: number,
  toMin: number,
  resource: StepResource,
  more: Partial<Bar> = {},
  line: Partial<DoughLine> = {},
): DoughLine {
  const bar: Bar = {
    ownerId: tag,
    cut: null,
    load: null,
    stepId: 'work',
    key: `${tag}|||work`,
    tag,
    step: STEP,
    standing: 'planned',
    fromMs: AT_MS + fromMin * MINUTE_MS,
    toMs: AT_MS + toMin * MINUTE_MS,
    pieces: null,
    latestStartMs: null,
    wasMs: null,
    resources: [resource],
    pin: null,
    ...more,
  };
  return { key: `${tag}||`, rootKey: tag, tag, name: tag, pieces: null, depth: 0, productIds: [], bars: [bar], ...line };
}

/** The plain harbour kitchen, with something of it changed. */
function stateWith(change: (kitchen: Kitchen) => Kitchen = (kitchen) => kitchen): FloorState {
  const { state } = Floor.harbour();
  if (state.kitchen === null) throw new Error('there is no kitchen');
  return { ...state, kitchen: { ...state.kitchen, document: change(state.kitchen.document) } };
}

/** From 03:00 to 11:00. */
const DAY = { fromMs: AT_MS, toMs: AT_MS + 480 * MINUTE_MS };

const SPIRAL: StepResource = { kind: 'mixer', id: 'spiral' };
const BENCH: StepResource = { kind: 'station', id: 'bench' };
const TOP: StepResource = { kind: 'deck', id: 'top' };
const clashes = (state: FloorState, lines: readonly DoughLine[]): ReturnType<typeof clashesOf> =>
  clashesOf({ state, proposal: null, lines, uses: usesOf(state, lines), span: DAY, nowMs: AT_MS });

describe('I24 what does not go together is told, and nothing else', () => {
  test('two doughs in one mixer clash for as long as both want it', () => {
    const found = clashes(stateWith(), [dough('C1', 0, 10, SPIRAL), dough('C2', 6, 20, SPIRAL)]);
    expect(found).toEqual([
      {
        kind: 'busy',
        resource: SPIRAL,
        fromMs: AT_MS + 6 * MINUTE_MS,
        toMs: AT_MS + 10 * MINUTE_MS,
        wanted: 2,
        room: 1,
        barKeys: ['C1|||work', 'C2|||work'],
        tags: ['C1', 'C2'],
      },
    ]);
  });

  test('one after another does not clash, nor what only touches', () => {
    expect(clashes(stateWith(), [dough('C1', 0, 10, SPIRAL), dough('C2', 10, 20, SPIRAL)])).toEqual([]);
    expect(clashes(stateWith(), [dough('C1', 0, 10.25, SPIRAL), dough('C2', 10, 20, SPIRAL)])).toEqual([]);
  });

  test('what begins at the same time while there is no room already is told with the rest, as one stretch', () => {
    const lines = [dough('C1', 0, 30, SPIRAL), dough('C2', 5, 20, SPIRAL), dough('R1', 10, 20, SPIRAL), dough('R2', 10, 20, SPIRAL)];
    expect(clashes(stateWith(), lines)).toMatchObject([
      { fromMs: AT_MS + 5 * MINUTE_MS, toMs: AT_MS + 20 * MINUTE_MS, wanted: 4, tags: ['C1', 'C2', 'R1', 'R2'] },
    ]);
  });

  test('a station has as many hands as the kitchen says', () => {
    const three = [dough('C1', 0, 10, BENCH), dough('C2', 0, 10, BENCH), dough('R1', 5, 10, BENCH)];
    const hands = (count: number): FloorState =>
      stateWith((kitchen) => ({ ...kitchen, stations: kitchen.stations.map((station) => ({ ...station, hands: count })) }));
    expect(clashes(hands(3), three)).toEqual([]);
    expect(clashes(hands(2), three)).toMatchObject([{ wanted: 3, room: 2, fromMs: AT_MS + 5 * MINUTE_MS }]);
    expect(clashes(hands(1), three)).toMatchObject([{ wanted: 3, room: 1, fromMs: AT_MS }]);
  });

  test('who only waits takes no hands', () => {
    const rest: Step = { ...STEP, kind: 'timed', verb: 'bulk' };
    expect(clashes(stateWith(), [dough('C1', 0, 10, BENCH, { step: rest }), dough('C2', 0, 10, BENCH)])).toEqual([]);
  });

  test('a deck takes as many pieces as its slots, by what the product says', () => {
    const state = stateWith();
    const [productId] = Object.keys(state.productVersions).filter((id) => id === 'country-loaf');
    const perSlot = state.products[`${productId}@1`]?.piecesPerSlot ?? 0;
    const slots = state.kitchen?.document.ovens[0]?.decks[0]?.slots.length ?? 0;
    expect([perSlot > 0, slots]).toEqual([true, 2]);
    const loaves = (tag: string, pieces: number): DoughLine => dough(tag, 0, 45, TOP, { pieces }, { productIds: ['country-loaf'], pieces });
    expect(clashes(state, [loaves('C1', perSlot), loaves('C2', perSlot)])).toEqual([]);
    expect(clashes(state, [loaves('C1', perSlot + 1), loaves('C2', perSlot)])).toMatchObject([{ wanted: 3, room: 2 }]);
  });

  test('a dough that would have to wait too long says by how much, and one that just bears it does not', () => {
    const late = dough('C1', 30, 40, BENCH, { latestStartMs: AT_MS + 18 * MINUTE_MS });
    const just = dough('C2', 50, 60, BENCH, { latestStartMs: AT_MS + 50 * MINUTE_MS });
    expect(clashes(stateWith(), [late, just])).toEqual([
      { kind: 'waits', barKeys: ['C1|||work'], tags: ['C1'], fromMs: AT_MS + 30 * MINUTE_MS, byMin: 12 },
    ]);
  });

  test('a step that is not where it is fixed says so, until it has begun', () => {
    const pin = { id: 'pin', startMs: AT_MS + 5 * MINUTE_MS };
    expect(clashes(stateWith(), [dough('C1', 30, 40, BENCH, { pin })])).toMatchObject([{ kind: 'pin', toMs: pin.startMs }]);
    expect(clashes(stateWith(), [dough('C1', 5, 15, BENCH, { pin })])).toEqual([]);
    expect(clashes(stateWith(), [dough('C1', 30, 40, BENCH, { pin, standing: 'begun' })])).toEqual([]);
  });

  test('work that is planned for when nobody is there, or with what is out of use, is told, a stretch at a time', () => {
    const state = stateWith((kitchen) => ({
      ...kitchen,
      stations: kitchen.stations.map((station) =>
        station.id === 'bench'
          ? { ...station, hours: [{ from: '02:00', to: '04:00' }], breaks: [{ from: '03:20', to: '03:30' }] }
          : station,
      ),
    }));
    const blocked: FloorState = {
      ...state,
      blocked: [{ type: 'resourceBlocked', resource: SPIRAL, why: 'cleaning', untilMs: AT_MS + 15 * MINUTE_MS, atMs: AT_MS }],
    };
    const within = dough('C1', 0, 20, BENCH);
    const into = dough('C2', 15, 25, BENCH);
    const after = [dough('C3', 59, 70, BENCH), dough('C4', 90, 95, BENCH)];
    const found = clashes(blocked, [within, into, ...after, dough('C5', 5, 10, SPIRAL)]).filter(({ kind }) => kind === 'away');
    expect(found).toEqual([
      {
        kind: 'away',
        resource: SPIRAL,
        why: 'outOfUse',
        fromMs: AT_MS,
        toMs: AT_MS + 15 * MINUTE_MS,
        barKeys: ['C5|||work'],
        tags: ['C5'],
      },
      {
        kind: 'away',
        resource: BENCH,
        why: 'nobodyThere',
        fromMs: AT_MS + 20 * MINUTE_MS,
        toMs: AT_MS + 30 * MINUTE_MS,
        barKeys: ['C2|||work'],
        tags: ['C2'],
      },
      {
        kind: 'away',
        resource: BENCH,
        why: 'nobodyThere',
        fromMs: AT_MS + 60 * MINUTE_MS,
        toMs: DAY.toMs,
        barKeys: ['C3|||work', 'C4|||work'],
        tags: ['C3', 'C4'],
      },
    ]);
    // What somebody has begun is being done, whoever is there.
    expect(clashes(state, [dough('C2', 15, 25, BENCH, { standing: 'begun' })])).toEqual([]);
  });

  test('what the planner warns of is told where the sheet’s own times do not show it', () => {
    const { state, nowMs } = busyDay();
    const [workpieceId = ''] = Object.keys(state.plan?.steps ?? {}).filter((id) => state.workpieces[id]?.tag === 'R1');
    const before = sheetModel({ state, proposal: null, cleanings: [], nowMs, serviceDate: null }, 'dough');
    expect(before?.clashes.filter((clash) => clash.kind === 'waits')).toEqual([]);
    const warned: FloorState = {
      ...state,
      plan:
        state.plan === null
          ? null
          : { ...state.plan, warnings: [{ kind: 'spoils', workpieceId, stepId: 'turn-out', atMs: nowMs, byMin: 7.2 }] },
    };
    const after = sheetModel({ state: warned, proposal: null, cleanings: [], nowMs, serviceDate: null }, 'dough');
    expect(after?.clashes.filter((clash) => clash.kind === 'waits')).toMatchObject([{ tags: ['R1'], byMin: 8 }]);
  });
});

describe('I25 a thing is called so that it is not taken for another', () => {
  const { kitchen } = stateWith();
  const document = kitchen?.document ?? null;

  test('hands are told from the bench that they work at, where nothing beside it says so', () => {
    expect(thingAloneText(BENCH, document)).toBe('Bench, hands');
    expect(thingAloneText({ kind: 'station', id: 'fillings' }, document)).toBe('Fillings');
    expect(thingAloneText({ kind: 'bench', id: 'bench' }, document)).toBe('Bench');
  });

  test('the second place on a bench has its number, in a kitchen without a rest place for it too', () => {
    const second: StepResource = { kind: 'bench', id: 'bench-2' };
    const split = document && { ...document, bench: { room: 2, changeOverMin: 5 } };
    expect(thingAloneText(second, split)).toBe('Bench 2');
    expect(thingAloneText(second, split && { ...split, restPlaces: split.restPlaces.filter(({ kind }) => kind !== 'bench') })).toBe(
      'Bench 2',
    );
  });
});

describe('I40 what is cleaned has a row of its own, and takes its machine and hands', () => {
  const CLEANING = { id: 'spiral-bowl', name: 'Spiral and its bowl', resource: { kind: 'mixer', id: 'spiral' }, minutes: 15 } as const;
  const cleaned = (fromMin: number): PlannedCleaning => ({
    cleaningId: CLEANING.id,
    plannedStartMs: AT_MS + fromMin * MINUTE_MS,
    plannedEndMs: AT_MS + (fromMin + CLEANING.minutes) * MINUTE_MS,
    resources: [SPIRAL, { kind: 'station', id: 'mixer' }],
  });
  const { state: busy, nowMs } = busyDay();
  const state: FloorState = {
    ...busy,
    kitchen: busy.kitchen && {
      ...busy.kitchen,
      document: { ...busy.kitchen.document, cleanings: [{ ...CLEANING, from: '03:00', to: '23:00' }] },
    },
  };
  const sheet = (cleanings: readonly PlannedCleaning[], grouping: 'dough' | 'resource'): SheetModel => {
    const model = sheetModel({ state, proposal: null, cleanings, nowMs, serviceDate: null }, grouping);
    assert(model !== null, 'the day has doughs');
    return model;
  };

  test('below the doughs, by its name; on the rows of what it takes', () => {
    const without = sheet([], 'dough');
    const { rows, lines } = sheet([cleaned(60)], 'dough');
    expect(rows.slice(0, -1).map(({ key }) => key)).toEqual(without.rows.map(({ key }) => key));
    expect(rows.at(-1)).toMatchObject({
      head: { kind: 'cleaning', name: CLEANING.name },
      placed: [{ bar: { standing: 'planned', fromMs: AT_MS + 60 * MINUTE_MS, toMs: AT_MS + 75 * MINUTE_MS } }],
    });
    const key = lines.at(-1)?.bars[0]?.key;
    const on = sheet([cleaned(60)], 'resource').rows.filter(({ placed }) => placed.some(({ bar }) => bar.key === key));
    expect(on.map(({ key: row }) => row)).toEqual(['mixer spiral', 'station mixer']);
    const lists = stationDays({ state, proposal: null, cleanings: [cleaned(60)], nowMs, serviceDate: null });
    expect(lists.filter(({ bars }) => bars.some((bar) => bar.key === key)).map(({ id }) => id)).toEqual(['mixer']);
  });

  test('a dough in the mixer that is being cleaned clashes', () => {
    const inMixer = sheet([], 'resource')
      .rows.find(({ key }) => key === 'mixer spiral')
      ?.placed.find(({ bar }) => bar.standing === 'planned');
    assert(inMixer !== undefined, 'a dough is planned into the spiral');
    const fromMin = (inMixer.bar.fromMs - AT_MS) / MINUTE_MS;
    const clashing = sheet([cleaned(fromMin)], 'dough').clashes.filter(({ tags }) => tags.includes(CLEANING.name));
    expect(clashing).toContainEqual(expect.objectContaining({ kind: 'busy', resource: SPIRAL, wanted: 2, room: 1 }));
  });

  test('one of the next day does not stretch the axis', () => {
    const { span } = sheet([], 'dough');
    expect(sheet([cleaned(36 * 60)], 'dough')).toMatchObject({ span, lines: { length: sheet([], 'dough').lines.length } });
    const soon = cleaned((span.toMs - AT_MS) / MINUTE_MS + 60);
    expect(sheet([soon], 'dough').span.toMs).toBeGreaterThan(soon.plannedEndMs);
  });
});

describe('I25 by resource, everything lies on the thing that it takes', () => {
  const rowsOf = (state: FloorState, lines: readonly DoughLine[]): ReturnType<typeof sheetRows> =>
    sheetRows(
      {
        state,
        lines,
        uses: usesOf(state, lines),
        clashes: clashes(state, lines),
        span: DAY,
        nowMs: AT_MS,
      },
      'resource',
    );

  test('each mixer, station and deck has a row, with as many lanes as there is room', () => {
    const state = stateWith();
    const kitchen = state.kitchen?.document;
    const rows = rowsOf(state, []);
    expect(rows.map((row) => row.key)).toEqual([
      ...(kitchen?.mixers ?? []).map(({ id }) => `mixer ${id}`),
      ...(kitchen?.stations ?? []).map(({ id }) => `station ${id}`),
      ...(kitchen?.ovens ?? []).flatMap(({ decks }) => decks.map(({ id }) => `deck ${id}`)),
    ]);
    expect(rows.find((row) => row.key === 'deck top')?.lanes).toBe(2);
  });

  test('what is there at once lies side by side, and what there is no room for below it', () => {
    const lines = [dough('C1', 0, 10, SPIRAL), dough('C2', 6, 20, SPIRAL), dough('C3', 20, 30, SPIRAL)];
    const row = rowsOf(stateWith(), lines).find(({ key }) => key === 'mixer spiral');
    expect(row?.placed.map(({ bar, lane, isBeyond }) => [bar.tag, lane, isBeyond])).toEqual([
      ['C1', 0, false],
      ['C2', 1, true],
      ['C3', 0, false],
    ]);
    expect([row?.lanes, row?.clashes.length]).toEqual([2, 1]);
  });

  test('a load is as many lanes high as it takes slots', () => {
    const loaves = dough('C1', 0, 45, TOP, { pieces: 8 }, { productIds: ['country-loaf'], pieces: 8 });
    const row = rowsOf(stateWith(), [loaves]).find(({ key }) => key === 'deck top');
    expect(row?.placed).toMatchObject([{ lane: 0, lanes: 2, isBeyond: false }]);
  });

  test('a thing that the kitchen no longer has keeps what was planned on it', () => {
    const row = rowsOf(stateWith(), [dough('C1', 0, 10, { kind: 'mixer', id: 'sold' })]).at(-1);
    expect([row?.key, row?.placed.length]).toEqual(['mixer sold', 1]);
  });
});

describe('I26 when nobody is at a station is seen', () => {
  const zoned = (hours: Kitchen['stations'][number]['hours'], breaks: Kitchen['stations'][number]['breaks'] = []): FloorState => {
    const state = stateWith((kitchen) => ({
      ...kitchen,
      stations: kitchen.stations.map((station) =>
        station.id === 'bench' && hours !== undefined ? { ...station, hours, breaks } : station,
      ),
    }));
    if (state.house === null) throw new Error('there is no house');
    return { ...state, house: { ...state.house, document: { ...state.house.document, zone: 'Europe/London' } } };
  };
  const closed = (state: FloorState, fromMs: number, toMs: number): readonly string[] =>
    closedOf(state, BENCH, { fromMs, toMs }, fromMs).map(
      (gap) => `${new Date(gap.fromMs).toISOString().slice(11, 16)}–${new Date(gap.toMs).toISOString().slice(11, 16)} ${gap.why}`,
    );

  test('outside its hours and in its breaks', () => {
    const state = zoned([{ from: '02:00', to: '10:00' }], [{ from: '06:00', to: '06:30' }]);
    expect(closed(state, Date.UTC(2026, 2, 7, 1), Date.UTC(2026, 2, 7, 12))).toEqual([
      '01:00–02:00 nobodyThere',
      '06:00–06:30 nobodyThere',
      '10:00–12:00 nobodyThere',
    ]);
  });

  test('over midnight, and only on the days that are named', () => {
    // 7 March 2026 is a Saturday (ISO 8601: 6).
    const state = zoned([{ from: '22:00', to: '06:00', weekdays: [5] }]);
    expect(closed(state, Date.UTC(2026, 2, 6, 21), Date.UTC(2026, 2, 7, 23, 30))).toEqual([
      '21:00–22:00 nobodyThere',
      '06:00–23:30 nobodyThere',
    ]);
  });

  test('by the house’s clock on the morning when it goes forward', () => {
    // Clocks in London go from 01:00 to 02:00 on 29 March 2026: 05:00 by the clock is 04:00 UTC.
    const state = zoned([{ from: '05:00', to: '12:00' }]);
    expect(closed(state, Date.UTC(2026, 2, 29, 0), Date.UTC(2026, 2, 29, 10))).toEqual(['00:00–04:00 nobodyThere']);
  });

  test('a station of which nobody said its hours is always manned; a blocked thing is out of use', () => {
    expect(closed(zoned(undefined), AT_MS, AT_MS + 60 * MINUTE_MS)).toEqual([]);
    const state: FloorState = {
      ...stateWith(),
      blocked: [{ type: 'resourceBlocked', resource: SPIRAL, why: 'cleaning', atMs: AT_MS, untilMs: AT_MS + 20 * MINUTE_MS }],
    };
    expect(closedOf(state, SPIRAL, { fromMs: AT_MS - MINUTE_MS, toMs: AT_MS + 60 * MINUTE_MS }, AT_MS)).toEqual([
      { fromMs: AT_MS, toMs: AT_MS + 20 * MINUTE_MS, why: 'outOfUse' },
    ]);
  });
});
