import type { PromptAsk } from '../../../shared/floor/bake-phases.ts';
import type { VerbWords } from '../en/verbs.ts';

/** What a phase of a bake asks for. */
export const PROMPTS: Readonly<Record<Exclude<PromptAsk, 'set'>, VerbWords>> = {
  steamOut: { call: 'CHASSER BUÉE', running: 'chasser la buée', done: 'BUÉE CHASSÉE' },
  steamIn: { call: 'BUÉE', running: 'donner la buée', done: 'BUÉE DONNÉE' },
  ventOpen: { call: 'OUVRIR OURA', running: 'ouvrir l’oura', done: 'OURA OUVERT' },
  ventClosed: { call: 'FERMER OURA', running: 'fermer l’oura', done: 'OURA FERMÉ' },
  turn: { call: 'TOURNER', running: 'tourner', done: 'TOURNÉ' },
};

/** The oven is to be set to another temperature. */
export const setWords = (temperature: string): VerbWords => ({
  call: `RÉGLER ${temperature}`,
  running: `régler à ${temperature}`,
  done: `RÉGLÉ À ${temperature}`,
});

/** How a core goes toward its target, for a row. */
export const CORE = {
  read: (temperature: string, clock: string): string => `cœur ${temperature} mesuré ${clock}`,
  core: (temperature: string): string => `cœur ${temperature}`,
  reaches: (target: string, clock: string): string => `${target} vers ${clock}`,
  reachesBetween: (target: string, from: string, to: string): string => `${target} ${from}–${to}`,
  reached: (target: string): string => `${target} atteints`,
  unreachableBrief: 'cible à cœur impossible ici',
} as const;

/** Of food past its holding limit: the call, and what can be said of it. */
export const PAST_LIMIT = { call: 'JETER', discard: 'Jeter…', decide: 'Peut servir\u00a0: décider…' } as const;

/** A deck before its next load: what it is to be set to, by when, and when it is as it is set. */
export const DECK = {
  setBy: (temperature: string, clock: string): string => `régler ${temperature} avant ${clock}`,
  setNow: (temperature: string): string => `régler ${temperature}`,
  from: (now: string, wanted: string): string => `${now} → ${wanted}`,
  hotBy: (clock: string): string => `chaud ${clock}`,
} as const;
