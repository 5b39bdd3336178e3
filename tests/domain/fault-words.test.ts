import { describe, expect, test } from 'vitest';
import { faultWords as german } from '../../display/words/de/faults.ts';
import { faultWords as english } from '../../display/words/en/faults.ts';
import { faultWords as french } from '../../display/words/fr/faults.ts';
import { faultFactsSchema, faultMessage, type FaultCode, type FaultFacts } from '../../shared/documents/fault-facts.ts';
import { houseFaults } from '../../shared/documents/house-faults.ts';
import { kitchenFaults } from '../../shared/documents/kitchen-faults.ts';
import { outcomeSchema } from '../../shared/floor/refusals.ts';
import { harbourFile } from './support/harbour.ts';

const FACTS: { readonly [Code in FaultCode]: Extract<FaultFacts, { code: Code }> } = {
  idTwice: { code: 'idTwice', id: 'quay' },
  idElsewhere: { code: 'idElsewhere', id: 'quay', path: 'kitchen.ovens[0].decks[0].id' },
  stationUnknown: { code: 'stationUnknown', id: 'quay' },
  mixerUnknown: { code: 'mixerUnknown', id: 'quay' },
  leastOverMost: { code: 'leastOverMost' },
  stillNeeded: { code: 'stillNeeded', name: 'Quay shelf', by: ['C1', 'Rye'] },
  vesselsHeld: { code: 'vesselsHeld', name: 'Quay tins', heldCount: 7 },
  zoneUnknown: { code: 'zoneUnknown', zone: 'Europe/Quay' },
  hoursEmpty: { code: 'hoursEmpty', at: '05:17' },
  cleaningTooLong: { code: 'cleaningTooLong', minutes: 47, windowMin: 31 },
  slotUnknown: { code: 'slotUnknown', id: 'quay' },
  secondSpeedMissing: { code: 'secondSpeedMissing', mixers: ['quay'] },
  ingredientUnknown: { code: 'ingredientUnknown', id: 'quay-flour' },
  formulaUnknown: { code: 'formulaUnknown', id: 'quay' },
  productUnknown: { code: 'productUnknown', id: 'quay-loaf' },
  placeUnknown: { code: 'placeUnknown', id: 'quay' },
  claimUnknown: { code: 'claimUnknown', kind: 'restPlace', id: 'quay' },
  stepUnknown: { code: 'stepUnknown', id: 'quay' },
  takenIsDough: { code: 'takenIsDough', id: 'quay' },
  madeOfItself: { code: 'madeOfItself', id: 'quay', into: 'pier' },
  notAPrep: { code: 'notAPrep', id: 'quay', kind: 'ferment' },
  notAdded: { code: 'notAdded', step: 'fill', id: 'quay' },
  lettersTaken: { code: 'lettersTaken', letters: 'Qu', by: 'quay' },
  partUnknown: { code: 'partUnknown', name: 'Quay sponge' },
  partTakenTwice: { code: 'partTakenTwice', name: 'Quay sponge' },
  partIdle: { code: 'partIdle', name: 'Quay sponge' },
  seedOutsideFerment: { code: 'seedOutsideFerment' },
  seedTwice: { code: 'seedTwice' },
  seedNotKept: { code: 'seedNotKept' },
  keepsSeed: { code: 'keepsSeed', kind: 'dough' },
  keepingOfPreps: { code: 'keepingOfPreps', kind: 'dough' },
  noWeight: { code: 'noWeight' },
  noFlour: { code: 'noFlour' },
  takesBackTwice: { code: 'takesBackTwice', what: 'trim' },
  vesselsUnnamed: { code: 'vesselsUnnamed' },
  stepNotBefore: { code: 'stepNotBefore', id: 'quay' },
  untilBefore: { code: 'untilBefore', id: 'quay' },
  lagOrder: { code: 'lagOrder', earliestMin: 17, latestMin: 12 },
  ripeningOrder: { code: 'ripeningOrder' },
  yieldOfOther: { code: 'yieldOfOther' },
  bakeLast: { code: 'bakeLast' },
  amountUnwritten: { code: 'amountUnwritten', formula: 'quay', id: 'pier' },
  addedTooMuch: { code: 'addedTooMuch', id: 'quay-salt', hasG: 105, addedG: 120 },
  stepOfMethod: { code: 'stepOfMethod', id: 'fill', formula: 'quay' },
  stepOfProduct: { code: 'stepOfProduct', id: 'fill', product: 'quay-loaf' },
  waitsForLater: { code: 'waitsForLater', step: 'divide', joins: 'fill' },
  readyAfterWithin: { code: 'readyAfterWithin', readyMin: 45, withinMin: 30 },
  stepNeeded: { code: 'stepNeeded', id: 'fill', by: ['quay-loaf'] },
  lineNeeded: { code: 'lineNeeded', id: 'quay', by: ['pier-loaf'] },
  kindNeeded: { code: 'kindNeeded', kind: 'dough', by: ['quay', 'pier'] },
  flourNeeded: { code: 'flourNeeded', by: ['quay'] },
  formsOfYeastOnly: { code: 'formsOfYeastOnly' },
  productOfOther: { code: 'productOfOther', id: 'quay-loaf', formula: 'quay', wanted: 'pier' },
  cutsMissing: { code: 'cutsMissing' },
  divideNotLast: { code: 'divideNotLast', formula: 'quay' },
  divideTwice: { code: 'divideTwice', formula: 'quay' },
  atLeast: { code: 'atLeast', least: 3 },
  atMost: { code: 'atMost', most: 30 },
  textNeeded: { code: 'textNeeded' },
  textTooLong: { code: 'textTooLong', most: 60 },
  numberNeeded: { code: 'numberNeeded' },
  wholeNeeded: { code: 'wholeNeeded' },
  oneNeeded: { code: 'oneNeeded' },
  tooMany: { code: 'tooMany', most: 40 },
  choiceNeeded: { code: 'choiceNeeded' },
  keyForm: { code: 'keyForm' },
  lettersForm: { code: 'lettersForm' },
  weightNeeded: { code: 'weightNeeded' },
  earliestAfterTarget: { code: 'earliestAfterTarget', earliestMin: 17, targetMin: 12 },
  latestBeforeTarget: { code: 'latestBeforeTarget', latestMin: 12, targetMin: 17 },
  lostBeforeLate: { code: 'lostBeforeLate', lostMin: 2, lateMin: 5 },
  checkNeeded: { code: 'checkNeeded' },
  phasesNeeded: { code: 'phasesNeeded' },
  phasesDiffer: { code: 'phasesDiffer', sumMin: 44, targetMin: 45 },
  phasesOfOther: { code: 'phasesOfOther', kind: 'hands' },
  additionOfOne: { code: 'additionOfOne' },
  additionInOneWay: { code: 'additionInOneWay' },
  heldBackFormula: { code: 'heldBackFormula' },
};

