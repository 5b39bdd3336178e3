import type { FloorState } from '../../shared/floor/state.ts';
import { placeKey, type Bar, type DoughLine, type StepResource } from './sheet-bar.ts';
import type { Span } from './sheet-axis.ts';
import { closedOf, type Closed } from './sheet-closed.ts';
import type { ResourceUse, Stay } from './sheet-uses.ts';
import { settledPlace, type SheetProposal } from './sheet-places.ts';

const MINUTE_MS = 60_000;

/** What begins or ends within this of something else only touches it, in ms. */
export const TOUCHING_MS = 30_000;

/** Something that does not go together on the sheet. */
export type Clash =
  /** More is wanted of a thing at once than there is of it. */
  | {
      readonly kind: 'busy';
      readonly resource: StepResource;
      readonly fromMs: number;
      readonly toMs: number;
      readonly wanted: number;
      readonly room: number;
      readonly barKeys: readonly string[];
      readonly tags: readonly string[];
    }
  /** Work is planned for when nobody is there, or with what is out of use. */
  | {
      readonly kind: 'away';
      readonly resource: StepResource;
      readonly why: Closed['why'];
      readonly fromMs: number;
      readonly toMs: number;
      readonly barKeys: readonly string[];
      readonly tags: readonly string[];
    }
  /** A dough waits longer than it may. */
  | {
      readonly kind: 'waits';
      readonly barKeys: readonly string[];
      readonly tags: readonly string[];
      readonly fromMs: number;
      readonly byMin: number;
    }
  /** A step is not where somebody fixed it. */
  | {
      readonly kind: 'pin';
      readonly barKeys: readonly string[];
      readonly tags: readonly string[];
      readonly fromMs: number;
      readonly toMs: number;
    };

/** What clashes are found in. */
export interface ClashesGiven {
  readonly state: FloorState;
  readonly proposal: SheetProposal | null;
  readonly lines: readonly DoughLine[];
  readonly uses: readonly ResourceUse[];
  readonly span: Span;
  readonly nowMs: number;
}

/** Everything on the sheet that does not go together, by when it begins. */
export function clashesOf({ state, proposal, lines, uses, span, nowMs }: ClashesGiven): readonly Clash[] {
  const bars = lines.flatMap((line) => line.bars);
  const busy = uses.flatMap((use) => overbooked(use));
  const away = uses.flatMap((use) => withNobody(use, closedOf(state, use.resource, span, nowMs)));
  return [...busy, ...away, ...waitingTooLong(state, proposal, bars), ...pinsNotKept(bars)].sort((a, b) => a.fromMs - b.fromMs);
}

/** The stretches of time in which more is wanted of a thing than there is. */
function overbooked({ resource, room, stays }: ResourceUse): readonly Clash[] {
  if (room === null) return [];
  const ahead = stays.filter((stay) => stay.bars.some((bar) => bar.standing !== 'done'));
  const edges = ahead.flatMap((stay) => [
    { atMs: stay.fromMs, stay, isStart: true },
    { atMs: stay.toMs, stay, isStart: false },
  ]);
  // What ends makes room before what begins takes it.
  edges.sort((a, b) => a.atMs - b.atMs || Number(a.isStart) - Number(b.isStart));
  const there = new Set<Stay>();
  const found: Busy[] = [];
  let wanted = 0;
  edges.forEach(({ atMs, stay, isStart }, index) => {
    if (isStart) there.add(stay);
    else there.delete(stay);
    wanted += isStart ? stay.amount : -stay.amount;
    const toMs = edges[index + 1]?.atMs ?? atMs;
    if (wanted <= room || toMs === atMs) return;
    const last = found.at(-1);
    const goesOn = last !== undefined && last.toMs === atMs;
    // What goes on without a break is one stretch.
    const stays = goesOn ? last.stays : new Set<Stay>();
    for (const one of there) stays.add(one);
    if (goesOn) found[found.length - 1] = { ...last, toMs, wanted: Math.max(last.wanted, wanted) };
    else found.push({ fromMs: atMs, toMs, wanted, stays });
  });
  return found.filter(({ fromMs, toMs }) => toMs - fromMs > TOUCHING_MS).map((busy) => told(busy, resource, room));
}

interface Busy extends Span {
  readonly wanted: number;
  readonly stays: Set<Stay>;
}

function told({ fromMs, toMs, wanted, stays }: Busy, resource: StepResource, room: number): Clash {
  const bars = [...stays].flatMap((stay) => stay.bars).filter((bar) => bar.fromMs < toMs && bar.toMs > fromMs);
  return {
    kind: 'busy',
    resource,
    fromMs,
    toMs,
    wanted,
    room,
    barKeys: bars.map((bar) => bar.key),
    tags: [...new Set([...stays].map((stay) => stay.tag))],
  };
}

/** Steps that are still ahead and meet a stretch in which their thing cannot be had, one clash a stretch. */
function withNobody({ resource, stays }: ResourceUse, closed: readonly Closed[]): readonly Clash[] {
  const ahead = stays.flatMap(({ bars }) => bars).filter(({ standing }) => standing !== 'done' && standing !== 'begun');
  return closed.flatMap(({ why, ...gap }) => {
    const bars = ahead.filter((bar) => Math.min(bar.toMs, gap.toMs) - Math.max(bar.fromMs, gap.fromMs) > TOUCHING_MS);
    if (bars.length === 0) return [];
    const tags = [...new Set(bars.map(({ tag }) => tag))];
    return [{ kind: 'away', resource, why, ...gap, barKeys: bars.map(({ key }) => key), tags } as const];
  });
}

/** By the times on the sheet, and by what the planner warned of. */
function waitingTooLong(state: FloorState, proposal: SheetProposal | null, bars: readonly Bar[]): readonly Clash[] {
  const warned = new Map(warnedKeys(state, proposal));
  return bars.flatMap((bar) => {
    if (bar.standing === 'done') return [];
    const overMs = bar.latestStartMs === null ? 0 : bar.fromMs - bar.latestStartMs;
    const byMin = Math.max(overMs / MINUTE_MS, warned.get(bar.key) ?? 0);
    if (byMin < 0.5) return [];
    return [{ kind: 'waits', barKeys: [bar.key], tags: [bar.tag], fromMs: bar.fromMs, byMin: Math.ceil(byMin) } as const];
  });
}

function warnedKeys(state: FloorState, proposal: SheetProposal | null): readonly (readonly [string, number])[] {
  if (proposal === null)
    return (state.plan?.warnings ?? []).flatMap((warning) =>
      warning.kind === 'spoils' ? [keyed(state, warning.workpieceId, warning)] : [],
    );
  return proposal.warnings.flatMap((warning) => (warning.kind === 'spoils' ? [keyed(state, warning.batchKey, warning)] : []));
}

function keyed(
  state: FloorState,
  ownerId: string,
  { cut, load, stepId, byMin }: { cut?: number | undefined; load?: number | undefined; stepId: string; byMin: number },
): readonly [string, number] {
  return [placeKey(settledPlace(state, { ownerId, cut: cut ?? null, load: load ?? null, stepId })), byMin];
}

function pinsNotKept(bars: readonly Bar[]): readonly Clash[] {
  return bars.flatMap((bar) => {
    if (bar.pin === null || bar.standing === 'done' || bar.standing === 'begun') return [];
    if (Math.abs(bar.pin.startMs - bar.fromMs) < MINUTE_MS) return [];
    return [{ kind: 'pin', barKeys: [bar.key], tags: [bar.tag], fromMs: bar.fromMs, toMs: bar.pin.startMs } as const];
  });
}
