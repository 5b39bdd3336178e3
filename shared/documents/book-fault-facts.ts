import { z } from 'zod';
import { unreachable } from '../result.ts';
import { putBackKindSchema } from './formula.ts';
import { claimSchema, stepKindSchema } from './method.ts';

const id = z.string();
const formulaKind = z.enum(['dough', 'prep', 'ferment']);
const by = z.array(z.string()).min(1);

/** What is impossible in a formula, a product, an ingredient or a batch, in facts. */
export const bookFaultOptions = [
  z.strictObject({ code: z.literal('ingredientUnknown'), id }),
  z.strictObject({ code: z.literal('formulaUnknown'), id }),
  z.strictObject({ code: z.literal('productUnknown'), id }),
  z.strictObject({ code: z.literal('placeUnknown'), id }),
  z.strictObject({ code: z.literal('claimUnknown'), kind: claimSchema.shape.kind, id }),
  z.strictObject({ code: z.literal('slotUnknown'), id }),
  /** Second speed, and each mixer that will do has one. */
  z.strictObject({ code: z.literal('secondSpeedMissing'), mixers: by }),
  z.strictObject({ code: z.literal('stepUnknown'), id }),
  /** Only ferments and preps can be drawn from. */
  z.strictObject({ code: z.literal('takenIsDough'), id }),
  z.strictObject({ code: z.literal('madeOfItself'), id, into: id }),
  z.strictObject({ code: z.literal('notAPrep'), id, kind: formulaKind }),
  z.strictObject({ code: z.literal('notAdded'), step: id, id }),
  z.strictObject({ code: z.literal('lettersTaken'), letters: z.string(), by: z.string() }),
  z.strictObject({ code: z.literal('partUnknown'), name: z.string() }),
  z.strictObject({ code: z.literal('partTakenTwice'), name: z.string() }),
  z.strictObject({ code: z.literal('partIdle'), name: z.string() }),
  z.strictObject({ code: z.literal('seedOutsideFerment') }),
  z.strictObject({ code: z.literal('seedTwice') }),
  /** Made with what was kept back of it, and nothing is ever kept back. */
  z.strictObject({ code: z.literal('seedNotKept') }),
  z.strictObject({ code: z.literal('keepsSeed'), kind: formulaKind }),
  z.strictObject({ code: z.literal('keepingOfPreps'), kind: formulaKind }),
  z.strictObject({ code: z.literal('noWeight') }),
  z.strictObject({ code: z.literal('noFlour') }),
  z.strictObject({ code: z.literal('takesBackTwice'), what: putBackKindSchema }),
  z.strictObject({ code: z.literal('vesselsUnnamed') }),
  z.strictObject({ code: z.literal('stepNotBefore'), id }),
  z.strictObject({ code: z.literal('untilBefore'), id }),
  z.strictObject({ code: z.literal('lagOrder'), earliestMin: z.number(), latestMin: z.number() }),
  z.strictObject({ code: z.literal('ripeningOrder') }),
  z.strictObject({ code: z.literal('yieldOfOther') }),
  z.strictObject({ code: z.literal('bakeLast') }),
  z.strictObject({ code: z.literal('amountUnwritten'), formula: id, id }),
  /** More of an ingredient is added late or held back than the formula has of it. */
  z.strictObject({ code: z.literal('addedTooMuch'), id, hasG: z.number(), addedG: z.number() }),
  z.strictObject({ code: z.literal('stepOfMethod'), id, formula: id }),
  z.strictObject({ code: z.literal('stepOfProduct'), id, product: id }),
  z.strictObject({ code: z.literal('waitsForLater'), step: id, joins: id }),
  z.strictObject({ code: z.literal('readyAfterWithin'), readyMin: z.number(), withinMin: z.number() }),
  /** Products or formulas rest on what is taken away. */
  z.strictObject({ code: z.literal('stepNeeded'), id, by }),
  z.strictObject({ code: z.literal('lineNeeded'), id, by }),
  z.strictObject({ code: z.literal('kindNeeded'), kind: formulaKind, by }),
  z.strictObject({ code: z.literal('flourNeeded'), by }),
  z.strictObject({ code: z.literal('formsOfYeastOnly') }),
  z.strictObject({ code: z.literal('productOfOther'), id, formula: id, wanted: id }),
  z.strictObject({ code: z.literal('cutsMissing') }),
  z.strictObject({ code: z.literal('divideNotLast'), formula: id }),
  z.strictObject({ code: z.literal('divideTwice'), formula: id }),
  // Of the shape, where a form can have it while somebody types.
  z.strictObject({ code: z.literal('atLeast'), least: z.number() }),
  z.strictObject({ code: z.literal('atMost'), most: z.number() }),
  z.strictObject({ code: z.literal('textNeeded') }),
  z.strictObject({ code: z.literal('textTooLong'), most: z.number() }),
  z.strictObject({ code: z.literal('numberNeeded') }),
  z.strictObject({ code: z.literal('wholeNeeded') }),
  z.strictObject({ code: z.literal('oneNeeded') }),
  z.strictObject({ code: z.literal('tooMany'), most: z.number() }),
  z.strictObject({ code: z.literal('choiceNeeded') }),
  z.strictObject({ code: z.literal('keyForm') }),
  z.strictObject({ code: z.literal('lettersForm') }),
  z.strictObject({ code: z.literal('weightNeeded') }),
  z.strictObject({ code: z.literal('earliestAfterTarget'), earliestMin: z.number(), targetMin: z.number() }),
  z.strictObject({ code: z.literal('latestBeforeTarget'), latestMin: z.number(), targetMin: z.number() }),
  z.strictObject({ code: z.literal('lostBeforeLate'), lostMin: z.number(), lateMin: z.number() }),
  z.strictObject({ code: z.literal('checkNeeded') }),
  z.strictObject({ code: z.literal('phasesNeeded') }),
  z.strictObject({ code: z.literal('phasesDiffer'), sumMin: z.number(), targetMin: z.number() }),
  z.strictObject({ code: z.literal('phasesOfOther'), kind: stepKindSchema }),
  z.strictObject({ code: z.literal('additionOfOne') }),
  z.strictObject({ code: z.literal('additionInOneWay') }),
  z.strictObject({ code: z.literal('heldBackFormula') }),
] as const;

