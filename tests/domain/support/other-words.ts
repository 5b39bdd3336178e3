import type { Resource } from '../../../shared/floor/resources.ts';
import type { ClientCommand, CommandOf } from '../../../shared/floor/commands.ts';
import { despiteSchema, lossNamed, resourceBlocked, type Despite } from '../../../shared/floor/events.ts';
import { putBackKindSchema } from '../../../shared/documents/formula.ts';
import { decksOf } from '../../../shared/floor/slots.ts';
import type { FloorState, Workpiece } from '../../../shared/floor/state.ts';
import { formulaOf } from '../../../shared/floor/contents.ts';
import { openDues, type Due } from '../../../shared/floor/due.ts';
import { holdingOf } from '../../../shared/floor/holding.ts';
import { takesOf } from '../../../shared/floor/takes.ts';
import { productOf, wayOf } from '../../../shared/floor/way.ts';
import { assert, unreachable } from '../../../shared/result.ts';
import { BOOK_WORDS, bookWord } from './book-words.ts';
import { Digits } from './digits.ts';
import { idOf } from './ids.ts';
import { ORDER_WORDS, orderWord } from './order-words.ts';
import { weighWord } from './weigh-words.ts';

const MINUTE_MS = 60_000;

/** What a thumb says beside done, begun, heard, later, left out and given up; and a step done with more said of it. */
const OTHER_WORDS = [
  ['finishStep', 12],
  ['reportProgress', 4],
  ['answerPrompt', 5],
  ['helpStep', 3],
  ['handOver', 3],
  ['sayWhere', 4],
  ['moveWorkpiece', 3],
  ['correctTime', 4],
  ['correctCount', 3],
  ['correctTag', 3],
  ['makeLoads', 9],
  ['joinWorkpieces', 9],
  ['drawFrom', 4],
  ['putBack', 6],
  ['planFeed', 3],
  ['addIngredient', 3],
  ['nameLoss', 3],
  ['decideHolding', 10],
  ['setDeck', 2],
  ['readPlace', 2],
  ['openPlace', 1],
  ['moveLoad', 12],
  ['startTestPiece', 3],
  ['endTestPiece', 4],
  ['beginProgramme', 1],
  ['blockResource', 2],
  ['freeResource', 9],
  ['closeDay', 1],
  ['adoptKitchen', 2],
  ['adoptHouse', 2],
  ...BOOK_WORDS,
  ['weighIngredient', 9],
  ['unweighIngredient', 3],
  ['scaleToLine', 3],
  ['takeWater', 10],
  ['forgetRise', 22],
  ...ORDER_WORDS,
] as const;

export type OtherWord = (typeof OTHER_WORDS)[number][0];

/** What a thumb sees as it taps. */
export interface Seen {
  readonly digits: Digits;
  readonly state: FloorState;
  readonly workpiece: Workpiece;
  readonly stepId: string;
  readonly nowMs: number;
}

/**
 * A command that says more than done or begun, chosen by a whole number: most of them could be meant on the floor as it
 * is, some are nonsense. `stepId` is the step that the workpiece calls for.
 */
export function otherWord(n: number, state: FloorState, workpiece: Workpiece, stepId: string, nowMs: number): ClientCommand {
  const digits = new Digits(n);
  let left = digits.below(OTHER_WORDS.reduce((sum, [, weight]) => sum + weight, 0));
  const chosen = OTHER_WORDS.find(([, weight]) => (left -= weight) < 0);
  assert(chosen !== undefined, 'the weights cover every choice');
  return wordOf(chosen[0], { digits, state, workpiece, stepId, nowMs });
}

/** Whoever hears the oven answers it, wherever they stand; where nothing bakes, astray. */
function answerPrompt({ digits, state, workpiece, stepId }: Seen): ClientCommand {
  const [asked] = openDues(state).filter((due) => due.prompt !== null);
  const on = asked === undefined ? { workpieceId: workpiece.id, stepId } : { workpieceId: asked.workpiece.id, stepId: asked.step.id };
  return { type: 'answerPrompt', ...on, phase: digits.onceIn(3) ? digits.below(3) : (asked?.prompt?.phase ?? 0) };
}

