import { madeG, seedGIn, sharesOf } from '../../documents/amounts.ts';
import type { Formula } from '../../documents/formula.ts';
import type { Step } from '../../documents/method.ts';
import { accepted, assert, refused, type Result } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { formulaOf, newestFormula } from '../contents.ts';
import { dueOf } from '../due.ts';
import type { EventOf, FloorEvent } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { wayOf } from '../way.ts';
import type { Decision } from './decision.ts';
import { toTenth } from './sources.ts';
import { alreadyDone, standingOf } from './standing.ts';

type Feed = NonNullable<CommandOf<'finishStep'>['feed']>;

/** A pot that stands already is to be fed at an instant, up to so much; in the past means now. */
export function decidePlanFeed(state: FloorState, command: CommandOf<'planFeed'>, context: CommandContext): Decision {
  const standing = standingOf(state, command.workpieceId, context);
  if (!standing.ok) return standing;
  const { workpiece, atMs } = standing.value;
  if (workpiece.stock === null) return refused({ code: 'notAFerment', tag: workpiece.tag });
  const { feedMs, grams } = command;
  if (workpiece.stock.plannedFeeds.some((feed) => feed.feedMs === feedMs && feed.grams === grams))
    return refused({ code: 'nothingChanges', tag: workpiece.tag });
  return accepted([{ type: 'feedPlanned', workpieceId: workpiece.id, feedMs, grams, atMs }]);
}

/**
 * What goes into a pot when it is fed, as said or as the formula says, and what of it is thrown away. Refused where more
 * seed is named than the pot has, and, where nothing is named, for a pot that was fed and has not had its least time:
 * that is a second thumb on the same feed.
 */
export function feedEvents(
  state: FloorState,
  pot: Workpiece,
  feed: Feed | undefined,
  atMs: number,
): Result<readonly FloorEvent[], Refusal> {
  const isFirst = pot.stock === null || pot.stock.fedMs === null;
  const feedStep = wayOf(state, pot).find((step) => step.verb === 'feed');
  assert(feedStep !== undefined, `the way of ${pot.tag} has no feed`);
  const again = feed === undefined && !isFirst ? fedJustNow(state, pot, feedStep, atMs) : null;
  if (again !== null) return refused(again);
  const what = feed ?? feedByFormula(state, pot);
  if (!isFirst && what.seedG > pot.grams)
    return refused({ code: 'moreThanThere', tag: pot.tag, stepId: feedStep.id, fromTag: pot.tag, neededG: what.seedG, hasG: pot.grams });
  return accepted([fedWith(pot, what, isFirst, atMs)]);
}

/** The first feed makes what was only planned: nothing was in the pot that could be thrown away. */
function fedWith(pot: Workpiece, what: Feed, isFirst: boolean, atMs: number): EventOf<'fermentFed'> {
  return { type: 'fermentFed', workpieceId: pot.id, ...what, discardedG: isFirst ? 0 : pot.grams - what.seedG, atMs };
}

/** What a second thumb on the same feed is told: the pot has been fed, or that was left out, and it has not had its least time. Null where it is to be fed. */
export function fedJustNow(state: FloorState, pot: Workpiece, step: Step, atMs: number): Refusal | null {
  const fedMs = pot.stock?.fedMs ?? null;
  const life = pot.steps[step.id];
  if (pot.stock === null || step.verb !== 'feed' || !isTooSoon(state, pot, atMs)) return null;
  if (life === undefined)
    return fedMs === null ? null : { code: 'stepAlreadyDone', tag: pot.tag, stepId: step.id, atMs: fedMs, skipped: false };
  return alreadyDone(pot, step.id, life);
}

function isTooSoon(state: FloorState, pot: Workpiece, atMs: number): boolean {
  const due = dueOf(state, pot);
  if (due === null || due.phase !== 'resting') return false;
  const planned = pot.stock?.plannedFeeds[0];
  return atMs < due.earliestMs && (planned === undefined || atMs < planned.feedMs);
}

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