export type BookFaultFacts = z.infer<(typeof bookFaultOptions)[number]>;

const CLAIM_NAMES: Readonly<Record<z.infer<typeof claimSchema>['kind'], string>> = {
  mixer: 'mixer',
  bowl: 'bowl',
  restPlace: 'rest place',
  vessel: 'vessel',
  deck: 'deck',
  bench: 'bench',
  hands: 'station',
};

const PUT_BACK_NAMES: Readonly<Record<z.infer<typeof putBackKindSchema>, string>> = {
  scrap: 'scrap dough',
  trim: 'trim',
  oldDough: 'old dough',
  oldBread: 'old bread',
};

/** A fault of the book in English, for files, the api and the command line. */
export function bookFaultMessage(facts: BookFaultFacts): string {
  switch (facts.code) {
    case 'ingredientUnknown':
      return `there is no ingredient "${facts.id}"`;
    case 'formulaUnknown':
      return `there is no formula "${facts.id}"`;
    case 'productUnknown':
      return `there is no product "${facts.id}"`;
    case 'placeUnknown':
      return `there is no rest place "${facts.id}"`;
    case 'claimUnknown':
      return `there is no ${CLAIM_NAMES[facts.kind]} "${facts.id}"`;
    case 'slotUnknown':
      return `there is no slot "${facts.id}" in an oven`;
    case 'secondSpeedMissing':
      return `second speed, and ${facts.mixers.join(', ')} has one speed only`;
    case 'stepUnknown':
      return `there is no step "${facts.id}"`;
    case 'takenIsDough':
      return `"${facts.id}" is a dough; only a ferment or a prep can be taken`;
    case 'madeOfItself':
      return `"${facts.id}" is made with "${facts.into}" itself`;
    case 'notAPrep':
      return `"${facts.id}" is a ${facts.kind}, not a prep`;
    case 'notAdded':
      return `step "${facts.step}" does not take "${facts.id}" among its additions`;
    case 'lettersTaken':
      return `"${facts.letters}" already belongs to formula "${facts.by}"`;
    case 'partUnknown':
      return `"${facts.name}" is not a part that stands before this one`;
    case 'partTakenTwice':
      return `"${facts.name}" is already taken`;
    case 'partIdle':
      return `"${facts.name}" goes into nothing`;
    case 'seedOutsideFerment':
      return 'only a ferment is made with what was kept back of it';
    case 'seedTwice':
      return 'what was kept back goes in once';
    case 'seedNotKept':
      return 'it is made with what was kept back of it: say how much stays in the pot';
    case 'keepsSeed':
      return `only a ferment keeps a seed, and this formula's kind is ${facts.kind}`;
    case 'keepingOfPreps':
      return `only a prep or a product says how it is kept, and this formula's kind is ${facts.kind}`;
    case 'noWeight':
      return 'nothing in it weighs anything';
    case 'noFlour':
      return 'a dough has flour in it';
    case 'takesBackTwice':
      return `${PUT_BACK_NAMES[facts.what]} has two rules`;
    case 'vesselsUnnamed':
      return 'a claim on vessels names which, best first';
    case 'stepNotBefore':
      return `"${facts.id}" is not a step that stands before this one`;
    case 'untilBefore':
      return `"${facts.id}" is over before this step begins`;
    case 'lagOrder':
      return `latest (${facts.latestMin} min) must not be before earliest (${facts.earliestMin} min)`;
    case 'yieldOfOther':
      return 'only a prep loses weight by its yield; what a bake loses stands with the product';
    case 'ripeningOrder':
      return 'the least temperature is below the best, and the best below the most and at least halfway up to it';
    case 'bakeLast':
      return 'a bake cannot be the last step: something has to take it out';
    case 'amountUnwritten':
      return `the parts of "${facts.formula}" do not say how much of "${facts.id}" goes in`;
    case 'addedTooMuch':
      return `the steps add ${facts.addedG} g of "${facts.id}", the parts have ${facts.hasG} g`;
    case 'stepOfMethod':
      return `"${facts.id}" is already a step of formula "${facts.formula}"`;
    case 'stepOfProduct':
      return `"${facts.id}" is already a step of product "${facts.product}"`;
    case 'waitsForLater':
      return `it waits for "${facts.step}", which does not come before "${facts.joins}"`;
    case 'readyAfterWithin':
      return `ready ${facts.readyMin} min before, and begun within ${facts.withinMin} min before: both cannot be`;
    case 'stepNeeded':
      return `step "${facts.id}" is still needed by ${facts.by.join(', ')}`;
    case 'lineNeeded':
      return `how much of "${facts.id}" goes in is still needed by ${facts.by.join(', ')}`;
    case 'kindNeeded':
      return `as a ${facts.kind} it can no longer be taken by ${facts.by.join(', ')}`;
    case 'flourNeeded':
      return `without it as a flour these have none: ${facts.by.join(', ')}`;
    case 'formsOfYeastOnly':
      return 'only yeast is fresh, dry or instant';
    case 'productOfOther':
      return `"${facts.id}" is made of formula "${facts.formula}", not "${facts.wanted}"`;
    case 'cutsMissing':
      return 'a dough needs at least one cut';
    case 'divideNotLast':
      return `formula "${facts.formula}" must end its method with a divide before it can have several cuts`;
    case 'divideTwice':
      return `formula "${facts.formula}" must divide once only, at the end of its method, before it can have several cuts`;
    case 'atLeast':
      return `at least ${facts.least}`;
    case 'atMost':
      return `at most ${facts.most}`;
    case 'textNeeded':
      return 'something has to stand here';
    case 'textTooLong':
      return `at most ${facts.most} characters`;
    case 'numberNeeded':
      return 'a number has to stand here';
    case 'wholeNeeded':
      return 'whole numbers only';
    case 'oneNeeded':
      return 'at least one of them';
    case 'tooMany':
      return `at most ${facts.most} of them`;
    case 'choiceNeeded':
      return 'one of the choices';
    case 'keyForm':
      return 'lower case letters, digits and hyphens, beginning with a letter, at most 40';
    case 'lettersForm':
      return 'one upper case letter, and one lower case letter at most';
    case 'weightNeeded':
      return 'more than nothing';
    case 'earliestAfterTarget':
      return `earliest (${facts.earliestMin} min) must not be after target (${facts.targetMin} min)`;
    case 'latestBeforeTarget':
      return `latest (${facts.latestMin} min) must not be before target (${facts.targetMin} min)`;
    case 'lostBeforeLate':
      return `lost (${facts.lostMin} min) must not come before late (${facts.lateMin} min)`;
    case 'checkNeeded':
      return 'a judged step needs the check that ends it';
    case 'phasesNeeded':
      return 'a bake needs its phases';
    case 'phasesDiffer':
      return `the phases last ${facts.sumMin} min, the target says ${facts.targetMin} min`;
    case 'phasesOfOther':
      return `only a bake has phases, and this step's kind is ${facts.kind}`;
    case 'additionOfOne':
      return 'an addition names an item or a formula, one of the two';
    case 'additionInOneWay':
      return 'an addition is per cent or grams a piece, not both';
    case 'heldBackFormula':
      return 'only an ingredient can be held back';
    default:
      return unreachable(facts);
  }
}
