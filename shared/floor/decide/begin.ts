import { beginsByItself, type Step } from '../../documents/method.ts';
import { accepted, type Result } from '../../result.ts';
import type { CommandContext } from '../commands.ts';
import { plannedMin } from '../due.ts';
import type { Despite, EventOf, FloorEvent } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import { bakeFactor } from '../slot-heats.ts';
import { ripenessFactor } from '../ripeness-taught.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { machineFor } from './machine.ts';
import type { Standing } from './standing.ts';
import { takeVessels } from './vessels.ts';

/** What the tap says of the beginning beside the step: a mixer of its choice, and what it goes on with knowingly. */
export interface BeginWishes {
  readonly mixerId?: string | undefined;
  readonly despite?: readonly Despite[] | undefined;
}

/** A step's start with everything that its due times will be computed from, and the vessels that it takes. */
export function startOf(
  state: FloorState,
  workpiece: Workpiece,
  step: Step,
  atMs: number,
  context: CommandContext,
  wishes: BeginWishes = {},
): Result<readonly FloorEvent[], Refusal> {
  const despite = wishes.despite ?? [];
  const machine = machineFor(state, workpiece, step, wishes, context.nowMs);
  if (!machine.ok) return machine;
  const vessels = takeVessels(state, workpiece, step, despite, atMs, context.nowMs);
  if (!vessels.ok) return vessels;
  const { taken, freed } = machine.value;
  const resources = step.place === undefined ? taken : [...taken, { kind: 'restPlace' as const, id: step.place }];
  const { earliest, latest } = step.minutes;
  const started: EventOf<'stepStarted'> = {
    type: 'stepStarted',
    workpieceId: workpiece.id,
    stepId: step.id,
    atMs,
    ...stationFields(context),
    resources: [...resources],
    ...(freed.length === 0 ? {} : { freed: [...freed] }),
    pins: {
      ...(earliest === undefined ? {} : { earliestMin: earliest }),
      targetMin: plannedMin(step, workpiece),
      ...(latest === undefined ? {} : { latestMin: latest }),
      factor: factorOf(state, workpiece, step, atMs),
      model: step.ripening?.model ?? 'nominal',
      houseVersion: state.house?.version ?? 0,
    },
    ...(despite.length === 0 ? {} : { despite: [...despite] }),
    ...(context.tapUncertain ? { tapUncertain: true as const } : {}),
  };
  return accepted([...vessels.value, started]);
}

/** What its minutes are multiplied by, as was learned: of a rest by its formula, of a bake by the slots in which it lies. */
function factorOf(state: FloorState, workpiece: Workpiece, step: Step, atMs: number): number {
  if (step.ripening !== undefined) return ripenessFactor(state, workpiece.formulaId, step.id).factor;
  return step.kind === 'bake' ? bakeFactor(state, workpiece.slotIds, atMs) : 1;
}

/** The called step is begun by a tap: a rest that stands before it is over with that. */
export function beginCalled(
  state: FloorState,
  { workpiece, due, atMs }: Standing,
  context: CommandContext,
  wishes: BeginWishes = {},
): Result<readonly FloorEvent[], Refusal> {
  const started = startOf(state, workpiece, due.action, atMs, context, wishes);
  if (!started.ok || due.phase !== 'resting') return started;
  return accepted([
    { type: 'stepDone', workpieceId: workpiece.id, stepId: due.step.id, atMs, ...stationFields(context) },
    ...started.value,
  ]);
}

/** The start of the next step where it begins by itself, or nothing. */
export function startOfNext(
  state: FloorState,
  workpiece: Workpiece,
  next: Step | undefined,
  atMs: number,
  context: CommandContext,
  wishes: BeginWishes = {},
): Result<readonly FloorEvent[], Refusal> {
  if (next === undefined || !beginsByItself(next)) return accepted([]);
  return startOf(state, workpiece, next, atMs, context, wishes);
}

/** Where the tap was made, for the events of steps. */
export function stationFields(context: CommandContext): { stationId?: string } {
  return context.stationId === null ? {} : { stationId: context.stationId };
}
