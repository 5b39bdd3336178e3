import type { Allergen } from '../../documents/allergen.ts';
import type { Formula, Product } from '../../documents/formula.ts';
import type { Step } from '../../documents/method.ts';
import type { Serves } from '../../floor/events.ts';
import type { StepLife, Workpiece } from '../../floor/state.ts';
import type { Point, Window } from './problem-draft.ts';

/** What a thread is called in a plan, without its steps. */
export interface ThreadPlace {
  readonly batchKey: string;
  readonly workpieceId: string | null;
  readonly cut: number | undefined;
  readonly load: number | undefined;
}

/**
 * One way, step after step, that a dough goes in one piece: a batch until it is divided, a cut until it goes on in loads,
 * a load; a prep, a feed of a pot. What comes of it is below it.
 */
export interface Thread {
  readonly place: ThreadPlace;
  readonly kind: 'dough' | 'prep' | 'ferment';
  /** Of its family in the problem: the batch with its cuts, loads and preps. */
  readonly batch: number;
  readonly tag: string | null;
  readonly formula: Formula;
  readonly product: Product | null;
  readonly pieces: number | null;
  readonly grams: number;
  readonly scaledToG: number;
  readonly allergens: readonly Allergen[];
  readonly steps: readonly Step[];
  readonly lives: Readonly<Record<string, StepLife>>;
  /** The workpiece that this is; null for what it still has to become. */
  readonly workpiece: Workpiece | null;
  readonly serviceDate: string | null;
  /** When it is meant to begin; null where nobody said. */
  readonly startMs: number | null;
  readonly notBeforeMs: number | null;
  /** Which part of the work of the step that made it is behind it when it can go on: of loads that are shaped first to last. */
  readonly shaped: number;
  readonly serves: Serves | null;
  readonly parent: Thread | null;
  readonly children: Thread[];
}

/** Where a step of a thread begins and ends in the problem. */
export interface StepNodes {
  readonly step: Step;
  readonly start: Point;
  /** Of a rest: where what ends it begins; null where nothing does. */
  readonly end: Point | null;
  /** The number of the rest that it is; null where it is an activity. */
  readonly rest: number | null;
}

/** A thread whose steps are in the problem. */
export interface Chain {
  readonly thread: Thread;
  readonly nodes: ReadonlyMap<string, StepNodes>;
  /** Where everything of it is behind it; what it becomes goes on from here. Null where it has no step at all. */
  readonly end: Point | null;
  /** The last rest, in which it is kept for others to take of it. */
  readonly kept: { readonly step: Step; readonly start: Point; readonly window: Window; readonly rest: number } | null;
}

/** A chain with those of what comes of its thread. */
export interface ChainTree {
  readonly chain: Chain;
  readonly below: readonly ChainTree[];
}

/** The threads that a thread ends in: those that nothing comes of. */
export function leavesOf(thread: Thread): readonly Thread[] {
  return thread.children.length === 0 ? [thread] : thread.children.flatMap(leavesOf);
}

/** A thread and all that comes of it. */
export function familyOf(thread: Thread): readonly Thread[] {
  return [thread, ...thread.children.flatMap(familyOf)];
}

/** The name of a thread as activities are called by. */
export function threadKey({ batchKey, cut, load }: ThreadPlace): string {
  return `${batchKey}|${cut ?? ''}|${load ?? ''}`;
}
