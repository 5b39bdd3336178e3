import { madeG, seedGIn, sharesOf } from '../documents/amounts.ts';
import type { Formula } from '../documents/formula.ts';
import { assert } from '../result.ts';
import type { CommandOf } from './commands.ts';
import { formulaOf, newestFormula } from './contents.ts';
import type { FloorState, Workpiece } from './state.ts';
import { toTenth } from './tenths.ts';

type Feed = NonNullable<CommandOf<'finishStep'>['feed']>;

/**
 * A feed as the formula says, scaled to the amount that is planned: the seed is its seed line and whatever its lines have
 * that is neither flour nor water, or what stays in the pot where no line names it. What the pot lacks of seed is made up.
 */
export function feedByFormula(state: FloorState, pot: Workpiece): Feed {
  const formula = formulaOf(state, pot);
  assert(formula !== null, `the formula of ${pot.tag} is not in the state`);
  const wholeG = wantedG(pot, formula);
  const { flour, water } = sharesByKind(state, formula);
  const seedShare = seedShareOf(formula, 1 - flour - water);
  const wantedSeedG = seedShare > 1e-9 ? seedShare * wholeG : (pot.stock?.seedG ?? 0);
  const hasG = pot.stock === null || pot.stock.fedMs === null ? wholeG : pot.grams;
  const seedG = toTenth(Math.min(wantedSeedG, hasG, wholeG));
  const freshG = wholeG - seedG;
  const flourG = toTenth(flour + water === 0 ? freshG : (freshG * flour) / (flour + water));
  return { seedG: Math.min(seedG, hasG), flourG, waterG: toTenth(Math.max(0, freshG - flourG)) };
}

/** Of what the pot makes, what was kept back of it; of everything else, what is neither flour nor water. */
function seedShareOf(formula: Formula, otherShare: number): number {
  const wholeG = madeG(formula);
  const last = formula.parts.at(-1);
  const kept = last === undefined || wholeG === 0 ? 0 : seedGIn(last) / wholeG;
  return kept + (1 - kept) * otherShare;
}

/** A pot is planned at the weight of its first feed; later ones are as planned, or as the formula is written. */
export function wantedG(pot: Workpiece, formula: Formula): number {
  if (pot.stock === null || pot.stock.fedMs === null) return pot.grams;
  return pot.stock.plannedFeeds[0]?.grams ?? madeG(formula);
}

function sharesByKind(state: FloorState, formula: Formula): { readonly flour: number; readonly water: number } {
  const kinds = new Map((state.ingredients?.document ?? []).map((ingredient) => [ingredient.id, ingredient.kind]));
  const shares = [...sharesOf(formula, newestFormula(state))];
  const shareOf = (kind: 'flour' | 'water'): number => shares.reduce((sum, [id, share]) => sum + (kinds.get(id) === kind ? share : 0), 0);
  return { flour: shareOf('flour'), water: shareOf('water') };
}
