import type { Keeping, KeepingKind } from '../documents/keeping.ts';
import type { Step, Verb } from '../documents/method.ts';
import { formulaOf, newestFormula } from './contents.ts';
import { jumped } from './shift.ts';
import type { Edge, FloorState, Stay, TemperatureReading, Workpiece } from './state.ts';
import { productOf, wayOf } from './way.ts';

/** Steps that heat food through: what has been out before is cooked, and its time counts anew. */
const HEATS: ReadonlySet<Verb> = new Set<Verb>(['cook', 'bake', 'partBake', 'bakeOff']);

/** Food that has to be kept, followed from when its time counts: where it stood, through whatever it went into. */
export interface KeptCourse {
  readonly kind: KeepingKind;
  /** When its time begins to count. */
  readonly fromMs: number;
  /** When it came into the workpiece that it is followed in. */
  readonly enteredMs: number;
  /** When it was cooked or baked; null while it is not. What is past its limit by then stays so. */
  readonly toMs: number | null;
  /** It comes from the heat, and has to cool first. */
  readonly isHot: boolean;
  readonly stays: readonly Stay[];
  /** What was read of the food itself, in the order of time. */
  readonly readings: readonly TemperatureReading[];
  /** Until when somebody has decided that it may be used, whatever its rule says; 0 for nobody. */
  readonly decidedUntilMs: number;
}

/** The food in a workpiece that has to be kept: its own, and what was drawn into it, each with the clock that it brought along. */
export function keptCourses(state: FloorState, workpiece: Workpiece): readonly KeptCourse[] {
  return coursesOf(state, workpiece, new Set());
}

function coursesOf(state: FloorState, told: Workpiece, seen: ReadonlySet<string>): readonly KeptCourse[] {
  if (seen.has(told.id)) return [];
  // What left the floor tells its instants by the clock as it was then.
  const workpiece = told.jumpedMs === state.jumpedMs ? told : jumped(told, state.jumpedMs - told.jumpedMs);
  const own = ownCourse(state, workpiece);
  const drawn = drawnCourses(state, workpiece, new Set([...seen, workpiece.id]));
  if (own === null && drawn.length === 0) return [];
  const decidedUntilMs = Math.max(0, ...workpiece.holdingDecisions.map(({ untilMs }) => untilMs));
  const heats = heatsOf(state, workpiece);
  const raw = [...(own === null ? [] : [own]), ...drawn].map((course) => {
    const heated = heats.find(({ fromMs }) => fromMs >= course.enteredMs);
    return { ...course, toMs: heated?.fromMs ?? null, decidedUntilMs: Math.max(course.decidedUntilMs, decidedUntilMs) };
  });
  const cooked = own === null ? [] : cookedCourses({ ...own, decidedUntilMs }, heats);
  return [...raw, ...cooked].filter(({ fromMs, toMs }) => toMs === null || toMs > fromMs);
}

/** What is heated is food anew from then on: it comes hot, and cools. */
function cookedCourses(own: KeptCourse, heats: readonly Heat[]): readonly KeptCourse[] {
  return heats.flatMap(({ fromMs, toMs }, index) => {
    if (fromMs < own.fromMs || toMs === null) return [];
    return [{ ...own, fromMs: toMs, enteredMs: toMs, toMs: heats[index + 1]?.fromMs ?? null, isHot: true }];
  });
}

function ownCourse(state: FloorState, workpiece: Workpiece): KeptCourse | null {
  const kept = keepingOf(state, workpiece);
  if (kept === null) return null;
  const { keeping, way } = kept;
  const at = Math.max(
    0,
    way.findIndex((step) => step.id === (keeping.from ?? firstKept(state, workpiece, way))),
  );
  const life = workpiece.steps[way[at]?.id ?? ''];
  const fromMs = life?.startedMs ?? life?.endedMs ?? null;
  if (fromMs === null) return null;
  const before = way[at - 1];
  const isHot = before !== undefined && HEATS.has(before.verb) && workpiece.steps[before.id]?.status === 'done';
  const { stays } = workpiece;
  return { kind: keeping.kind, fromMs, enteredMs: fromMs, toMs: null, isHot, stays, readings: foodReadings(workpiece), decidedUntilMs: 0 };
}

function keepingOf(state: FloorState, workpiece: Workpiece): { readonly keeping: Keeping; readonly way: readonly Step[] } | null {
  if (workpiece.kind === 'ferment') return null;
  const product = workpiece.kind === 'prep' ? null : productOf(state, workpiece);
  const keeping = workpiece.kind === 'prep' ? formulaOf(state, workpiece)?.keeping : product?.keeping;
  return keeping === undefined ? null : { keeping, way: product?.way ?? wayOf(state, workpiece) };
}

