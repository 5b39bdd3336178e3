import type { Row } from '../../shared/floor/board.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import { decksOf } from '../../shared/floor/slots.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { wayOf } from '../../shared/floor/way.ts';
import type { Obstacle } from '../../shared/floor/ways-out.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { ALLERGENS, listWords } from '../words/floor.ts';
import { reasonWords, type RefusalFacts } from '../words/refusals.ts';
import {
  insteadOfWords,
  lessThanNeededWords,
  lessThanSeedWords,
  mayBeInWords,
  wayOutWords,
  withoutWords,
  COOLED_SINCE,
  type WayOutFacts,
} from '../words/ways-out.ts';

/** A way out as a button: what it says, and the command that it is. */
export interface WayOutChoice {
  readonly act: string;
  readonly effect: string;
  readonly command: ClientCommand;
}

/** What is in the way of a dough in words, and what can be done about it. */
export interface ObstacleModel {
  readonly words: string;
  readonly ways: readonly WayOutChoice[];
}

export function obstacleModel(state: FloorState, row: Row, obstacle: Obstacle, facts: RefusalFacts, unit: 'C' | 'F'): ObstacleModel {
  const wayFacts: WayOutFacts = {
    mixer: facts.mixer,
    place: facts.place,
    slot: facts.slot,
    temperature: (celsius) => temperatureText(celsius, unit),
    leaveOut: row.leaveOut,
    pieces: row.pieces,
    despite: despiteWords(obstacle, facts),
  };
  return {
    words: reasonWords(obstacle.refusal, facts),
    ways: obstacle.waysOut.map((way) => {
      const said = wayOutWords(way, wayFacts);
      const instead = way.kind === 'otherSlot' && way.effect.placeC !== null ? usualWords(state, row, wayFacts) : null;
      return { act: said.act, effect: instead === null ? said.effect : `${said.effect} ${instead}`.trim(), command: way.command };
    }),
  };
}

/** "instead of 245 °C": the deck that would have suited best. */
function usualWords(state: FloorState, row: Row, facts: WayOutFacts): string | null {
  const workpiece = state.workpieces[row.workpieceId];
  const kitchen = state.kitchen?.document;
  if (workpiece === undefined || kitchen === undefined) return null;
  const claims = wayOf(state, workpiece).find((step) => step.id === row.stepId)?.claims ?? [];
  const wanted = claims.flatMap((claim) => (claim.kind === 'deck' ? claim.ids : []))[0];
  const deck = decksOf(kitchen).find((candidate) => candidate.id === wanted);
  return deck === undefined ? null : insteadOfWords(facts.temperature(state.deckC[deck.id] ?? deck.temperatureC));
}

function despiteWords({ refusal }: Obstacle, facts: RefusalFacts): string | null {
  switch (refusal.code) {
    case 'changeOverNeeded':
      return mayBeInWords(listWords(refusal.allergens.map((allergen) => ALLERGENS[allergen])), facts.mixer(refusal.mixerId));
    case 'lastOfFerment':
      return lessThanSeedWords(facts.weight(refusal.seedG));
    case 'notEnoughToDraw':
      return lessThanNeededWords(facts.weight(refusal.hasG), facts.weight(refusal.neededG));
    case 'notCooled':
      return COOLED_SINCE;
    case 'nothingToDraw':
      return withoutWords(facts.formula(refusal.formulaId));
    case 'vesselsShort':
      return lessThanNeededWords(String(refusal.free), String(refusal.needed));
    default:
      return null;
  }
}
