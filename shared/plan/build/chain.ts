import { targetMin, type Step } from '../../documents/method.ts';
import { ripeningOf, type Ripening } from '../../floor/ripening.ts';
import type { StepLife } from '../../floor/state.ts';
import { PRICES, type Activity } from '../day/problem.ts';
import type { DayDraft } from './day-draft.ts';
import type { Point, Window } from './problem-draft.ts';
import type { Chain, StepNodes, Thread } from './thread.ts';
import { begunRestWindow, restWindow, secondsOf, waitWindow } from './windows.ts';

/** What begins so soon has been told to whoever does it. */
export const TOLD_MS = 10 * 60_000;

interface OpenRest {
  readonly step: Step;
  readonly start: Point;
  readonly window: Window;
  readonly rest: number;
}

/**
 * Puts the steps of a thread into the problem: an activity for each that somebody does, judges or bakes, a lag for each
 * that waits. What is behind the thread stands where it was, as far as something ahead still counts from it.
 */
export function chainOf(day: DayDraft, thread: Thread, above: Chain | null): Chain {
  return new Chaining(day, thread, above).chain();
}

class Chaining {
  private readonly day: DayDraft;
  private readonly thread: Thread;
  private readonly above: Chain | null;
  private readonly nodes = new Map<string, StepNodes>();
  /** Where what comes next goes on from; null at the very beginning. */
  private at: Point | null = null;
  private before: Step | null = null;
  private open: OpenRest | null = null;

  constructor(day: DayDraft, thread: Thread, above: Chain | null) {
    this.day = day;
    this.thread = thread;
    this.above = above;
  }

  chain(): Chain {
    const { thread } = this;
    const { steps } = thread;
    const over = steps.filter((step) => isOver(thread.lives[step.id]));
    this.beginAfter(over);
    const ahead = steps.filter((step) => !isOver(thread.lives[step.id]));
    for (const step of ahead) this.add(step);
    const kept = this.keptAtLast();
    if (kept === null && this.open !== null) this.endRest(this.open);
    return { thread, nodes: this.nodes, end: this.at, kept };
  }

  /** Where it goes on from: the end of the last step that is over, or of what it came of. */
  private beginAfter(over: readonly Step[]): void {
    const { thread, above, day } = this;
    this.before = over.at(-1) ?? above?.thread.steps.at(-1) ?? null;
    const { workpiece } = thread;
    if (workpiece === null) {
      this.at = above === null ? null : shapedPoint(day, thread, above);
      return;
    }
    if (over.length === 0 && workpiece.parentId === null) return;
    const isUnderWay = thread.steps.some((step) => thread.lives[step.id]?.status === 'started');
    if (isUnderWay && over.length === 0) return;
    const step = over.at(-1);
    this.at = edge(day.fixed(thread, step ?? null, workpiece.readyMs, workpiece.readyMs, 'over'), 'end');
    if (step !== undefined) this.nodes.set(step.id, { step, start: this.at, end: this.at, rest: null });
  }

  private add(step: Step): void {
    const life = this.thread.lives[step.id];
    if (step.kind === 'timed') this.addRest(step, life);
    else this.addActivity(step, life);
    this.before = step;
  }

  private addActivity(step: Step, life: StepLife | undefined): void {
    const begunMs = life?.startedMs ?? null;
    const activity = begunMs === null || life === undefined ? this.ahead(step) : this.begun(step, life, begunMs);
    const start = edge(activity, 'start');
    const end = edge(activity, 'end');
    this.follow(step, start);
    this.nodes.set(step.id, { step, start, end, rest: null });
    this.linkAfter(step, start);
    this.at = end;
  }

  private begun(step: Step, life: StepLife, begunMs: number): number {
    const { day, thread } = this;
    const { nowMs } = day.context;
    const { pins, moreMin } = life;
    const lengthMin = pins === null ? targetMin(step, thread.pieces) : pins.targetMin * pins.factor;
    const plannedMs = begunMs + (lengthMin + moreMin) * 60_000;
    // Past its time, what is left of it is what nobody has said is done.
    const endMs = plannedMs > nowMs ? plannedMs : nowMs + leftOf(life, thread.pieces) * lengthMin * 60_000;
    return day.fixed(thread, step, begunMs, endMs, 'begun');
  }

  private ahead(step: Step): number {
    const { day, thread } = this;
    const durationS = secondsOf(targetMin(step, thread.pieces));
    return day.activity(thread, step, 'ahead', this.toCome(step.id, durationS, this.isFirst()));
  }

  private isFirst(): boolean {
    return this.at === null && this.open === null && this.thread.parent === null;
  }

  /** What an activity that is still ahead is bound to in time. */
  private toCome(stepId: string, durationS: number, isFirst: boolean): Omit<Activity, 'key' | 'batch'> {
    const { day, thread } = this;
    const { context, plan } = day;
    const planned = plan.step(thread, stepId);
    const previousMs = planned?.plannedStartMs ?? (isFirst ? thread.startMs : null);
    const pinnedMs = plan.pinnedMs(thread, stepId);
    return {
      durationS,
      releaseS: Math.max(context.nowS, context.secondOf(this.notBeforeMs(isFirst))),
      fixedStartS: null,
      pinnedStartS: pinnedMs === null ? null : context.secondOf(pinnedMs),
      previousStartS: previousMs === null ? null : context.secondOf(previousMs),
      isToldAlready: planned !== null && planned.plannedStartMs <= context.nowMs + TOLD_MS,
    };
  }

