import type { Step } from '../documents/method.ts';
import type { EventOf, FloorEvent, RecordedEvent } from '../floor/events.ts';
import { evolve } from '../floor/evolve.ts';
import { EMPTY_STATE, type FloorState, type Workpiece } from '../floor/state.ts';
import { wayOf } from '../floor/way.ts';
import { weighOutOf } from '../floor/weigh-out.ts';
import type { BatchAnswer, PieceRow, StepRow } from './answers.ts';

/** Something that was said of one of the workpieces of a batch, by whom and when. Instants as they count on the floor. */
interface Told {
  readonly tag: string;
  readonly atMs: number;
  readonly deviceId: string;
}

/** A line of what went in: planned, weighed, and of which lots. */
export interface InLine {
  readonly tag: string;
  readonly name: string;
  readonly ingredientId: string | null;
  /** By the formula, rounded to the scale; null where it was added beside it. */
  readonly plannedG: number | null;
  readonly weighedG: number;
  readonly lotNumbers: readonly string[];
  readonly atMs: number;
}

/** A step with what the way says of it. */
export interface StepLine extends StepRow {
  readonly tag: string;
  /** The second fold of three is 2; null where the way has only one of the verb. */
  readonly nth: number | null;
  /** What was looked for before it was done. */
  readonly check: string | null;
  /** Why it was left out. */
  readonly reason: string | null;
}

/** What was taken from or given back to a batch by something else. */
export interface InFlow extends Told {
  readonly kind: 'draw' | 'putBack';
  readonly fromTag: string;
  readonly fromFormula: string;
  readonly grams: number;
}

/** What was said otherwise later, or taken back. */
export interface Change extends Told {
  readonly what: 'start' | 'end' | 'count' | 'tag' | 'undone' | 'reopened';
  readonly stepId: string | null;
  readonly was: string;
  readonly became: string;
}

/** One batch as the journal has it: everything that its page shows, in the order of time. */
export interface BatchRecord {
  readonly root: PieceRow;
  readonly inLines: readonly InLine[];
  readonly inFlows: readonly InFlow[];
  readonly water: readonly (Told & Omit<EventOf<'waterTaken'>, 'type' | 'workpieceId' | 'atMs'>)[];
  readonly readings: readonly (Told & { readonly where: EventOf<'temperatureRead'>['where']; readonly celsius: number })[];
  readonly steps: readonly StepLine[];
  readonly moreTime: readonly (Told & { readonly stepId: string; readonly minutes: number })[];
  readonly changes: readonly Change[];
  readonly losses: readonly (Told & {
    readonly what: EventOf<'lossNamed'>['what'];
    readonly grams: number;
    readonly pieces: number | null;
  })[];
  readonly reasons: readonly (Told & { readonly what: 'skipped' | 'discarded' | 'usedPastLimit'; readonly reason: string })[];
  readonly ovenLoads: readonly (Told & {
    readonly slotIds: readonly string[];
    readonly pieces: number | null;
    readonly outMs: number | null;
  })[];
  readonly yielded: Yield;
}

/** What a batch came to: of what was planned, so many pieces and grams were finished, discarded, are still worked on. */
export interface Yield {
  readonly plannedPieces: number | null;
  readonly finishedPieces: number;
  readonly discardedPieces: number;
  readonly openPieces: number;
  /** What its formula was scaled to. */
  readonly scaledToG: number;
  readonly finishedG: number;
  readonly discardedG: number;
  /** Named losses, in grams, by what they were. */
  readonly lossesG: Readonly<Record<string, number>>;
}

