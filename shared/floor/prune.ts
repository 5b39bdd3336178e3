import { KEEP_FINISHED_MS, versionKey, type Edge, type FloorState, type Workpiece } from './state.ts';

/** Drops what left the floor more than 36 hours before an instant, with edges and document versions that nothing points at any more. */
export function prune(state: FloorState, atMs: number): FloorState {
  const isKept = (workpiece: Workpiece): boolean => workpiece.finishedMs === null || workpiece.finishedMs >= atMs - KEEP_FINISHED_MS;
  const all = Object.values(state.workpieces);
  const kept = all.filter(isKept);
  if (kept.length === all.length) return state;
  const workpieces = Object.fromEntries(kept.map((workpiece) => [workpiece.id, workpiece]));
  const formulaKeys = new Set(kept.map((workpiece) => versionKey(workpiece.formulaId, workpiece.formulaVersion)));
  const productKeys = new Set<string>();
  for (const workpiece of kept) {
    if (workpiece.productId !== null && workpiece.productVersion !== null)
      productKeys.add(versionKey(workpiece.productId, workpiece.productVersion));
    for (const cut of workpiece.cuts) productKeys.add(versionKey(cut.productId, cut.productVersion));
  }
  return {
    ...state,
    workpieces,
    vesselReturns: state.vesselReturns.filter((back) => back.freeMs >= atMs - KEEP_FINISHED_MS),
    plan: state.plan === null ? null : { ...state.plan, steps: onlyOf(state.plan.steps, workpieces) },
    pins: Object.fromEntries(Object.entries(state.pins).filter(([, pin]) => pin.kind === 'first' || pin.workpieceId in workpieces)),
    edges: state.edges.filter((edge) => isEdgeKept(edge, workpieces, atMs)),
    formulas: keptVersions(state.formulas, state.formulaVersions, formulaKeys),
    products: keptVersions(state.products, state.productVersions, productKeys),
  };
}

/** Edges of work that goes on as something else: they go with the last of their ends. */
const OF_WORK: ReadonlySet<Edge['kind']> = new Set<Edge['kind']>(['divide', 'load', 'join']);

/** What a pot gave and was fed goes after the 36 hours too, though the pot is still there. */
function isEdgeKept({ kind, fromId, toId, atMs: edgeMs }: Edge, workpieces: Readonly<Record<string, Workpiece>>, atMs: number): boolean {
  if (!(fromId in workpieces || toId in workpieces)) return false;
  if (edgeMs >= atMs - KEEP_FINISHED_MS) return true;
  return kind !== 'feed' && (OF_WORK.has(kind) || (fromId in workpieces && toId in workpieces));
}

function onlyOf<Value>(record: Readonly<Record<string, Value>>, kept: Readonly<Record<string, unknown>>): Readonly<Record<string, Value>> {
  return Object.fromEntries(Object.entries(record).filter(([id]) => id in kept));
}

function keptVersions<Document>(
  documents: Readonly<Record<string, Document>>,
  newest: Readonly<Record<string, number>>,
  used: ReadonlySet<string>,
): Readonly<Record<string, Document>> {
  const newestKeys = new Set(Object.entries(newest).map(([id, version]) => versionKey(id, version)));
  const kept = Object.entries(documents).filter(([key]) => used.has(key) || newestKeys.has(key));
  // The very same where nothing goes: what is made of a whole book need not be made again.
  return kept.length === Object.keys(documents).length ? documents : Object.fromEntries(kept);
}