/** The word of a kind, as it could be meant on the floor as it is. */
export function wordOf(type: OtherWord, seen: Seen): ClientCommand {
  const { digits, state, workpiece, stepId } = seen;
  const on = { workpieceId: workpiece.id, stepId };
  switch (type) {
    case 'finishStep':
      return fullFinish(seen);
    case 'reportProgress':
      return { type, ...on, piecesDone: digits.below((workpiece.pieces ?? 20) + 2) };
    case 'answerPrompt':
      return answerPrompt(seen);
    case 'helpStep':
      return { type, ...workedOn(seen) };
    case 'handOver':
      return { type, ...workedOn(seen), toStationId: digits.amongOr([...stationIds(state), 'yard'], 'yard') };
    case 'sayWhere':
      return sayWhere(seen);
    case 'moveWorkpiece': {
      const placeId = digits.amongOr([...placeIds(state), 'attic'], 'attic');
      return { type, workpieceId: workpiece.id, placeId, ...(digits.onceIn(3) ? { holdMin: 1 + digits.below(60) } : {}) };
    }
    case 'correctTime':
      return correctTime(seen);
    case 'correctCount':
    case 'correctTag':
      return correction(type, seen);
    case 'makeLoads':
    case 'joinWorkpieces':
    case 'drawFrom':
    case 'putBack':
      return genealogyWord(type, seen);
    case 'planFeed':
    case 'addIngredient':
    case 'nameLoss':
      return amountWord(type, seen);
    case 'readPlace':
    case 'openPlace':
    case 'beginProgramme':
      return airWord(type, seen);
    case 'moveLoad':
      return moveLoadWord(seen);
    case 'startTestPiece':
    case 'endTestPiece':
      return testPieceWord(type, seen);
    case 'decideHolding':
      return holdingWord(seen);
    case 'setDeck':
    case 'blockResource':
    case 'freeResource':
      return resourceWord(type, seen);
    case 'closeDay':
      return { type, serviceDate: digits.amongOr([...state.openDates, workpiece.serviceDate], '2001-01-01') };
    case 'adoptKitchen':
    case 'adoptHouse':
      return documentWord(type, seen);
    case 'adoptFormula':
    case 'adoptProduct':
    case 'adoptIngredient':
    case 'archiveFormula':
    case 'leaveLesson':
    case 'bringInBook':
    case 'planBatches':
      return bookWord(type, seen);
    case 'weighIngredient':
    case 'unweighIngredient':
    case 'scaleToLine':
    case 'takeWater':
    case 'forgetRise':
      return weighWord(type, seen);
    case 'placeOrders':
    case 'withdrawOrders':
    case 'adoptStanding':
    case 'setPin':
    case 'liftPin':
      return orderWord(type, seen);
    default:
      return unreachable(type);
  }
}

/** A step done, with what may be said of it beside: pieces, sources, water held back, what is gone on with knowingly. */
function fullFinish({ digits, state, workpiece, stepId }: Seen): CommandOf<'finishStep'> {
  const step = wayOf(state, workpiece).find((candidate) => candidate.id === stepId);
  const takes = step === undefined ? [] : takesOf(state, workpiece, step);
  const sources = openOf(state).filter((source) => takes.some((take) => take.formulaId === source.formulaId) || digits.onceIn(40));
  const said = digits.below(6);
  const most = workpiece.pieces ?? 0;
  return {
    type: 'finishStep',
    workpieceId: workpiece.id,
    stepId,
    ...(said === 1 && most > 0 ? { loadPieces: 1 + digits.below(most + 1) } : {}),
    ...(said === 2
      ? { draws: sources.slice(0, 3).map((source) => ({ fromWorkpieceId: source.id, grams: part(digits, source.grams) })) }
      : {}),
    ...(said === 3 ? { usedHeldBackG: digits.below(400) } : {}),
    ...(said === 4 && most > 0 ? { piecesDone: digits.below(most + 1) } : {}),
    ...(digits.onceIn(2) ? despite(digits) : {}),
  };
}

/** Work that hands are on, where there is any, or what the thumb is at. */
function workedOn({ digits, state, workpiece, stepId }: Seen): { readonly workpieceId: string; readonly stepId: string } {
  const worked = openDues(state).filter((due) => due.phase === 'working' || due.phase === 'judging');
  const chosen = digits.onceIn(4) ? undefined : digits.among(worked);
  return chosen === undefined ? { workpieceId: workpiece.id, stepId } : { workpieceId: chosen.workpiece.id, stepId: chosen.step.id };
}

function sayWhere({ digits, state, workpiece, stepId }: Seen): CommandOf<'sayWhere'> {
  const way = wayOf(state, workpiece).map((step) => step.id);
  const called = way.indexOf(stepId);
  const near = way.slice(Math.max(0, called - 2), called + 4);
  const wanted = digits.onceIn(6) ? digits.amongOr(way, 'lunch') : digits.amongOr(near, 'lunch');
  return { type: 'sayWhere', workpieceId: workpiece.id, stepId: wanted, ...(digits.onceIn(3) ? { sinceMin: digits.below(90) } : {}) };
}

