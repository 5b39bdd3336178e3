import type { Call } from '../../shared/floor/state.ts';
import type { RecordStatements } from './record-statements.ts';

interface CallRow {
  readonly sequence: number;
  readonly workpiece: number;
  readonly step: string;
  readonly level: string;
  readonly dueMs: number;
  readonly raisedMs: number;
  readonly heardMs: number | null;
  readonly endedMs: number | null;
  readonly became: string | null;
  readonly soundedCount: number;
}

/** Calls as they go from raised to done. A call changes with every sound: its row is written once a transaction. */
export class CallRows {
  readonly #rows: RecordStatements;
  /** The last call of each workpiece, step and level that this transaction has to do with. */
  readonly #last = new Map<string, CallRow>();

  constructor(rows: RecordStatements) {
    this.#rows = rows;
  }

  raise(sequence: number, workpiece: number, call: { stepId: string; level: string; dueMs: number; atMs: number }): void {
    const { stepId: step, level, dueMs, atMs: raisedMs } = call;
    const before = this.#last.get(keyOf(workpiece, step, level));
    if (before !== undefined) this.#write(before);
    this.#keep({ sequence, workpiece, step, level, dueMs, raisedMs, heardMs: null, endedMs: null, became: null, soundedCount: 0 });
  }

  /** The call is over. */
  end(workpiece: number, { stepId, level }: Pick<Call, 'stepId' | 'level'>, endedMs: number, became: string): void {
    const row = this.#find(workpiece, stepId, level);
    if (row !== null && row.endedMs === null) this.#keep({ ...row, endedMs, became });
  }

  /** Heard, sounded, or out again after an undo: as the floor has it. */
  follow(workpiece: number, { stepId, level, heardMs, soundedCount }: Call): void {
    const row = this.#find(workpiece, stepId, level);
    if (row !== null) this.#keep({ ...row, heardMs, soundedCount, endedMs: null, became: null });
  }

  /** Writes what has changed. */
  flush(): void {
    for (const row of this.#last.values()) this.#write(row);
    this.#last.clear();
  }

  #keep(row: CallRow): void {
    this.#last.set(keyOf(row.workpiece, row.step, row.level), row);
  }

  #find(workpiece: number, step: string, level: string): CallRow | null {
    const known = this.#last.get(keyOf(workpiece, step, level));
    if (known !== undefined) return known;
    const row = this.#rows.row(
      `SELECT sequence, due_ms, raised_ms, heard_ms, ended_ms, became, sounded_count FROM calls
       WHERE workpiece = ? AND step = ? AND level = ? ORDER BY sequence DESC LIMIT 1`,
      workpiece,
      step,
      level,
    );
    if (row === undefined) return null;
    const [sequence, dueMs, raisedMs, heardMs, endedMs, became, soundedCount] = row as [
      number,
      number,
      number,
      number | null,
      number | null,
      string | null,
      number,
    ];
    return { sequence, workpiece, step, level, dueMs, raisedMs, heardMs, endedMs, became, soundedCount };
  }

  #write({ sequence, workpiece, step, level, dueMs, raisedMs, heardMs, endedMs, became, soundedCount }: CallRow): void {
    this.#rows.put('calls', sequence, workpiece, step, level, dueMs, raisedMs, heardMs, endedMs, became, soundedCount);
  }
}

function keyOf(workpiece: number, step: string, level: string): string {
  return `${workpiece} ${step} ${level}`;
}
