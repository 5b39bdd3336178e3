import type { FloorState } from '../state.ts';

/** Everything that a workpiece came of, itself left out: whatever was drawn, put back, joined or divided into it, and theirs. */
export function ancestorsOf(state: FloorState, workpieceId: string): ReadonlySet<string> {
  return upwards(state, workpieceId, () => true);
}

/** The doughs that a workpiece is a part of, itself included: what it was divided from, loaded from or joined of. */
export function doughLine(state: FloorState, workpieceId: string): ReadonlySet<string> {
  const line = new Set(upwards(state, workpieceId, (kind) => kind === 'divide' || kind === 'load' || kind === 'join'));
  return line.add(workpieceId);
}

function upwards(state: FloorState, workpieceId: string, follows: (kind: FloorState['edges'][number]['kind']) => boolean): Set<string> {
  const found = new Set<string>();
  const ahead = [workpieceId];
  for (let id = ahead.pop(); id !== undefined; id = ahead.pop()) {
    const parentId = state.workpieces[id]?.parentId ?? null;
    const fromIds = state.edges.filter((edge) => edge.toId === id && follows(edge.kind)).map((edge) => edge.fromId);
    for (const fromId of parentId === null ? fromIds : [...fromIds, parentId]) {
      // A pot that is fed comes of itself: that is no circle.
      if (fromId === workpieceId || found.has(fromId)) continue;
      found.add(fromId);
      ahead.push(fromId);
    }
  }
  return found;
}
