import { activityAt, startToStartS } from './edges.ts';
import type { DayProblem } from './problem.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** Activities that a lag without any play binds to each other: they are put down together or not at all. */
export interface RigidBlocks {
  readonly count: number;
  /** By activity. */
  readonly of: Int32Array;
  /** How far the activity begins after its block; 0 for the first of each. */
  readonly offsetS: Int32Array;
}

/** The blocks of a day, numbered as their first activities are. What stands already is a block by itself. */
export function rigidBlocks(problem: DayProblem): RigidBlocks {
  const bound = new BoundTogether(problem.activities.length);
  for (const lag of problem.lags) {
    if (lag.minS !== lag.mostS || isFixed(problem, lag.from) || isFixed(problem, lag.to)) continue;
    bound.bind(lag.from, lag.to, lag.minS + startToStartS(problem, lag));
  }
  return numbered(bound, problem.activities.length);
}

function isFixed(problem: DayProblem, activity: number): boolean {
  return activityAt(problem, activity).fixedStartS !== null;
}

function numbered(bound: BoundTogether, count: number): RigidBlocks {
  const of = new Int32Array(count);
  const offsetS = new Int32Array(count);
  const blockOfRoot = new Map<number, number>();
  const leastS: number[] = [];
  for (let activity = 0; activity < count; activity += 1) {
    const [root, afterRootS] = bound.rootOf(activity);
    const block = blockOfRoot.get(root) ?? blockOfRoot.size;
    blockOfRoot.set(root, block);
    of[activity] = block;
    offsetS[activity] = afterRootS;
    leastS[block] = Math.min(leastS[block] ?? Infinity, afterRootS);
  }
  for (let activity = 0; activity < count; activity += 1) {
    offsetS[activity] = (offsetS[activity] as number) - (leastS[of[activity] as number] as number);
  }
  return { count: blockOfRoot.size, of, offsetS };
}

/** Disjoint sets that know how far each member lies after its root. */
class BoundTogether {
  readonly #parent: Int32Array;
  readonly #afterParentS: Int32Array;

  constructor(count: number) {
    this.#parent = Int32Array.from({ length: count }, (_, index) => index);
    this.#afterParentS = new Int32Array(count);
  }

  /** The root of a member, and how long after it the member begins. */
  rootOf(member: number): readonly [number, number] {
    let root = member;
    let afterS = 0;
    while (this.#parent[root] !== root) {
      afterS += this.#afterParentS[root] as number;
      root = this.#parent[root] as number;
    }
    return [root, afterS];
  }

  /** `to` begins `lagS` after `from`. What is bound already stays as it is. */
  bind(from: number, to: number, lagS: number): void {
    const [fromRoot, fromAfterS] = this.rootOf(from);
    const [toRoot, toAfterS] = this.rootOf(to);
    if (fromRoot === toRoot) return;
    this.#parent[toRoot] = fromRoot;
    this.#afterParentS[toRoot] = fromAfterS + lagS - toAfterS;
  }
}
