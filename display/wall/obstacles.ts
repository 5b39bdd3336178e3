import type { Row } from '../../shared/floor/board.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { obstacleOf, type Obstacle } from '../../shared/floor/ways-out.ts';

const MINUTE_MS = 60_000;
/** What is in the way is looked for so long before a row is due, and as long as it calls. */
const LOOK_AHEAD_MS = 10 * MINUTE_MS;

/** What is in the way of a row, and the instant for which that was worked out. */
export interface RowObstacle {
  readonly obstacle: Obstacle;
  readonly atMs: number;
}

interface Found {
  readonly minute: number;
  readonly byWorkpiece: Map<string, RowObstacle | null>;
}

const foundIn = new WeakMap<FloorState, Found>();

/**
 * What is in the way of a row's next step, and the ways out; null where nothing is, or it is too early to say. Worked
 * out once for each state and minute, so that drawing every second costs nothing.
 */
export function obstacleOfRow(state: FloorState, row: Row, nowMs: number): RowObstacle | null {
  const isAhead = row.role === 'running';
  // Hands that are on a step are past what stood in its way.
  if (row.phase === 'working' || (isAhead && row.dueMs - nowMs > LOOK_AHEAD_MS)) return null;
  const minute = Math.floor(nowMs / MINUTE_MS);
  let found = foundIn.get(state);
  if (found === undefined || found.minute !== minute) {
    found = { minute, byWorkpiece: new Map() };
    foundIn.set(state, found);
  }
  const known = found.byWorkpiece.get(row.workpieceId);
  if (known !== undefined) return known;
  // Before it is due, what counts is whether the way is free by then.
  const atMs = isAhead ? Math.max(nowMs, row.dueMs) : nowMs;
  const obstacle = obstacleOf(state, row.workpieceId, atMs);
  const result = obstacle === null || (isAhead && goesByItself(obstacle)) ? null : { obstacle, atMs };
  found.byWorkpiece.set(row.workpieceId, result);
  return result;
}

/** What is expected to be out of the way by the time that the step is due is none of anybody's business. */
function goesByItself({ waysOut }: Obstacle): boolean {
  return waysOut.some((way) => way.kind === 'wait' && way.effect.delayMin <= 1);
}
