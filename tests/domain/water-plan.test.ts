import { describe, expect, test } from 'vitest';
import type { House } from '../../shared/documents/house.ts';
import { customaryForms, customaryOf } from '../../shared/floor/water-customary.ts';
import { waterInputsOf, waterPlanOf, type WaterInputs, type WaterPlan, type WaterTemperatures } from '../../shared/floor/water-plan.ts';
import { assert } from '../../shared/result.ts';
import { coldestDoughC } from '../../shared/trade/water-temperature.ts';
import type { Floor } from './support/floor.ts';
import { BUNS_10, changedFloor, LEVAIN_POT, mixingFloor, PLAIN_10, POOLISH_5, RICH_10, warming } from './support/mixing-house.ts';

const AT_22: WaterTemperatures = { flourC: 22, roomC: 22, prefermentC: null, tapC: null };

function planOf(floor: Floor, tag: string, temperatures: Partial<WaterTemperatures> = {}): WaterPlan {
  const plan = waterPlanOf(floor.state, floor.piece(tag), { ...AT_22, ...temperatures });
  assert(plan !== null, `${tag} has no water`);
  return plan;
}

function inputsOf(floor: Floor, tag: string): WaterInputs {
  return waterInputsOf(floor.state, floor.piece(tag), floor.nowMs);
}

function read(floor: Floor, tag: string, where: 'room' | 'flour' | 'tap' | 'preferment' | 'dough', celsius: number): void {
  floor.ok({ type: 'readTemperature', workpieceId: floor.id(tag), where, celsius });
}

function houseOf(floor: Floor): House {
  assert(floor.state.house !== null, 'the day brought in a house');
  return floor.state.house.document;
}

const fahrenheit = (f: number): number => (f - 32) / 1.8;

describe('Q7 the water’s temperature for a dough, by the numbers of trade.md', () => {
  test('26 °C, rise 3, flour and room 22: 25 °C (German form, fischeimteigmantel 2021)', () => {
    expect(planOf(changedFloor(warming(3, 26), PLAIN_10), 'A1').requiredC).toBeCloseTo(25, 9);
  });

  test('26 °C, rise 5, flour and room 22, preferment 6: 34 °C (baeckerlatein, "Teigtemperatur")', () => {
    expect(planOf(changedFloor(warming(5, 26), POOLISH_5), 'P1', { prefermentC: 6 }).requiredC).toBeCloseTo(34, 9);
  });

  test('base 60, room and flour 22: 16 °C (tutti-sandwiches.fr)', () => {
    const floor = changedFloor((file) => {
      warming(5, 25)(file);
      file.house.water.form = 'base';
    }, PLAIN_10);
    const plan = planOf(floor, 'A1');
    const { value, ...said } = customaryOf(plan, houseOf(floor));
    expect(said).toEqual({ form: 'base', unit: 'C' });
    expect(value).toBeCloseTo(60, 9);
    expect(plan.requiredC).toBeCloseTo(16, 9);
  });

  test('75 °F, flour and room 65 °F, friction 8: 87 °F (San Francisco Baking Institute hand-out)', () => {
    const floor = changedFloor((file) => {
      warming(8 / 3 / 1.8, fahrenheit(75))(file);
      file.house.water.form = 'friction';
      file.house.units.temperature = 'F';
    }, PLAIN_10);
    const plan = planOf(floor, 'A1', { flourC: fahrenheit(65), roomC: fahrenheit(65) });
    const { value, ...said } = customaryOf(plan, houseOf(floor));
    expect(said).toEqual({ form: 'friction', unit: 'F' });
    expect(value).toBeCloseTo(8, 9);
    expect(plan.requiredC).toBeCloseTo(fahrenheit(87), 9);
    // The French sum in °F: 87 + 65 + 65.
    expect(customaryForms(plan, 'F').base).toBeCloseTo(217, 9);
  });

  test('75 °F, flour, room and starter 71 °F, friction 20: 67 °F (Cook’s Illustrated how-to 5818)', () => {
    const floor = changedFloor(warming(20 / 4 / 1.8, fahrenheit(75)), POOLISH_5);
    const at = fahrenheit(71);
    const plan = planOf(floor, 'P1', { flourC: at, roomC: at, prefermentC: at });
    expect(plan.requiredC).toBeCloseTo(fahrenheit(67), 9);
    expect(customaryForms(plan, 'F').friction).toBeCloseTo(20, 9);
  });

  test('a mixer of which nobody knows anything warms by 4 K (trade.md: 3 to 5 in normal mixing), the kitchen’s own word comes before', () => {
    expect(planOf(mixingFloor(PLAIN_10), 'A1')).toMatchObject({ mixerId: 'spiral', rise: { riseK: 4, from: 'custom', count: 0 } });
    expect(planOf(mixingFloor(BUNS_10), 'B1')).toMatchObject({ mixerId: 'fork', rise: { riseK: 2, from: 'document' } });
  });

  test('where the method names no mixer, the first that takes the dough’s weight', () => {
    const floor = changedFloor(({ kitchen, formulas }) => {
      for (const mixer of kitchen.mixers) if (mixer.id === 'spiral') mixer.mostG = 10_000;
      for (const step of formulas.flatMap((formula) => formula.method)) for (const claim of step.claims) claim.ids = [];
    }, PLAIN_10);
    expect(planOf(floor, 'A1').mixerId).toBe('fork');
  });

  test('nothing is said of a dough without a temperature, nor of a pot’s pieces', () => {
    const floor = changedFloor((file) => {
      for (const formula of file.formulas) delete formula.doughC;
    }, PLAIN_10);
    expect(waterPlanOf(floor.state, floor.piece('A1'), AT_22)).toBeNull();
  });
});

