import type { TraceEdge, TraceNode } from '../../shared/records/trace-answer.ts';
import { assert } from '../../shared/result.ts';
import { PIECE_COLUMNS, pieceRow } from './piece-rows.ts';
import { number, text, type RecordsReader } from './records-reader.ts';
import { nearestOf, type Traced, type TraceEdgeKey } from './traced.ts';

/** Workpieces of one answer, the nearest; a picture of more would show nothing. */
const MOST_NODES = 300;
/** Edges of one answer, each all that went from one workpiece into another. */
const MOST_EDGES = 900;

/** A part of what was traced, as far as it is shown. */
export interface Shown {
  readonly nodes: TraceNode[];
  readonly nodesLeftOut: number;
  readonly edges: TraceEdge[];
}

/** The nearest workpieces of a trace with what went from one into another. */
export function shownOf(
  reader: RecordsReader,
  workpieces: ReadonlyMap<number, Traced>,
  edges: readonly TraceEdgeKey[],
  startVia: 'weighed' | null,
): Shown {
  const nearest = nearestOf(workpieces, MOST_NODES);
  const ids = new Map<number, string>();
  const nodes = nearest.flatMap(([workpiece, traced]) => {
    const node = nodeOf(reader, workpiece, traced, startVia);
    if (node !== null) ids.set(workpiece, node.piece.id);
    return node ?? [];
  });
  return { nodes, nodesLeftOut: workpieces.size - nodes.length, edges: shownEdges(reader, edges, ids) };
}

/** One workpiece of a trace; null where it is no longer in the records: what made it was undone. */
export function nodeOf(reader: RecordsReader, workpiece: number, traced: Traced, startVia: 'weighed' | null): TraceNode | null {
  const row = reader.row(`SELECT ${PIECE_COLUMNS} FROM workpieces w WHERE w.number = ?`, workpiece);
  if (row === undefined) return null;
  const piece = pieceRow(row);
  const { first, hops, feeds, fedSince, isInIt } = traced;
  const by = first === null ? null : edgeRow(reader, first);
  return {
    piece,
    via: by === null ? startVia : by.kind,
    hops,
    feeds,
    fedSince,
    isInIt,
    atMs: by?.atMs ?? weighedMs(reader, workpiece, traced) ?? piece.startedMs ?? piece.plannedStartMs,
  };
}

function weighedMs(reader: RecordsReader, workpiece: number, { sequence }: Traced): number | null {
  const row = reader.row('SELECT at_ms FROM lots WHERE workpiece = ? AND sequence = ?', workpiece, sequence);
  return row === undefined ? null : number(row, 'at_ms');
}

function edgeRow(reader: RecordsReader, { sequence, item }: TraceEdgeKey): { kind: TraceEdge['kind']; grams: number; atMs: number } {
  const row = reader.row('SELECT kind, grams, at_ms FROM edges WHERE sequence = ? AND item = ?', sequence, item);
  assert(row !== undefined, `edge ${sequence}.${item} is in the records`);
  return { kind: text(row, 'kind') as TraceEdge['kind'], grams: number(row, 'grams'), atMs: number(row, 'at_ms') };
}

function shownEdges(reader: RecordsReader, edges: readonly TraceEdgeKey[], ids: ReadonlyMap<number, string>): TraceEdge[] {
  const shown = new Map<string, TraceEdge>();
  for (const edge of edges) {
    const [fromId, toId] = [ids.get(edge.source), ids.get(edge.target)];
    if (fromId === undefined || toId === undefined) continue;
    const { kind, grams, atMs } = edgeRow(reader, edge);
    const key = `${kind}\n${fromId}\n${toId}`;
    const known = shown.get(key);
    if (known === undefined && shown.size >= MOST_EDGES) continue;
    shown.set(key, {
      kind,
      fromId,
      toId,
      grams: grams + (known?.grams ?? 0),
      times: 1 + (known?.times ?? 0),
      firstMs: Math.min(atMs, known?.firstMs ?? atMs),
      lastMs: Math.max(atMs, known?.lastMs ?? atMs),
    });
  }
  return [...shown.values()];
}
