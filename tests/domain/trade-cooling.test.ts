import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assert } from '../../shared/result.ts';
import { coolingForecast, longestTauMin } from '../../shared/trade/cooling-curve.ts';
import { coolingOutlook } from '../../shared/trade/cooling-outlook.ts';
import { RULE_SETS, type CoolingRule, type RuleSetName } from '../../shared/trade/holding-rules.ts';
import { controlAtC, holdingTime, type Control, type HoldingSpell, type HoldingTime } from '../../shared/trade/holding-time.ts';

function coolingOf(name: RuleSetName): CoolingRule {
  const { cooling } = RULE_SETS[name];
  assert(cooling !== null, `${name} has figures for cooling`);
  return cooling;
}
const US = coolingOf('us-food-code');
const AUSTRALIA = coolingOf('australia');

describe('HC1 the rule sets’ figures, clause by clause', () => {
  test('US: FDA Food Code 2022', () => {
    const { cold, hot, outOfCold, outOfHot, cooling, rawEgg } = RULE_SETS['us-food-code'];
    expect([cold, hot]).toEqual([
      { mostC: 5, clause: '3-501.16(A)(2)' },
      { leastC: 57, clause: '3-501.16(A)(1)' },
    ]);
    expect(outOfCold).toEqual({
      counting: 'fromFirst',
      discardMin: 4 * 60,
      clause: '3-501.19(B)',
      neverAbove: { warmestC: 21, discardMin: 6 * 60, clause: '3-501.19(C)' },
    });
    expect(outOfHot).toEqual({ counting: 'fromFirst', discardMin: 4 * 60, clause: '3-501.19(B)' });
    // "Within 2 hours from 57 °C to 21 °C; and within a total of 6 hours from 57 °C to 5 °C or less."
    expect(cooling).toEqual({
      fromC: 57,
      steps: [
        { toC: 21, withinMin: 2 * 60, clause: '3-501.14(A)(1)' },
        { toC: 5, withinMin: 6 * 60, clause: '3-501.14(A)(2)' },
      ],
    });
    expect(rawEgg.map(({ coreC, heldSeconds, forImmediateService }) => [coreC, heldSeconds, forImmediateService])).toEqual([
      [68, 17, false],
      [63, 15, true],
    ]);
  });

  test('England: SI 2013/2996, schedule 4', () => {
    const { cold, hot, outOfCold, outOfHot, cooling } = RULE_SETS.england;
    expect([cold, hot]).toEqual([
      { mostC: 8, clause: 'paragraph 2(1)' },
      { leastC: 63, clause: 'paragraph 6' },
    ]);
    expect(outOfCold).toEqual({ counting: 'once', discardMin: 4 * 60, clause: 'paragraph 5(1)' });
    expect(outOfHot).toEqual({ counting: 'once', discardMin: 2 * 60, clause: 'paragraph 7(2)' });
    expect(cooling).toBeNull();
  });

  test('Australia: standard 3.2.2', () => {
    const { cold, hot, outOfCold, outOfHot, cooling } = RULE_SETS.australia;
    expect([cold.mostC, hot.leastC]).toEqual([5, 60]);
    for (const rule of [outOfCold, outOfHot]) expect(rule).toMatchObject({ counting: 'sum', discardMin: 4 * 60, backWithinMin: 2 * 60 });
    // "Within two hours – from 60 °C to 21 °C; and within a further four hours – from 21 °C to 5 °C."
    expect(cooling?.fromC).toBe(60);
    expect(cooling?.steps.map(({ toC, withinMin }) => [toC, withinMin])).toEqual([
      [21, 2 * 60],
      [5, (2 + 4) * 60],
    ]);
  });

  test('each set is under its own name, names its source, and has a clause at every figure', () => {
    for (const [name, rules] of Object.entries(RULE_SETS)) {
      expect(rules.name).toBe(name);
      expect(rules.source).toMatch(/\w{3}/);
      const { cold, hot, outOfCold, outOfHot, cooling, rawEgg } = rules;
      for (const { clause } of [cold, hot, outOfCold, outOfHot, ...(cooling?.steps ?? []), ...rawEgg]) expect(clause).toMatch(/\d/);
      expect(JSON.stringify(rules)).not.toMatch(/\bsafe\b/i);
    }
  });

  test('what keeps food by its temperature: just cold enough, between, just hot enough', () => {
    const edges = { 'us-food-code': [5, 57], england: [8, 63], australia: [5, 60] } as const;
    for (const [name, [coldC, hotC]] of Object.entries(edges)) {
      const rules = RULE_SETS[name as RuleSetName];
      expect([coldC, coldC + 0.1, hotC - 0.1, hotC].map((foodC) => controlAtC(rules, foodC))).toEqual(['cold', 'none', 'none', 'hot']);
    }
  });
});

