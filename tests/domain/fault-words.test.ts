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
};

describe('T1 faults of documents are facts, and every language has its words for them', () => {
  test.each(Object.values(FACTS))('$code names what it is about in all three', (facts) => {
    const said = [english, german, french].map((words) => words(facts));
    expect(new Set(said).size).toBe(3);
    const named = Object.entries(facts).flatMap(([key, value]) => (key === 'code' || value === null ? [] : [value].flat().map(String)));
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
