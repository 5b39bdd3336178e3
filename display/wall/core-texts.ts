import type { CoreHeat } from '../../shared/floor/core-heat.ts';
import { clockText } from '../parts/clock-text.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { CORE } from '../words/prompts.ts';

const MINUTE_MS = 60_000;
/** A range narrower than this is said as one minute. */
const WORTH_SAYING_MS = 2 * MINUTE_MS;

/**
 * How a bake's core goes toward its target, for its row's second line: what was read, and when it has its target. The same in fewer and
 * fewer words, the fullest first; empty where nobody has read it.
 */
export function coreTexts(core: CoreHeat, zone: string, unit: 'C' | 'F'): readonly string[] {
  if (core.forecast.kind === 'unreachable') return [CORE.unreachableBrief];
  const last = core.readings.at(-1);
  if (last === undefined) return [];
  const reading = temperatureText(last.celsius, unit);
  const read = [CORE.read(reading, clockText(last.atMs, zone)), CORE.core(reading)];
  const when = whenTexts(core, zone, unit);
  return [...when.flatMap((text) => read.map((said) => `${said} · ${text}`)), ...when, ...read];
}

/** When it has its target, the most telling first; empty where nothing says. */
function whenTexts({ targetC, reachesMs, isReached, between }: CoreHeat, zone: string, unit: 'C' | 'F'): readonly string[] {
  const target = temperatureText(targetC, unit);
  if (reachesMs === null) return [];
  if (isReached) return [CORE.reached(target)];
  const about = CORE.reaches(target, clockText(reachesMs, zone));
  if (between === null || between.toMs === null || between.toMs - between.fromMs < WORTH_SAYING_MS) return [about];
  return [CORE.reachesBetween(target, clockText(between.fromMs, zone), clockText(between.toMs, zone)), about];
}
