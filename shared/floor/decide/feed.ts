import type { Step } from '../../documents/method.ts';
import { accepted, assert, refused, type Result } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { dueOf } from '../due.ts';
import type { EventOf, FloorEvent } from '../events.ts';
import { feedByFormula } from '../feed-by-formula.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { wayOf } from '../way.ts';
import type { Decision } from './decision.ts';
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
