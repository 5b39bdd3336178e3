import type { WayOut, WayOutEffect } from '../../../shared/floor/ways-out.ts';
import type { WayOutFacts, WayOutWords } from '../en/ways-out.ts';
import { ROLES } from './roles.ts';

export function wayOutWords(way: WayOut, facts: WayOutFacts): WayOutWords {
  return { act: actWords(way, facts), effect: effectWords(way, facts) };
}

function actWords(way: WayOut, facts: WayOutFacts): string {
  const { effect } = way;
  switch (way.kind) {
    case 'wait':
      return `${minutes(effect.delayMin)} warten`;
    case 'otherSlot':
      return `Auf ${way.slotIds.map((slotId) => facts.slot(slotId)).join(', ')}`;
    case 'otherMixer':
      return `Mit ${way.mixerId === null ? 'anderem Kneter' : facts.mixer(way.mixerId)}`;
    case 'otherSource':
      return `Aus ${way.fromTag ?? 'anderem Ansatz'}`;
    case 'part':
      return effect.pieces === null ? 'Einen Teil jetzt' : `${effect.pieces}${facts.pieces === null ? '' : ` von ${facts.pieces}`} jetzt`;
    case 'chill':
      return `Kühlen${way.placeId === null ? '' : `: ${facts.place(way.placeId)}`}`;
    case 'clean':
      return `Zuerst reinigen, ${minutes(effect.delayMin)}`;
    case 'leaveOut':
      return facts.leaveOut ?? 'Auslassen';
    case 'goOn':
      return 'Trotzdem weiter';
  }
}

function effectWords(way: WayOut, facts: WayOutFacts): string {
  const { effect } = way;
  const parts: string[] = [];
  if (effect.placeC !== null) parts.push(`bei ${facts.temperature(effect.placeC)}`);
  if (way.kind === 'chill' && effect.delayMin > 0) parts.push(`ruft in ${minutes(effect.delayMin)}`);
  if (way.kind === 'goOn' && facts.despite !== null) parts.push(facts.despite);
  const then = thenWords(effect);
  if (then !== null) parts.push(then);
  return parts.join(' · ');
}

/** Where it then stands by its own times; nothing where that is as it should be. */
function thenWords(effect: WayOutEffect): string | null {
  if (effect.overLatestMin !== null && effect.overLatestMin > 0) return `${minutes(effect.overLatestMin)} über der Höchstzeit`;
  if (effect.delayMin === 0 || effect.overTargetMin <= 0) return null;
  const over = `${minutes(effect.overTargetMin)} über dem Ziel`;
  return effect.roleThen === 'running' || effect.roleThen === 'call' ? over : `${over}, ${ROLES[effect.roleThen]}`;
}

function minutes(count: number): string {
  return `${Math.ceil(count)} min`;
}

/** What allergens may be in a mixer that is not cleaned between. */
export function mayBeInWords(allergens: string, mixer: string): string {
  return `Allergene in ${mixer} möglich: ${allergens}`;
}

/** What the deck that would have suited best has, behind what another one has. */
export function insteadOfWords(temperature: string): string {
  return `statt ${temperature}`;
}

/** What going on all the same means: the pot keeps less than it is fed from again. */
export function lessThanSeedWords(seed: string): string {
  return `lässt weniger als ${seed} Anstellgut`;
}

/** The same: there is less of it than the step asks for. */
export function lessThanNeededWords(has: string, needed: string): string {
  return `mit ${has} von ${needed}`;
}

/** The same: it goes on without it. */
export function withoutWords(name: string): string {
  return `ohne ${name}`;
}

/** The same: somebody knows that it has cooled meanwhile. */
export const COOLED_SINCE = 'es ist inzwischen abgekühlt';
