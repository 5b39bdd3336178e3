import type { Row } from '../../shared/floor/board.ts';
import { textWidthPx } from '../parts/text-width.ts';
import { axisX, REACH_MS } from './axis.ts';
import { fittingTags } from './row-model.ts';

/** The doughs of a group on the axis: a tick for each, and their tags where there is room. */
export interface GroupTicks {
  readonly ticksPx: readonly number[];
  readonly labels: readonly { readonly text: string; readonly leftPx: number }[];
  /** Ticks whose tags are written one after another, as one comb: from its first tick to its last. */
  readonly combs: readonly { readonly fromPx: number; readonly toPx: number }[];
}

/** Tags that are written one after another, and where their ticks stand. */
interface Cluster {
  readonly tags: string[];
  readonly ticksPx: number[];
  leftPx: number;
}

/** Between two tags, and between NOW and the first, in em. */
const GAP_EM = 0.4;

/**
 * Tags stand at their ticks. Where they would overlap they are written one after another from the first tick on, in
 * order of time; what does not fit before the end of the axis becomes a count. `tagOf` gives each its one word.
 */
export function groupTicks(
  rows: readonly Row[],
  nowMs: number,
  widthPx: number,
  sizePx: number,
  tagOf: (row: Row) => string = (row) => row.tag,
): GroupTicks {
  const gapPx = sizePx * GAP_EM;
  const ticks = rows.map((row) => ({ tag: tagOf(row), xPx: axisX(row.dueMs - nowMs, widthPx), isBeyond: row.dueMs - nowMs > REACH_MS }));
  const clusters: Cluster[] = [];
  for (const tick of ticks) {
    const last = clusters.at(-1);
    const lastEndPx = last === undefined ? Number.NEGATIVE_INFINITY : last.leftPx + textWidthPx(last.tags.join(' '), sizePx);
    if (last !== undefined && tick.xPx < lastEndPx + gapPx) {
      last.tags.push(tick.tag);
      last.ticksPx.push(tick.xPx);
    } else {
      clusters.push({ tags: [tick.tag], ticksPx: [tick.xPx], leftPx: Math.max(gapPx / 2, tick.xPx) });
    }
    pullIn(clusters, widthPx, sizePx, gapPx);
  }
  return {
    ticksPx: ticks.filter((tick) => !tick.isBeyond && tick.xPx > 0).map((tick) => tick.xPx),
    labels: clusters.map((cluster) => ({ text: fittingTags(cluster.tags, sizePx, widthPx - cluster.leftPx), leftPx: cluster.leftPx })),
    combs: clusters.flatMap(({ ticksPx }) => {
      const seenPx = ticksPx.filter((xPx) => xPx > 0);
      return seenPx.length < 2 ? [] : [{ fromPx: Math.min(...seenPx), toPx: Math.max(...seenPx) }];
    }),
  };
}

/** Moves a last cluster that would run over the end to the left, joining it with the one before where they meet. */
function pullIn(clusters: Cluster[], widthPx: number, sizePx: number, gapPx: number): void {
  const last = clusters.at(-1);
  if (last === undefined) return;
  last.leftPx = Math.max(gapPx / 2, Math.min(last.leftPx, widthPx - textWidthPx(last.tags.join(' '), sizePx)));
  const before = clusters.at(-2);
  if (before === undefined) return;
  if (before.leftPx + textWidthPx(before.tags.join(' '), sizePx) + gapPx <= last.leftPx) return;
  before.tags.push(...last.tags);
  before.ticksPx.push(...last.ticksPx);
  clusters.pop();
  pullIn(clusters, widthPx, sizePx, gapPx);
}