/** The first step that takes something that is kept itself; for a prep its first step. */
function firstKept(state: FloorState, { kind }: Workpiece, way: readonly Step[]): string | undefined {
  if (kind === 'prep') return way[0]?.id;
  const find = newestFormula(state);
  const takesKept = (step: Step): boolean =>
    step.additions.some(({ formula }) => formula !== undefined && find(formula)?.keeping !== undefined);
  return way.find(takesKept)?.id ?? way[0]?.id;
}

/** When it was heated through: started and, where that is over, ended. */
interface Heat {
  readonly fromMs: number;
  readonly toMs: number | null;
}

function heatsOf(state: FloorState, workpiece: Workpiece): readonly Heat[] {
  return wayOf(state, workpiece).flatMap(({ id, verb }) => {
    const life = HEATS.has(verb) ? workpiece.steps[id] : undefined;
    const fromMs = life?.startedMs ?? life?.endedMs ?? null;
    return life === undefined || life.status === 'skipped' || fromMs === null ? [] : [{ fromMs, toMs: life.endedMs }];
  });
}

function drawnCourses(state: FloorState, workpiece: Workpiece, seen: ReadonlySet<string>): readonly KeptCourse[] {
  return edgesInto(state, workpiece).flatMap(({ fromId, atMs }) => {
    const source = state.workpieces[fromId];
    if (source === undefined) return [];
    return coursesOf(state, source, seen).flatMap((course) => {
      const { fromMs, toMs } = course;
      if (toMs !== null && toMs <= atMs) return [];
      return [
        {
          ...course,
          fromMs: Math.min(fromMs, atMs),
          enteredMs: atMs,
          toMs: null,
          stays: [...course.stays.filter(({ sinceMs }) => sinceMs < atMs), ...staysFrom(workpiece, atMs)],
          readings: [...course.readings.filter((one) => one.atMs <= atMs), ...foodReadings(workpiece).filter((one) => one.atMs > atMs)],
        },
      ];
    });
  });
}

/** Edges along which food goes whole into something else. */
const CARRIES: ReadonlySet<Edge['kind']> = new Set<Edge['kind']>(['draw', 'putBack', 'join']);

/** What came into a workpiece, or into the batch or cut that it was a part of at the time. */
function edgesInto(state: FloorState, workpiece: Workpiece): readonly Edge[] {
  const into = edgesByTarget(state);
  const edges: Edge[] = [];
  let until = Number.POSITIVE_INFINITY;
  for (let id: string | null = workpiece.id; id !== null;) {
    const own: readonly Edge[] = into.get(id) ?? [];
    edges.push(...own.filter(({ kind, atMs }) => CARRIES.has(kind) && atMs <= until));
    const parted: Edge | undefined = own.find(({ kind }) => kind === 'divide' || kind === 'load');
    until = Math.min(until, parted?.atMs ?? until);
    id = parted?.fromId ?? null;
  }
  return edges;
}

const BY_TARGET = new WeakMap<readonly Edge[], { readonly jumpedMs: number; readonly into: ReadonlyMap<string, readonly Edge[]> }>();

/** By the clock as it is now. */
function edgesByTarget({ edges, jumpedMs }: FloorState): ReadonlyMap<string, readonly Edge[]> {
  const known = BY_TARGET.get(edges);
  if (known?.jumpedMs === jumpedMs) return known.into;
  const into = new Map<string, Edge[]>();
  for (const edge of edges) {
    const now = { ...edge, atMs: edge.atMs + jumpedMs - (edge.jumpedMs ?? 0) };
    into.set(edge.toId, [...(into.get(edge.toId) ?? []), now]);
  }
  BY_TARGET.set(edges, { jumpedMs, into });
  return into;
}

function staysFrom({ stays }: Workpiece, atMs: number): readonly Stay[] {
  const last = stays.findLast(({ sinceMs }) => sinceMs <= atMs);
  return [{ placeId: last?.placeId ?? null, sinceMs: atMs }, ...stays.filter(({ sinceMs }) => sinceMs > atMs)];
}

function foodReadings({ readings }: Workpiece): readonly TemperatureReading[] {
  return readings.filter(({ where }) => where === 'filling' || where === 'core').sort((a, b) => a.atMs - b.atMs);
}
