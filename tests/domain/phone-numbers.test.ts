import { describe, expect, test } from 'vitest';
import { amountsOnTop, addChoices, lotsOf, newAllergens } from '../../display/phone/add-model.ts';
import { typedNumber, valuesAround } from '../../display/phone/around-model.ts';
import { celsiusOf, degreesIn, readingText } from '../../display/phone/degrees.ts';
import { elsewhereOf, filterIn } from '../../display/phone/filter-model.ts';
import { openPanel, withoutPanel, withPanel } from '../../display/phone/panel-trail.ts';
import { placesOf } from '../../display/phone/places-model.ts';
import { askedReading, readingCommand, readingField, readWheres } from '../../display/phone/reading-model.ts';
import { MOST_TOLD, stillToTell } from '../../display/phone/told-refusals.ts';
import type { AnsweredTap } from '../../display/link/floor-link.ts';
import { isOfStation } from '../../display/parts/station-rows.ts';
import { clientCommandSchema } from '../../shared/floor/commands.ts';
import type { Role } from '../../shared/floor/role.ts';
import { boardRow } from './support/board-row.ts';
import { harbourFile } from './support/harbour.ts';
import { Floor } from './support/floor.ts';
import { idOf } from './support/ids.ts';

describe('P17 numbers by one touch', () => {
  test('chips are round, rise by their step, stay in the range, and hold the expected number', () => {
    expect(valuesAround(24.9, 0.5, 3, 4, { least: 0, most: 50 })).toEqual([23.5, 24, 24.5, 25, 25.5, 26, 26.5, 27]);
    expect(valuesAround(1, 1, 5, 2, { least: 1, most: 2 })).toEqual([1, 2]);
  });

  test('what is typed is read with a point or a comma and either minus; what is no number is none', () => {
    expect(['24.5', ' 24,5 ', '−3', '-3'].map(typedNumber)).toEqual([24.5, 24.5, -3, -3]);
    expect(['', 'warm', '2 4', '1,2,3'].map(typedNumber)).toEqual([null, null, null, null]);
  });

  // The fixed points of the scales, as everybody knows them: water freezes at 32 °F and boils at 212 °F; both meet at −40.
  test('°F are °C and back', () => {
    expect([0, 100, -40].map((celsius) => degreesIn('F', celsius))).toEqual([32, 212, -40]);
    expect([32, 212, -40].map((degrees) => celsiusOf('F', degrees))).toEqual([0, 100, -40]);
    for (let degrees = 20; degrees < 230; degrees += 1) expect(Math.round(degreesIn('F', celsiusOf('F', degrees)))).toBe(degrees);
    expect(readingText(24.5, 'C')).toBe('24.5\u00a0°C');
  });

  test('a dough out of the mixer is asked for what its formula wants, until somebody has read it', () => {
    const floor = Floor.harbour().bringTo('C1', 'turn-out');
    const piece = floor.piece('C1');
    expect(askedReading(floor.state, piece)).toBe('dough');
    expect(readWheres(floor.state, piece)).toContain('dough');
    expect(readingField(floor.state, piece, 'dough', 'C', floor.nowMs)).toMatchObject({ expected: 25, step: 0.5 });
    // 25 °C is 77 °F.
    expect(readingField(floor.state, piece, 'dough', 'F', floor.nowMs)).toMatchObject({ expected: 77, step: 1 });
    const command = readingCommand(piece.id, 'dough', 77, 'F');
    expect(clientCommandSchema.parse(command)).toEqual(command);
    floor.ok(command);
    expect(floor.piece('C1').readings.at(-1)).toMatchObject({ where: 'dough', celsius: 25 });
    expect(askedReading(floor.state, floor.piece('C1'))).toBeNull();
  });

  test('a load in the oven is asked for its core, as the step wants it', () => {
    const floor = Floor.harbour().bringTo('R1', 'bake');
    const piece = floor.piece('R1');
    const wanted = floor.due('R1').step.coreC;
    expect(wanted).toBeDefined();
    expect(askedReading(floor.state, piece)).toBe('core');
    expect(readingField(floor.state, piece, 'core', 'C', floor.nowMs).expected).toBe(wanted);
  });

  test('what goes in on top is offered in parts of what the formula takes, its own ingredients first', () => {
    const { units } = harbourFile().house;
    expect(amountsOnTop(2000, units)).toEqual([10, 20, 40, 100, 200]);
    expect(amountsOnTop(20, units)).toEqual([1, 2]);
    const floor = Floor.harbour().bringTo('C1', 'first-speed');
    const choices = addChoices(floor.state, floor.piece('C1'), ['salt']);
    expect(choices[0]?.ingredientId).toBe('salt');
    const isForeign = choices.map((choice) => choice.formulaG === null);
    expect(isForeign).toContain(true);
    expect(isForeign.slice(isForeign.indexOf(true))).not.toContain(false);
    expect(choices.length).toBe(floor.state.ingredients?.document.length);
  });

  test('a lot number that was said is offered again, and an allergen that is new to the dough is named', () => {
    const floor = Floor.harbour().bringTo('C1', 'first-speed');
    const on = { workpieceId: floor.id('C1'), stepId: floor.due('C1').action.id };
    const foreign = floor.state.ingredients?.document.find((one) => newAllergens(floor.state, floor.piece('C1'), one.id).length > 0);
    if (foreign === undefined) throw new Error('every ingredient has only what the dough has');
    floor.ok({ type: 'addIngredient', ...on, ingredientId: foreign.id, grams: 10, lotNumber: 'K 77' });
    expect(lotsOf(floor.state, floor.piece('C1'), foreign.id, 2)).toEqual(['K 77']);
    expect(newAllergens(floor.state, floor.piece('C1'), foreign.id)).toEqual([]);
  });
});

