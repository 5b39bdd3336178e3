import type { Row } from '../../shared/floor/board.ts';
import { textWidthPx } from '../parts/text-width.ts';
import { elsewhereWords, WALL } from '../words/wall.ts';

/** How many doughs of other stations are being lost, and how many late. */
export interface ElsewhereCounts {
  readonly lost: number;
  readonly late: number;
}

/** Counts rows that are being lost or late; all of them are one of the two. */
export function countElsewhere(pressing: readonly Row[]): ElsewhereCounts {
  const lost = pressing.filter((row) => row.role === 'lost').length;
  return { lost, late: pressing.length - lost };
}

/** The counts in words, for a screen reader too. */
export function elsewhereText({ lost, late }: ElsewhereCounts): string {
  return elsewhereWords(lost, late);
}

/** Whether the words find room beside one mark; where they do not, each count stands beside the mark of its role. */
export function wordsFit(counts: ElsewhereCounts, sizePx: number, roomPx: number): boolean {
  return textWidthPx(elsewhereText(counts), sizePx) <= roomPx;
}

/** What stands behind the marks and their counts where the words find no room; nothing where it finds none either. */
export function wordBehindCounts(counts: ElsewhereCounts, sizePx: number, roomPx: number, markPx: number): string {
  const { lost, late } = counts;
  const countsPx = [lost, late].filter((count) => count > 0).reduce((sum, count) => sum + markPx + textWidthPx(` ${count} `, sizePx), 0);
  return countsPx + textWidthPx(WALL.elsewhere, sizePx) <= roomPx ? WALL.elsewhere : '';
}

/** As many tags with the name of their station as the room holds, the most pressing first: "C1 Bench · R2 Mixer". */
export function elsewhereTags(tags: readonly string[], sizePx: number, roomPx: number): string {
  let text = '';
  for (const [index, tag] of tags.entries()) {
    const longer = text === '' ? tag : `${text} · ${tag}`;
    const left = tags.length - index - 1;
    if (textWidthPx(left > 0 ? `${longer} +${left}` : longer, sizePx) > roomPx) return text === '' ? '' : `${text} +${left + 1}`;
    text = longer;
  }
  return text;
}
