import type { WayOut, WayOutEffect } from '../../../shared/floor/ways-out.ts';
import { ROLES } from './roles.ts';

/** What the words need of the house beside the way out itself. */
export interface WayOutFacts {
  mixer(mixerId: string): string;
  place(placeId: string): string;
  slot(slotId: string): string;
  temperature(celsius: number): string;
  /** What the dough's own words for leaving the step out are. */
  readonly leaveOut: string | null;
  readonly pieces: number | null;
  /** What is gone on with knowingly, such as "milk and egg from M1 may be in the mixer". */
  readonly despite: string | null;
}

/** A way out as a button says it: what to do, and what that does to the dough. */
export interface WayOutWords {
  readonly act: string;
  readonly effect: string;
}

export function wayOutWords(way: WayOut, facts: WayOutFacts): WayOutWords {
  return { act: actWords(way, facts), effect: effectWords(way, facts) };
}

function actWords(way: WayOut, facts: WayOutFacts): string {
  const { effect } = way;
  switch (way.kind) {
    case 'wait':
      return `Wait ${minutes(effect.delayMin)}`;
    case 'otherSlot':
      return `Into ${way.slotIds.map((slotId) => facts.slot(slotId)).join(', ')}`;
    case 'otherMixer':
      return `On ${way.mixerId === null ? 'another mixer' : facts.mixer(way.mixerId)}`;
    case 'otherSource':
      return `From ${way.fromTag ?? 'another'}`;
    case 'part':
      return effect.pieces === null ? 'Part of it now' : `${effect.pieces}${facts.pieces === null ? '' : ` of ${facts.pieces}`} now`;
    case 'chill':
      return `Chill${way.placeId === null ? '' : `: ${facts.place(way.placeId)}`}`;
    case 'clean':
      return `Clean first, ${minutes(effect.delayMin)}`;
    case 'leaveOut':
      return facts.leaveOut ?? 'Leave it out';
    case 'goOn':
      return 'Go on all the same';
  }
}

function effectWords(way: WayOut, facts: WayOutFacts): string {
  const { effect } = way;
  const parts: string[] = [];
  if (effect.placeC !== null) parts.push(`at ${facts.temperature(effect.placeC)}`);
  if (way.kind === 'chill' && effect.delayMin > 0) parts.push(`calls in ${minutes(effect.delayMin)}`);
  if (way.kind === 'goOn' && facts.despite !== null) parts.push(facts.despite);
  const then = thenWords(effect);
  if (then !== null) parts.push(then);
  return parts.join(' · ');
}

/** Where it then stands by its own times; nothing where that is as it should be. */
function thenWords(effect: WayOutEffect): string | null {
  if (effect.overLatestMin !== null && effect.overLatestMin > 0) return `${minutes(effect.overLatestMin)} past its latest`;
  if (effect.delayMin === 0 || effect.overTargetMin <= 0) return null;
  const over = `${minutes(effect.overTargetMin)} over`;
  return effect.roleThen === 'running' || effect.roleThen === 'call' ? over : `${over}, ${ROLES[effect.roleThen]}`;
}

function minutes(count: number): string {
  return `${Math.ceil(count)} min`;
}

/** What allergens may be in a mixer that is not cleaned between. */
export function mayBeInWords(allergens: string, mixer: string): string {
  return `${allergens} may be in ${mixer}: allergens`;
}

/** What the deck that would have suited best has, behind what another one has. */
export function insteadOfWords(temperature: string): string {
  return `instead of ${temperature}`;
}

/** What going on all the same means: the pot keeps less than it is fed from again. */
export function lessThanSeedWords(seed: string): string {
  return `leaves less than the seed of ${seed}`;
}

/** The same: there is less of it than the step asks for. */
export function lessThanNeededWords(has: string, needed: string): string {
  return `with ${has} of ${needed}`;
}

/** The same: it goes on without it. */
export function withoutWords(name: string): string {
  return `without ${name}`;
}

/** The same: somebody knows that it has cooled meanwhile. */
export const COOLED_SINCE = 'it is cooled since';
