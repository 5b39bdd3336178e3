import type { PromptAsk } from '../../../shared/floor/bake-phases.ts';
import type { VerbWords } from '../en/verbs.ts';

/** What a phase of a bake asks for. */
export const PROMPTS: Readonly<Record<Exclude<PromptAsk, 'set'>, VerbWords>> = {
  steamOut: { call: 'SCHWADEN AB', running: 'Schwaden ablassen', done: 'SCHWADEN ABGELASSEN' },
  steamIn: { call: 'SCHWADEN', running: 'Schwaden geben', done: 'SCHWADEN GEGEBEN' },
  ventOpen: { call: 'ZUG AUF', running: 'Zug öffnen', done: 'ZUG IST AUF' },
  ventClosed: { call: 'ZUG ZU', running: 'Zug schließen', done: 'ZUG IST ZU' },
  turn: { call: 'DREHEN', running: 'drehen', done: 'GEDREHT' },
};

/** The oven is to be set to another temperature. */
export const setWords = (temperature: string): VerbWords => ({
  call: `AUF ${temperature}`,
  running: `auf ${temperature} stellen`,
  done: `STEHT AUF ${temperature}`,
});

/** How a core goes toward its target, for a row. */
export const CORE = {
  read: (temperature: string, clock: string): string => `Kern ${temperature}, gemessen ${clock}`,
  core: (temperature: string): string => `Kern ${temperature}`,
  reaches: (target: string, clock: string): string => `${target} etwa ${clock}`,
  reachesBetween: (target: string, from: string, to: string): string => `${target} ${from}–${to}`,
  reached: (target: string): string => `${target} erreicht`,
  unreachableBrief: 'Kernziel hier nicht zu erreichen',
} as const;

/** Of food past its holding limit: the call, and what can be said of it. */
export const PAST_LIMIT = { call: 'WEGWERFEN', discard: 'Wegwerfen…', decide: 'Darf verwendet werden: entscheiden…' } as const;

/** A deck before its next load: what it is to be set to, by when, and when it is as it is set. */
export const DECK = {
  setBy: (temperature: string, clock: string): string => `auf ${temperature} bis ${clock}`,
  setNow: (temperature: string): string => `auf ${temperature}`,
  from: (now: string, wanted: string): string => `${now} → ${wanted}`,
  hotBy: (clock: string): string => `heiß ${clock}`,
} as const;
