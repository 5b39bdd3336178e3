import { existsSync, rmSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { BakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import { openDues } from '../../shared/floor/due.ts';
import { recordedEventSchema, type EventOf, type FloorEvent, type RecordedEvent } from '../../shared/floor/events.ts';
import { evolve, evolveAll } from '../../shared/floor/evolve.ts';
import { EMPTY_STATE, type FloorState } from '../../shared/floor/state.ts';
import { assert } from '../../shared/result.ts';
import { main } from '../../server/cli/invent.ts';
import { Chance } from '../../server/invent/chance.ts';
import { inventedDays } from '../../server/invent/invented-days.ts';
import { keepHistory, type KeptHistory } from '../../server/invent/keep-history.ts';
import { OpenDues } from '../../server/invent/open-dues.ts';
import { LotNumbers } from '../../server/invent/lot-numbers.ts';
import { canonicalJson } from '../../server/journal/canonical-json.ts';
import { SNAPSHOT_FILE, readSnapshot } from '../../server/journal/snapshot-file.ts';
import { JOURNAL_FILE, SqliteJournal } from '../../server/journal/sqlite-journal.ts';
import { instantOf } from '../../server/main/planned-starts.ts';
import { readBakehouse } from '../../server/main/read-bakehouse.ts';
import { folderForTest, temporaryFolder } from './support/temporary-folder.ts';

const DEMO_FILE = fileURLToPath(new URL('../../fixtures/harbour.json', import.meta.url));
const HOUR_MS = 3_600_000;
/** A Friday to a Monday, on which the house is closed; summer time ends on the Sunday. */
const [FIRST, LAST] = ['2026-10-23', '2026-10-26'];
const CLOSED = '2026-10-26';
const SEED = 11;
/** A dough that stays in the cold is on the floor for less than this from its first step. */
const LONGEST_MS = 30 * HOUR_MS;

/** Events that four days have at least. Rarer ones come in more. */
const OCCUR: readonly FloorEvent['type'][] = [
  'clockAnchored',
  'houseAdopted',
  'kitchenAdopted',
  'ingredientsAdopted',
  'formulaAdopted',
  'productAdopted',
  'standingAdopted',
  'dayOpened',
  'dayClosed',
  'orderPlaced',
  'workpiecePlanned',
  'feedPlanned',
  'planAdopted',
  'ingredientWeighed',
  'ingredientAdded',
  'waterTaken',
  'waterHeldBackUsed',
  'temperatureRead',
  'riseLearned',
  'ripenessLearned',
  'fermentFed',
  'stepStarted',
  'stepDone',
  'stepHelped',
  'moreTimeGiven',
  'workpieceHeld',
  'workpieceDrawn',
  'workpieceDivided',
  'workpieceFinished',
  'loadsMade',
  'lossNamed',
  'timeCorrected',
  'ovenLoaded',
  'ovenUnloaded',
  'promptAnswered',
  'slotHeatLearned',
  'deckSet',
  'placeRead',
  'resourceBlocked',
  'vesselsTaken',
  'vesselsReturned',
  'callRaised',
  'callHeard',
  'callSounded',
  'soundTestAsked',
  'soundTestSounded',
];

/** Rarer ones, that ten days have, and more than one version of what a file brings in. */
const [TEN_FIRST, TEN_LAST] = ['2026-07-03', '2026-07-12'];
const OCCUR_IN_TEN_DAYS: readonly FloorEvent['type'][] = [
  'stepSkipped',
  'stepHandedOver',
  'stepProgressed',
  'commandUndone',
  'workpieceDiscarded',
  'workpieceMoved',
  'workpieceReleased',
  'countCorrected',
  'ingredientUnweighed',
  'ingredientAdopted',
  'scrapPutBack',
  'loadMoved',
  'bakePaced',
  'placeOpened',
  'testPieceStarted',
  'testPieceEnded',
  'resourceFreed',
  'soundTestAnswered',
  'driftLearned',
];

const folder = temporaryFolder();
let file: BakehouseFile;
let kept: KeptHistory;
let events: readonly RecordedEvent[];
let left: FloorState;
const receivedMs: number[] = [];

function eventsOf<Type extends FloorEvent['type']>(type: Type): readonly EventOf<Type>[] {
  return events.map(({ event }) => event).filter((event): event is EventOf<Type> => event.type === type);
}

beforeAll(async () => {
  const read = await readBakehouse(DEMO_FILE);
  assert(read.ok, 'the demo bakehouse is right');
  ({ file } = read.value);
  const history = await keepHistory(folder, { file, firstDate: FIRST, lastDate: LAST, seed: SEED }, (day) => {
    receivedMs.push(...day.entries.map((entry) => entry.receivedMs));
  });
  assert(history.ok, 'the history is kept');
  kept = history.value;
  const journal = new SqliteJournal(`${folder}/${JOURNAL_FILE}`, { readOnly: true });
  events = await journal.read(kept.head.kitchenId, 0, 1_000_000);
  await journal.close();
  left = evolveAll(EMPTY_STATE, events);
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('IN1 an invented history is its seed’s', () => {
  test('the same seed has the same head, another one another', async () => {
    const headOf = async (seed: number): Promise<string> => {
      const history = await keepHistory(folderForTest(), { file, firstDate: FIRST, lastDate: FIRST, seed });
      assert(history.ok, 'the history is kept');
      return history.value.head.hash;
    };
    const hash = await headOf(SEED);
    expect(await headOf(SEED)).toBe(hash);
    expect(await headOf(SEED + 1)).not.toBe(hash);
  });
});

describe('IN2 it is what a server could have written', () => {
  test('every event has its schema’s shape', () => {
    const wrong = events.filter((event) => !recordedEventSchema.safeParse(event).success);
    expect(wrong).toEqual([]);
  });

  test('every hash of its journal agrees, its snapshot is the fold of it', async () => {
    const journal = new SqliteJournal(`${folder}/${JOURNAL_FILE}`, { readOnly: true });
    const { kitchenId, sequence } = kept.head;
    expect(await journal.verifyChain(kitchenId)).toBeNull();
    const snapshot = await readSnapshot(`${folder}/${SNAPSHOT_FILE}`, journal, kitchenId);
    await journal.close();
    assert(snapshot.ok, 'the snapshot is believed');
    expect(snapshot.value.sequence).toBe(sequence);
    expect(canonicalJson(JSON.parse(JSON.stringify(snapshot.value.state)))).toBe(canonicalJson(JSON.parse(JSON.stringify(left))));
  });

  test('where everything stands is what a look at the whole floor says', () => {
    const known = new OpenDues();
    let state = EMPTY_STATE;
    for (const [index, event] of events.slice(0, 1200).entries()) {
      state = evolve(state, event);
      // In the midst of a command not all of its facts are there.
      if (events[index + 1]?.ordinal !== 0) continue;
      const dues = known.of(state);
      if (event.sequence % 10 === 0) expect(dues).toEqual(openDues(state));
    }
  });

  test('instants never go back, and calls are raised when they are due', () => {
    expect(receivedMs.length).toBeGreaterThan(1000);
    expect(receivedMs).toEqual(receivedMs.toSorted((a, b) => a - b));
    for (const { dueMs, atMs } of eventsOf('callRaised')) expect(atMs).toBeGreaterThanOrEqual(dueMs);
  });
});

describe('IN3 every day is ended, and nothing piles up', () => {
  test('each day that was opened is closed; none is opened on a day on which the house is closed', () => {
    const opened = eventsOf('dayOpened').map((event) => event.serviceDate);
    expect(opened).toEqual(['2026-10-23', '2026-10-24', '2026-10-25']);
    expect(eventsOf('dayClosed').map((event) => event.serviceDate)).toEqual(opened);
    expect(opened).not.toContain(CLOSED);
    expect(left.openDates).toEqual([]);
  });

  test('only the pot is left, and it is to be fed', () => {
    const open = Object.values(left.workpieces).filter((workpiece) => workpiece.finishedMs === null);
    expect(open.map((workpiece) => workpiece.tag)).toEqual(['L1']);
    expect(open[0]?.stock?.plannedFeeds.length).toBeGreaterThan(0);
  });

  test('no dough is on the floor for longer than a night in the cold', () => {
    const begun = new Map<string, number>();
    const pots = new Set(eventsOf('fermentFed').map((event) => event.workpieceId));
    for (const { workpieceId, atMs } of eventsOf('stepStarted')) if (!begun.has(workpieceId)) begun.set(workpieceId, atMs);
    const ended = [...eventsOf('workpieceFinished'), ...eventsOf('workpieceDiscarded'), ...eventsOf('workpieceDivided')];
    const endMs = new Map(ended.map((event) => [event.workpieceId, event.atMs]));
    for (const { workpieceId, restPieces, atMs } of eventsOf('loadsMade')) if (restPieces === 0) endMs.set(workpieceId, atMs);
    const long = [...begun].filter(([id, atMs]) => !pots.has(id) && !((endMs.get(id) ?? Number.POSITIVE_INFINITY) - atMs < LONGEST_MS));
    expect(long).toEqual([]);
  });
});

describe('IN4 it has something of everything', () => {
  test.each(OCCUR)('%s', (type) => {
    expect(eventsOf(type).length).toBeGreaterThan(0);
  });

  test('in ten days the rarer things too, ice in summer, and a formula that has changed', () => {
    const days = [...inventedDays({ file, firstDate: TEN_FIRST, lastDate: TEN_LAST, seed: SEED })];
    const tenDays = days.flatMap((day) => day.entries.flatMap((entry) => entry.events));
    const types = new Set(tenDays.map((event) => event.type));
    expect(OCCUR_IN_TEN_DAYS.filter((type) => !types.has(type))).toEqual([]);
    const versions = tenDays.flatMap((event) => (event.type === 'formulaAdopted' ? [`${event.formula.id}@${event.version}`] : []));
    expect(versions).toEqual(expect.arrayContaining(['country@2', 'rye@2']));
    // A crew that goes round in circles would be refused again and again.
    const entries = days.flatMap((day) => day.entries);
    expect(entries.filter((entry) => !entry.outcome.ok).length).toBeLessThan(0.03 * entries.length);
    for (const { state } of days) expect(Object.keys(state.workpieces).length).toBeLessThan(120);
    expect(tenDays.some((event) => event.type === 'waterTaken' && event.iceG > 0)).toBe(true);
  });

  test('work of hands is begun and ended, and the country dough takes longer to divide than its method says', () => {
    const countryIds = new Set(eventsOf('workpiecePlanned').flatMap((event) => (event.formulaId === 'country' ? [event.workpieceId] : [])));
    const startedMs = new Map<string, number>();
    const takenMin: number[] = [];
    for (const { event } of events) {
      if (event.type !== 'stepStarted' && event.type !== 'stepDone') continue;
      if (event.stepId !== 'divide' || !countryIds.has(event.workpieceId)) continue;
      const fromMs = startedMs.get(event.workpieceId);
      if (event.type === 'stepStarted') startedMs.set(event.workpieceId, event.atMs);
      else if (fromMs !== undefined) takenMin.push((event.atMs - fromMs) / 60_000);
    }
    expect(takenMin.length).toBeGreaterThan(4);
    const meanMin = takenMin.reduce((sum, minutes) => sum + minutes, 0) / takenMin.length;
    expect(meanMin).toBeGreaterThan(10.5);
    expect(meanMin).toBeLessThan(16);
  });

  test('flour comes in lots of about eight days, and two of them go into some lines', () => {
    const lots = new LotNumbers(file.ingredients, '2026-03-01', '2026-05-31', new Chance(3));
    const days = Array.from({ length: 92 }, (_, day) => new Date(Date.UTC(2026, 2, 1 + day)).toISOString().slice(0, 10));
    const lines = days.flatMap((date) => Array.from({ length: 8 }, () => lots.on('wheat-flour', date)));
    const numbers = new Set(lines.flat());
    expect(numbers.size).toBeGreaterThanOrEqual(9);
    expect(numbers.size).toBeLessThanOrEqual(16);
    expect(lines.some((line) => line.length === 2)).toBe(true);
    expect(lines.every((line) => line.length >= 1 && line.length <= 2)).toBe(true);
    expect(lots.on('water', FIRST)).toEqual([]);
  });
});

describe('IN5 the house goes by its clock, also over the night on which that is set', () => {
  test('the pot is fed at half past six in the evening on either side of it', () => {
    const planned = [...eventsOf('feedPlanned').map((event) => event.feedMs), ...eventsOf('workpiecePlanned').map((e) => e.plannedStartMs)];
    for (const date of ['2026-10-24', '2026-10-25']) expect(planned).toContain(instantOf(file.house.zone, date, '18:30'));
    expect(instantOf(file.house.zone, '2026-10-25', '18:30') - instantOf(file.house.zone, '2026-10-24', '18:30')).toBe(25 * HOUR_MS);
  });
});

describe('IN6 the command keeps it in a folder of its own', () => {
  const NOW_MS = Date.UTC(2026, 9, 27, 12);

  async function run(...args: readonly string[]): Promise<{ code: number; said: readonly string[] }> {
    const said: string[] = [];
    const code = await main(args, { say: (line) => void said.push(line), tell: () => undefined }, NOW_MS, DEMO_FILE);
    return { code, said };
  }

  test('a folder that has a journal is refused, and nothing of it is changed', async () => {
    const before = readFileSync(`${folder}/${JOURNAL_FILE}`);
    const { code, said } = await run('--data', folder);
    expect(code).toBe(1);
    expect(said).toEqual([`${resolve(folder)} has a journal already: a history is invented only in a folder without one.`]);
    expect(readFileSync(`${folder}/${JOURNAL_FILE}`).equals(before)).toBe(true);
  });

  test('a day that is not over is refused', async () => {
    const empty = folderForTest();
    expect(await run('--data', empty, '--end', '2026-10-27')).toEqual({
      code: 1,
      said: ['A history ends before today: --end may be 2026-10-26 at the latest.'],
    });
    expect(existsSync(`${empty}/${JOURNAL_FILE}`)).toBe(false);
  });

  test.each([
    [[]],
    [['--data', 'x', '--months', '0']],
    [['--data', 'x', '--months', 'three']],
    [['--data', 'x', '--seed', '-1']],
    [['--data', 'x', '--end', '2026-02-30']],
    [['--data', 'x', '--days', '4']],
  ])('a command line that cannot be understood is told how to be: %j', async (args) => {
    const { code, said } = await run(...args);
    expect(code).toBe(2);
    expect(said.join('\n')).toMatch(/^Usage: invent --data DIR/);
  });
});