describe('Q8 ice within the recipe’s water', () => {
  /** Of 10 kg of water at 20 °C that should be 10 °C. */
  const TEN_KG = { ...PLAIN_10, doughG: (10_000 * 1650) / 650 };
  const HOT = { flourC: 26.5, roomC: 26.5, tapC: 20 };

  test('10 kg, tap 20 °C, required 10 °C: 1.002 kg of ice at 0 °C, 0.919 kg at −18 °C (trade.md), on the scale of 5 g', () => {
    const plan = planOf(mixingFloor(TEN_KG), 'A1', HOT);
    expect(plan.requiredC).toBeCloseTo(10, 9);
    expect(plan.ice).toEqual({ iceG: 1000, tapWaterG: 9000, isReachable: true });
    const colder = changedFloor((file) => {
      file.house.water.iceC = -18;
    }, TEN_KG);
    expect(planOf(colder, 'A1', HOT).ice).toEqual({ iceG: 920, tapWaterG: 9080, isReachable: true });
  });

  test('none where the tap is cold enough, nothing said where nobody read the tap', () => {
    expect(planOf(mixingFloor(TEN_KG), 'A1', { ...HOT, tapC: 9 }).ice).toEqual({ iceG: 0, tapWaterG: 10_000, isReachable: true });
    expect(planOf(mixingFloor(TEN_KG), 'A1', { ...HOT, tapC: null }).ice).toBeNull();
  });

  test('where all of it as ice is not enough, the coldest that the dough can become is said', () => {
    const floor = changedFloor(warming(4, -2), TEN_KG);
    const plan = planOf(floor, 'A1', { flourC: 40, roomC: 40, tapC: 20 });
    expect(plan.ice).toEqual({ iceG: 10_000, tapWaterG: 0, isReachable: false });
    expect(plan.coldestDoughC).toBeCloseTo(coldestDoughC({ temperaturesC: [40, 40], riseK: 4, iceC: 0 }), 9);
    expect(planOf(mixingFloor(TEN_KG), 'A1', HOT).coldestDoughC).toBeNull();
  });

  test('what is kept back at first is never ice', () => {
    const floor = changedFloor(warming(4, -2), RICH_10);
    const { liquid, ice, coldestDoughC: coldestC } = planOf(floor, 'R1', { flourC: 40, roomC: 40, tapC: 20 });
    expect(liquid.heldBackG).toBeGreaterThan(300);
    expect(ice).toEqual({ iceG: liquid.grams - liquid.heldBackG, tapWaterG: liquid.heldBackG, isReachable: false });
    expect(coldestC).toBeGreaterThan(coldestDoughC({ temperaturesC: [40, 40], riseK: 4, iceC: 0 }));
  });

  test('milk is poured where there is no water, and no ice is put into it', () => {
    const plan = planOf(mixingFloor(BUNS_10), 'B1', { tapC: 30 });
    expect(plan.liquid).toMatchObject({ name: 'Milk', isWater: false, grams: 6000 });
    expect(plan.ice).toBeNull();
  });
});

