import type { PhaseAt } from '../../shared/floor/bake-phases.ts';
import type { CoreHeat } from '../../shared/floor/core-heat.ts';
import { clockText } from '../parts/clock-text.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { BAKE_CORE, BAKE_PHASE } from '../words/warmth.ts';
import { CORE, PROMPTS } from '../words/prompts.ts';

type Unit = 'C' | 'F';

/** What a phase says of the oven: "245 °C · steam in". */
export function phaseText({ phase }: PhaseAt, unit: Unit): string {
  const { temperatureC, steam, vent, turn } = phase;
  return [
    ...(temperatureC === undefined ? [] : [temperatureText(temperatureC, unit)]),
    ...(steam === undefined ? [] : [PROMPTS[steam === 'in' ? 'steamIn' : 'steamOut'].running]),
    ...(vent === undefined ? [] : [PROMPTS[vent === 'open' ? 'ventOpen' : 'ventClosed'].running]),
    ...(turn === true ? [PROMPTS.turn.running] : []),
  ].join(' · ');
}

/** The phases in words, one each, with until when: "till 05:10: 245 °C · steam in". */
export function phaseTexts(phases: readonly PhaseAt[], zone: string, unit: Unit): readonly string[] {
  return phases.map((at) => BAKE_PHASE(clockText(at.toMs, zone), phaseText(at, unit)));
}

/** What is known of the core, in words: what was read, when it has its target, within what range, or why nothing can be said. */
export function coreLines(core: CoreHeat, zone: string, unit: Unit): readonly string[] {
  const { targetC, plateauC, readings, forecast, reachesMs, isReached, between } = core;
  const target = temperatureText(targetC, unit);
  if (forecast.kind === 'unreachable') return [BAKE_CORE.unreachable(target, temperatureText(plateauC, unit))];
  const last = readings.at(-1);
  const read = last === undefined ? [] : [CORE.read(temperatureText(last.celsius, unit), clockText(last.atMs, zone))];
  if (isReached) return [...read, CORE.reached(target)];
  if (reachesMs !== null && between !== null)
    return [
      ...read,
      CORE.reaches(target, clockText(reachesMs, zone)),
      BAKE_CORE.range(clockText(between.fromMs, zone), between.toMs === null ? null : clockText(between.toMs, zone)),
    ];
  return [...read, { lag: BAKE_CORE.lag, needsAnother: BAKE_CORE.another, noRise: BAKE_CORE.noRise, reaches: '' }[forecast.kind]];
}
