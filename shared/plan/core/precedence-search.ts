import { hasImpossibleDemand, hasRoomForEach, horizonOf, profileOf } from './availability.ts';
import { Breeding } from './breeding.ts';
import { disjunctiveGraph } from './disjunctive-graph.ts';
import { DisjunctiveTree } from './disjunctive-tree.ts';
import type { Budget, Instance, Outcome } from './instance.ts';
import { lowerBound } from './lower-bounds.ts';
import { Population } from './population.ts';
import { precedenceGraph, type PrecedenceGraph } from './precedence-graph.ts';
import { Random } from './random.ts';
import { refutedBound } from './refuted-bound.ts';
import { ScheduleMaker } from './schedule-maker.ts';

/** So many schedules make a population of BASE_SIZE; more make a larger one, with this power. */
const BASE_SCHEDULES = 1_000;
const BASE_SIZE = 30;
const SIZE_POWER = 0.3;
const LEAST_SIZE = 4;
const MOST_SIZE = 200;

/** From so many schedules on there is time to keep what differs. */
const LEAST_FOR_SPREAD = 3_000;
/** From so many schedules on, a better lower bound is worth its time: a few milliseconds. */
const LEAST_FOR_REFUTING = 5_000;
/** From so many schedules on, several populations breed apart before the best of each breed together. */
const LEAST_FOR_ISLANDS = 20_000;
const ISLANDS = 3;
/** The part of the budget that is spent apart. */
const APART = 0.6;

/** Where each resource does one thing at a time: from so many schedules on a tree is grown, between these parts of the budget. */
const LEAST_FOR_TREE = 10_000;
const BEFORE_TREE = 0.2;
const UNTIL_TREE = 0.9;

/**
 * Schedules an instance whose arcs are all plain precedence (each lag is the duration of where it comes from) for the least makespan:
 * a genetic search over orders, in which every child is made latest and then earliest. Ends when the budget is spent or the makespan
 * is proved least. The same instance, seed and budget give the same outcome. Throws a RangeError where the instance is too long or
 * its capacities too large (MOST_HORIZON, MOST_CAPACITY).
 */
export function solvePrecedence(instance: Instance, { schedules, seed }: Budget): Outcome {
  const graph = precedenceGraph(instance);
  if (graph === null || hasImpossibleDemand(instance)) return INFEASIBLE;
  const profile = profileOf(instance, graph);
  if (!hasRoomForEach(graph, profile)) return INFEASIBLE;
  const isSteady = (instance.calendars ?? []).every((steps) => steps === null || steps.length === 0);
  const limits = { schedules, horizon: horizonOf(instance), isSteady };
  const maker = new ScheduleMaker(graph, profile, limits);
  const bound = lowerBound(instance, graph);
  maker.raiseLowerBound(bound);
  const breeding = new Breeding(instance, maker, new Random(seed));
  const machines = schedules < LEAST_FOR_TREE ? null : disjunctiveGraph(instance, graph);
  const bred = machines === null ? schedules : Math.floor(schedules * BEFORE_TREE);
  const first = breeding.sampled(sizeFor(bred), bred < LEAST_FOR_SPREAD);
  if (schedules >= LEAST_FOR_REFUTING && !maker.isOver) maker.raiseLowerBound(refutedBound(instance, bound, maker.bestMakespan));
  search(breeding, first, bred);
  if (machines !== null) {
    // Where the tree comes to no end, what was bred goes on.
    new DisjunctiveTree(machines, maker).search(Math.floor(schedules * UNTIL_TREE));
    breeding.breed(first, schedules);
  }
  return outcomeOf(maker, graph);
}

const INFEASIBLE: Outcome = { starts: null, makespan: null, schedules: 0, isProvedInfeasible: true, isProvedOptimal: false };

function search(breeding: Breeding, first: Population, schedules: number): void {
  if (schedules < LEAST_FOR_ISLANDS) {
    breeding.breed(first, schedules);
    return;
  }
  const size = first.size;
  const together = new Population(size, false);
  for (let island = 1; island <= ISLANDS; island += 1) {
    const population = island === 1 ? first : breeding.sampled(size, false);
    breeding.breed(population, Math.floor((schedules * APART * island) / ISLANDS));
    for (const member of population.best(Math.floor(size / ISLANDS))) together.add(member);
  }
  breeding.breed(together, schedules);
}

function sizeFor(schedules: number): number {
  const size = Math.round(BASE_SIZE * (schedules / BASE_SCHEDULES) ** SIZE_POWER);
  return Math.min(MOST_SIZE, Math.max(LEAST_SIZE, size));
}

function outcomeOf(maker: ScheduleMaker, { originals }: PrecedenceGraph): Outcome {
  const { best, count: schedules, bestMakespan } = maker;
  if (best === null) return { starts: null, makespan: null, schedules, isProvedInfeasible: false, isProvedOptimal: false };
  const starts = new Int32Array(best.length);
  for (const [place, activity] of originals.entries()) starts[activity] = best[place] ?? 0;
  return { starts, makespan: bestMakespan, schedules, isProvedInfeasible: false, isProvedOptimal: maker.isProvedOptimal };
}