/** Of what is known of its steps, one by some minutes. */
function correctTime({ digits, state, workpiece, stepId, nowMs }: Seen): CommandOf<'correctTime'> {
  const edges = wayOf(state, workpiece).flatMap(({ id }) => {
    const life = workpiece.steps[id];
    return [
      ...(typeof life?.startedMs === 'number' ? [{ stepId: id, edge: 'start' as const, atMs: life.startedMs }] : []),
      ...(typeof life?.endedMs === 'number' ? [{ stepId: id, edge: 'end' as const, atMs: life.endedMs }] : []),
    ];
  });
  const known = digits.among(edges.slice(-6)) ?? { stepId, edge: 'start' as const, atMs: nowMs };
  const byMs = (digits.below(21) - 14) * MINUTE_MS;
  return { type: 'correctTime', workpieceId: workpiece.id, stepId: known.stepId, edge: known.edge, toMs: Math.max(0, known.atMs + byMs) };
}

function correction(type: 'correctCount' | 'correctTag', { digits, state, workpiece }: Seen): ClientCommand {
  if (type === 'correctCount') {
    const pieces = digits.onceIn(15) ? 0 : Math.max(0, (workpiece.pieces ?? 10) + digits.below(6) - 4);
    return { type, workpieceId: workpiece.id, pieces, ...(digits.onceIn(2) ? { reason: 'counted again' } : {}) };
  }
  const others = Object.values(state.workpieces).filter((other) => other.formulaId === workpiece.formulaId && other.id !== workpiece.id);
  const next = workpiece.tag.replace(/\d+/, (number) => String(Number(number) + 1 + digits.below(3)));
  return { type, workpieceId: workpiece.id, toTag: digits.onceIn(2) ? next : digits.amongOr(others, workpiece).tag };
}

function genealogyWord(type: 'makeLoads' | 'joinWorkpieces' | 'drawFrom' | 'putBack', seen: Seen): ClientCommand {
  const { digits, state, workpiece } = seen;
  switch (type) {
    case 'makeLoads': {
      const several = openDues(state).flatMap(({ workpiece: other, step }) => {
        const isOnItsWay = productOf(state, other)?.way.some((candidate) => candidate.id === step.id) ?? false;
        return isOnItsWay && other.kind !== 'load' && (other.pieces ?? 0) > 1 ? [other] : [];
      });
      if (several.length === 0 && !digits.onceIn(4)) return alreadyAtMakeUp(seen);
      const from = digits.onceIn(4) ? workpiece : digits.amongOr(several, workpiece);
      const each = 1 + digits.below(Math.max(1, from.pieces ?? 6));
      return { type, workpieceId: from.id, pieces: Array.from({ length: 1 + digits.below(3) }, () => each) };
    }
    case 'joinWorkpieces': {
      const mixes = openDues(state).filter((due) => due.workpiece.kind === 'batch' && due.phase !== 'planned');
      const twinOf = (due: Due): Due | undefined => mixes.find((other) => other !== due && isAlike(due, other));
      const lead = digits.among(mixes.filter((due) => twinOf(due) !== undefined));
      const other = lead === undefined ? undefined : twinOf(lead);
      return {
        type,
        workpieceIds: [lead?.workpiece.id ?? workpiece.id, other?.workpiece.id ?? digits.amongOr(openOf(state), workpiece).id],
      };
    }
    case 'drawFrom': {
      const sources = openOf(state).filter((source) => source.kind === 'ferment' || source.kind === 'prep');
      const source = digits.onceIn(8) ? workpiece : digits.amongOr(sources, workpiece);
      const target = digits.amongOr(openOf(state), workpiece);
      return { type, fromWorkpieceId: source.id, toWorkpieceId: target.id, grams: part(digits, source.grams), ...despite(digits) };
    }
    case 'putBack':
      return putBack(seen);
    default:
      return unreachable(type);
  }
}

/** Nothing is in pieces yet: a dough is said to be, so that a day gets there. */
function alreadyAtMakeUp({ digits, state, workpiece }: Seen): CommandOf<'sayWhere'> {
  const doughs = openOf(state).filter((other) => productOf(state, other) !== null);
  const dough = digits.amongOr(doughs, workpiece);
  const way = productOf(state, dough)?.way ?? wayOf(state, dough);
  return { type: 'sayWhere', workpieceId: dough.id, stepId: digits.among(way.slice(0, 2))?.id ?? 'shape' };
}

function isAlike(one: Due, other: Due): boolean {
  return one.workpiece.formulaId === other.workpiece.formulaId && one.action.id === other.action.id;
}

