import { allergensOf } from '../../shared/floor/contents.ts';
import type { Step } from '../../shared/documents/method.ts';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { isCallEvent } from '../../shared/floor/evolve-calls.ts';
import { evolve } from '../../shared/floor/evolve.ts';
import { EMPTY_STATE, type Call, type FloorState, type StepLife, type Workpiece } from '../../shared/floor/state.ts';
import { wayOf } from '../../shared/floor/way.ts';
import { concerned } from '../../shared/records/concerned.ts';
import { assert } from '../../shared/result.ts';
import { writeFacts } from './fact-rows.ts';
import type { RecordStatements } from './record-statements.ts';
import { CallRows } from './call-rows.ts';
import { Promises, type Span } from './promises.ts';
import { promisePlaces, promisesOf, type StepPromise } from './step-promises.ts';

/** Numbers of workpieces that are held in memory; beyond that they are looked up again. */
const NUMBERS_HELD = 20_000;
/** Workpieces that one event can make: a hundred loads, and something to spare. */
const NEW_AT_ONCE = 128;

/** What a fold goes on from: the floor's state, and the last command of each device, which alone can be undone. */
export interface FoldCheckpoint {
  readonly state: FloorState;
  readonly lastCommands: readonly (readonly [deviceId: string, commands: LastCommands])[];
  /** What each workpiece on the floor was promised. */
  readonly promises: readonly (readonly [workpieceId: string, promises: readonly StepPromise[]])[];
}

/** The events of one command, by their sequence numbers. */
interface CommandSpan {
  readonly commandId: string;
  readonly first: number;
  readonly last: number;
}

/** The last command of a device, and the last one that it can undo, which may be older. */
interface LastCommands {
  readonly last: CommandSpan;
  readonly undoable: CommandSpan | null;
}

/** A workpiece as it is to be written, with the state in which it was so; null: it is gone, for what made it was undone. */
interface Unwritten {
  readonly workpiece: Workpiece | null;
  readonly state: FloorState;
}

export const EMPTY_FOLD: FoldCheckpoint = { state: EMPTY_STATE, lastCommands: [], promises: [] };

/**
 * Folds the journal's events, in order, into rows. What the floor's own fold says of workpieces, steps and calls is taken from it, so that
 * undo, corrections and clocks that were set count as they do on the floor; what it keeps only for a while is written fact by fact.
 * `take` the events of one transaction, then `finish` it.
 */
export class RecordsFold {
  readonly #rows: RecordStatements;
  readonly #numbers = new Map<string, number>();
  readonly #lastCommands: Map<string, LastCommands>;
  readonly #unwritten = new Map<string, Unwritten>();
  /** As each workpiece was written last; what is not in here is written whole. */
  readonly #written = new Map<string, { readonly workpiece: Workpiece; readonly round: number }>();
  /** What steps that are not written yet were promised when they began: a plan that comes later, or a clock, does not change it. */
  readonly #promised = new Map<string, Span>();
  readonly #promises: Promises;
  readonly #calls: CallRows;
  #fresh = { sequence: 0, count: 0 };
  #state: FloorState;
  #atStart: FloorState;

  constructor(rows: RecordStatements, checkpoint: FoldCheckpoint) {
    this.#rows = rows;
    this.#state = checkpoint.state;
    this.#atStart = checkpoint.state;
    this.#lastCommands = new Map(checkpoint.lastCommands);
    this.#promises = new Promises(checkpoint.promises);
    this.#calls = new CallRows(rows);
  }

  /** Up to which event it has come. */
  get sequence(): number {
    return this.#state.sequence;
  }

