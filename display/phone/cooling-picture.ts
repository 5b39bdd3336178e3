import { fromC } from '../../shared/trade/units.ts';
import { driftedC } from '../../shared/trade/dough-drift.ts';
import type { Cooling } from '../../shared/floor/cooling.ts';
import { clockText } from '../parts/clock-text.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { HOLDING } from '../words/holding.ts';

const MINUTE_MS = 60_000;
/** Units of the drawing; the card stretches it. */
export const PICTURE = { width: 300, height: 120 } as const;
const COLDEST_C = 0;
const HEADROOM_K = 5;
/** So much of the time stands behind the rule's last step, that its edge is seen. */
const BEHIND = 0.08;
/** Straight pieces that the foreseen curve is drawn with. */
const PIECES = 24;

/** A cooling as it is drawn, in units of the picture: points of the readings, the foreseen curve, the rule's upper edge, and now. */
export interface CoolingPicture {
  readonly dots: readonly { readonly x: number; readonly y: number }[];
  readonly foreseen: string;
  readonly corridor: string;
  readonly nowX: number;
}

/** Where everything of a cooling stands in its picture; null where nobody has read it yet. */
export function coolingPicture({ fromMs, rule, readings, ambientC, tauMin, steps }: Cooling, nowMs: number): CoolingPicture | null {
  const last = readings.at(-1);
  if (last === undefined) return null;
  const endMs = Math.max(nowMs, fromMs + MINUTE_MS, ...steps.map(({ byMs }) => byMs ?? 0));
  const toMs = endMs + (endMs - fromMs) * BEHIND;
  const hottestC = Math.max(rule.fromC, ...readings.map(({ celsius }) => celsius)) + HEADROOM_K;
  const x = (atMs: number): number => round(((atMs - fromMs) / (toMs - fromMs)) * PICTURE.width);
  const y = (celsius: number): number => round(((hottestC - celsius) / (hottestC - COLDEST_C)) * PICTURE.height);
  const drift = { doughC: last.celsius, ambientC, tauMin, selfHeatKPerH: 0 };
  const foreseen = Array.from({ length: PIECES + 1 }, (_, index) => {
    const atMs = last.atMs + ((toMs - last.atMs) * index) / PIECES;
    return `${x(atMs)},${y(driftedC(drift, (atMs - last.atMs) / MINUTE_MS))}`;
  });
  return {
    dots: readings.map(({ atMs, celsius }) => ({ x: x(atMs), y: y(celsius) })),
    foreseen: foreseen.join(' '),
    corridor: steps.flatMap(({ byMs, toC }) => (byMs === null ? [] : [`M${x(byMs)} 0V${y(toC)}H${PICTURE.width}`])).join(''),
    nowX: x(nowMs),
  };
}

/** Each step of the rule in words: "21 °C by 05:30: expected 04:50". */
export function stepTexts({ steps }: Cooling, zone: string, unit: 'C' | 'F'): readonly string[] {
  return steps.flatMap(({ toC, byMs, reachesMs, passes, isSeen }) => {
    if (byMs === null) return [];
    const then = reachesMs === null ? null : clockText(reachesMs, zone);
    const words =
      then === null
        ? HOLDING.never
        : isSeen && passes
          ? `${HOLDING.seen} ${then}`
          : passes
            ? HOLDING.willPass(then)
            : HOLDING.willNotPass(then);
    return [HOLDING.step(temperatureText(toC, unit), clockText(byMs, zone), words)];
  });
}

/** The picture in words, for those who cannot see it. */
export function pictureText(cooling: Cooling, zone: string, unit: 'C' | 'F'): string {
  const last = cooling.readings.at(-1);
  const read = last === undefined ? HOLDING.unread : `${round(fromC(last.celsius, unit))} °${unit} ${clockText(last.atMs, zone)}`;
  return HOLDING.curve(read, stepTexts(cooling, zone, unit).join('. '));
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