function putBack({ digits, state, workpiece }: Seen): CommandOf<'putBack'> {
  const all = Object.values(state.workpieces);
  const left = all.filter((source) => source.scrapG > 0 || source.ending === 'discarded' || source.ending === 'finished');
  const takers = openOf(state).filter((taker) => taker.kind === 'batch' && (formulaOf(state, taker)?.takesBack.length ?? 0) > 0);
  const source = digits.onceIn(3) ? digits.amongOr(all, workpiece) : digits.amongOr(left, workpiece);
  const target = digits.amongOr(takers, workpiece);
  const allowed = formulaOf(state, target)?.takesBack.map((rule) => rule.what) ?? [];
  const what = digits.onceIn(4) ? digits.amongOr(putBackKindSchema.options, 'scrap') : digits.amongOr(allowed, 'oldBread');
  return { type: 'putBack', fromWorkpieceId: source.id, toWorkpieceId: target.id, what, grams: digits.below(400) / 2 };
}

function amountWord(type: 'planFeed' | 'addIngredient' | 'nameLoss', { digits, state, workpiece, stepId, nowMs }: Seen): ClientCommand {
  switch (type) {
    case 'planFeed': {
      const pot = digits.amongOr(
        openOf(state).filter((other) => other.stock !== null),
        workpiece,
      );
      return { type, workpieceId: pot.id, feedMs: nowMs + (digits.below(600) - 60) * MINUTE_MS, grams: 500 + digits.below(40) * 250 };
    }
    case 'addIngredient': {
      const ingredientId = digits.amongOr(state.ingredients?.document.map((ingredient) => ingredient.id) ?? [], 'sand');
      const lot = digits.onceIn(2) ? { lotNumber: `L${digits.below(9)}` } : {};
      return { type, workpieceId: workpiece.id, stepId, ingredientId, grams: digits.below(5) * 60, ...lot };
    }
    case 'nameLoss': {
      const what = digits.amongOr(lossNamed.shape.what.options, 'spill');
      const pieces = digits.onceIn(3) ? { pieces: digits.below(3) } : {};
      return { type, workpieceId: workpiece.id, what, grams: digits.onceIn(12) ? workpiece.grams : digits.below(200), ...pieces };
    }
    default:
      return unreachable(type);
  }
}

/** Food that has to be kept is used beyond its limit; where there is none yet, a dough is said to be where it has to be. */
function holdingWord({ digits, state, workpiece }: Seen): ClientCommand {
  const open = openOf(state);
  const kept = open.filter((other) => (holdingOf(state, other)?.limit ?? null) !== null);
  const later = open.filter((other) => productOf(state, other)?.keeping !== undefined);
  const dough = digits.among(later);
  if (kept.length === 0 && dough !== undefined && digits.onceIn(2)) {
    const product = productOf(state, dough);
    const at = product?.way.findIndex(({ id }) => id === product.keeping?.from) ?? -1;
    return { type: 'sayWhere', workpieceId: dough.id, stepId: product?.way[at + 1]?.id ?? 'load' };
  }
  const chosen = digits.onceIn(9) ? workpiece : digits.amongOr(kept, workpiece);
  return { type: 'decideHolding', workpieceId: chosen.id, reason: 'tasted, used at once', minutes: 60 + digits.below(181) };
}

/** Whoever stands at the oven moves what is in it; where nothing is, astray. */
function moveLoadWord({ digits, state, workpiece }: Seen): ClientCommand {
  const kitchen = state.kitchen?.document;
  const slots = kitchen === undefined ? [] : decksOf(kitchen).flatMap((deck) => deck.slots.map((slot) => slot.id));
  const inside = Object.values(state.workpieces).filter(({ slotIds }) => slotIds.length > 0);
  return { type: 'moveLoad', workpieceId: digits.amongOr(inside, workpiece).id, slotIds: [digits.amongOr(slots, 'attic')] };
}

function testPieceWord(type: 'startTestPiece' | 'endTestPiece', { digits, state }: Seen): ClientCommand {
  const kitchen = state.kitchen?.document;
  const slots = kitchen === undefined ? [] : decksOf(kitchen).flatMap((deck) => deck.slots.map((slot) => slot.id));
  if (type === 'startTestPiece') return { type, slotId: digits.amongOr([...slots, 'attic'], 'attic'), referenceMin: 1 + digits.below(20) };
  return { type, slotId: digits.amongOr(Object.keys(state.testPieces), digits.amongOr(slots, 'attic')), isDone: digits.onceIn(2) };
}

