import type { Step } from '../../shared/documents/method.ts';
import type { PlannedStep } from '../../shared/floor/events.ts';

export type StepResource = PlannedStep['resources'][number];

/** How far a step is: over, under way, to come by the plan in force, or where a day that is only tried would put it. */
export type Standing = 'done' | 'begun' | 'planned' | 'proposed';

/** Where a step belongs: a workpiece or a batch that is only proposed, the cut and load of it (from 0) that it is still to become. */
export interface StepPlace {
  readonly ownerId: string;
  readonly cut: number | null;
  readonly load: number | null;
  readonly stepId: string;
}

/** What somebody has fixed: on the floor (with its id), or only for the day that is tried. */
export interface BarPin {
  readonly id: string | null;
  readonly startMs: number;
}

/** One step of one dough on the day sheet. Instants are the house's. */
export interface Bar extends StepPlace {
  /** Unique in a sheet: `ownerId|cut|load|stepId`. */
  readonly key: string;
  readonly tag: string;
  readonly step: Step;
  readonly standing: Standing;
  readonly fromMs: number;
  readonly toMs: number;
  /** Pieces that it is for; null where nobody counts any. */
  readonly pieces: number | null;
  /** Until when it may begin without harm to the dough; null where the method sets no end to the waiting. */
  readonly latestStartMs: number | null;
  /** Where it stood before it was moved. */
  readonly wasMs: number | null;
  readonly resources: readonly StepResource[];
  readonly pin: BarPin | null;
}

/** The steps of one dough, cut or load, first to last. */
export interface DoughLine {
  readonly key: string;
  /** The dough that it is a part of. */
  readonly rootKey: string;
  readonly tag: string;
  readonly name: string;
  readonly pieces: number | null;
  /** 0 for a dough, 1 for what it is divided into, 2 for a load of that. */
  readonly depth: number;
  /** What it can become. */
  readonly productIds: readonly string[];
  /** No dough at all: something of the kitchen is cleaned. */
  readonly isCleaning?: true;
  readonly bars: readonly Bar[];
}

/** The key of a step's place, as the planner writes it. */
export function placeKey({ ownerId, cut, load, stepId }: StepPlace): string {
  return `${ownerId}|${cut ?? ''}|${load ?? ''}|${stepId}`;
}

/** How much longer the step may wait, in ms; null: as long as anybody likes; never negative. */
export function slackMs({ latestStartMs, fromMs }: Bar): number | null {
  return latestStartMs === null ? null : Math.max(0, latestStartMs - fromMs);
}