/** Choices are told by their names in each language. */
const CHOICES: ReadonlySet<string> = new Set(['code', 'kind', 'what']);

describe('T1 faults of documents are facts, and every language has its words for them', () => {
  test.each(Object.values(FACTS))('$code names what it is about in all three', (facts) => {
    const said = [english, german, french].map((words) => words(facts));
    expect(new Set(said).size).toBe(3);
    const named = Object.entries(facts).flatMap(([key, value]) => (CHOICES.has(key) || value === null ? [] : [value].flat().map(String)));
    for (const text of said) for (const name of named) expect(text).toContain(name);
    expect(english(facts)).toBe(faultMessage(facts));
    expect(faultFactsSchema.parse(facts)).toEqual(facts);
  });

  test('a kitchen and a house that are wrong have no fault without facts', () => {
    const { kitchen, house } = harbourFile();
    const [station] = kitchen.stations;
    const [oven] = kitchen.ovens;
    if (station === undefined || oven === undefined) throw new Error('the demo kitchen has neither station nor oven');
    const wrong = {
      ...kitchen,
      stations: [...kitchen.stations, station],
      mixers: kitchen.mixers.map((mixer) => ({ ...mixer, station: 'cellar', leastG: mixer.mostG + 1 })),
      bowls: kitchen.bowls.map((bowl) => ({ ...bowl, fits: ['cellar'] })),
      ovens: [...kitchen.ovens, { ...oven, id: 'second-oven' }],
    };
    const faults = [...kitchenFaults(wrong), ...houseFaults({ ...house, zone: 'Europe/Quay' })];
    expect(new Set(faults.map((fault) => fault.facts?.code))).toEqual(
      new Set(['idTwice', 'stationUnknown', 'leastOverMost', 'mixerUnknown', 'idElsewhere', 'zoneUnknown']),
    );
  });

  test('an answer that was kept before faults had facts can still be read', () => {
    const kept = { ok: false, refusal: { code: 'documentFaulty', faults: [{ path: 'house.zone', message: 'there is no such zone' }] } };
    expect(outcomeSchema.parse(kept)).toEqual(kept);
  });
});
