/** A step as it was, for finding out what made a day late. Instants in ms since 1970. */
export interface ChainStep {
  readonly id: string;
  /** The workpiece that it is a step of, and the one that this came from by a divide or as a load; null for none. */
  readonly pieceId: string;
  readonly startMs: number;
  readonly endMs: number;
  /** When it was to begin and end; null where nothing was promised. */
  readonly plannedStartMs: number | null;
  readonly plannedEndMs: number | null;
  /** Steps that had to be over before it, by the way of its dough. */
  readonly afterIds: readonly string[];
  /** What it held while it lasted: station, mixer, slot. A station with several pairs of hands is no such thing. */
  readonly resources: readonly string[];
}

/** Why a step of the chain began when it did. */
export type ChainLink =
  /** The step before it in its dough had just ended. */
  | { readonly kind: 'dough'; readonly fromId: string }
  /** What it needed had just become free. */
  | { readonly kind: 'resource'; readonly fromId: string; readonly resource: string }
  /** Everything was there, and nobody came. */
  | { readonly kind: 'hands'; readonly fromId: string | null }
  /** Nothing came before it. */
  | { readonly kind: 'begin' };

/** One step of the chain, with how many minutes of the lateness came in by its waiting and by its lasting. */
export interface ChainItem {
  readonly stepId: string;
  readonly link: ChainLink;
  /** Minutes between when it could begin and when it began, beyond what was planned. */
  readonly waitedMin: number;
  /** Minutes by which it lasted longer than planned; negative where it was quicker. */
  readonly overMin: number;
}

const MINUTE_MS = 60_000;
/** Whoever comes within so long came at once. */
export const AT_ONCE_MIN = 3;

/**
 * The critical chain through an actual day: back from one step, each time to what kept it from beginning earlier: the step before it in its
 * own dough, or whatever held what it needed. The order is that of time. (The critical path method looks forward through a plan; here the
 * durations are known, and the binding predecessor of each step is the one that ended last before it.)
 */
export function criticalChain(steps: readonly ChainStep[], lastId: string): readonly ChainItem[] {
  const byId = new Map(steps.map((step) => [step.id, step]));
  const users = new Map<string, ChainStep[]>();
  for (const step of steps) for (const resource of step.resources) users.set(resource, [...(users.get(resource) ?? []), step]);
  const chain: ChainItem[] = [];
  const seen = new Set<string>();
  for (let step = byId.get(lastId); step !== undefined && !seen.has(step.id);) {
    seen.add(step.id);
    const { link, readyMs } = whatHeldIt(step, byId, users);
    const plannedWaitMin = plannedWait(step, link, byId);
    const waitedMin = readyMs === null ? startedLateMin(step) : (step.startMs - readyMs) / MINUTE_MS - plannedWaitMin;
    const plannedMin =
      step.plannedStartMs === null || step.plannedEndMs === null ? null : (step.plannedEndMs - step.plannedStartMs) / MINUTE_MS;
    const overMin = plannedMin === null ? 0 : (step.endMs - step.startMs) / MINUTE_MS - plannedMin;
    chain.push({ stepId: step.id, link, waitedMin, overMin });
    step = link.kind === 'begin' || link.fromId === null ? undefined : byId.get(link.fromId);
  }
  return chain.reverse();
}

/** The binding predecessor: of what had to end before it, what ended last. */
function whatHeldIt(
  step: ChainStep,
  byId: ReadonlyMap<string, ChainStep>,
  users: ReadonlyMap<string, readonly ChainStep[]>,
): { readonly link: ChainLink; readonly readyMs: number | null } {
  const before = step.afterIds.flatMap((id) => byId.get(id) ?? []).reduce<ChainStep | null>((last, other) => later(last, other), null);
  let held: { readonly by: ChainStep; readonly resource: string } | null = null;
  for (const resource of step.resources) {
    for (const other of users.get(resource) ?? []) {
      if (other.id === step.id || other.endMs > step.startMs || other.pieceId === step.pieceId) continue;
      if (before !== null && other.endMs <= before.endMs) continue;
      if (held === null || other.endMs > held.by.endMs) held = { by: other, resource };
    }
  }
  if (held !== null && step.startMs - held.by.endMs <= AT_ONCE_MIN * MINUTE_MS)
    return { link: { kind: 'resource', fromId: held.by.id, resource: held.resource }, readyMs: held.by.endMs };
  if (before === null) return { link: { kind: 'begin' }, readyMs: null };
  const isAtOnce = step.startMs - before.endMs <= AT_ONCE_MIN * MINUTE_MS;
  return { link: isAtOnce ? { kind: 'dough', fromId: before.id } : { kind: 'hands', fromId: before.id }, readyMs: before.endMs };
}

function later(one: ChainStep | null, other: ChainStep): ChainStep {
  return one === null || other.endMs > one.endMs ? other : one;
}

/** What the plan itself had between the two, in minutes. */
function plannedWait(step: ChainStep, link: ChainLink, byId: ReadonlyMap<string, ChainStep>): number {
  const from = link.kind === 'begin' || link.fromId === null ? undefined : byId.get(link.fromId);
  if (from?.plannedEndMs === undefined || from.plannedEndMs === null || step.plannedStartMs === null) return 0;
  return Math.max(0, (step.plannedStartMs - from.plannedEndMs) / MINUTE_MS);
}

function startedLateMin({ startMs, plannedStartMs }: ChainStep): number {
  return plannedStartMs === null ? 0 : (startMs - plannedStartMs) / MINUTE_MS;
}
