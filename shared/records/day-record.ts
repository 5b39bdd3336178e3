import type { DayAnswer, PieceRow, StepRow } from './answers.ts';
import { criticalChain, type ChainItem, type ChainStep } from './critical-chain.ts';

const MINUTE_MS = 60_000;
/** What ended within so many minutes of its planned end was on time. */
export const ON_TIME_MIN = 5;

/** What begins more than so many minutes after its planned time counts as begun late. */
export const BEGUN_LATE_MIN = 5;

/** A workpiece with its steps, planned and actual, as one row of a day's picture. */
export interface DayRow {
  readonly piece: PieceRow;
  readonly steps: readonly StepRow[];
  /** How many minutes after its planned end it was over; null where it is not over or nothing was planned. */
  readonly offMin: number | null;
}

/** A workpiece that was late, the chain of what kept it, and what cost the most of it. */
export interface LateRow {
  readonly row: DayRow;
  readonly chain: readonly ChainItem[];
  readonly worst: ChainItem | null;
}

/** One day, worked out of its rows. */
export interface DayRecord {
  readonly rows: readonly DayRow[];
  readonly fromMs: number;
  readonly toMs: number;
  /** What was late, the latest first. */
  readonly late: readonly LateRow[];
  /** The chain that ended with the last step of the day; empty where nothing ended. */
  readonly chain: readonly ChainItem[];
  readonly stepsById: ReadonlyMap<string, ChainStep>;
  readonly onTime: number;
  readonly over: number;
}

/** What a day was, of the answer about it; null where nothing was begun. Pure. */
export function dayRecord(answer: DayAnswer): DayRecord | null {
  const steps = chainSteps(answer);
  if (steps.length === 0) return null;
  const rows = answer.pieces.flatMap((piece): DayRow[] => {
    const own = answer.steps.filter(({ pieceId }) => pieceId === piece.id);
    return own.length === 0 ? [] : [{ piece, steps: own, offMin: offMin(piece, own) }];
  });
  const planned = answer.steps.flatMap(({ plannedStartMs, plannedEndMs }) => [plannedStartMs ?? [], plannedEndMs ?? []].flat());
  const ended = rows.filter(({ offMin: off, piece }) => off !== null && piece.ending === 'finished');
  const last = steps.reduce<ChainStep | null>((latest, step) => (latest === null || step.endMs > latest.endMs ? step : latest), null);
  const late = ended
    .filter(({ offMin: off }) => (off ?? 0) > ON_TIME_MIN)
    .sort((a, b) => (b.offMin ?? 0) - (a.offMin ?? 0))
    .map((row): LateRow => {
      const chain = criticalChain(steps, lastStepId(row));
      return { row, chain, worst: worstOf(chain) };
    });
  return {
    rows,
    fromMs: Math.min(...steps.map(({ startMs }) => startMs), ...planned),
    toMs: Math.max(...steps.map(({ endMs }) => endMs), ...planned),
    late,
    chain: last === null ? [] : criticalChain(steps, last.id),
    stepsById: new Map(steps.map((step) => [step.id, step])),
    onTime: ended.length - late.length,
    over: ended.length,
  };
}

/** What cost the most minutes of a chain, by waiting or by lasting; null where nothing cost a whole minute. */
export function worstOf(chain: readonly ChainItem[]): ChainItem | null {
  const cost = ({ waitedMin, overMin }: ChainItem): number => Math.max(waitedMin, overMin);
  return chain.reduce<ChainItem | null>(
    (worst, item) => (cost(item) >= 1 && (worst === null || cost(item) > cost(worst)) ? item : worst),
    null,
  );
}

/** The name under which a step stands in a chain. */
export function chainId(pieceId: string, step: string): string {
  return `${pieceId} ${step}`;
}

function lastStepId({ piece, steps }: DayRow): string {
  const last = steps.reduce<StepRow | null>((latest, step) => ((step.endedMs ?? 0) >= (latest?.endedMs ?? 0) ? step : latest), null);
  return chainId(piece.id, last?.step ?? '');
}

function offMin({ endedMs, ending }: PieceRow, steps: readonly StepRow[]): number | null {
  const plannedEndMs = Math.max(...steps.map((step) => step.plannedEndMs ?? 0));
  const lastEndMs = Math.max(...steps.map((step) => step.endedMs ?? 0));
  if (endedMs === null || ending === 'discarded' || plannedEndMs <= 0 || lastEndMs <= 0) return null;
  return (lastEndMs - plannedEndMs) / MINUTE_MS;
}

/** Every step that is over, with what had to be over before it and what it held. */
function chainSteps(answer: DayAnswer): readonly ChainStep[] {
  const byPiece = new Map<string, StepRow[]>();
  for (const step of answer.steps) byPiece.set(step.pieceId, [...(byPiece.get(step.pieceId) ?? []), step]);
  const parents = new Map(answer.pieces.map(({ id, parentId }) => [id, parentId]));
  const held = new Map<string, string[]>();
  for (const { pieceId, step, kind, resource } of answer.uses) {
    if (!HELD_ALONE.has(kind)) continue;
    const id = chainId(pieceId, step);
    held.set(id, [...(held.get(id) ?? []), resource]);
  }
  return answer.steps.flatMap((step): ChainStep[] => {
    const { startedMs, endedMs, status } = step;
    if (status !== 'done' || endedMs === null) return [];
    const own = (byPiece.get(step.pieceId) ?? []).filter((other) => other.position < step.position && other.status === 'done');
    const before = own.at(-1) ?? lastOf(byPiece.get(parents.get(step.pieceId) ?? '') ?? [], startedMs ?? endedMs);
    return [
      {
        id: chainId(step.pieceId, step.step),
        pieceId: step.pieceId,
        // What nobody began by a tap began when the one before it was over, at the latest when it ended.
        startMs: startedMs ?? endedMs,
        endMs: endedMs,
        plannedStartMs: step.plannedStartMs,
        plannedEndMs: step.plannedEndMs,
        afterIds: before === null ? [] : [chainId(before.pieceId, before.step)],
        resources: held.get(chainId(step.pieceId, step.step)) ?? [],
      },
    ];
  });
}

/** What only one dough can have at a time. */
const HELD_ALONE: ReadonlySet<string> = new Set(['mixer', 'slot', 'bowl']);

/** The last step of what it was divided from that was over by then. */
function lastOf(steps: readonly StepRow[], byMs: number): StepRow | null {
  return steps.reduce<StepRow | null>(
    (latest, step) =>
      step.status === 'done' && step.endedMs !== null && step.endedMs <= byMs && step.endedMs >= (latest?.endedMs ?? 0) ? step : latest,
    null,
  );
}