  get checkpoint(): FoldCheckpoint {
    return { state: this.#state, lastCommands: [...this.#lastCommands], promises: this.#promises.kept };
  }

  take(recorded: RecordedEvent): void {
    const before = this.#state;
    assert(recorded.sequence === before.sequence + 1, `event ${recorded.sequence} follows ${before.sequence}`);
    const after = evolve(before, recorded);
    this.#state = after;
    const { event, sequence } = recorded;
    const ids = concerned(event);
    // Calls have rows of their own, and nothing else follows from them.
    if (!isCallEvent(event)) {
      if (ids.length === 0) this.#rows.put('house_events', sequence, event.type);
      for (const id of ids) this.#rows.put('workpiece_events', this.#number(id, sequence), sequence);
    }
    this.#rememberCommand(recorded);
    // A feed begins a pot's way anew: how the one before it went is written before it is counted.
    const pot = event.type === 'fermentFed' ? before.workpieces[event.workpieceId] : undefined;
    if (pot !== undefined) this.#write(pot, before);
    if (event.type === 'clockJumped') {
      // Rows are moved where they lie.
      this.#calls.flush();
      this.#shiftPromised(after, event.byMs);
    }
    if (event.type === 'callRaised') this.#calls.raise(sequence, this.#number(event.workpieceId, sequence), event);
    // What was undone is taken out before the undoing itself is written down.
    if (event.type === 'commandUndone') this.#takeOut(recorded.deviceId, event.undoneCommandId);
    writeFacts(this.#rows, (id) => this.#number(id, sequence), after, recorded);
    for (const id of ids) {
      const [was, is] = [before.workpieces[id], after.workpieces[id]];
      if (was === is) continue;
      this.#unwritten.set(id, { workpiece: is ?? null, state: after });
      if (is !== undefined) this.#noteSteps(is, was, after);
      if (was?.call !== is?.call) this.#followCall(id, was?.call ?? null, is?.call ?? null, event);
    }
    this.#noteBrought(event, after);
    if (event.type === 'workpiecePlanned') {
      const workpiece = after.workpieces[event.workpieceId];
      if (workpiece !== undefined) this.#promises.set(workpiece.id, promisesOf(after, workpiece));
    }
    if (event.type === 'planAdopted' && event.isWhole) {
      for (const id of ids) {
        const workpiece = after.workpieces[id];
        if (workpiece !== undefined && Object.keys(workpiece.steps).length === 0)
          this.#promises.set(workpiece.id, promisesOf(after, workpiece, event.starts));
      }
    }
  }

  /** Writes the workpieces that have changed. */
  finish(): void {
    // Some events change workpieces that they do not name: a clock that is set, a resource that is freed.
    for (const workpiece of Object.values(this.#state.workpieces)) {
      if (this.#atStart.workpieces[workpiece.id] !== workpiece && this.#unwritten.get(workpiece.id)?.workpiece !== workpiece)
        this.#unwritten.set(workpiece.id, { workpiece, state: this.#state });
    }
    for (const [id, { workpiece, state }] of this.#unwritten) {
      if (workpiece === null) this.#erase(id);
      else this.#write(workpiece, state);
    }
    for (const id of this.#written.keys()) if (!(id in this.#state.workpieces)) this.#written.delete(id);
    this.#calls.flush();
    this.#promises.keepOnly(this.#state.workpieces);
    this.#unwritten.clear();
    this.#promised.clear();
    this.#atStart = this.#state;
    if (this.#numbers.size > NUMBERS_HELD) this.#numbers.clear();
  }

  #rememberCommand({ deviceId, commandId, sequence }: RecordedEvent): void {
    const known = this.#lastCommands.get(deviceId);
    const first = known?.last.commandId === commandId ? known.last.first : sequence;
    const last: CommandSpan = { commandId, first, last: sequence };
    const canBeUndone = this.#state.undo[deviceId]?.commandId === commandId;
    this.#lastCommands.set(deviceId, { last, undoable: canBeUndone ? last : (known?.undoable ?? null) });
  }

  #takeOut(deviceId: string, undoneCommandId: string): void {
    const span = this.#lastCommands.get(deviceId)?.undoable ?? null;
    if (span?.commandId === undoneCommandId) this.#rows.takeOut(span.first, span.last);
  }

  /** A call that went away was done with, became a stronger one, or was never to be: what raised it was undone. */
  #followCall(id: string, was: Call | null, is: Call | null, event: RecordedEvent['event']): void {
    const workpiece = this.#number(id, this.sequence);
    if (was !== null && (is === null || is.stepId !== was.stepId || is.level !== was.level)) {
      const became = is !== null && is.stepId === was.stepId ? 'stronger' : event.type === 'commandUndone' ? 'undone' : 'done';
      this.#calls.end(workpiece, was, atOf(event) ?? was.raisedMs, became);
    }
    if (is !== null) this.#calls.follow(workpiece, is);
  }

  #write(workpiece: Workpiece, state: FloorState): void {
    const number = this.#number(workpiece.id, this.sequence);
    const parent = workpiece.parentId === null ? null : this.#number(workpiece.parentId, this.sequence);
    const root = parent === null ? number : (this.#rows.value('SELECT root FROM workpieces WHERE number = ?', parent) ?? parent);
    const lives = Object.values(workpiece.steps);
    const begun = lives.flatMap(({ startedMs, endedMs }) => startedMs ?? endedMs ?? []);
    const startedMs = begun.length === 0 ? null : Math.min(...begun);
    this.#rows.run(
      WRITE_WORKPIECE,
      number,
      workpiece.id,
      workpiece.kind,
      workpiece.tag,
      workpiece.serviceDate,
      workpiece.formulaId,
      workpiece.formulaVersion,
      workpiece.productId,
      workpiece.productVersion,
      parent,
      Number(root),
      workpiece.plannedStartMs,
      startedMs,
      workpiece.finishedMs,
      workpiece.ending,
      workpiece.grams,
      workpiece.scaledToG,
      workpiece.scrapG,
      workpiece.pieces,
      workpiece.plannedPieces,
      allergensOf(state, workpiece).join(' '),
    );
    const round = this.#roundOf(number, workpiece);
    this.#writeSteps(number, round, workpiece, state);
    if (workpiece.stock !== null) {
      // Its steps are those since it was fed last; it began when it began.
      this.#rows.run(
        'UPDATE workpieces SET started_ms = (SELECT min(coalesce(started_ms, ended_ms)) FROM steps WHERE workpiece = number) WHERE number = ?',
        number,
      );
    }
    this.#written.set(workpiece.id, { workpiece, round });
  }

  #writeSteps(number: number, round: number, workpiece: Workpiece, state: FloorState): void {
    const before = this.#written.get(workpiece.id);
    const known = before?.round === round ? before.workpiece.steps : {};
    // Of a round that a feed undone gives back, and of what a builder wrote that broke off, only what is so stays.
    const stale = before?.round === round ? Object.keys(known) : this.#stepsWritten(number, round);
    for (const step of stale) {
      if (!(step in workpiece.steps)) this.#eraseStep(number, round, step);
    }
    const changed: [string, StepLife][] = [];
    for (const [step, life] of Object.entries(workpiece.steps)) {
      if (known[step] === life) continue;
      if (!this.#isBrought(workpiece, step)) changed.push([step, life]);
    }
    if (changed.length === 0) return;
    const way = wayOf(state, workpiece);
    for (const [stepId, life] of changed) {
      const position = way.findIndex((step) => step.id === stepId);
      this.#writeStep(number, round, { stepId, life, position, step: way[position] }, workpiece);
    }
  }

  #writeStep(
    number: number,
    round: number,
    { stepId, life, position, step }: { stepId: string; life: StepLife; position: number; step: Step | undefined },
    workpiece: Workpiece,
  ): void {
    const promise = this.#promised.get(`${workpiece.id} ${stepId}`);
    this.#rows.run(
      WRITE_STEP,
      number,
      round,
      stepId,
      position,
      step?.verb ?? '',
      step?.kind ?? '',
      life.status,
      life.startedMs,
      life.endedMs,
      promise?.startMs ?? null,
      promise?.endMs ?? null,
      life.pins?.earliestMin ?? null,
      life.pins?.targetMin ?? null,
      life.pins?.latestMin ?? null,
      life.pins?.factor ?? null,
      life.moreMin,
      life.stationId,
      life.helperIds.join(' '),
      life.startedBy,
      life.endedBy,
      life.piecesDone,
      life.inferred ? 1 : 0,
      placeDuring(workpiece, life),
    );
  }

  #eraseStep(number: number, round: number, step: string): void {
    this.#rows.run('DELETE FROM steps WHERE workpiece = ? AND round = ? AND step = ?', number, round, step);
  }

  #stepsWritten(number: number, round: number): readonly string[] {
    this.#rows.run('DELETE FROM steps WHERE workpiece = ? AND round > ?', number, round);
    const steps = this.#rows.value('SELECT group_concat(step, char(10)) FROM steps WHERE workpiece = ? AND round = ?', number, round);
    return typeof steps === 'string' ? steps.split('\n') : [];
  }

  /** A load brings along what was done with it before it was one: that is told of what it was a part of. */
  #isBrought({ kind, id }: Workpiece, step: string): boolean {
    const number = kind === 'load' ? this.#number(id, this.sequence) : null;
    return number !== null && this.#rows.value('SELECT 1 FROM brought WHERE workpiece = ? AND step = ?', number, step) === 1;
  }

  #noteBrought(event: RecordedEvent['event'], state: FloorState): void {
    if (event.type === 'loadsMade') {
      for (const { workpieceId } of event.children) {
        for (const [step, { endedMs }] of Object.entries(state.workpieces[workpieceId]?.steps ?? {}))
          if (endedMs !== null) this.#rows.put('brought', this.#number(workpieceId, this.sequence), step);
      }
    } else if (event.type === 'stepsReopened') {
      // Done again, it is the load's own.
      const number = this.#number(event.workpieceId, this.sequence);
      for (const step of event.stepIds) this.#rows.run('DELETE FROM brought WHERE workpiece = ? AND step = ?', number, step);
    }
  }

  /** What steps that have just begun were promised. */
  #noteSteps(is: Workpiece, was: Workpiece | undefined, state: FloorState): void {
    if (is.steps === was?.steps) return;
    for (const step of Object.keys(is.steps)) {
      if (was !== undefined && step in was.steps) continue;
      const promise = this.#promises.find(promisePlaces(state, is), step);
      if (promise !== null) this.#promised.set(`${is.id} ${step}`, promise);
    }
  }

  /** What open work was promised moves along with a clock that is set, whether it is written down or not; with it that of what it was divided from. */
  #shiftPromised(state: FloorState, byMs: number): void {
    const moved = new Set<string>();
    for (const workpiece of Object.values(state.workpieces)) {
      if (workpiece.finishedMs !== null) continue;
      for (let at: Workpiece | undefined = workpiece; at !== undefined && !moved.has(at.id); at = parentOf(state, at)) moved.add(at.id);
      const number = this.#number(workpiece.id, this.sequence);
      this.#rows.run(
        'UPDATE steps SET planned_start_ms = planned_start_ms + ?, planned_end_ms = planned_end_ms + ? WHERE workpiece = ? AND round = ?',
        byMs,
        byMs,
        number,
        this.#roundOf(number, workpiece),
      );
      for (const step of Object.keys(workpiece.steps)) {
        const key = `${workpiece.id} ${step}`;
        const promise = this.#promised.get(key);
        if (promise !== undefined) this.#promised.set(key, { startMs: promise.startMs + byMs, endMs: promise.endMs + byMs });
      }
    }
    this.#promises.shift(moved, byMs);
  }

  /** How often a pot had been fed before its steps: each feed begins its way anew. 0 for everything else. */
  #roundOf(number: number, workpiece: Workpiece): number {
    if (workpiece.stock === null) return 0;
    return Number(this.#rows.value("SELECT count(*) FROM edges WHERE source = ? AND kind = 'feed'", number));
  }

  #erase(id: string): void {
    const number = this.#number(id, this.sequence);
    this.#rows.run('DELETE FROM workpieces WHERE number = ?', number);
    this.#rows.run('DELETE FROM steps WHERE workpiece = ?', number);
    this.#rows.run('DELETE FROM brought WHERE workpiece = ?', number);
    this.#written.delete(id);
  }

  /** Numbers follow from the journal, so that records made anew have the same ones. */
  #number(workpieceId: string, sequence: number): number {
    const known = this.#numbers.get(workpieceId);
    if (known !== undefined) return known;
    const found = this.#rows.value('SELECT number FROM workpieces WHERE id = ?', workpieceId);
    const number = typeof found === 'number' ? found : this.#newNumber(sequence);
    this.#numbers.set(workpieceId, number);
    return number;
  }

  #newNumber(sequence: number): number {
    this.#fresh = this.#fresh.sequence === sequence ? { sequence, count: this.#fresh.count + 1 } : { sequence, count: 0 };
    assert(this.#fresh.count < NEW_AT_ONCE, `event ${sequence} makes no more than ${NEW_AT_ONCE} workpieces`);
    return sequence * NEW_AT_ONCE + this.#fresh.count;
  }
}