/** Newton's law in steps of a fiftieth of a minute, to the first time at or below a temperature. */
function steppedMin(startC: number, ambientC: number, tauMin: number, toC: number): number {
  let [foodC, minutes] = [startC, 0];
  while (foodC > toC) {
    foodC += ((ambientC - foodC) / tauMin) * 0.02;
    minutes += 0.02;
  }
  return minutes;
}

describe('HC2 a cooling curve against a rule', () => {
  test('in air of 3 °C both US steps are passed up to a time constant of 109.2 min', () => {
    // By hand: 120 ÷ ln(54 ÷ 18) = 360 ÷ ln(54 ÷ 2) = 109.23.
    expect(longestTauMin(3, US)).toBeCloseTo(109.23, 2);
    const passes = (tauMin: number): readonly boolean[] =>
      coolingForecast({ startC: 57, ambientC: 3, tauMin }, US).steps.map((step) => step.passes);
    expect(passes(109.2)).toEqual([true, true]);
    expect(passes(109.3)).toEqual([false, false]);
    // From 60 °C the first step is the narrower one: 120 ÷ ln(57 ÷ 18) = 104.11.
    expect(longestTauMin(3, AUSTRALIA)).toBeCloseTo(104.11, 2);
    expect(longestTauMin(6, US)).toBe(0);
  });

  test.each([
    [57, 3, 90, US],
    [60, 0, 70, AUSTRALIA],
    [57, -5, 140, US],
  ] as const)('from %d °C in air of %d, time constant %d min: as the law stepped', (startC, ambientC, tauMin, rule) => {
    for (const { toC, takesMin } of coolingForecast({ startC, ambientC, tauMin }, rule).steps)
      expect(Math.abs((takesMin ?? 0) - steppedMin(startC, ambientC, tauMin, toC))).toBeLessThan(0.1);
  });

  test('the minutes count from the rule’s upper temperature, or from the start below it', () => {
    const from80 = coolingForecast({ startC: 80, ambientC: 3, tauMin: 90 }, US);
    const from57 = coolingForecast({ startC: 57, ambientC: 3, tauMin: 90 }, US);
    expect(from57.countsAfterMin).toBe(0);
    expect(from80.countsAfterMin).toBeCloseTo(90 * Math.log(77 / 54), 9);
    from80.steps.forEach(({ takesMin }, index) => expect(takesMin).toBeCloseTo(from57.steps[index]?.takesMin ?? Number.NaN, 9));
    const [first, second] = coolingForecast({ startC: 15, ambientC: 3, tauMin: 90 }, US).steps;
    expect(first?.takesMin).toBe(0);
    expect(second?.takesMin).toBeCloseTo(90 * Math.log(12 / 2), 9);
  });

  test('what is never reached is not passed', () => {
    const inRoom = coolingForecast({ startC: 57, ambientC: 20, tauMin: 30 }, US);
    expect(inRoom.steps.map(({ takesMin }) => takesMin === null)).toEqual([false, true]);
    expect(inRoom.passes).toBe(false);
    const inHeat = coolingForecast({ startC: 80, ambientC: 62, tauMin: 30 }, US);
    expect(inHeat).toMatchObject({ passes: false, countsAfterMin: null });
    expect(inHeat.steps.every(({ takesMin }) => takesMin === null)).toBe(true);
  });

  test('slower or warmer is never sooner', () => {
    const c = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        c(5, 95),
        c(-20, 30),
        c(5, 300),
        c(0, 50),
        c(0, 10),
        fc.constantFrom(US, AUSTRALIA),
        (startC, ambientC, tauMin, slowerMin, warmerK, rule) => {
          const takes = (air: number, tau: number): readonly number[] =>
            coolingForecast({ startC, ambientC: air, tauMin: tau }, rule).steps.map(({ takesMin }) => takesMin ?? Number.POSITIVE_INFINITY);
          const plain = takes(ambientC, tauMin);
          const others = [takes(ambientC, tauMin + slowerMin), takes(ambientC + warmerK, tauMin)];
          return others.every((minutes) => minutes.every((each, index) => each >= (plain[index] ?? Number.NaN) - 1e-9));
        },
      ),
      { seed: 721, numRuns: 150 },
    );
  });
});