  /** Somebody put it off, or wants the batch no earlier. */
  private notBeforeMs(isFirst: boolean): number {
    const { workpiece, startMs, notBeforeMs } = this.thread;
    let earliestMs = 0;
    if (isFirst && notBeforeMs !== null) earliestMs = notBeforeMs;
    if (workpiece === null || !this.isNext()) return earliestMs;
    if (isFirst && startMs !== null && workpiece.readyMs > startMs) earliestMs = Math.max(earliestMs, workpiece.readyMs);
    return Math.max(earliestMs, workpiece.heldUntilMs ?? 0);
  }

  /** Whether nothing that is ahead has been put in yet. */
  private isNext(): boolean {
    return [...this.nodes.values()].every(({ step }) => this.thread.lives[step.id] !== undefined);
  }

  private addRest(step: Step, life: StepLife | undefined): void {
    const { day, thread } = this;
    if (this.open !== null) this.endRest(this.open);
    const begunMs = life?.startedMs ?? null;
    const start = begunMs === null ? (this.at ?? this.bareStart(step)) : edge(day.fixed(thread, step, begunMs, begunMs, 'over'), 'end');
    const next = thread.steps[thread.steps.indexOf(step) + 1] ?? null;
    const window =
      begunMs === null || life === undefined ? restWindow(step, next) : begunRestWindow(step, next, life, this.ripening(step, life));
    const pinnedMs = begunMs === null ? day.plan.pinnedMs(thread, step.id) : null;
    if (pinnedMs !== null) day.pinEdge(start, pinnedMs);
    const rest = day.rest(thread, step, start, window.targetS ?? 0, begunMs === null ? 'ahead' : 'begun');
    this.open = { step, start, window, rest };
    this.nodes.set(step.id, { step, start, end: null, rest });
    this.linkAfter(step, start);
    this.at = null;
  }

  private ripening(step: Step, life: StepLife): Ripening | null {
    const { workpiece } = this.thread;
    return workpiece === null ? null : ripeningOf(this.day.context.state, workpiece, step, life);
  }

  /** A way that begins with a rest begins at an instant that is to be planned. */
  private bareStart(step: Step): Point {
    return edge(this.day.activity(this.thread, step, 'mark', this.toCome(step.id, 0, true)), 'start');
  }

  /** A rest that no work ends: something must still stand for its end. */
  private endRest(open: OpenRest): void {
    const { day, thread } = this;
    const mark = day.activity(thread, open.step, 'mark', {
      durationS: 0,
      releaseS: day.context.nowS,
      fixedStartS: null,
      pinnedStartS: null,
      previousStartS: null,
      isToldAlready: false,
    });
    this.closeRest(open, edge(mark, 'start'));
    this.at = edge(mark, 'end');
  }

  private closeRest(open: OpenRest, end: Point): void {
    const lag = this.day.context.draft.lag(open.start, end, open.window);
    this.day.endRest(open.rest, end, lag);
    this.nodes.set(open.step.id, { step: open.step, start: open.start, end, rest: open.rest });
    this.open = null;
  }

  /** Binds a step to what comes right before it. */
  private follow(step: Step, start: Point): void {
    if (this.open !== null) {
      this.closeRest(this.open, start);
      return;
    }
    if (this.at !== null) this.day.context.draft.lag(this.at, start, waitWindow(this.before, step));
  }

  private linkAfter(step: Step, start: Point): void {
    for (const link of step.after ?? []) {
      const from = this.pointOf(link.step, link.from);
      if (from === null || from.activity === start.activity) continue;
      const isTimed = link.latestMin !== undefined;
      this.day.context.draft.lag(from, start, {
        minS: secondsOf(link.earliestMin),
        targetS: isTimed || link.targetMin > 0 ? secondsOf(link.targetMin) : null,
        mostS: link.latestMin === undefined ? null : secondsOf(link.latestMin),
        awayPrice: isTimed ? PRICES.ripenessMin : 0,
      });
    }
  }

  private pointOf(stepId: string, edgeName: 'start' | 'end'): Point | null {
    const nodes = this.nodes.get(stepId) ?? this.above?.nodes.get(stepId);
    if (nodes !== undefined && !isOver(this.thread.lives[stepId])) return edgeName === 'start' ? nodes.start : nodes.end;
    const step = this.thread.steps.find((candidate) => candidate.id === stepId);
    const life = this.thread.lives[stepId];
    const atMs = edgeName === 'start' ? (life?.startedMs ?? life?.endedMs) : life?.endedMs;
    if (step === undefined || atMs === undefined || atMs === null) return nodes === undefined ? null : nodes.end;
    return edge(this.day.fixed(this.thread, step, atMs, atMs, 'over'), 'end');
  }

  /** What is drawn from waits for that in its last rest. */
  private keptAtLast(): Chain['kept'] {
    if (this.thread.kind === 'dough' || this.open === null) return null;
    const kept = this.open;
    this.at = kept.start;
    return kept;
  }
}

function edge(activity: number, name: 'start' | 'end'): Point {
  return { activity, edge: name, offsetS: 0 };
}

/** The share of pieces that are not done, where somebody counted them; else nothing is known to be left. */
function leftOf({ piecesDone }: StepLife, pieces: number | null): number {
  return piecesDone === null || pieces === null || pieces === 0 ? 0 : Math.max(0, 1 - piecesDone / pieces);
}

function isOver(life: StepLife | undefined): boolean {
  return life?.status === 'done' || life?.status === 'skipped';
}

/** Loads are shaped first to last: each goes on once its own share of the work is done, others their whole. */
function shapedPoint(day: DayDraft, thread: Thread, above: Chain): Point | null {
  const { end } = above;
  if (end === null || thread.shaped === 1 || end.edge !== 'end') return end;
  const activity = day.context.draft.activities[end.activity];
  if (activity === undefined || activity.durationS === 0) return end;
  return { activity: end.activity, edge: 'start', offsetS: Math.ceil(activity.durationS * thread.shaped) };
}
