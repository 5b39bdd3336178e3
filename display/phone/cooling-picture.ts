import { fromC } from '../../shared/trade/units.ts';
import { driftedC } from '../../shared/trade/dough-drift.ts';
import type { Cooling } from '../../shared/floor/cooling.ts';
import { clockText } from '../parts/clock-text.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { HOLDING } from '../words/holding.ts';
import { numberWords } from '../words/numbers.ts';

const MINUTE_MS = 60_000;
/** Units of the drawing across and down; the card stretches it. */
export const SIDE = 100;
const COLDEST_C = 0;
const HEADROOM_K = 5;
/** So much of the time stands before the first reading and behind the rule's last step, that both are seen whole. */
const BEHIND = 0.08;
/** Straight pieces that the foreseen curve is drawn with. */
const PIECES = 24;

/** A cooling as it is drawn, in units of the picture. */
export interface CoolingPicture {
  /** What was read. */
  readonly dots: readonly { readonly x: number; readonly y: number }[];
  /** The curve on from the last reading, as points of a polyline. */
  readonly foreseen: string;
  /** Where each step of the rule forbids it to be: from its instant on, above its temperature. */
  readonly corridor: readonly { readonly x: number; readonly y: number; readonly toC: number; readonly byMs: number }[];
  readonly nowX: number;
  /** The warmest of the scale, in °C. */
  readonly hottestC: number;
}

/** Where everything of a cooling stands in its picture; null where nobody has read it yet. */
export function coolingPicture({ fromMs, rule, readings, ambientC, tauMin, steps }: Cooling, nowMs: number): CoolingPicture | null {
  const [first, last] = [readings[0], readings.at(-1)];
  if (first === undefined || last === undefined) return null;
  const startMs = Math.min(fromMs, first.atMs);
  const endMs = Math.max(nowMs, startMs + MINUTE_MS, ...steps.map(({ byMs }) => byMs ?? 0));
  const spareMs = (endMs - startMs) * BEHIND;
  const [leftMs, toMs] = [startMs - spareMs, endMs + spareMs];
  const hottestC = Math.max(rule.fromC, ...readings.map(({ celsius }) => celsius)) + HEADROOM_K;
  const x = (atMs: number): number => round(((atMs - leftMs) / (toMs - leftMs)) * SIDE);
  const y = (celsius: number): number => round(((hottestC - celsius) / (hottestC - COLDEST_C)) * SIDE);
  const drift = { doughC: last.celsius, ambientC, tauMin, selfHeatKPerH: 0 };
  const foreseen = Array.from({ length: PIECES + 1 }, (_, index) => {
    const atMs = last.atMs + ((toMs - last.atMs) * index) / PIECES;
    return `${x(atMs)},${y(driftedC(drift, (atMs - last.atMs) / MINUTE_MS))}`;
  });
  return {
    dots: readings.map(({ atMs, celsius }) => ({ x: x(atMs), y: y(celsius) })),
    foreseen: foreseen.join(' '),
    corridor: steps.flatMap(({ byMs, toC }) => (byMs === null ? [] : [{ x: x(byMs), y: y(toC), toC, byMs }])),
    nowX: x(nowMs),
    hottestC,
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
  const read = last === undefined ? HOLDING.unread : `${numberWords(fromC(last.celsius, unit))} °${unit} ${clockText(last.atMs, zone)}`;
  return HOLDING.curve(read, stepTexts(cooling, zone, unit).join('. '));
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
