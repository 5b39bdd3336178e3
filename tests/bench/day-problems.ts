import { Random } from '../../shared/plan/core/random.ts';
import {
  PRICES,
  type Activity,
  type Choice,
  type DayProblem,
  type Edge,
  type Goal,
  type Hold,
  type Lag,
  type PlanResource,
} from '../../shared/plan/day/problem.ts';

const MINUTE_S = 60;
const HOUR_S = 3600;

/** Heats of the decks, in °C, and how fast one goes from one to another. */
const HEATS_C = [250, 230, 200];
const HEAT_K_PER_MIN = 3;
/** What is in a mixer's dough: nothing that matters, seeds, or dairy; it is cleaned before a dough without. */
const CHANGE_OVER_MIN = [
  [0, 0, 0],
  [12, 0, 12],
  [12, 12, 0],
];

/** How large a bakehouse is: everything that there is of it. */
export interface BakehouseSize {
  readonly batches: number;
  readonly mixers: number;
  readonly ovens: number;
  readonly mixingHands: number;
  readonly benchHands: number;
  readonly ovenHands: number;
  readonly packingHands: number;
}

/** Forty batches with two mixers, three ovens of two decks, five people: about 500 activities. */
export const FORTY: BakehouseSize = { batches: 40, mixers: 2, ovens: 3, mixingHands: 1, benchHands: 2, ovenHands: 1, packingHands: 1 };
/** Two hundred batches in a house five times as large. */
export const TWO_HUNDRED: BakehouseSize = {
  batches: 200,
  mixers: 10,
  ovens: 15,
  mixingHands: 5,
  benchHands: 10,
  ovenHands: 5,
  packingHands: 5,
};
/** A few batches with one mixer and one oven. */
export function fewBatches(batches: number): BakehouseSize {
  return { batches, mixers: 1, ovens: 1, mixingHands: 1, benchHands: 1, ovenHands: 1, packingHands: 1 };
}

/** A day of invented batches, every one mixed, rested, folded, divided, shaped, proved, baked, cooled and packed. The same seed, the same day. */
export function dayProblem(size: BakehouseSize, seed: number): DayProblem {
  const day = new DayWriter(size, new Random(seed));
  for (let batch = 0; batch < size.batches; batch += 1) day.addBatch(batch);
  return day.problem();
}

class DayWriter {
  readonly #size: BakehouseSize;
  readonly #random: Random;
  readonly #activities: Activity[] = [];
  readonly #lags: Lag[] = [];
  readonly #choices: Choice[] = [];
  readonly #holds: Hold[] = [];
  readonly #goals: Goal[] = [];
  readonly #resources: readonly PlanResource[];

  constructor(size: BakehouseSize, random: Random) {
    this.#size = size;
    this.#random = random;
    this.#resources = resourcesOf(size);
  }

  problem(): DayProblem {
    return {
      activities: this.#activities,
      lags: this.#lags,
      resources: this.#resources,
      choices: this.#choices,
      holds: this.#holds,
      goals: this.#goals,
      batchCount: this.#size.batches,
    };
  }

