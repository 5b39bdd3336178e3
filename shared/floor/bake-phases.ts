import type { BakePhase, Step } from '../documents/method.ts';
import type { StepLife } from './state.ts';

const MINUTE_MS = 60_000;

/** What hands are asked for where a phase begins, the most pressing first. */
export const PROMPT_ASKS = ['steamOut', 'steamIn', 'ventOpen', 'ventClosed', 'turn', 'set'] as const;
export type PromptAsk = (typeof PROMPT_ASKS)[number];

/** A phase of a bake that was begun, on the clock of the floor. */
export interface PhaseAt {
  readonly phase: BakePhase;
  readonly fromMs: number;
  readonly toMs: number;
}

/** What a phase of a bake asks of somebody, and when. */
export interface Prompt {
  /** Which phase of the programme, from 0. */
  readonly phase: number;
  readonly asks: readonly PromptAsk[];
  /** What the oven is to be set to, in °C, where it asks for that. */
  readonly setC: number | null;
  readonly note: string | null;
  readonly dueMs: number;
  readonly lateMs: number;
}

/** The phases of a bake by their minutes, as long as the place in which it bakes makes them; the last one goes on until the bake is due, at `endsMs`. */
export function phasesAt(step: Step, { startedMs, pins }: StepLife, endsMs: number): readonly PhaseAt[] {
  const phases = step.bake ?? [];
  if (startedMs === null || pins === null) return [];
  let fromMs = startedMs;
  return phases.map((phase, index) => {
    const toMs = index === phases.length - 1 ? endsMs : Math.round(fromMs + phase.minutes * pins.factor * MINUTE_MS);
    const at = { phase, fromMs, toMs: Math.max(fromMs, toMs) };
    fromMs = at.toMs;
    return at;
  });
}

/**
 * What hands are asked for where a phase begins: what it says of steam, vent and heat otherwise than the phases before it, and a turn. Of
 * the first nothing: whoever loads does that.
 */
export function asksOf(phases: readonly BakePhase[], index: number): readonly PromptAsk[] {
  const phase = phases[index];
  if (phase === undefined || index === 0) return [];
  const before = phases.slice(0, index);
  const isNews = (key: 'steam' | 'vent' | 'temperatureC'): boolean =>
    phase[key] !== undefined && phase[key] !== before.findLast((earlier) => earlier[key] !== undefined)?.[key];
  const asks: Readonly<Record<PromptAsk, boolean>> = {
    steamOut: isNews('steam') && phase.steam === 'out',
    steamIn: isNews('steam') && phase.steam === 'in',
    ventOpen: isNews('vent') && phase.vent === 'open',
    ventClosed: isNews('vent') && phase.vent === 'closed',
    turn: phase.turn === true,
    set: isNews('temperatureC'),
  };
  return PROMPT_ASKS.filter((ask) => asks[ask]);
}

/**
 * The first phase that asks for hands and has not been said to be done; null where none is left before the bake ends, at `endsMs`. It is
 * late by the bake's own tolerance.
 */
export function promptOf(step: Step, life: StepLife, endsMs: number): Prompt | null {
  const phases = step.bake ?? [];
  for (const [index, { phase, fromMs }] of phasesAt(step, life, endsMs).entries()) {
    if (index <= (life.phaseDone ?? 0) || fromMs >= endsMs) continue;
    const asks = asksOf(phases, index);
    if (asks.length === 0) continue;
    return {
      phase: index,
      asks,
      setC: asks.includes('set') ? (phase.temperatureC ?? null) : null,
      note: phase.note ?? null,
      dueMs: fromMs,
      lateMs: fromMs + step.toleranceMin.late * MINUTE_MS,
    };
  }
  return null;
}