/** The record of one batch, of what the server answers. Pure: the same answer gives the same record. */
export function batchRecord(answer: BatchAnswer): BatchRecord | null {
  const [root] = answer.pieces;
  if (root === undefined) return null;
  const events = countedEvents(answer);
  const tags = new Map([...answer.pieces, ...answer.sources].map((piece) => [piece.id, piece]));
  const inFamily = new Set(answer.pieces.map(({ id }) => id));
  const told = (recorded: RecordedEvent, workpieceId: string, atMs: number): Told => ({
    tag: tags.get(workpieceId)?.tag ?? '',
    atMs,
    deviceId: recorded.deviceId,
  });
  const of = <Type extends FloorEvent['type']>(type: Type): readonly (readonly [RecordedEvent, EventOf<Type>])[] =>
    events.flatMap((recorded) => {
      const { event } = recorded;
      const isOurs = event.type === type && (!('workpieceId' in event) || inFamily.has(event.workpieceId));
      return isOurs ? [[recorded, event as EventOf<Type>] as const] : [];
    });
  const { ways, plannedLines } = folded(answer, inFamily);
  const skipped = new Map(of('stepSkipped').map(([, { workpieceId, stepId, reason }]) => [`${workpieceId} ${stepId}`, reason]));
  return {
    root,
    inLines: inLines(
      of('ingredientWeighed'),
      of('ingredientUnweighed'),
      of('ingredientAdded'),
      plannedLines,
      (id) => tags.get(id)?.tag ?? '',
    ),
    inFlows: inFlows(events, inFamily, tags),
    water: of('waterTaken').map(([recorded, { type: _type, workpieceId, atMs, ...water }]) => ({
      ...told(recorded, workpieceId, atMs),
      ...water,
    })),
    readings: of('temperatureRead').map(([recorded, { workpieceId, where, celsius, atMs }]) => ({
      ...told(recorded, workpieceId, atMs),
      where,
      celsius,
    })),
    steps: answer.steps.map((step) => stepLine(step, tags.get(step.pieceId)?.tag ?? '', ways.get(step.pieceId) ?? [], skipped)),
    moreTime: of('moreTimeGiven').map(([recorded, { workpieceId, stepId, minutes, atMs }]) => ({
      ...told(recorded, workpieceId, atMs),
      stepId,
      minutes,
    })),
    changes: changesOf(answer, told),
    losses: of('lossNamed').map(([recorded, { workpieceId, what, grams, pieces, atMs }]) => ({
      ...told(recorded, workpieceId, atMs),
      what,
      grams,
      pieces: pieces ?? null,
    })),
    reasons: [
      ...of('stepSkipped').map(([recorded, { workpieceId, reason, atMs }]) => ({
        ...told(recorded, workpieceId, atMs),
        what: 'skipped' as const,
        reason,
      })),
      ...of('workpieceDiscarded').map(([recorded, { workpieceId, reason, atMs }]) => ({
        ...told(recorded, workpieceId, atMs),
        what: 'discarded' as const,
        reason,
      })),
      ...of('holdingDecided').map(([recorded, { workpieceId, reason, atMs }]) => ({
        ...told(recorded, workpieceId, atMs),
        what: 'usedPastLimit' as const,
        reason,
      })),
    ].sort((a, b) => a.atMs - b.atMs),
    ovenLoads: of('ovenLoaded').map(([recorded, { workpieceId, slotIds, pieces, atMs }]) => ({
      ...told(recorded, workpieceId, atMs),
      slotIds,
      pieces: pieces ?? null,
      outMs:
        of('ovenUnloaded').find(([out, event]) => event.workpieceId === workpieceId && out.sequence > recorded.sequence)?.[1].atMs ?? null,
    })),
    yielded: yieldOf(answer.pieces, new Set(of('workpiecesJoined').map(([, { workpieceId }]) => workpieceId)), of('lossNamed')),
  };
}

/** The events of an answer, as the journal has them. */
export function eventsOf(answer: BatchAnswer): readonly RecordedEvent[] {
  return answer.events as readonly RecordedEvent[];
}

/** Ids of commands that were taken back. */
function undoneCommands(events: readonly RecordedEvent[]): ReadonlySet<string> {
  return new Set(events.flatMap(({ event }) => (event.type === 'commandUndone' ? [event.undoneCommandId] : [])));
}

/** The events that count, their instants moved along with clocks that were set later, as those of open work are on the floor. */
function countedEvents(answer: BatchAnswer): readonly RecordedEvent[] {
  const events = eventsOf(answer);
  const undone = undoneCommands(events);
  const jumps = events.flatMap(({ sequence, event }) => (event.type === 'clockJumped' ? [{ sequence, byMs: event.byMs }] : []));
  const endMs = Math.max(...answer.pieces.map(({ endedMs }) => endedMs ?? Number.POSITIVE_INFINITY));
  return events.flatMap((recorded) => {
    if (undone.has(recorded.commandId)) return [];
    const { event, sequence } = recorded;
    const byMs = jumps.reduce((sum, jump) => sum + (jump.sequence > sequence ? jump.byMs : 0), 0);
    if (byMs === 0 || !('atMs' in event) || event.atMs === undefined || event.atMs > endMs) return [recorded];
    return [{ ...recorded, event: { ...event, atMs: event.atMs + byMs } }];
  });
}