describe('HC3 a cooling that is measured', () => {
  const onCurve = (atMin: number): { atMin: number; coreC: number } => ({ atMin, coreC: 3 + 77 * Math.exp(-(atMin - 10) / 90) });
  const began = { ambientC: 3, tauMin: 90 };

  test('says by when each step has to be reached, and when it will be, early enough to act', () => {
    const steps = coolingOutlook({ ...began, readings: [onCurve(10)] }, US);
    const passes57Min = 10 + 90 * Math.log(77 / 54);
    expect(steps.map(({ byMin }) => byMin)).toEqual([expect.closeTo(passes57Min + 120, 9), expect.closeTo(passes57Min + 360, 9)]);
    expect(steps.map(({ reachesMin }) => reachesMin)).toEqual([
      expect.closeTo(10 + 90 * Math.log(77 / 18), 9),
      expect.closeTo(10 + 90 * Math.log(77 / 2), 9),
    ]);
    expect(steps.map(({ passes }) => passes)).toEqual([true, true]);
    // A reading that says it stands still in the middle of the way.
    const late = coolingOutlook({ ...began, readings: [onCurve(10), { atMin: 150, coreC: 30 }] }, US);
    expect(late.map(({ passes }) => passes)).toEqual([false, true]);
  });

  test('a reading on the curve changes nothing, whatever the order they come in', () => {
    const few = coolingOutlook({ ...began, readings: [onCurve(10)] }, AUSTRALIA);
    const many = coolingOutlook({ ...began, readings: [200, 10, 60, 130, 45].map(onCurve) }, AUSTRALIA);
    many.forEach((step, index) => {
      expect(step.byMin).toBeCloseTo(few[index]?.byMin ?? Number.NaN, 8);
      expect(step.reachesMin).toBeCloseTo(few[index]?.reachesMin ?? Number.NaN, 8);
    });
  });

  test('nothing is said of nothing; read below everything at first, every step is behind it', () => {
    expect(coolingOutlook({ ...began, readings: [] }, US).every(({ byMin, passes }) => byMin === null && !passes)).toBe(true);
    const [, last] = coolingOutlook({ ...began, readings: [{ atMin: 5, coreC: 4 }] }, US);
    expect(last).toMatchObject({ byMin: 365, reachesMin: 5, passes: true });
    // Read below the air's own temperature, as a probe may: evenly between the two.
    const [, even] = coolingOutlook(
      {
        ambientC: 3,
        tauMin: 90,
        readings: [
          { atMin: 0, coreC: 7 },
          { atMin: 10, coreC: 2 },
        ],
      },
      US,
    );
    expect(even?.reachesMin).toBeCloseTo(4, 9);
  });
});

/** Spells one after the other, each from the minute at which it begins; the last goes on. */
function stood(...places: readonly (readonly [number, Control, (number | null)?])[]): readonly HoldingSpell[] {
  return places.map(([fromMin, control, warmestC = null], index) => ({
    fromMin,
    toMin: places[index + 1]?.[0] ?? null,
    control,
    warmestC,
  }));
}
const timed = (name: RuleSetName, spells: readonly HoldingSpell[], nowMin: number): HoldingTime =>
  holdingTime(RULE_SETS[name], spells, nowMin);

