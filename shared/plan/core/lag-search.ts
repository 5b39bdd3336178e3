import type { Budget, Instance, Outcome } from './instance.ts';
import { LagNeighbourhoods } from './lag-neighbourhoods.ts';
import { LagOrders } from './lag-orders.ts';
import { lagProblemOf, needsTooMuch } from './lag-problem.ts';
import { LagPropagation } from './lag-propagation.ts';
import { LagSearchState } from './lag-search-state.ts';
import { LagTree } from './lag-tree.ts';
import { closeLags, copyOf } from './temporal-closure.ts';

const NOTHING: Outcome = { starts: null, makespan: null, schedules: 0, isProvedInfeasible: true, isProvedOptimal: false };

/** Attempts with orders at first, before anything else. */
const FIRST_ORDERS = 100;
/** What part of the rest a tree over everything gets: small instances end here, with a proof. */
const TREE_SHARE = 0.1;
/** Then in turn, until the budget is spent: nodes in neighbourhoods of what is there, and attempts with orders. */
const NEIGHBOURHOODS_AT_ONCE = 160;
const ORDERS_AT_ONCE = 40;
/** As long as there is no schedule: nodes of a tree that decides a little otherwise each time, and by how much. */
const RESTART_NODES = 120;
const RESTART_BLUR = 6;
/** Most activities, calendars' pieces included, for which trees are grown: beyond, their closures cost more than they find. */
const MOST_IN_TREES = 100;

/**
 * Plans an instance with minimum and maximum lags so that the last activity starts as early as can be found. The same instance,
 * budget and seed give the same outcome; never more attempts are made than the budget has: each pass of serial generation, each node
 * of a tree and each neighbourhood is one. Infeasible is only what is proved to be: by the lags alone, by what they and the resources
 * imply, or by a tree that was searched to its end. Throws a RangeError where the lags are too long to add up (MOST_LENGTH).
 */
export function solveWithLags(instance: Instance, budget: Budget): Outcome {
  const problem = lagProblemOf(instance);
  if (needsTooMuch(problem)) return NOTHING;
  const closure = closeLags(problem.size, problem.arcs);
  if (closure === null) return NOTHING;
  const propagation = new LagPropagation(problem);
  const state = new LagSearchState(problem, propagation, closure, budget);
  if (!state.isOver) search(state);
  return outcomeOf(state);
}

function search(state: LagSearchState): void {
  const orders = new LagOrders(state, copyOf(state.root));
  if (state.problem.size > MOST_IN_TREES) {
    orders.run(state.left);
    return;
  }
  orders.run(Math.min(FIRST_ORDERS, state.left));
  const tree = new LagTree(state.problem, state.propagation);
  growTree(state, tree, Math.ceil(state.left * TREE_SHARE), 0);
  const neighbourhoods = new LagNeighbourhoods(state, tree);
  while (!state.isOver) {
    if (state.best === null) growTree(state, tree, RESTART_NODES, RESTART_BLUR);
    else neighbourhoods.run(NEIGHBOURHOODS_AT_ONCE, () => orders.some());
    if (state.best !== null) orders.welcome(state.best);
    orders.run(ORDERS_AT_ONCE);
  }
}

/** A tree over everything that is still wanted. */
function growTree(state: LagSearchState, tree: LagTree, nodes: number, blur: number): void {
  if (state.isOver) return;
  state.spend(1);
  const limits = { nodes: Math.min(nodes, state.left), latestEnd: state.latestEnd };
  const before = limits.nodes;
  const isDone = tree.search(
    copyOf(state.root),
    limits,
    () => state.random.share() * blur,
    (starts) => {
      state.offer(starts);
      limits.latestEnd = state.latestEnd;
    },
  );
  state.spend(before - limits.nodes);
  if (isDone) state.close();
}

function outcomeOf(state: LagSearchState): Outcome {
  const { best, spent, isClosed, problem } = state;
  return {
    starts: best,
    makespan: best === null ? null : (best[problem.last] ?? null),
    schedules: spent,
    isProvedInfeasible: isClosed && best === null,
    isProvedOptimal: isClosed && best !== null,
  };
}
