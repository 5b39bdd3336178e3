import { flourShare } from '../../documents/amounts.ts';
import type { Formula } from '../../documents/formula.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { allergensOf, formulaOf, newestFormula } from '../contents.ts';
import type { FloorEvent } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { toTenth } from '../tenths.ts';
import { ancestorsOf } from './ancestry.ts';
import type { Decision } from './decision.ts';
import { EMPTY_G } from './sources.ts';
import { standingOf, type Standing } from './standing.ts';
import { giveBackAll } from './vessels.ts';

const MINUTE_MS = 60_000;

type PutBack = CommandOf<'putBack'>;

/**
 * Scrap, trim, old dough or old bread goes into a later dough while that is mixed, where its formula takes such back, not
 * older and not more than that says. Follow the house's own rules on what may be used again.
 */
export function decidePutBack(state: FloorState, command: PutBack, context: CommandContext): Decision {
  const into = standingOf(state, command.toWorkpieceId, context);
  if (!into.ok) return into;
  const { workpiece: target, atMs } = into.value;
  const source = state.workpieces[command.fromWorkpieceId];
  if (source === undefined) return refused({ code: 'workpieceUnknown', workpieceId: command.fromWorkpieceId });
  if (source.id === target.id || ancestorsOf(state, source.id).has(target.id))
    return refused({ code: 'wrongSource', tag: target.tag, fromTag: source.tag });
  const grams = toTenth(command.grams);
  if (grams === 0) return refused({ code: 'nothingChanges', tag: target.tag });
  const refusal = refusalOf(state, into.value, source, { ...command, grams });
  if (refusal !== null) return refused(refusal);
  const events: FloorEvent[] = [
    {
      type: 'scrapPutBack',
      fromWorkpieceId: source.id,
      toWorkpieceId: target.id,
      what: command.what,
      grams,
      allergens: [...allergensOf(state, source)],
      lotNumbers: [...source.broughtIn.lotNumbers],
      atMs,
    },
  ];
  const isEmptied = source.finishedMs === null && source.grams - Math.max(0, grams - source.scrapG) < EMPTY_G;
  if (isEmptied) events.push(...giveBackAll(state, source, atMs), { type: 'workpieceFinished', workpieceId: source.id, atMs });
  return accepted(events);
}

function refusalOf(state: FloorState, into: Standing, source: Workpiece, command: PutBack): Refusal | null {
  const { workpiece: target, atMs } = into;
  const { tag } = target;
  const formula = formulaOf(state, target);
  const rule = target.kind === 'batch' ? formula?.takesBack.find((candidate) => candidate.what === command.what) : undefined;
  if (formula === null || rule === undefined) return { code: 'putBackNotTaken', tag, kind: command.what };
  if (!into.way.slice(into.index).some((step) => step.claims.some((claim) => claim.kind === 'mixer')))
    return { code: 'pastMixing', tag, stepId: into.due.step.id };
  const ageMin = Math.max(0, (atMs - lastMs(source)) / MINUTE_MS);
  if (ageMin > rule.ageMin) return { code: 'putBackTooOld', tag, fromTag: source.tag, ageMin, mostMin: rule.ageMin };
  const hasG = putBackableG(source, command.what);
  if (command.grams > hasG) return { code: 'moreThanThere', tag, fromTag: source.tag, neededG: command.grams, hasG };
  const { capG, alreadyG } = capOf(state, target, formula, rule.capPct);
  return alreadyG + command.grams > capG ? { code: 'putBackOverCap', tag, capG, alreadyG } : null;
}

/** What lies beside it, and the dough itself where that is meant or was given up; bread that was packed can come back as old bread. */
function putBackableG(source: Workpiece, what: PutBack['what']): number {
  const isOpenDough = source.finishedMs === null && (source.kind === 'cut' || source.kind === 'load' || source.kind === 'batch');
  const isDough = isOpenDough && source.slotIds.length === 0 && (what === 'trim' || what === 'oldDough');
  const isBread = source.ending === 'finished' && what === 'oldBread';
  return source.scrapG + (isDough || isBread || source.ending === 'discarded' ? source.grams : 0);
}

/** The last thing that happened to it: it is as old as that. */
function lastMs(source: Workpiece): number {
  if (source.finishedMs !== null) return source.finishedMs;
  const endedMs = Object.values(source.steps).flatMap((life) => (life.endedMs === null ? [] : [life.endedMs]));
  return endedMs.length === 0 ? source.plannedStartMs : Math.max(...endedMs);
}

/** The cap counts by the flour of the dough as mixed, without what has been put back, and for everything that has been. */
function capOf(
  state: FloorState,
  target: Workpiece,
  formula: Formula,
  capPct: number,
): { readonly capG: number; readonly alreadyG: number } {
  const alreadyG = state.edges.reduce((sum, edge) => sum + (edge.kind === 'putBack' && edge.toId === target.id ? edge.grams : 0), 0);
  const share = flourShare(formula, newestFormula(state), state.ingredients?.document ?? []);
  return { capG: toTenth((capPct / 100) * share * (target.grams - alreadyG)), alreadyG };
}
