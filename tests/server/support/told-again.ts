import type { FloorEvent, RecordedEvent } from '../../../shared/floor/events.ts';
import { evolve } from '../../../shared/floor/evolve.ts';
import { EMPTY_STATE, type FloorState, type StepLife, type Workpiece } from '../../../shared/floor/state.ts';

/** A call as it came and went. */
export interface ToldCall {
  readonly pieceId: string;
  readonly stepId: string;
  readonly level: string;
  readonly dueMs: number;
  readonly raisedMs: number;
  readonly heardMs: number | null;
  readonly endedMs: number | null;
  readonly became: string | null;
}

/** What happened, told once more straight from the events, for tests to reckon with; it shares nothing with the records but the fold. */
export interface ToldAgain {
  readonly state: FloorState;
  /** Every workpiece as it was last, those that left the live state too. */
  readonly pieces: ReadonlyMap<string, Workpiece>;
  /** Every step that was begun or done: of pots, of every feed. */
  readonly lives: readonly { readonly piece: Workpiece; readonly stepId: string; readonly life: StepLife }[];
  /** The events that were not taken back. */
  readonly standing: readonly RecordedEvent[];
  readonly calls: readonly ToldCall[];
}

export function toldAgain(recorded: readonly RecordedEvent[]): ToldAgain {
  const pieces = new Map<string, Workpiece>();
  const calls: { -readonly [Key in keyof ToldCall]: ToldCall[Key] }[] = [];
  let rounds: { piece: Workpiece; commandId: string }[] = [];
  const undone = new Set<string>();
  /** What a load brought along, done before it was one, is told of what it was a part of. */
  const brought = new Set<string>();
  let state = EMPTY_STATE;
  for (const one of recorded) {
    const { event } = one;
    const before = state;
    state = evolve(before, one);
    if (event.type === 'fermentFed') {
      const pot = before.workpieces[event.workpieceId];
      if (pot !== undefined) rounds.push({ piece: pot, commandId: one.commandId });
    }
    if (event.type === 'commandUndone') {
      undone.add(event.undoneCommandId);
      rounds = rounds.filter(({ commandId }) => commandId !== event.undoneCommandId);
    }
    if (event.type === 'loadsMade') {
      for (const { workpieceId } of event.children)
        for (const [stepId, { endedMs }] of Object.entries(state.workpieces[workpieceId]?.steps ?? {}))
          if (endedMs !== null) brought.add(`${workpieceId} ${stepId}`);
    }
    if (event.type === 'stepsReopened') for (const stepId of event.stepIds) brought.delete(`${event.workpieceId} ${stepId}`);
    // What an undone command had made was never there; what else is gone has only left the live state.
    if (event.type === 'commandUndone') for (const id of event.workpieceIds) if (state.workpieces[id] === undefined) pieces.delete(id);
    for (const piece of Object.values(state.workpieces)) pieces.set(piece.id, piece);
    for (const piece of Object.values({ ...before.workpieces, ...state.workpieces })) {
      follow(calls, piece.id, state.workpieces[piece.id]?.call ?? null, event);
    }
  }
  const all = [...pieces.values()];
  return {
    state,
    pieces,
    lives: [...all, ...rounds.map(({ piece }) => piece)].flatMap((piece) =>
      Object.entries(piece.steps)
        .filter(([stepId]) => !brought.has(`${piece.id} ${stepId}`))
        .map(([stepId, life]) => ({ piece: pieces.get(piece.id) ?? piece, stepId, life })),
    ),
    standing: recorded.filter(({ commandId }) => !undone.has(commandId)),
    calls: calls.filter(({ pieceId }) => pieces.has(pieceId)),
  };
}

function follow(
  calls: { -readonly [Key in keyof ToldCall]: ToldCall[Key] }[],
  pieceId: string,
  is: Workpiece['call'],
  event: FloorEvent,
): void {
  const open = calls.findLast((call) => call.pieceId === pieceId && call.endedMs === null);
  const isSame = (call: ToldCall): boolean =>
    is !== null && call.pieceId === pieceId && call.stepId === is.stepId && call.level === is.level;
  if (open !== undefined && !isSame(open)) {
    open.endedMs = 'atMs' in event && typeof event.atMs === 'number' ? event.atMs : open.raisedMs;
    open.became = is?.stepId === open.stepId ? 'stronger' : event.type === 'commandUndone' ? 'undone' : 'done';
  }
  if (is === null) return;
  const isRaised = event.type === 'callRaised' && event.workpieceId === pieceId;
  const known = isRaised ? undefined : calls.findLast(isSame);
  const { stepId, level, dueMs, raisedMs, heardMs } = is;
  if (known === undefined) {
    calls.push({ pieceId, stepId, level, dueMs, raisedMs, heardMs, endedMs: null, became: null });
    return;
  }
  // An undo may give back an older call of the step and level; it goes on as the newest of them. Instants move with the clock alone.
  if (known.endedMs === null && event.type === 'clockJumped')
    Object.assign(known, { dueMs: known.dueMs + event.byMs, raisedMs: known.raisedMs + event.byMs });
  Object.assign(known, { heardMs, endedMs: null, became: null });
}
