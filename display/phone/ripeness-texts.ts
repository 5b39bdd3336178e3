import type { RowRipening } from '../../shared/floor/board.ts';
import type { RipenessFactor } from '../../shared/floor/ripeness-taught.ts';
import { clockText } from '../parts/clock-text.ts';
import { lengthText } from '../parts/moved-text.ts';
import { ripeRange } from '../parts/ripe-range.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { WARMTH } from '../words/warmth.ts';
import { readingText } from './degrees.ts';

const DAY_MS = 24 * 60 * 60_000;

/** What a card says of how a rest ripens: how warm its dough is, and when it is ripe. */
export interface RipenessTexts {
  /** "25.4 °C read 03:10, now about 24 °C". */
  readonly warmth: string;
  /** "ripe at 04:12, 12 min later, as warm as it is". */
  readonly ripe: string;
  /** When it may be ripe, where sane models differ; null where they agree. */
  readonly between: string | null;
  /** When it goes on by the plan, where that is not when it is ripe; null where it is. */
  readonly planned: string | null;
}

/** The same as the picture, in words: they are its alternative too. `dueMs` is when the dough's next step is due. */
export function ripenessTexts(ripening: RowRipening, dueMs: number, nowMs: number, zone: string, unit: 'C' | 'F'): RipenessTexts {
  const { doughC, read, ripeMs, between, isDueByIt } = ripening;
  const about = temperatureText(doughC, unit);
  const warmth =
    read === null
      ? WARMTH.about(about)
      : `${WARMTH.read(readingText(read.celsius, unit), clockText(read.atMs, zone))}, ${WARMTH.nowAbout(about)}`;
  const planned = isDueByIt ? null : WARMTH.planned(clockText(dueMs, zone));
  if (ripeMs - nowMs > DAY_MS) return { warmth, ripe: WARMTH.farOff, between: null, planned };
  return {
    warmth,
    ripe: [WARMTH.ripe(clockText(ripeMs, zone)), ...movedTexts(ripening)].join(', '),
    between: between === null ? null : betweenText(between, zone),
    planned,
  };
}

/** What bakers have taught of such rests; null where nobody has. */
export function taughtText({ factor, middleHalf, count }: RipenessFactor): string | null {
  if (count === 0) return null;
  const taught = WARMTH.taught(WARMTH.factor(factor), count);
  if (middleHalf === null) return taught;
  return `${taught}, ${WARMTH.spread(WARMTH.factor(middleHalf.least), WARMTH.factor(middleHalf.most))}`;
}

function movedTexts({ byMin }: RowRipening): readonly string[] {
  const minutes = Math.round(byMin);
  if (minutes === 0) return [];
  const moved = lengthText(Math.abs(minutes));
  return [minutes > 0 ? WARMTH.later(moved) : WARMTH.earlier(moved)];
}

function betweenText(between: { readonly fromMs: number; readonly toMs: number }, zone: string): string | null {
  const range = ripeRange(between, zone);
  return range === null ? null : WARMTH.between(...range);
}
