import type { SidePrep } from '../../shared/documents/method.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { PlanThread } from './plan-day-threads.ts';

const MINUTE_MS = 60_000;
const ROUND_MS = 1_000;

/** Fillings and toppings are ready when they join, are begun no sooner than they may be, and are not kept for too long. */
export function sidePrepFaults(state: FloorState, threads: readonly PlanThread[]): string[] {
  return threads.flatMap((thread) => {
    const parts = threads.filter((one) => one.batch === thread.batch);
    const sides =
      thread.above === null ? [...thread.formula.sidePreps, ...(thread.product?.sidePreps ?? [])] : (thread.product?.sidePreps ?? []);
    return sides.flatMap((side) => {
      const joins = thread.steps.find((one) => one.step.id === side.joins)?.planned ?? null;
      if (joins === null) return [];
      const prep = prepFor(state, threads, thread, side);
      return prep === null
        ? [`prep: nobody makes ${side.formula} for ${thread.name}`]
        : faultsOfPrep(thread, prep, side, joins.plannedStartMs, startMs(parts, side.notBefore));
    });
  });
}

/** A prep serves a batch on the floor by what it says, a proposed one by its name. */
function prepFor(state: FloorState, threads: readonly PlanThread[], thread: PlanThread, side: SidePrep): PlanThread | null {
  const { batchKey } = thread.batch;
  const serves = (key: string): boolean => state.workpieces[key]?.serves?.workpieceId === batchKey || key.endsWith(`>${batchKey}`);
  return threads.find((one) => one.formula.id === side.formula && serves(one.batch.batchKey)) ?? null;
}

function faultsOfPrep(thread: PlanThread, prep: PlanThread, side: SidePrep, joinsMs: number, notBeforeMs: number | null): string[] {
  const last = prep.steps.at(-1);
  const kept = last?.step.kind === 'timed' ? last : undefined;
  const work = kept === undefined ? prep.steps : prep.steps.slice(0, -1);
  const readyMs = work.at(-1)?.planned?.plannedEndMs ?? Infinity;
  const beginsMs = work[0]?.planned?.plannedStartMs ?? -Infinity;
  const name = `${side.formula} for ${thread.name}`;
  const faults: string[] = [];
  if (readyMs > joinsMs - side.readyMin * MINUTE_MS + ROUND_MS) faults.push(`prep: ${name} is not ready when it joins`);
  if (notBeforeMs !== null && beginsMs < notBeforeMs - ROUND_MS) faults.push(`prep: ${name} is begun before ${side.notBefore}`);
  if (side.withinMin !== undefined && beginsMs < joinsMs - side.withinMin * MINUTE_MS - ROUND_MS)
    faults.push(`prep: ${name} is begun too long before it joins`);
  const keepsMin = kept?.step.minutes.latest;
  if (keepsMin !== undefined && joinsMs - readyMs > keepsMin * MINUTE_MS + ROUND_MS) faults.push(`overstayed: ${name} is kept too long`);
  return faults;
}

/** What a dough draws of a ferment that is fed in this plan is ripe by then, and not past it. Pots that stand already are not looked at. */
export function drawFaults(threads: readonly PlanThread[]): string[] {
  return threads.flatMap((thread) =>
    thread.steps.flatMap(({ step, planned }) =>
      step.additions.flatMap(({ formula }) => {
        const pots = threads.filter((one) => one.formula.id === formula && one.formula.kind === 'ferment');
        if (planned === null || pots.length === 0) return [];
        const each = pots.map((pot) => ripeness(pot, planned.plannedStartMs));
        if (each.includes('ripe')) return [];
        const name = `${formula} for ${step.id} of ${thread.name}`;
        return [each.includes('over') ? `overstayed: ${name} is past its time` : `prep: ${name} is not ripe`];
      }),
    ),
  );
}

function ripeness({ steps }: PlanThread, atMs: number): 'young' | 'ripe' | 'over' {
  const last = steps.at(-1);
  if (last === undefined || last.planned === null) return 'young';
  const { earliest, target, latest } = last.step.minutes;
  const sinceMs = atMs - last.planned.plannedStartMs;
  if (sinceMs < (earliest ?? target) * MINUTE_MS - ROUND_MS) return 'young';
  return sinceMs > (latest ?? Infinity) * MINUTE_MS + ROUND_MS ? 'over' : 'ripe';
}

function startMs(parts: readonly PlanThread[], stepId: string | undefined): number | null {
  if (stepId === undefined) return null;
  const starts = parts.flatMap((part) =>
    part.steps.filter((one) => one.step.id === stepId).map((one) => one.planned?.plannedStartMs ?? Infinity),
  );
  return starts.length === 0 ? null : Math.min(...starts);
}
