import { readBakehouseFile, type BakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import type { Order } from '../../../shared/documents/order.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { buildDay } from '../../../shared/plan/build/build-day.ts';
import type { ActivityStep, BuiltDay, RestStep } from '../../../shared/plan/build/built-day.ts';
import type { DayInput } from '../../../shared/plan/build/day-input.ts';
import type { Activity, Hold, PlanResource } from '../../../shared/plan/day/problem.ts';
import { assert } from '../../../shared/result.ts';
import { Floor } from './floor.ts';
import { bringInCommand, demoJson } from './harbour.ts';
import { idOf, SERVER_DEVICE } from './ids.ts';

export const MINUTE_MS = 60_000;

/** The day of the orders of these tests: the one after the demo's. */
export const NEXT_DATE = '2026-03-08';

/**
 * The demo floor with its day brought in, of a file that was changed before. Nobody has said of its kitchen what need not be
 * said: hours, the bench's room, cleanings, how fast decks heat; so that each test says what it is about.
 */
export function demoFloor(change: (file: Editable) => void = () => {}): Floor {
  return wholeDemoFloor((file) => {
    const { kitchen, products } = file;
    delete kitchen.bench;
    delete kitchen.cleanings;
    for (const deck of kitchen.ovens.flatMap((oven) => oven.decks)) {
      delete deck.heatKPerMin;
      delete deck.coolKPerMin;
    }
    for (const mixer of kitchen.mixers) delete mixer.speeds;
    for (const product of products) for (const fact of ['keepsMin', 'prefersSlots', 'deckRoom']) delete product[fact];
    change(file);
  });
}

/** The demo floor with its day brought in, as its file has it but for a change. */
export function wholeDemoFloor(change: (file: Editable) => void = () => {}): Floor {
  const floor = new Floor();
  floor.ok(bringInCommand(changed(change), floor.nowMs), { deviceId: SERVER_DEVICE });
  return floor;
}

/** The demo house with nothing planned on its floor, of a file that was changed before. */
export function emptyFloor(change: (file: Editable) => void = () => {}): Floor {
  return demoFloor((file) => {
    file.day.batches = [];
    change(file);
  });
}

interface Editable {
  kitchen: {
    stations: { id: string; hands?: number }[];
    mixers: { id: string; leastG: number; mostG: number; bowlComesOff?: boolean; changeOverMin?: number; speeds?: number }[];
    ovens: { decks: { id: string; heatKPerMin?: number; coolKPerMin?: number; temperatureC: number }[] }[];
    vessels: { id: string; count: number }[];
    restPlaces: { id: string; room?: number }[];
    bench?: { room: number; changeOverMin?: number };
    cleanings?: unknown[];
  };
  formulas: { id: string; handlingLossPct?: number; method: EditableStep[] }[];
  products: { id: string; way: EditableStep[]; piecesPerSlot?: number; [more: string]: unknown }[];
  day: { batches: unknown[] };
}

interface EditableStep {
  id: string;
  claims?: { kind: string; ids?: string[]; count?: number }[];
  [more: string]: unknown;
}

function changed(change: (file: Editable) => void): BakehouseFile {
  const json = demoJson();
  change(json as unknown as Editable);
  const read = readBakehouseFile(json);
  assert(read.ok, read.ok ? '' : JSON.stringify(read.fault, null, 2));
  return read.value;
}

/** An order of the next day, wanted at an hour of it (UTC); the n-th of a test. */
export function order(n: number, productId: string, pieces: number, hour: number, more: Partial<Order> = {}): Order {
  const readyMs = Date.parse(`${more.serviceDate ?? NEXT_DATE}T00:00:00Z`) + hour * 60 * MINUTE_MS;
  return { id: idOf(70_000 + n), serviceDate: NEXT_DATE, productId, pieces, form: 'cooled', weight: 1, readyMs, ...more };
}

/** The state with orders in it. */
export function ordered(state: FloorState, ...orders: readonly Order[]): FloorState {
  return { ...state, orders: Object.fromEntries(orders.map((each) => [each.id, each])) };
}

/** The day of a floor as a problem, with what a test says otherwise. Throws where it is refused. */
export function built(floor: Floor, more: Partial<DayInput> = {}): Looked {
  const day = buildDay(inputOf(floor, more));
  assert(day.ok, day.ok ? '' : JSON.stringify(day.fault, null, 2));
  return new Looked(day.value);
}

export function inputOf(floor: Floor, more: Partial<DayInput> = {}): DayInput {
  const calendars = { stations: {}, cleanings: [] };
  return { state: floor.state, nowMs: floor.nowMs, calendars, proposed: [], calendarsEndMs: floor.nowMs + 48 * 60 * MINUTE_MS, ...more };
}

/** A built day by names: a step is called by its tag or batch key, its cut and load where it has any, and its id. */
export class Looked {
  readonly day: BuiltDay;

  constructor(day: BuiltDay) {
    this.day = day;
  }

  /** `C1 shape`, `country#1 0 shape`, `R1 ·1 seed`. */
  step(name: string): ActivityStep {
    return only(
      name,
      this.day.steps.filter((step) => step.status !== 'over' && nameOf(step) === name),
    );
  }

  activity(name: string): Activity {
    const found = this.day.problem.activities[this.step(name).activity];
    assert(found !== undefined, `${name} has no activity`);
    return found;
  }

  rest(name: string): RestStep {
    return only(
      name,
      this.day.rests.filter((rest) => nameOf(rest) === name),
    );
  }

  /** Lags between two steps, each as [edge, edge, least, target, most], in minutes. */
  lags(from: string, to: string): readonly (readonly [string, string, number, number | null, number | null])[] {
    const ends = [this.index(from), this.step(to).activity];
    return this.day.problem.lags
      .filter((lag) => lag.from === ends[0] && lag.to === ends[1])
      .map((lag) => [lag.fromEdge, lag.toEdge, lag.minS / 60, minutes(lag.targetS), minutes(lag.mostS)]);
  }

  /** What holds of a kind of resource there are, each as `from edge > to edge: resource × amount / …`. */
  holds(kind: string, of: string): readonly string[] {
    return this.day.problem.holds.flatMap((hold) => {
      const taken = this.taken(hold).filter(({ resource }) => resource.kind === kind);
      const from = this.nameAt(hold.from);
      const text = taken.map(({ resource, amount }) => `${resource.id}×${amount}`).join('/');
      return taken.length === 0 || !from.startsWith(`${of} `)
        ? []
        : [`${from} ${hold.fromEdge} > ${this.nameAt(hold.to)} ${hold.toEdge}: ${text}`];
    });
  }

  /** The holds of a kind that begin with a step. */
  holdsFrom(kind: string, name: string): readonly Hold[] {
    const { activity } = this.step(name);
    return this.day.problem.holds.filter(
      (hold) => hold.from === activity && this.taken(hold).some(({ resource }) => resource.kind === kind),
    );
  }

  resource(kind: string, id: string): PlanResource {
    return only(
      `${kind} ${id}`,
      this.day.problem.resources.filter((resource) => resource.kind === kind && resource.id === id),
    );
  }

  taken(
    hold: Hold,
  ): readonly { readonly resource: PlanResource; readonly amount: number; readonly state: number | null; readonly price: number }[] {
    const { on, states } = hold;
    const { problem } = this.day;
    const options =
      'choice' in on
        ? (problem.choices[on.choice]?.options ?? []).map((option, index) => ({ ...option, amount: on.amounts[index] ?? 0 }))
        : [{ resource: on.resource, price: 0, amount: on.amount }];
    return options.map(({ resource, price, amount }, index) => {
      const found = problem.resources[resource];
      assert(found !== undefined, `no resource ${resource}`);
      return { resource: found, amount, price, state: states?.[index] ?? null };
    });
  }

  /** Names of all steps with activities, those that are over left out, in their order. */
  names(): readonly string[] {
    return this.day.steps.filter((step) => step.status !== 'over').map(nameOf);
  }

  private nameAt(activity: number): string {
    const step = this.day.steps[activity];
    return step === undefined ? '' : nameOf(step);
  }

  private index(name: string): number {
    const found = this.day.steps.filter((step) => nameOf(step) === name);
    return only(name, found).activity;
  }
}

function nameOf({ tag, batchKey, cut, load, stepId, workpieceId }: ActivityStep | RestStep): string {
  const head = workpieceId === null || tag === null ? batchKey : tag;
  if (workpieceId !== null) return `${head} ${stepId}`;
  return `${head}${cut === undefined ? '' : ` ${cut}`}${load === undefined ? '' : ` ·${load + 1}`} ${stepId}`;
}

function only<Thing>(name: string, found: readonly Thing[]): Thing {
  const [one] = found;
  assert(found.length === 1 && one !== undefined, `${found.length} are called ${name}`);
  return one;
}

function minutes(seconds: number | null): number | null {
  return seconds === null ? null : seconds / 60;
}
