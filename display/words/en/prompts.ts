import type { PromptAsk } from '../../../shared/floor/bake-phases.ts';
import type { VerbWords } from './verbs.ts';

/** What a phase of a bake asks for. */
export const PROMPTS: Readonly<Record<Exclude<PromptAsk, 'set'>, VerbWords>> = {
  steamOut: { call: 'STEAM OUT', running: 'steam out', done: 'STEAM IS OUT' },
  steamIn: { call: 'STEAM IN', running: 'steam in', done: 'STEAM IS IN' },
  ventOpen: { call: 'OPEN VENT', running: 'open the vent', done: 'VENT IS OPEN' },
  ventClosed: { call: 'SHUT VENT', running: 'shut the vent', done: 'VENT IS SHUT' },
  turn: { call: 'TURN', running: 'turn', done: 'TURNED' },
};

/** The oven is to be set to another temperature. */
export const setWords = (temperature: string): VerbWords => ({
  call: `SET ${temperature}`,
  running: `set to ${temperature}`,
  done: `SET TO ${temperature}`,
});

/** How a core goes toward its target, for a row. */
export const CORE = {
  read: (temperature: string, clock: string): string => `core read ${temperature} ${clock}`,
  core: (temperature: string): string => `core ${temperature}`,
  reaches: (target: string, clock: string): string => `${target} about ${clock}`,
  reachesBetween: (target: string, from: string, to: string): string => `${target} ${from}–${to}`,
  reached: (target: string): string => `${target} reached`,
  unreachableBrief: 'core target cannot be reached here',
} as const;

/** Of food past its holding limit: the call, and what can be said of it. */
export const PAST_LIMIT = { call: 'DISCARD', discard: 'Discard…', decide: 'May be used: decide…' } as const;

/** A deck before its next load: what it is to be set to, by when, and when it is as it is set. */
export const DECK = {
  setBy: (temperature: string, clock: string): string => `set ${temperature} by ${clock}`,
  setNow: (temperature: string): string => `set ${temperature}`,
  from: (now: string, wanted: string): string => `${now} → ${wanted}`,
  hotBy: (clock: string): string => `hot ${clock}`,
} as const;
