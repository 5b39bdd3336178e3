import type { Step } from '../../shared/documents/method.ts';
import { formulaOf } from '../../shared/floor/contents.ts';
import { dueOf } from '../../shared/floor/due.ts';
import { doughCAt } from '../../shared/floor/ripening.ts';
import { stageOf } from '../../shared/floor/stage.ts';
import type { FloorState, TemperatureReading, Workpiece } from '../../shared/floor/state.ts';
import { wayOf } from '../../shared/floor/way.ts';
import type { Range } from './around-model.ts';
import { celsiusOf, degreesIn, onReadingStep, READING_STEP, type TemperatureUnit } from './degrees.ts';

export type ReadWhere = TemperatureReading['where'];

/**
 * What a probe can read of each, in °C: beyond it somebody slipped. Dough from frozen to a warm proof; a crumb that gives
 * off steam stays about the boiling point of water, 100 °C at sea level; sugar boils higher in a filling (from memory).
 */
export const RANGE_C: Readonly<Record<ReadWhere, Range>> = {
  dough: { least: -25, most: 50 },
  core: { least: -25, most: 110 },
  water: { least: 0, most: 100 },
  filling: { least: -25, most: 180 },
  room: { least: -30, most: 60 },
  flour: { least: -30, most: 60 },
  tap: { least: 0, most: 60 },
  preferment: { least: -10, most: 50 },
};

/** Where a stepper begins when nothing is known, in °C. */
const START_C = 20;

/** What can be read of a workpiece where it is now, the likeliest first. */
export function readWheres(state: FloorState, workpiece: Workpiece): readonly ReadWhere[] {
  const due = dueOf(state, workpiece);
  if (due === null) return [];
  if (workpiece.kind === 'prep') return ['filling', 'room'];
  if (workpiece.kind === 'ferment') return ['dough', 'water', 'room'];
  switch (stageOf(state, due)) {
    case 'planned':
      return ['water', 'room', 'dough'];
    case 'mixing':
      return ['dough', 'water', 'room'];
    case 'oven':
    case 'cooling':
      return ['core', 'room'];
    case 'bulk':
    case 'cold':
    case 'makeUp':
    case 'proving':
    case 'prep':
      return ['dough', 'room'];
  }
}

/** It rests, and ripens by how warm it is: each reading moves when it is due. */
function isRipening(state: FloorState, workpiece: Workpiece): boolean {
  const due = dueOf(state, workpiece);
  return due?.phase === 'resting' && due.step.ripening !== undefined && readWheres(state, workpiece)[0] === 'dough';
}

/** The reading that the step at hand asks for, so that it is offered on the card; null where none is. */
export function askedReading(state: FloorState, workpiece: Workpiece): 'dough' | 'core' | null {
  const due = dueOf(state, workpiece);
  if (due === null) return null;
  const { step, action } = due;
  if (step.coreC !== undefined || (action.verb === 'takeOut' && wantedC(state, workpiece, 'core') !== null)) return 'core';
  if (isRipening(state, workpiece)) return 'dough';
  const isOutOfMixer = action.verb === 'turnOut' || step.verb === 'turnOut' || (step.verb === 'bulk' && due.phase === 'resting');
  const isUnread = !workpiece.readings.some((reading) => reading.where === 'dough');
  return isOutOfMixer && isUnread && wantedC(state, workpiece, 'dough') !== null ? 'dough' : null;
}

/** What the formula or the step wants it to read, in °C; null where they say nothing. */
export function wantedC(state: FloorState, workpiece: Workpiece, where: ReadWhere): number | null {
  if (where === 'dough') return formulaOf(state, workpiece)?.doughC ?? null;
  if (where !== 'core') return null;
  const way = wayOf(state, workpiece);
  const begun = way.filter((step) => workpiece.steps[step.id] !== undefined);
  return lastCoreC(begun) ?? lastCoreC(way.slice(begun.length, begun.length + 1));
}

function lastCoreC(steps: readonly Step[]): number | null {
  return steps.findLast((step) => step.coreC !== undefined)?.coreC ?? null;
}

/** What was last read of it; of water and room, on any dough, since they are the house's. Null where nobody read it yet. */
export function lastReading(state: FloorState, workpiece: Workpiece, where: ReadWhere): TemperatureReading | null {
  const isOfHouse = where === 'water' || where === 'room';
  const readings = (isOfHouse ? Object.values(state.workpieces) : [workpiece]).flatMap((piece) => piece.readings);
  const found = readings.filter((reading) => reading.where === where);
  return found.reduce<TemperatureReading | null>((last, one) => (last === null || one.atMs >= last.atMs ? one : last), null);
}

/** How a reading is asked for, in degrees of the house's unit. */
export interface ReadingField extends Range {
  readonly step: number;
  /** What the formula or the step wants, else what was last read; of a rest what it is thought to be now. Null where nothing is known. */
  readonly expected: number | null;
  /** Where the stepper begins. */
  readonly start: number;
}

/** The field of a reading at an instant: its range, its step, and the number to expect. */
export function readingField(
  state: FloorState,
  workpiece: Workpiece,
  where: ReadWhere,
  unit: TemperatureUnit,
  nowMs: number,
): ReadingField {
  const reckonedC = where === 'dough' && isRipening(state, workpiece) ? doughCAt(state, workpiece, nowMs) : null;
  const expectedC = reckonedC ?? wantedC(state, workpiece, where) ?? lastReading(state, workpiece, where)?.celsius ?? null;
  const { least, most } = RANGE_C[where];
  return {
    step: READING_STEP[unit],
    expected: expectedC === null ? null : onReadingStep(unit, expectedC),
    start: onReadingStep(unit, expectedC ?? START_C),
    least: Math.ceil(degreesIn(unit, least)),
    most: Math.floor(degreesIn(unit, most)),
  };
}

/** What a thumb said, as the floor keeps it. */
export function readingCommand(
  workpieceId: string,
  where: ReadWhere,
  degrees: number,
  unit: TemperatureUnit,
): { readonly type: 'readTemperature'; readonly workpieceId: string; readonly where: ReadWhere; readonly celsius: number } {
  return { type: 'readTemperature', workpieceId, where, celsius: celsiusOf(unit, degrees) };
}
