import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { pino } from 'pino';
import { onTestFinished } from 'vitest';
import { readBakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import { dueOf, type Due } from '../../../shared/floor/due.ts';
import type { RecordedEvent } from '../../../shared/floor/events.ts';
import type { Workpiece } from '../../../shared/floor/state.ts';
import { assert } from '../../../shared/result.ts';
import type { RoleOfGuest } from '../../../server/access/roles.ts';
import { openHouse, type House, type HouseOptions } from '../../../server/main/house.ts';
import type { ReadBakehouse } from '../../../server/main/read-bakehouse.ts';
import { scatteredId } from './journal-events.ts';
import { tokenOf } from './live-client.ts';
import { Machine } from './machine.ts';
import { startHere, TEST_BUDGETS } from './planner-here.ts';
import { folderForTest } from './temporary-folder.ts';

const HARBOUR = new URL('../../../fixtures/harbour-plain.json', import.meta.url);

/** The demo bakehouse as the command line reads it. */
export function harbour(): ReadBakehouse {
  const bytes = readFileSync(HARBOUR);
  const read = readBakehouseFile(JSON.parse(bytes.toString('utf8')));
  assert(read.ok, 'the demo bakehouse is a bakehouse file');
  return { file: read.value, digest: createHash('sha256').update(bytes).digest() };
}

export interface TestHouseOptions {
  readonly folder?: string;
  readonly machine?: Machine;
  readonly pace?: number;
  /** What may be done by whom nobody let in; without a word, everything. */
  readonly roleOfGuest?: RoleOfGuest;
  /** A code for the console is wanted anew. */
  readonly isClaimedAnew?: boolean;
  /** Names of the machine, beside localhost and its addresses. */
  readonly names?: readonly string[];
  /** Where the house's log goes; without a word, nowhere. */
  readonly log?: HouseOptions['log'];
  readonly trusted?: NonNullable<HouseOptions['trusted']>;
  readonly pagesFolder?: string | null;
  /** Listens on a port of its own, on this machine only. */
  readonly isListening?: boolean;
  /** Leaves the house empty: no day is brought in. */
  readonly isEmpty?: boolean;
  /** The planner's threads; without a word, one of the test's own process. */
  readonly planning?: NonNullable<HouseOptions['planning']>;
  /** How the records' thread is started; without a word there are no records. */
  readonly startRecordsThread?: NonNullable<HouseOptions['startRecordsThread']>;
}

/** A real house on a real folder, its clocks the test's. */
export interface TestHouse {
  readonly house: House;
  readonly machine: Machine;
  readonly folder: string;
  workpiece(tag: string): Workpiece;
  due(tag: string): Due;
  /** Every event of the journal, by the API. */
  events(): Promise<readonly RecordedEvent[]>;
  /** Ends it in good order; the test may open the folder again. */
  close(): Promise<void>;
}

let drawn = 0;

/** Opens a house that does not outlive the test, with the demo day brought in. */
export async function openTestHouse(options: TestHouseOptions = {}): Promise<TestHouse> {
  const {
    folder = folderForTest(),
    machine = new Machine(),
    pace = 1,
    roleOfGuest = () => 'manage',
    isClaimedAnew = false,
    names = [],
    log = pino({ level: 'silent' }),
    trusted = () => null,
    pagesFolder = null,
    isEmpty = false,
    isListening = false,
    planning = { startThread: startHere, budgets: TEST_BUDGETS },
  } = options;
  const houseOptions: HouseOptions = {
    dataFolder: folder,
    pace,
    log,
    pagesFolder,
    addresses: ['http://localhost:8420'],
    clocks: machine,
    timers: machine,
    planning,
    newId: () => scatteredId(70_000_000 + (drawn += 1)),
    roleOfGuest,
    isClaimedAnew,
    names,
    trusted,
    newToken: tokenOf,
    ...(options.startRecordsThread === undefined ? {} : { startRecordsThread: options.startRecordsThread }),
  };
  const house = await openHouse(houseOptions);
  let isOpen = true;
  const close = async (): Promise<void> => {
    if (!isOpen) return;
    isOpen = false;
    await house.close();
  };
  onTestFinished(close);
  if (!isEmpty && house.floor.state.house === null) {
    const outcome = await house.bringIn(harbour());
    assert(outcome.ok, 'the demo day is brought in');
  }
  await house.app.ready();
  if (isListening) await house.app.listen({ port: 0, host: '127.0.0.1' });
  const workpiece = (tag: string): Workpiece => {
    const found = Object.values(house.floor.state.workpieces).filter((candidate) => candidate.tag === tag);
    assert(found.length === 1 && found[0] !== undefined, `${found.length} workpieces are called ${tag}`);
    return found[0];
  };
  return {
    house,
    machine,
    folder,
    workpiece,
    due: (tag) => {
      const due = dueOf(house.floor.state, workpiece(tag));
      assert(due !== null, `${tag} is off the floor`);
      return due;
    },
    events: async () => {
      const answer = await house.app.inject('/api/events?after=0');
      return answer.json<{ events: RecordedEvent[] }>().events;
    },
    close,
  };
}
