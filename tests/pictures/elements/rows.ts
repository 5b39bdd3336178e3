import { boardRows, type Row } from '../../../shared/floor/board.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { assert } from '../../../shared/result.ts';
import type { Scene } from './scene.ts';

const MINUTE_MS = 60_000;

/** The floor of a scene that has one. */
export function floorOf({ view }: Scene): FloorState {
  assert(view.state !== null, 'the scene has no floor');
  return view.state;
}

/** A row of the demo house in every state that a row can be in, by the state's name. */
export function rowStates(scene: Scene): Readonly<Record<string, Row>> {
  const { nowMs } = scene;
  const rows = boardRows(floorOf(scene), nowMs);
  const row = rows.find(({ role, stage }) => role === 'running' && stage !== 'oven') ?? rows[0];
  assert(row !== undefined, 'the scene has no row');
  const at = (min: number): Pick<Row, 'dueMs' | 'lateMs' | 'lostMs' | 'startedMs'> => ({
    startedMs: nowMs - 40 * MINUTE_MS,
    dueMs: nowMs + min * MINUTE_MS,
    lateMs: nowMs + (min + 5) * MINUTE_MS,
    lostMs: nowMs + (min + 25) * MINUTE_MS,
  });
  const resting: Row = { ...row, ...at(25), role: 'running', phase: 'resting', stage: 'bulk', verb: 'fold', isCheck: false, heardMs: null };
  const heard = { heardMs: nowMs - MINUTE_MS };
  const working = { phase: 'working', verb: 'shape', stage: 'makeUp', stationId: 'bench', helperIds: ['oven'] } as const;
  return {
    running: resting,
    'running, soon': { ...resting, ...at(1.4) },
    'running, begun by two, so far': { ...resting, ...working, pieces: 96, piecesDone: 24 },
    'running, some pieces short': { ...resting, pieces: 90, shortPieces: 6 },
    'running, held': { ...resting, ...at(15), heldUntilMs: nowMs + 15 * MINUTE_MS },
    call: { ...resting, ...at(0), role: 'call' },
    'call, heard': { ...resting, ...at(-1), ...heard, role: 'call' },
    'call, a check': { ...resting, ...at(0), role: 'call', verb: 'secondSpeed', isCheck: true, stage: 'mixing', phase: 'judging' },
    late: { ...resting, ...at(-9), role: 'late' },
    'late, heard': { ...resting, ...at(-9), ...heard, role: 'late' },
    'being lost': { ...resting, ...at(-31), role: 'lost' },
    'being lost in the oven': { ...resting, ...at(-12), role: 'lost', stage: 'oven', verb: 'bake' },
    'being lost, heard': { ...resting, ...at(-31), ...heard, role: 'lost' },
  };
}