/** The ways of the workpieces, and the lines of their weigh-outs: from a fold of the events, for the documents of then are in it. */
function folded(
  answer: BatchAnswer,
  inFamily: ReadonlySet<string>,
): {
  readonly ways: ReadonlyMap<string, readonly Step[]>;
  readonly plannedLines: ReadonlyMap<string, { readonly name: string; readonly grams: number }>;
} {
  const ways = new Map<string, readonly Step[]>();
  const plannedLines = new Map<string, { readonly name: string; readonly grams: number }>();
  foldOf(answer, ({ event }, after) => {
    for (const workpiece of touchedBy(event, after)) {
      if (!inFamily.has(workpiece.id)) continue;
      if (!ways.has(workpiece.id)) ways.set(workpiece.id, wayOf(after, workpiece));
      if (event.type !== 'ingredientWeighed') continue;
      const lines = weighOutOf(after, workpiece)?.parts.flatMap((part) => part.lines) ?? [];
      for (const line of lines) plannedLines.set(`${workpiece.id} ${line.id}`, { name: line.name, grams: line.grams });
    }
  });
  return { ways, plannedLines };
}

/** Folds the events of an answer, one after another; `see` is called with each and the states before and after it. */
export function foldOf(answer: BatchAnswer, see: (recorded: RecordedEvent, after: FloorState, before: FloorState) => void): FloorState {
  let state = EMPTY_STATE;
  for (const recorded of eventsOf(answer)) {
    const before = state;
    state = evolve(state, recorded);
    see(recorded, state, before);
  }
  return state;
}

function touchedBy(event: FloorEvent, state: FloorState): readonly Workpiece[] {
  const ids = 'children' in event ? event.children.map((child) => child.workpieceId) : [];
  const own = 'workpieceId' in event ? [event.workpieceId] : [];
  return [...own, ...ids].flatMap((id) => state.workpieces[id] ?? []);
}

function stepLine(step: StepRow, tag: string, way: readonly Step[], skipped: ReadonlyMap<string, string>): StepLine {
  const found = way.find(({ id }) => id === step.step);
  const same = way.filter(({ verb }) => verb === found?.verb);
  return {
    ...step,
    tag,
    nth: same.length < 2 || found === undefined ? null : same.indexOf(found) + 1,
    check: found?.check ?? null,
    reason: skipped.get(`${step.pieceId} ${step.step}`) ?? null,
  };
}

function inLines(
  weighed: readonly (readonly [RecordedEvent, EventOf<'ingredientWeighed'>])[],
  unweighed: readonly (readonly [RecordedEvent, EventOf<'ingredientUnweighed'>])[],
  added: readonly (readonly [RecordedEvent, EventOf<'ingredientAdded'>])[],
  planned: ReadonlyMap<string, { readonly name: string; readonly grams: number }>,
  tagOf: (id: string) => string,
): readonly InLine[] {
  const lines = new Map<string, InLine>();
  const inOrder = [...weighed, ...unweighed].sort(([a], [b]) => a.sequence - b.sequence);
  for (const [, event] of inOrder) {
    const key = `${event.workpieceId} ${event.lineId}`;
    // Weighed again, the last counts; taken out, nothing does.
    lines.delete(key);
    if (event.type === 'ingredientUnweighed') continue;
    const line = planned.get(key);
    lines.set(key, {
      tag: tagOf(event.workpieceId),
      name: line?.name ?? event.ingredientId ?? event.lineId,
      ingredientId: event.ingredientId ?? null,
      plannedG: line?.grams ?? null,
      weighedG: event.grams,
      lotNumbers: event.lotNumbers,
      atMs: event.atMs,
    });
  }
  const beside = added.map(([, { workpieceId, ingredientId, grams, lotNumber, atMs }]): InLine => ({
    tag: tagOf(workpieceId),
    name: ingredientId,
    ingredientId,
    plannedG: null,
    weighedG: grams,
    lotNumbers: lotNumber === undefined ? [] : [lotNumber],
    atMs,
  }));
  return [...lines.values(), ...beside].sort((a, b) => a.atMs - b.atMs);
}