describe('HC4 time out of control', () => {
  test('under control nothing runs, whatever the rule set', () => {
    for (const name of ['us-food-code', 'england', 'australia'] as const)
      for (const control of ['cold', 'hot', 'cooling'] as const)
        expect(timed(name, stood([0, control]), 900)).toMatchObject({ outSinceMin: null, outMin: 0, discardAtMin: null, pastLimit: null });
  });

  test('US: four hours from when it first came out, six where it is never above 21 °C and that is known', () => {
    const cool = stood([0, 'cold', 4], [60, 'none', 18], [100, 'none', 20.5]);
    expect(timed('us-food-code', cool, 150)).toMatchObject({
      outSinceMin: 60,
      outMin: 90,
      discardAtMin: 60 + 360,
      backByMin: null,
      pastLimit: null,
    });
    expect(timed('us-food-code', cool, 420)).toMatchObject({ pastLimit: 'time' });
    for (const warmestC of [21.1, 30, null])
      expect(timed('us-food-code', stood([0, 'cold', 4], [60, 'none', warmestC]), 150).discardAtMin).toBe(60 + 240);
    // Too warm in the sixth hour: past its limit from then on.
    const late = stood([0, 'cold', 4], [60, 'none', 18], [350, 'none', 24]);
    expect(timed('us-food-code', late, 349)).toMatchObject({ discardAtMin: 420, pastLimit: null });
    expect(timed('us-food-code', late, 350)).toMatchObject({ discardAtMin: 350, pastLimit: 'time' });
    expect(timed('us-food-code', stood([0, 'hot', 70], [30, 'none', 20]), 40).discardAtMin).toBe(30 + 240);
    // Back in the cold the minutes go on.
    expect(timed('us-food-code', stood([0, 'cold', 4], [60, 'none', 30], [90, 'cold', 10]), 200)).toMatchObject({
      outMin: 140,
      discardAtMin: 300,
    });
  });

  test('England: one spell of under four hours out of the cold, of under two out of the heat, over however many places', () => {
    const moved = stood([0, 'cold'], [60, 'none'], [100, 'none'], [130, 'none']);
    expect(timed('england', moved, 299)).toMatchObject({
      outMin: 239,
      discardAtMin: 300,
      backByMin: 300,
      pastLimit: null,
      clause: 'paragraph 5(1)',
    });
    expect(timed('england', moved, 300)).toMatchObject({ outMin: 240, pastLimit: 'time', backByMin: null });
    expect(timed('england', stood([0, 'hot'], [60, 'none']), 61)).toMatchObject({ discardAtMin: 180, clause: 'paragraph 7(2)' });
    const back = stood([0, 'cold'], [60, 'none'], [90, 'cold']);
    expect(timed('england', back, 900)).toMatchObject({ outMin: 30, discardAtMin: null, pastLimit: null });
    expect(
      timed('england', [...back.slice(0, 2), { fromMin: 90, toMin: 200, control: 'cold', warmestC: null }, ...stood([200, 'none'])], 201),
    ).toMatchObject({
      discardAtMin: 200,
      pastLimit: 'secondSpell',
    });
  });

  test('Australia: all spells together; back in the cold within two hours, discarded after four', () => {
    const twice = stood([0, 'cold'], [60, 'none'], [100, 'none'], [120, 'cold'], [300, 'none']);
    expect(timed('australia', twice, 330)).toMatchObject({
      outSinceMin: 60,
      outMin: 90,
      backByMin: 360,
      discardAtMin: 480,
      pastLimit: null,
    });
    expect(timed('australia', twice, 400)).toMatchObject({ outMin: 160, backByMin: null, discardAtMin: 480, pastLimit: null });
    expect(timed('australia', twice, 480)).toMatchObject({ outMin: 240, pastLimit: 'time' });
    expect(timed('australia', stood([0, 'cold'], [60, 'none'], [181, 'cold']), 181)).toMatchObject({
      outMin: 121,
      pastLimit: 'wentBackLate',
    });
    expect(timed('australia', stood([0, 'cold'], [60, 'none'], [180, 'cold']), 500)).toMatchObject({
      outMin: 120,
      discardAtMin: null,
      pastLimit: null,
    });
  });

  test('food that was never under control has the shortest time that any of the set’s rules allows', () => {
    expect(timed('england', stood([10, 'none', 15]), 20).discardAtMin).toBe(10 + 120);
    expect(timed('us-food-code', stood([10, 'none', 15]), 20).discardAtMin).toBe(10 + 240);
  });

  test('a cooling by its own rule takes nothing of the time', () => {
    expect(timed('australia', stood([0, 'hot'], [20, 'cooling'], [300, 'cold'], [400, 'none']), 430)).toMatchObject({
      outSinceMin: 400,
      outMin: 30,
    });
  });

  test('a place split in two is the same place', () => {
    const control = fc.constantFrom<Control>('cold', 'hot', 'none', 'cooling');
    const name = fc.constantFrom<RuleSetName>('us-food-code', 'england', 'australia');
    const lasting = fc.array(fc.tuple(control, fc.integer({ min: 1, max: 200 }), fc.option(fc.integer({ min: 0, max: 40 }))), {
      minLength: 1,
      maxLength: 7,
    });
    fc.assert(
      fc.property(name, lasting, fc.nat(), fc.integer({ min: 0, max: 900 }), (rules, places, at, nowMin) => {
        let fromMin = 0;
        const spells = places.map(([kept, lastsMin, warmestC], index): HoldingSpell => {
          const begins = fromMin;
          fromMin += lastsMin;
          return { fromMin: begins, toMin: index === places.length - 1 ? null : fromMin, control: kept, warmestC };
        });
        const index = at % spells.length;
        const spell = spells[index];
        assert(spell !== undefined, 'one of them');
        const middle = spell.fromMin + (places[index]?.[1] ?? 0) / 2;
        const split = [...spells.slice(0, index), { ...spell, toMin: middle }, { ...spell, fromMin: middle }, ...spells.slice(index + 1)];
        expect(timed(rules, split, nowMin)).toEqual(timed(rules, spells, nowMin));
      }),
      { seed: 722, numRuns: 120 },
    );
  });
});
