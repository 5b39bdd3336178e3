import type { FloorState } from '../../shared/floor/state.ts';
import type { Bar, DoughLine, StepResource } from './sheet-bar.ts';
import { TOUCHING_MS, type Clash } from './sheet-clashes.ts';
import { closedOf, type Closed } from './sheet-closed.ts';
import type { Span } from './sheet-axis.ts';
import { keyOf, type ResourceUse, type Stay } from './sheet-uses.ts';

/** By what the day is put into rows. */
export type Grouping = 'dough' | 'resource';

/** What stands at the head of a row: a dough with its tag, what is cleaned, or a thing of the kitchen. */
export type RowHead =
  | { readonly kind: 'dough'; readonly tag: string; readonly name: string; readonly pieces: number | null; readonly depth: number }
  | { readonly kind: 'cleaning'; readonly name: string }
  | { readonly kind: 'resource'; readonly resource: StepResource; readonly room: number | null };

/** A step in its row: in which of the row's lanes, from the top, and how many of them it fills. */
export interface PlacedBar {
  readonly bar: Bar;
  readonly lane: number;
  readonly lanes: number;
  /** It has no room there: it lies below what there is. */
  readonly isBeyond: boolean;
}

/** A row of the sheet, its bars in the order in which they begin. */
export interface SheetRow {
  readonly key: string;
  readonly head: RowHead;
  /** How many lanes it is high. */
  readonly lanes: number;
  readonly placed: readonly PlacedBar[];
  /** What does not go together on it. */
  readonly clashes: readonly Clash[];
  /** When what the row is of cannot be had. */
  readonly closed: readonly Closed[];
  /** A dough and what comes of it are one family; the first row of each has a stronger line above it. */
  readonly isFirst: boolean;
}

/** What rows are made from. */
export interface RowsGiven {
  readonly state: FloorState;
  readonly lines: readonly DoughLine[];
  /** What is on each thing of the kitchen. */
  readonly uses: readonly ResourceUse[];
  readonly clashes: readonly Clash[];
  readonly span: Span;
  readonly nowMs: number;
}

/** The sheet's rows, by dough or by resource. */
export function sheetRows(given: RowsGiven, grouping: Grouping): readonly SheetRow[] {
  const { lines, clashes } = given;
  const byBar = clashesByBar(clashes);
  return grouping === 'dough' ? lines.map((line, index) => doughRow(line, lines[index - 1], byBar)) : resourceRows(given, byBar);
}

type ClashesByBar = ReadonlyMap<string, readonly Clash[]>;

function clashesByBar(clashes: readonly Clash[]): ClashesByBar {
  const byBar = new Map<string, Clash[]>();
  for (const clash of clashes) {
    for (const key of clash.barKeys) {
      const of = byBar.get(key);
      if (of === undefined) byBar.set(key, [clash]);
      else of.push(clash);
    }
  }
  return byBar;
}

/** The clashes that some of the bars come into, each once. */
function clashesAmong(bars: readonly Bar[], byBar: ClashesByBar): readonly Clash[] {
  return [...new Set(bars.flatMap((bar) => byBar.get(bar.key) ?? []))].sort((a, b) => a.fromMs - b.fromMs);
}

function doughRow(line: DoughLine, above: DoughLine | undefined, byBar: ClashesByBar): SheetRow {
  const { tag, name, pieces, depth, bars } = line;
  const { placed, lanes } = inLanes(
    bars.map((bar) => ({ tag, fromMs: bar.fromMs, toMs: bar.toMs, amount: 1, bars: [bar] })),
    null,
  );
  return {
    key: line.key,
    head: line.isCleaning === true ? { kind: 'cleaning', name } : { kind: 'dough', tag, name, pieces, depth },
    lanes,
    placed,
    clashes: clashesAmong(bars, byBar),
    closed: [],
    isFirst: above?.rootKey !== line.rootKey,
  };
}

function resourceRows({ state, uses, span, nowMs }: RowsGiven, byBar: ClashesByBar): readonly SheetRow[] {
  let kindAbove: string | null = null;
  return uses.map(({ resource, room, stays }) => {
    const { placed, lanes } = inLanes(stays, room);
    const isFirst = kindAbove !== resource.kind;
    kindAbove = resource.kind;
    const found = clashesAmong(
      placed.map(({ bar }) => bar),
      byBar,
    );
    return {
      key: keyOf(resource),
      head: { kind: 'resource', resource, room },
      // Places have room for more than is ever on them; what can be counted on one hand is shown whole.
      lanes: resource.kind === 'restPlace' ? lanes : Math.max(lanes, room ?? 1),
      placed,
      // What else clashes on the same steps is told where it is: on the other thing's row.
      clashes: found.filter((clash) => !('resource' in clash) || keyOf(clash.resource) === keyOf(resource)),
      closed: closedOf(state, resource, span, nowMs),
      isFirst,
    };
  });
}

/** Puts stays into the first lanes that are free for all of their time; what finds none within the room lies below it. */
function inLanes(stays: readonly Stay[], room: number | null): { readonly placed: readonly PlacedBar[]; readonly lanes: number } {
  const freeMs: number[] = [];
  const placed: PlacedBar[] = [];
  for (const stay of stays) {
    const lane = freeLane(freeMs, stay);
    for (let index = lane; index < lane + stay.amount; index += 1) freeMs[index] = Math.max(stay.toMs, stay.fromMs);
    const isBeyond = room !== null && lane + stay.amount > room;
    for (const bar of stay.bars) placed.push({ bar, lane, lanes: stay.amount, isBeyond });
  }
  return { placed: placed.sort((a, b) => a.bar.fromMs - b.bar.fromMs), lanes: Math.max(1, freeMs.length) };
}

function freeLane(freeMs: readonly number[], { fromMs, amount }: Stay): number {
  for (let lane = 0; ; lane += 1) {
    const isFree = Array.from({ length: amount }, (_, index) => freeMs[lane + index] ?? Number.NEGATIVE_INFINITY).every(
      (free) => free - fromMs <= TOUCHING_MS,
    );
    if (isFree) return lane;
  }
}
