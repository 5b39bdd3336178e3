import { cleaningOver } from '../../floor/mixers.ts';
import type { Step } from '../../documents/method.ts';
import { blockOn } from '../../floor/resources.ts';
import { wayOf } from '../../floor/way.ts';
import { decksOf } from '../../floor/slots.ts';
import type { DayDraft } from './day-draft.ts';
import type { Families } from './floor-threads.ts';
import type { Point } from './problem-draft.ts';

/** What the activity is called that stands for the present. */
const NOW = 'now';

/**
 * The present as an activity of one second that ends now. Mixers that are not clean and decks that are hot are held by it, or
 * by one like it when they were last used, so that cleaning and heating are not thought to have been done before.
 */
export function addNow(day: DayDraft, families: Families): Point {
  const now = addInstant(day, families, NOW, day.context.nowS);
  holdMixersAsTheyStand(day, families, now);
  holdDecksAsTheyStand(day, families, now);
  return { activity: now, edge: 'end', offsetS: 0 };
}

/** An activity of one second that ends at a second. */
function addInstant(day: DayDraft, families: Families, batchKey: string, endS: number): number {
  const activity = day.context.draft.activity({
    key: `${batchKey}|||${NOW}`,
    batch: families.of(NOW),
    durationS: 1,
    releaseS: 0,
    fixedStartS: endS - 1,
    pinnedStartS: null,
    previousStartS: null,
    isToldAlready: false,
  });
  day.steps.push({
    batchKey,
    workpieceId: null,
    cut: undefined,
    load: undefined,
    stepId: NOW,
    verb: 'wait',
    kind: 'timed',
    formulaId: null,
    productId: null,
    tag: null,
    pieces: null,
    grams: null,
    stationId: null,
    restPlaceId: null,
    status: 'over',
    activity,
    holds: [],
  });
  return activity;
}

function holdMixersAsTheyStand(day: DayDraft, families: Families, now: number): void {
  const { kitchen, state, nowMs } = day.context;
  const inUse = new Set(Object.values(state.workpieces).map((workpiece) => workpiece.mixerId));
  for (const mixer of kitchen.mixers) {
    const allergens = state.residues[mixer.id]?.allergens ?? [];
    if (mixer.changeOverMin === undefined || allergens.length === 0 || inUse.has(mixer.id)) continue;
    if (cleaningOver(state, mixer.id, nowMs) !== null || isBeingCleaned(day, mixer.id)) continue;
    const since = sinceUse(day, families, `mixer ${mixer.id}`, lastMixedMs(day, mixer.id), now);
    holdAsItStands(day, since, day.table.mixer(mixer), day.table.allergens.of(allergens));
  }
}

function isBeingCleaned({ context: { state, nowMs } }: DayDraft, mixerId: string): boolean {
  const block = blockOn(state, { kind: 'mixer', id: mixerId }, nowMs);
  return block !== null && block.why !== 'outOfOrder';
}

function holdDecksAsTheyStand(day: DayDraft, families: Families, now: number): void {
  const { kitchen, state } = day.context;
  const taken = new Set(Object.values(state.workpieces).flatMap((workpiece) => workpiece.slotIds));
  for (const deck of decksOf(kitchen)) {
    if (deck.heatKPerMin === undefined && deck.coolKPerMin === undefined) continue;
    if (deck.slots.some((slot) => taken.has(slot.id))) continue;
    const since = sinceUse(day, families, `deck ${deck.id}`, lastOutMs(day, deck.id), now);
    holdAsItStands(day, since, day.table.deck(deck), day.table.bakeStates(deck).standing());
  }
}

/**
 * From when it can have been cleaned or heated for what comes next: with a plan in force, people go by it, and have begun
 * with that once it was free; without one nobody has.
 */
function sinceUse(day: DayDraft, families: Families, key: string, lastMs: number | null, now: number): number {
  const { context } = day;
  if (!day.plan.isThere) return now;
  const endS = Math.min(context.nowS, lastMs === null ? 1 : context.secondOf(lastMs));
  return endS === context.nowS ? now : addInstant(day, families, key, Math.max(1, endS));
}

/** The last time that a step ended for which a mixer will do: it was not in use after that. */
function lastMixedMs(day: DayDraft, mixerId: string): number | null {
  return lastEnd(day, (step) =>
    step.claims.some((claim) => claim.kind === 'mixer' && (claim.ids.length === 0 || claim.ids.includes(mixerId))),
  );
}

/** The last time that something was taken out of an oven which may have lain on a deck. */
function lastOutMs(day: DayDraft, deckId: string): number | null {
  return lastEnd(day, (step, way) => {
    if (step.verb !== 'takeOut') return false;
    const load = way.slice(0, way.indexOf(step)).findLast((earlier) => earlier.verb === 'load');
    const ids = load?.claims.find((claim) => claim.kind === 'deck')?.ids ?? [];
    return ids.length === 0 || ids.includes(deckId);
  });
}

function lastEnd({ context: { state } }: DayDraft, isOne: (step: Step, way: readonly Step[]) => boolean): number | null {
  let lastMs: number | null = null;
  for (const workpiece of Object.values(state.workpieces)) {
    if (Object.keys(workpiece.steps).length === 0) continue;
    const way = wayOf(state, workpiece);
    for (const step of way) {
      const endedMs = workpiece.steps[step.id]?.endedMs ?? null;
      if (endedMs !== null && (lastMs === null || endedMs > lastMs) && isOne(step, way)) lastMs = endedMs;
    }
  }
  return lastMs;
}

function holdAsItStands(day: DayDraft, activity: number, resource: number, state: number): void {
  const { draft } = day.context;
  const found = draft.resources[resource];
  if (found !== undefined) draft.resources[resource] = { ...found, stateAtFirst: state };
  draft.hold({ from: activity, fromEdge: 'start', to: activity, toEdge: 'end', afterS: 0, on: { resource, amount: 1 }, states: [state] });
}