  addBatch(batch: number): void {
    const contents = this.#random.below(3);
    const heat = this.#random.below(HEATS_C.length);
    const mix = this.#activity(batch, 'mix', this.#between(6, 9));
    const mixOut = this.#activity(batch, 'mix-out', this.#between(4, 7));
    const fold = this.#activity(batch, 'fold', 4);
    const divide = this.#activity(batch, 'divide', this.#between(6, 10));
    this.#mixes(mix, mixOut, contents);
    this.#rest(mix, mixOut, 15, 45, 20);
    this.#rest(mixOut, fold, 40, 80, 60);
    this.#rest(fold, divide, 35, 80, 50);
    this.#stand(mixOut, divide, 'shelf', 1);
    for (const step of [fold, divide]) this.#take(step, step, 'hands', 'bench', 1);
    const dueS = Math.round(this.#between(10 * 60, 17 * 60)) * MINUTE_S;
    const cuts = 1 + this.#random.below(2);
    for (let cut = 0; cut < cuts; cut += 1) this.#addCut(batch, cut, divide, heat, cuts === 1 ? 2 : 1, dueS + cut * HOUR_S);
  }

  #addCut(batch: number, cut: number, divide: number, heat: number, loads: number, dueS: number): void {
    const pack = this.#activity(batch, `pack-${cut}`, this.#between(5, 10));
    this.#take(pack, pack, 'hands', 'packing', 1);
    let shapedBefore: number | null = null;
    let out = 0;
    for (let load = 0; load < loads; load += 1) {
      const shape = this.#activity(batch, `shape-${cut}-${load}`, this.#between(6, 10));
      this.#take(shape, shape, 'hands', 'bench', 1);
      this.#lag(divide, shape, 0, 30, 0, 0.2);
      if (shapedBefore !== null) this.#lag(shapedBefore, shape, 0, null, null, 0);
      shapedBefore = shape;
      out = this.#bake(batch, `${cut}-${load}`, shape, heat);
      this.#lag(out, pack, this.#between(45, 70), null, null, 0);
    }
    this.#goals.push({
      key: `batch-${batch}-${cut}`,
      activity: pack,
      edge: 'end',
      dueS,
      latePrice: PRICES.lateMin * (1 + this.#random.below(3)),
      fresh: { activity: out, edge: 'end', mostS: 4 * HOUR_S, price: PRICES.freshMin },
      earlyPrice: PRICES.earlyMin,
      isFirst: false,
    });
  }

  /** From shaped to out of the oven. The activity that takes it out. */
  #bake(batch: number, name: string, shape: number, heat: number): number {
    const load = this.#activity(batch, `load-${name}`, 3);
    const bake = this.#activity(batch, `bake-${name}`, this.#between(22, 45));
    const out = this.#activity(batch, `out-${name}`, 3);
    const proveMin = this.#between(50, 80);
    this.#rest(shape, load, proveMin - 15, proveMin + 25, proveMin);
    this.#stand(shape, load, 'prover', 1);
    this.#lag(load, bake, 0, 0, null, 0);
    this.#lag(bake, out, 0, 0, null, 0);
    for (const step of [load, out]) this.#take(step, step, 'hands', 'oven', 1);
    const decks = this.#resources.flatMap(({ kind }, index) => (kind === 'deck' ? [index] : []));
    const liked = this.#random.below(decks.length);
    this.#choices.push({
      options: decks.map((resource, index) => ({ resource, price: index === liked ? 0 : 1 })),
      fixedOption: null,
      previousOption: null,
    });
    this.#holds.push({
      from: load,
      fromEdge: 'start',
      to: out,
      toEdge: 'end',
      afterS: 0,
      on: { choice: this.#choices.length - 1, amounts: decks.map(() => 1) },
      states: decks.map(() => heat),
    });
    return out;
  }

  #mixes(mix: number, mixOut: number, contents: number): void {
    const mixers = this.#resources.flatMap(({ kind }, index) => (kind === 'mixer' ? [index] : []));
    this.#choices.push({ options: mixers.map((resource) => ({ resource, price: 0 })), fixedOption: null, previousOption: null });
    this.#holds.push({
      from: mix,
      fromEdge: 'start',
      to: mixOut,
      toEdge: 'end',
      afterS: 0,
      on: { choice: this.#choices.length - 1, amounts: mixers.map(() => 1) },
      states: mixers.map(() => contents),
    });
    for (const step of [mix, mixOut]) this.#take(step, step, 'hands', 'mixing', 1);
  }

  #activity(batch: number, name: string, minutes: number): number {
    this.#activities.push({
      key: `${batch}||${name}`,
      batch,
      durationS: Math.round(minutes * MINUTE_S),
      releaseS: 0,
      fixedStartS: null,
      pinnedStartS: null,
      previousStartS: null,
      isToldAlready: false,
    });
    return this.#activities.length - 1;
  }

  #rest(from: number, to: number, minMin: number, mostMin: number, targetMin: number): void {
    this.#lag(from, to, minMin, mostMin, targetMin, PRICES.ripenessMin);
  }

  #lag(from: number, to: number, minMin: number, mostMin: number | null, targetMin: number | null, awayPrice: number): void {
    this.#lags.push({
      from,
      fromEdge: 'end',
      to,
      toEdge: 'start',
      minS: Math.round(minMin * MINUTE_S),
      mostS: mostMin === null ? null : Math.round(mostMin * MINUTE_S),
      targetS: targetMin === null ? null : Math.round(targetMin * MINUTE_S),
      awayPrice,
      spoilPrice: PRICES.spoilMin,
    });
  }

  #stand(from: number, to: number, id: string, amount: number): void {
    this.#hold(from, 'end', to, 'start', this.#resource('restPlace', id), amount);
  }

  #take(from: number, to: number, kind: 'hands', id: string, amount: number): void {
    this.#hold(from, 'start', to, 'end', this.#resource(kind === 'hands' ? 'station' : kind, id), amount);
  }

  #hold(from: number, fromEdge: Edge, to: number, toEdge: Edge, resource: number, amount: number): void {
    this.#holds.push({ from, fromEdge, to, toEdge, afterS: 0, on: { resource, amount }, states: null });
  }

  #resource(kind: string, id: string): number {
    return this.#resources.findIndex((resource) => resource.kind === kind && resource.id === id);
  }

  #between(least: number, most: number): number {
    return least + this.#random.share() * (most - least);
  }
}

function resourcesOf(size: BakehouseSize): readonly PlanResource[] {
  const plain = { calendar: null, setupS: null, stateAtFirst: null, sharesOneState: false, idlePrice: 0 };
  const station = (id: string, hands: number, breakAtH: number): PlanResource => ({
    ...plain,
    kind: 'station',
    id,
    capacity: hands,
    calendar: [
      { fromS: breakAtH * HOUR_S, capacity: Math.floor(hands / 2) },
      { fromS: breakAtH * HOUR_S + 1800, capacity: hands },
    ],
  });
  const changeOverS = CHANGE_OVER_MIN.map((row) => row.map((minutes) => minutes * MINUTE_S));
  const heatingS = HEATS_C.map((fromC) => HEATS_C.map((toC) => Math.round((Math.abs(fromC - toC) / HEAT_K_PER_MIN) * MINUTE_S)));
  return [
    ...Array.from({ length: size.mixers }, (_, index) => ({ ...plain, kind: 'mixer', id: `m${index}`, capacity: 1, setupS: changeOverS })),
    ...Array.from({ length: 2 * size.ovens }, (_, index) => ({
      ...plain,
      kind: 'deck',
      id: `d${index}`,
      capacity: 2,
      setupS: heatingS,
      stateAtFirst: 1,
      sharesOneState: true,
      idlePrice: PRICES.idleMin,
    })),
    station('mixing', size.mixingHands, 6),
    station('bench', size.benchHands, 7),
    station('oven', size.ovenHands, 5),
    station('packing', size.packingHands, 12),
    { ...plain, kind: 'restPlace', id: 'shelf', capacity: Math.ceil(size.batches / 3) },
    { ...plain, kind: 'restPlace', id: 'prover', capacity: Math.ceil(size.batches / 4) },
  ];
}