const WRITE_WORKPIECE = `INSERT INTO workpieces (number, id, kind, tag, service_date, formula, formula_version, product, product_version, parent,
  root, planned_start_ms, started_ms, ended_ms, ending, grams, scaled_to_g, scrap_g, pieces, planned_pieces, allergens)
  VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
  ON CONFLICT (number) DO UPDATE SET tag = excluded.tag, service_date = excluded.service_date, product = excluded.product,
    product_version = excluded.product_version, planned_start_ms = excluded.planned_start_ms,
    started_ms = excluded.started_ms, ended_ms = excluded.ended_ms, ending = excluded.ending, grams = excluded.grams, scaled_to_g = excluded.scaled_to_g,
    scrap_g = excluded.scrap_g, pieces = excluded.pieces, planned_pieces = excluded.planned_pieces, allergens = excluded.allergens`;

const WRITE_STEP = `INSERT INTO steps (workpiece, round, step, position, verb, kind, status, started_ms, ended_ms, planned_start_ms,
  planned_end_ms, earliest_min, target_min, latest_min, factor, more_min, station, helpers, started_by, ended_by, pieces, inferred, place)
  VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
  ON CONFLICT (workpiece, round, step) DO UPDATE SET position = excluded.position, verb = excluded.verb, kind = excluded.kind,
    status = excluded.status, started_ms = excluded.started_ms, ended_ms = excluded.ended_ms,
    planned_start_ms = coalesce(excluded.planned_start_ms, planned_start_ms), planned_end_ms = coalesce(excluded.planned_end_ms, planned_end_ms),
    earliest_min = excluded.earliest_min, target_min = excluded.target_min, latest_min = excluded.latest_min, factor = excluded.factor,
    more_min = excluded.more_min, station = excluded.station, helpers = excluded.helpers, started_by = excluded.started_by,
    ended_by = excluded.ended_by, pieces = excluded.pieces, inferred = excluded.inferred, place = excluded.place`;

function parentOf(state: FloorState, { parentId }: Workpiece): Workpiece | undefined {
  return parentId === null ? undefined : state.workpieces[parentId];
}

/** Where it stood for the most of a step; null where it stood in no rest place. */
function placeDuring({ stays }: Workpiece, { startedMs, endedMs }: StepLife): string | null {
  if (startedMs === null) return null;
  const toMs = endedMs ?? Number.POSITIVE_INFINITY;
  let longest: { placeId: string | null; ms: number } = { placeId: null, ms: 0 };
  stays.forEach(({ placeId, sinceMs }, index) => {
    const untilMs = stays[index + 1]?.sinceMs ?? Number.POSITIVE_INFINITY;
    const ms = Math.min(untilMs, toMs) - Math.max(sinceMs, startedMs);
    if (ms > longest.ms) longest = { placeId, ms };
  });
  return longest.placeId;
}

function atOf(event: RecordedEvent['event']): number | null {
  return 'atMs' in event && typeof event.atMs === 'number' ? event.atMs : null;
}