describe('P15 the list of one station', () => {
  test('hides nothing that calls: what is not listed is counted, by role', () => {
    const roles: readonly Role[] = ['lost', 'late', 'call', 'running'];
    const rows = roles.flatMap((role, index) => [
      boardRow(index * 3 + 1, { role, stationIds: ['oven'] }),
      boardRow(index * 3 + 2, { role, stationIds: ['bench'] }),
      boardRow(index * 3 + 3, { role }),
    ]);
    expect(elsewhereOf(rows, 'bench')).toEqual({ lost: 1, late: 1, calls: 1, strongest: 'lost' });
    expect(elsewhereOf(rows, null)).toBeNull();
    const listed = rows.filter((row) => isOfStation(row, 'bench') && row.role !== 'running').length;
    expect(listed + 3).toBe(rows.filter((row) => row.role !== 'running').length);
  });

  test('of a station that the kitchen no longer has is everybody’s', () => {
    expect(filterIn([{ id: 'oven', name: 'Oven', hands: 1 }], 'gone')).toBeNull();
  });
});

describe('P16 where everything stands', () => {
  test('every dough that was begun stands once, where the floor says, or apart where nobody said', () => {
    const floor = Floor.harbour().bringTo('C1', 'fold-1');
    floor.bringTo('R1', 'bake').bringTo('M1', 'second-speed');
    const { places, mixers, ovens, unplaced } = placesOf(floor.state, floor.nowMs);
    const slots = ovens.flatMap((oven) => oven.decks.flatMap((deck) => deck.slots));
    const shown = new Set([
      ...places.flatMap((stand) => stand.doughs.map((dough) => dough.workpieceId)),
      ...mixers.flatMap((mixer) => mixer.dough?.workpieceId ?? []),
      ...slots.flatMap((slot) => slot.dough?.workpieceId ?? []),
      ...unplaced.map((dough) => dough.workpieceId),
    ]);
    const begun = Object.values(floor.state.workpieces).filter((piece) => piece.finishedMs === null && Object.keys(piece.steps).length > 0);
    expect([...shown].sort()).toEqual(begun.map((piece) => piece.id).sort());
    for (const piece of begun) {
      for (const slot of slots.filter((one) => piece.slotIds.includes(one.slotId))) expect(slot.dough?.workpieceId).toBe(piece.id);
      const stand = places.find((one) => one.doughs.some((dough) => dough.workpieceId === piece.id));
      if (stand !== undefined) expect(stand.place.id).toBe(piece.placeId);
    }
    expect(mixers.some((mixer) => mixer.dough?.tag === 'M1')).toBe(true);
  });

  test('what is only planned stands nowhere, and what nobody said is not guessed', () => {
    const floor = Floor.harbour();
    const before = placesOf(floor.state, floor.nowMs);
    expect(before.places.flatMap((stand) => stand.doughs)).toEqual([]);
    expect(before.unplaced).toEqual([]);
    floor.finish('C1', 'weigh');
    const piece = { ...floor.piece('C1'), placeId: null, mixerId: null, vessels: [] };
    const state = { ...floor.state, workpieces: { ...floor.state.workpieces, [piece.id]: piece } };
    const [apart] = placesOf(state, floor.nowMs).unplaced;
    expect(apart).toMatchObject({ tag: 'C1', vessels: [] });
  });
});

describe('P18 what came of taps', () => {
  const refused = (n: number): AnsweredTap => ({
    commandId: idOf(n),
    command: { type: 'hearAllCalls' },
    outcome: { ok: false, refusal: { code: 'nothingToUndo' } },
  });
  const after = (taps: readonly (AnsweredTap | null)[]): readonly AnsweredTap[] =>
    taps.reduce<readonly AnsweredTap[]>((told, lastAnswer) => stillToTell(told, { lastAnswer }), []);

  test('one refusal goes with the next action, several stay', () => {
    expect(after([refused(1), null])).toEqual([]);
    expect(after([refused(1), refused(1), refused(2), null]).map((tap) => tap.commandId)).toEqual([idOf(1), idOf(2)]);
  });

  test('what went well, or will be sent again, is no refusal; the newest are kept', () => {
    const fine: AnsweredTap = { ...refused(9), outcome: { ok: true, sequence: 1, undoable: false } };
    const again: AnsweredTap = { ...refused(8), outcome: { ok: false, refusal: { code: 'notKept', cause: 'diskFull' } } };
    expect(after([fine, again])).toEqual([]);
    const many = after(Array.from({ length: MOST_TOLD + 5 }, (_, index) => refused(index + 1)));
    expect(many.map((tap) => tap.commandId)).toEqual(Array.from({ length: MOST_TOLD }, (_, index) => idOf(index + 6)));
  });
});

test('P19 back leads to the panel that this one was opened from, and never in a circle', () => {
  const trail = withPanel(withPanel(withPanel([], 'other'), 'more'), 'where');
  expect(openPanel(trail)).toBe('where');
  expect(openPanel(withoutPanel(trail))).toBe('more');
  expect(withPanel(trail, 'other')).toEqual(['other']);
  expect(openPanel(withoutPanel(withPanel([], 'count')))).toBe('actions');
});