describe('Q9 the balance of heat is a second opinion where something is far from the room', () => {
  test('10 kg of flour of 22 °C and 6.5 kg of water to 25 °C, rise 4 K: 20.34 °C without the heat of wetting (trade.md)', () => {
    const plan = planOf(mixingFloor(PLAIN_10), 'A1', { roomC: 31, tapC: 15 });
    expect(plan.balance?.requiredC).toBeCloseTo(20.34, 2);
    expect(plan.balance?.ice).toEqual({ iceG: 0, tapWaterG: 6500, isReachable: true });
  });

  test('nothing of it where all is about as warm as the room', () => {
    expect(planOf(mixingFloor(PLAIN_10), 'A1', { roomC: 30 }).balance).toBeNull();
    expect(planOf(mixingFloor(POOLISH_5), 'P1', { prefermentC: 14 }).balance).toBeNull();
  });

  test('a poolish from the cold asks for warmer water than the rule says: it is water for half, and heavy', () => {
    const plan = planOf(mixingFloor(POOLISH_5), 'P1', { prefermentC: 6 });
    // 4.5 kg of flour and 180 g of salt and yeast at 22 °C, 4.68 kg of poolish at 6 °C to 22 °C before the rise of 4 K: by hand.
    const poolishKJPerK = 2.34 * 1.8 + 2.34 * 4.186;
    const byHandC = 22 + (poolishKJPerK * 16) / (2.34 * 4.186);
    expect(plan.balance?.requiredC).toBeCloseTo(byHandC, 1);
    expect(plan.requiredC).toBeCloseTo(38, 9);
  });
});

describe('Q10 temperatures as they are best known', () => {
  test('the bench for the room, the room for the flour, nothing for the tap', () => {
    expect(inputsOf(mixingFloor(PLAIN_10), 'A1')).toEqual({
      room: { celsius: 22, from: 'place', atMs: null },
      flour: { celsius: 22, from: 'room', atMs: null },
      preferment: null,
      tap: null,
    });
  });

  test('the newest reading of the last four hours, whichever dough it was read beside', () => {
    const floor = mixingFloor(PLAIN_10, POOLISH_5);
    read(floor, 'P1', 'room', 25);
    read(floor, 'P1', 'tap', 14);
    floor.wait(10);
    read(floor, 'A1', 'room', 24.5);
    read(floor, 'P1', 'flour', 20);
    const atMs = floor.nowMs;
    expect(inputsOf(floor.wait(180), 'A1')).toEqual({
      room: { celsius: 24.5, from: 'reading', atMs },
      flour: { celsius: 20, from: 'reading', atMs },
      preferment: null,
      tap: { celsius: 14, from: 'reading', atMs: atMs - 600_000 },
    });
    expect(inputsOf(floor.wait(60), 'A1')).toMatchObject({ room: { celsius: 22, from: 'place' }, tap: null });
  });

  test('a pot is as warm as its place, as read in it, or as read beside the dough', () => {
    const floor = mixingFloor(LEVAIN_POT, RICH_10);
    expect(inputsOf(floor, 'R1').preferment).toEqual({ celsius: 22, from: 'room', atMs: null });
    floor.finish('L1', 'feed');
    expect(inputsOf(floor, 'R1').preferment).toEqual({ celsius: 6, from: 'place', atMs: null });
    read(floor, 'L1', 'dough', 9);
    expect(inputsOf(floor, 'R1').preferment).toEqual({ celsius: 9, from: 'reading', atMs: floor.nowMs });
    read(floor, 'R1', 'preferment', 11);
    expect(inputsOf(floor, 'R1').preferment).toEqual({ celsius: 11, from: 'reading', atMs: floor.nowMs });
  });

  test('a preferment counts from a twentieth of the dough on', () => {
    const withLevain = (g: number): Floor =>
      changedFloor(({ formulas }) => {
        for (const item of formulas.find((formula) => formula.id === 'rich')?.parts.at(-1)?.items ?? []) if ('formula' in item) item.g = g;
      }, RICH_10);
    expect(inputsOf(withLevain(103), 'R1').preferment).toBeNull();
    expect(inputsOf(withLevain(106), 'R1').preferment).not.toBeNull();
  });
});
