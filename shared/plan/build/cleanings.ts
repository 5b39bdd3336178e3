import type { Cleaning } from '../../documents/kitchen.ts';
import { isSameResource } from '../../floor/resources.ts';
import { decksOf } from '../../floor/slots.ts';
import { unreachable } from '../../result.ts';
import type { DayDraft } from './day-draft.ts';
import type { Families } from './floor-threads.ts';
import { holdBetween, type Taken } from './options.ts';
import type { Point } from './problem-draft.ts';
import type { StepNodes } from './thread.ts';
import { secondsOf } from './windows.ts';

/** What a minute costs by which a cleaning is done after its window. */
const OVERDUE_PRICE = 5;

/** The cleanings whose windows are not over, each with all of what it takes out of use, and the hands it takes. */
export function addCleanings(day: DayDraft, families: Families, now: Point): void {
  const { kitchen, calendars, nowMs } = day.context;
  for (const window of calendars.cleanings) {
    const cleaning = kitchen.cleanings?.find((candidate) => candidate.id === window.id);
    if (cleaning !== undefined && window.toMs > nowMs && !isDone(day, cleaning, window.fromMs))
      addCleaning(day, cleaning, window, families, now);
  }
}

/** Whether somebody has taken it out of use to clean it since the window began. */
function isDone({ context: { state } }: DayDraft, { resource }: Cleaning, fromMs: number): boolean {
  return state.blocked.some((block) => block.why !== 'outOfOrder' && block.atMs >= fromMs && isSameResource(block.resource, resource));
}

function addCleaning(
  day: DayDraft,
  cleaning: Cleaning,
  { fromMs, toMs }: { readonly fromMs: number; readonly toMs: number },
  families: Families,
  now: Point,
): void {
  const { context } = day;
  const { draft } = context;
  const batchKey = `clean>${cleaning.id}@${fromMs}`;
  const activity = draft.activity({
    key: `${batchKey}|||clean`,
    batch: families.of(batchKey),
    durationS: secondsOf(cleaning.minutes),
    releaseS: Math.max(context.nowS, context.secondOf(fromMs)),
    fixedStartS: null,
    pinnedStartS: null,
    previousStartS: null,
    isToldAlready: false,
  });
  day.steps.push({
    batchKey,
    workpieceId: null,
    cut: undefined,
    load: undefined,
    stepId: 'clean',
    verb: 'clean',
    kind: 'hands',
    formulaId: null,
    productId: null,
    tag: null,
    pieces: null,
    grams: null,
    stationId: cleaning.station ?? null,
    restPlaceId: null,
    status: 'ahead',
    activity,
    holds: [],
  });
  const start: Point = { activity, edge: 'start', offsetS: 0 };
  const end: Point = { activity, edge: 'end', offsetS: 0 };
  const nowS = draft.activities[now.activity]?.fixedStartS ?? 0;
  const lag = draft.lag({ ...now, edge: 'start' }, end, { minS: 0, mostS: context.secondOf(toMs) - nowS, targetS: null, awayPrice: 0 });
  const made = lag === null ? undefined : draft.lags[lag];
  if (lag !== null && made !== undefined) draft.lags[lag] = { ...made, spoilPrice: OVERDUE_PRICE };
  for (const taken of takenBy(day, cleaning)) holdBetween(day, start, end, taken, [asNodes(start, end)]);
}

/** The activity of a cleaning as holds are noted by. */
function asNodes(start: Point, end: Point): StepNodes {
  const step = {
    id: 'clean',
    verb: 'clean',
    kind: 'hands',
    minutes: { target: 0 },
    toleranceMin: { late: 0 },
    claims: [],
    additions: [],
  } as const;
  return { step: { ...step, claims: [], additions: [] }, start, end, rest: null };
}

function takenBy(day: DayDraft, { resource, station }: Cleaning): readonly Taken[] {
  const hands = station === undefined ? null : day.table.station(station);
  const whole = wholeOf(day, resource);
  return hands === null ? whole : [...whole, { on: { resource: hands.index, amount: 1 }, states: null }];
}

function wholeOf(day: DayDraft, { kind, id }: Cleaning['resource']): readonly Taken[] {
  const { kitchen } = day.context;
  switch (kind) {
    case 'mixer':
      return kitchen.mixers
        .filter((mixer) => mixer.id === id)
        .map((mixer) => ({ on: { resource: day.table.mixer(mixer), amount: 1 }, states: [day.table.allergens.clean()] }));
    case 'deck':
      return decksOf(kitchen)
        .filter((deck) => deck.id === id)
        .map((deck) => ({ on: { resource: day.table.deck(deck), amount: deck.slots.length }, states: null }));
    case 'bench':
      return day.table.bench().map(({ index, room }) => ({
        on: { resource: index, amount: room },
        states: room > 1 ? null : [day.table.allergens.clean()],
      }));
    default:
      return unreachable(kind);
  }
}