function inFlows(
  events: readonly RecordedEvent[],
  inFamily: ReadonlySet<string>,
  pieces: ReadonlyMap<string, PieceRow>,
): readonly InFlow[] {
  return events.flatMap(({ event, deviceId }): InFlow[] => {
    if (event.type !== 'workpieceDrawn' && event.type !== 'scrapPutBack') return [];
    if (!inFamily.has(event.toWorkpieceId)) return [];
    const source = pieces.get(event.fromWorkpieceId);
    return [
      {
        kind: event.type === 'workpieceDrawn' ? 'draw' : 'putBack',
        tag: pieces.get(event.toWorkpieceId)?.tag ?? '',
        fromTag: source?.tag ?? '',
        fromFormula: source?.formula ?? '',
        grams: event.grams,
        atMs: event.atMs,
        deviceId,
      },
    ];
  });
}

/** What was said otherwise later, with what was said first; and what was taken back. */
function changesOf(answer: BatchAnswer, told: (recorded: RecordedEvent, workpieceId: string, atMs: number) => Told): readonly Change[] {
  const events = eventsOf(answer);
  const inFamily = new Set(answer.pieces.map(({ id }) => id));
  const undone = undoneCommands(events);
  return events.flatMap((recorded): Change[] => {
    const { event, commandId } = recorded;
    if (undone.has(commandId)) return [];
    switch (event.type) {
      case 'timeCorrected': {
        if (!inFamily.has(event.workpieceId)) return [];
        const base = told(recorded, event.workpieceId, event.atMs);
        return [{ ...base, what: event.edge, stepId: event.stepId, was: String(event.fromMs), became: String(event.toMs) }];
      }
      case 'countCorrected': {
        if (!inFamily.has(event.workpieceId)) return [];
        const base = told(recorded, event.workpieceId, event.atMs);
        return [{ ...base, what: 'count', stepId: null, was: String(event.fromPieces), became: String(event.toPieces) }];
      }
      case 'tagCorrected':
        if (!inFamily.has(event.workpieceId)) return [];
        return [{ ...told(recorded, event.workpieceId, event.atMs), what: 'tag', stepId: null, was: event.fromTag, became: event.toTag }];
      case 'stepsReopened': {
        if (!inFamily.has(event.workpieceId)) return [];
        const [stepId = null] = event.stepIds;
        return [{ ...told(recorded, event.workpieceId, event.atMs), what: 'reopened', stepId, was: '', became: '' }];
      }
      case 'commandUndone': {
        const workpieceId = event.workpieceIds.find((id) => inFamily.has(id));
        if (workpieceId === undefined) return [];
        const takenBack = events.find((other) => other.commandId === event.undoneCommandId && 'stepId' in other.event);
        const stepId = takenBack !== undefined && 'stepId' in takenBack.event ? takenBack.event.stepId : null;
        return [{ ...told(recorded, workpieceId, event.atMs), what: 'undone', stepId, was: takenBack?.event.type ?? '', became: '' }];
      }
      default:
        return [];
    }
  });
}

/** What was divided or loaded on is counted in what came of it; what was joined of others, where it was weighed out. */
function yieldOf(
  pieces: readonly PieceRow[],
  joined: ReadonlySet<string>,
  losses: readonly (readonly [RecordedEvent, EventOf<'lossNamed'>])[],
): Yield {
  const ends = pieces.filter(({ ending }) => ending !== 'divided');
  const sum = (ending: PieceRow['ending'], of: (piece: PieceRow) => number): number =>
    ends.reduce((total, piece) => total + (piece.ending === ending ? of(piece) : 0), 0);
  const planned = pieces.filter(({ id, parentId }) => parentId === null && !joined.has(id)).map(({ plannedPieces }) => plannedPieces);
  const cuts = pieces.filter(({ kind }) => kind === 'cut').map(({ plannedPieces }) => plannedPieces);
  const counted = planned.every((count) => count === null) ? cuts : planned;
  const lossesG: Record<string, number> = {};
  for (const [, { what, grams }] of losses) lossesG[what] = (lossesG[what] ?? 0) + grams;
  return {
    plannedPieces: counted.every((count) => count === null) ? null : counted.reduce<number>((total, count) => total + (count ?? 0), 0),
    finishedPieces: sum('finished', ({ pieces: count }) => count ?? 0),
    discardedPieces: sum('discarded', ({ pieces: count }) => count ?? 0),
    openPieces: sum(null, ({ pieces: count }) => count ?? 0),
    scaledToG: pieces.reduce((total, piece) => total + (piece.parentId === null && !joined.has(piece.id) ? piece.scaledToG : 0), 0),
    finishedG: sum('finished', ({ grams }) => grams),
    discardedG: sum('discarded', ({ grams }) => grams),
    lossesG,
  };
}