function airWord(type: 'readPlace' | 'openPlace' | 'beginProgramme', { digits, state }: Seen): ClientCommand {
  const placeIds = state.kitchen?.document.restPlaces.map((place) => place.id) ?? [];
  const placeId = digits.amongOr([...placeIds, 'attic'], 'attic');
  if (type === 'readPlace') return { type, placeId, celsius: digits.below(40) };
  if (type === 'openPlace') return { type, placeId, minutes: 1 + digits.below(30) };
  const withOne = state.kitchen?.document.restPlaces.find((place) => place.programme !== undefined);
  return { type, placeId: withOne === undefined || digits.onceIn(4) ? placeId : withOne.id };
}

function resourceWord(type: 'setDeck' | 'blockResource' | 'freeResource', seen: Seen): ClientCommand {
  const { digits, state, nowMs } = seen;
  const kitchen = state.kitchen?.document;
  switch (type) {
    case 'setDeck': {
      const deckIds = kitchen === undefined ? [] : decksOf(kitchen).map((deck) => deck.id);
      return { type, deckId: digits.amongOr([...deckIds, 'stove'], 'stove'), temperatureC: 180 + 5 * digits.below(30) };
    }
    case 'blockResource': {
      const minutes = digits.onceIn(4) ? {} : { minutes: 1 + digits.below(40) };
      return { type, resource: anyResource(digits, state), why: digits.amongOr(resourceBlocked.shape.why.options, 'cleaning'), ...minutes };
    }
    case 'freeResource': {
      const blocked = digits.among(state.blocked.filter(({ untilMs }) => untilMs === undefined || untilMs > nowMs));
      if (blocked === undefined && !digits.onceIn(4)) return resourceWord('blockResource', seen);
      return { type, resource: blocked === undefined || digits.onceIn(6) ? anyResource(digits, state) : blocked.resource };
    }
    default:
      return unreachable(type);
  }
}

/** The kitchen with a vessel more or less, the house a little higher up; now and then from a version that is behind. */
function documentWord(type: 'adoptKitchen' | 'adoptHouse', { digits, state, workpiece }: Seen): ClientCommand {
  const behind = digits.onceIn(5) ? 1 : 0;
  const { kitchen, house } = state;
  if (type === 'adoptKitchen' && kitchen !== null) {
    const { vessels } = kitchen.document;
    const chosen = digits.among(vessels)?.id;
    const by = digits.onceIn(2) ? 1 : -1;
    const counted = vessels.map((vessel) => (vessel.id === chosen ? { ...vessel, count: Math.max(1, vessel.count + by) } : vessel));
    return { type, fromVersion: kitchen.version - behind, kitchen: { ...kitchen.document, vessels: counted } };
  }
  if (type === 'adoptHouse' && house !== null)
    return { type, fromVersion: house.version - behind, house: { ...house.document, altitudeM: digits.below(2000) } };
  return { type: 'helpStep', workpieceId: workpiece.id, stepId: 'weigh' };
}

function anyResource(digits: Digits, state: FloorState): Resource {
  const kitchen = state.kitchen?.document;
  const all: Resource[] = [{ kind: 'bowl', id: 'washing-up' }];
  if (kitchen !== undefined)
    all.push(
      ...kitchen.mixers.map(({ id }): Resource => ({ kind: 'mixer', id })),
      ...kitchen.bowls.map(({ id }): Resource => ({ kind: 'bowl', id })),
      ...kitchen.restPlaces.map(({ id }): Resource => ({ kind: 'restPlace', id })),
      ...decksOf(kitchen).flatMap(({ id, slots }): Resource[] => [
        { kind: 'deck', id },
        ...slots.map((slot): Resource => ({ kind: 'slot', id: slot.id })),
      ]),
    );
  return digits.amongOr(all, { kind: 'bowl', id: idOf(1) });
}

function despite(digits: Digits): { despite?: Despite[] } {
  const all = despiteSchema.options;
  const first = digits.below(2 * all.length);
  return first < all.length ? { despite: all.slice(first) } : {};
}

/** A part of an amount in tenths of it, now and then more than there is. */
function part(digits: Digits, grams: number): number {
  return Math.round((grams * (1 + digits.below(11))) / 10);
}

function openOf(state: FloorState): readonly Workpiece[] {
  return Object.values(state.workpieces).filter((workpiece) => workpiece.finishedMs === null);
}

function stationIds(state: FloorState): readonly string[] {
  return state.kitchen?.document.stations.map((station) => station.id) ?? [];
}

function placeIds(state: FloorState): readonly string[] {
  return state.kitchen?.document.restPlaces.map((place) => place.id) ?? [];
}
