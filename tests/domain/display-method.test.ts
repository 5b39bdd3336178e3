import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { phasesMin, withBakeTarget, withPhases } from '../../display/formulas/bake-sum.ts';
import { CEREALS, NUTS, OTHERS, withAllergen } from '../../display/formulas/allergen-groups.ts';
import { amountWay, withAddition, withAmountWay } from '../../display/formulas/addition-edits.ts';
import { faultPathOf, ownFaultTexts, placeAt, within } from '../../display/formulas/form-place.ts';
import { lengthText } from '../../display/formulas/length-text.ts';
import { minutesTyped } from '../../display/formulas/length-typed.ts';
import { someOf, withDeckRoom } from '../../display/formulas/oven-edits.ts';
import { firstSidePrep } from '../../display/formulas/side-prep-new.ts';
import { withoutStep, withStepDoubled, withStepMoved, withStepsAt } from '../../display/formulas/step-edits.ts';
import { stepKey } from '../../display/formulas/step-key.ts';
import { withKind, withVerb } from '../../display/formulas/step-kind.ts';
import { MOST_IN_A_RUN, stepsOfRun, type StepRun } from '../../display/formulas/step-runs.ts';
import { toppingsOf, usualToppingStep, withTopping, withToppingAdded, withToppingAt } from '../../display/formulas/topping-edits.ts';
import { ripeningOf } from '../../display/formulas/usual-ripening.ts';
import { usualStep } from '../../display/formulas/usual-step.ts';
import { verbsOf } from '../../display/formulas/verb-groups.ts';
import { handsMin, wayMin, wayStretches } from '../../display/formulas/way-lengths.ts';
import { weightMeasure } from '../../display/desk/weight-measure.ts';
import * as de from '../../display/words/de/method.ts';
import * as en from '../../display/words/en/method.ts';
import * as fr from '../../display/words/fr/method.ts';
import { allergenSchema } from '../../shared/documents/allergen.ts';
import { formulaFaults, productFaults } from '../../shared/documents/book-faults.ts';
import { formulaSchema } from '../../shared/documents/formula.ts';
import { keySchema, REMARK_CHARACTERS } from '../../shared/documents/names.ts';
import { ripeningSchema, stepSchema, verbSchema, type Step } from '../../shared/documents/method.ts';
import { assert } from '../../shared/result.ts';
import { demoFile } from './support/harbour.ts';

const FILE = demoFile();
const CONTEXT = { kitchen: FILE.kitchen, ingredients: FILE.ingredients, formulas: FILE.formulas };
const VERBS_ALL = verbSchema.options;

function formulaOf(id: string): (typeof FILE.formulas)[number] {
  const formula = FILE.formulas.find((known) => known.id === id);
  assert(formula !== undefined, `the demo has no ${id}`);
  return formula;
}

function productOf(id: string): (typeof FILE.products)[number] {
  const product = FILE.products.find((known) => known.id === id);
  assert(product !== undefined, `the demo has no ${id}`);
  return product;
}

const COUNTRY = formulaOf('country');
const steps = COUNTRY.method;
const AROUND = { kitchen: FILE.kitchen, steps, otherKeys: [] };

describe('N11 a step that is added', () => {
  test.each(VERBS_ALL)('"%s" is right as it stands wherever it is put in, in shape and in this kitchen', (verb) => {
    for (let index = 0; index < steps.length; index += 1) {
      const step = usualStep(verb, index, AROUND);
      const method = withStepsAt(steps, index, [step]);
      expect(formulaFaults(formulaSchema.parse({ ...COUNTRY, method }), CONTEXT)).toEqual([]);
    }
  });

  test('has a key made of its verb that nothing else has, neither here nor in the formula of a product', () => {
    const taken = new Set<string>();
    for (let count = 0; count < 40; count += 1) {
      for (const verb of VERBS_ALL) {
        const key = stepKey(verb, taken);
        expect(keySchema.safeParse(key).success, key).toBe(true);
        expect(taken.has(key)).toBe(false);
        taken.add(key);
      }
    }
    expect(stepKey('firstSpeed', new Set(['first-speed']))).toBe('first-speed-2');
    const { way } = productOf('country-loaf');
    const added = usualStep('divide', 0, { kitchen: FILE.kitchen, steps: way, otherKeys: steps.map(({ id }) => id) });
    expect(productFaults({ ...productOf('country-loaf'), way: [added, ...way] }, CONTEXT)).toEqual([]);
  });

  test('takes the mixer that the mixing before it has, and whose work it is from the steps beside it', () => {
    const planetary = steps.map((step) => ({
      ...step,
      claims: step.claims.map((claim) => (claim.kind === 'mixer' ? { ...claim, ids: ['planetary'] } : claim)),
    }));
    const added = usualStep('secondSpeed', 6, { ...AROUND, steps: planetary });
    expect(added).toMatchObject({ station: 'mixer', claims: [{ kind: 'mixer', ids: ['planetary'] }] });
    expect(usualStep('fold', 10, AROUND)).toMatchObject({ station: 'bench', place: 'bench' });
    expect(usualStep('bulk', 10, AROUND)).toMatchObject({ kind: 'timed', place: 'warm-shelf' });
    expect(usualStep('retard', 10, AROUND)).toMatchObject({ kind: 'timed', place: 'retarder' });
  });

  test('that is judged has its check, and one that can hurt somebody its caution, in every language, within what a remark may have', () => {
    for (const words of [en, de, fr]) {
      for (const text of [...Object.values(words.USUAL_CAUTIONS), ...Object.values(words.USUAL_CHECKS), words.CHECK_BY_HAND])
        expect([text.length > 0, text.length <= REMARK_CHARACTERS]).toEqual([true, true]);
      expect(Object.keys(words.USUAL_CAUTIONS).toSorted()).toEqual(Object.keys(en.USUAL_CAUTIONS).toSorted());
      for (const verb of ['weigh', 'firstSpeed', 'secondSpeed', 'turnOut', 'load', 'takeOut', 'wash', 'score', 'cook'] as const)
        expect(words.USUAL_CAUTIONS[verb]).toBeDefined();
    }
    const said = JSON.stringify([en.USUAL_CAUTIONS, en.METHOD, en.PRODUCT, en.INGREDIENT, en.TAKES_BACK]);
    expect(said).not.toMatch(/\bsafe(ly|ty)?\b/i);
  });

  test('every verb stands in one group', () => {
    const groups = Object.keys(en.VERB_GROUPS) as en.VerbGroup[];
    expect(groups.flatMap(verbsOf).toSorted()).toEqual([...VERBS_ALL].toSorted());
  });
});

describe('N12 runs of steps', () => {
  const runs: readonly StepRun[] = [
    { kind: 'mixing' },
    ...Array.from({ length: MOST_IN_A_RUN }, (_, index): StepRun => ({ kind: 'folds', count: index + 1, restMin: 30 })),
    ...Array.from({ length: MOST_IN_A_RUN }, (_, index): StepRun => ({ kind: 'turns', count: index + 1, chillMin: 45 })),
  ];

  test.each(runs)('%o is right wherever it is put in, even twice', (run) => {
    for (const index of [0, 5, steps.length]) {
      const once = withStepsAt(steps, index, stepsOfRun(run, index, AROUND));
      const twice = withStepsAt(once, index, stepsOfRun(run, index, { ...AROUND, steps: once }));
      expect(formulaFaults({ ...COUNTRY, method: [...twice] }, CONTEXT)).toEqual([]);
      for (const step of twice) expect(stepSchema.safeParse(step).success).toBe(true);
    }
  });

  test('n folds have a rest before and after each, of the minutes asked for', () => {
    const added = stepsOfRun({ kind: 'folds', count: 2, restMin: 40 }, 0, AROUND);
    expect(added.map(({ verb }) => verb)).toEqual(['bulk', 'fold', 'bulk', 'fold', 'bulk']);
    expect(added.filter(({ verb }) => verb === 'bulk').map(({ minutes }) => minutes)).toEqual(
      Array.from({ length: 3 }, () => ({ earliest: 30, target: 40, latest: 70 })),
    );
  });

  test('a rest of nothing is a rest still', () => {
    const added = stepsOfRun({ kind: 'turns', count: 1, chillMin: 0 }, 0, AROUND);
    expect(added.every((step) => stepSchema.safeParse(step).success)).toBe(true);
  });
});

describe('N13 the order of steps', () => {
  test('moving there and back, adding and taking out, leave it as it was', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: steps.length - 1 }), (index) => {
        expect(
          withStepMoved(withStepMoved(steps, index, 1), Math.min(index + 1, steps.length - 1), index === steps.length - 1 ? 1 : -1),
        ).toEqual(steps);
        expect(withoutStep(withStepDoubled(steps, index, []), index + 1)).toEqual(steps);
        const doubled = withStepDoubled(steps, index, []);
        expect(new Set(doubled.map(({ id }) => id)).size).toBe(steps.length + 1);
      }),
    );
    expect(withStepMoved(steps, 0, -1)).toBe(steps);
  });

  test('lengths to scale fill the whole way, one behind the other', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 40 }), (targets) => {
        const way = targets.map((target, index): Step => ({ ...usualStep('wait', 0, AROUND), id: `wait-${index}`, minutes: { target } }));
        const stretches = wayStretches(way);
        const wholeMin = targets.reduce((sum, target) => sum + target, 0);
        let fromMin = 0;
        stretches.forEach(({ fromShare, share }, index) => {
          if (wholeMin > 0) expect([fromShare, share]).toEqual([fromMin / wholeMin, (targets[index] ?? 0) / wholeMin]);
          fromMin += targets[index] ?? 0;
        });
        expect(wayMin(way)).toBe(wholeMin);
      }),
    );
    expect(wayStretches([{ ...usualStep('wait', 0, AROUND), minutes: { target: Number.NaN } }])).toEqual([{ fromShare: 0, share: 0 }]);
    expect(handsMin(steps)).toBe(24);
  });

  test.each([
    [0, '0 min'],
    [5.5, '5.5 min'],
    [89, '89 min'],
    [90, '1 h 30'],
    [120, '2 h'],
    [1080, '18 h'],
    [Number.NaN, ''],
  ])('%f minutes read %s', (minutes, text) => {
    expect(lengthText(minutes)).toBe(text);
  });
});

describe('N14 a bake and its phases', () => {
  const minutes = fc.integer({ min: 0, max: 6_000 }).map((hundredths) => hundredths / 100);
  const phases = fc.array(
    minutes.map((each) => ({ minutes: each })),
    { minLength: 1, maxLength: 20 },
  );
  const bake = usualStep('bake', 0, AROUND);

  test('are of one length, whichever of the two is typed', () => {
    fc.assert(
      fc.property(phases, minutes, (bakePhases, targetMin) => {
        const fitted = withBakeTarget(withPhases(bake, bakePhases), targetMin);
        expect(phasesMin(fitted.bake ?? [])).toBe(targetMin);
        expect(fitted.bake?.every((phase) => phase.minutes >= 0)).toBe(true);
        expect(fitted.bake).toHaveLength(bakePhases.length);
        expect(stepSchema.safeParse({ ...fitted, minutes: { target: fitted.minutes.target } }).success).toBe(true);
      }),
    );
  });

  test('half typed, the other stays', () => {
    expect(withBakeTarget(bake, Number.NaN).bake).toEqual(bake.bake);
    expect(withPhases(bake, [{ minutes: Number.NaN }]).minutes.target).toBeNaN();
  });
});

describe('N15 a step that becomes another', () => {
  test.each(VERBS_ALL)('from "%s" to any other verb it keeps its key and stays right', (verb) => {
    for (const other of VERBS_ALL) {
      const before = usualStep(verb, 0, AROUND);
      const after = withVerb(before, other);
      expect([after.id, after.verb]).toEqual([before.id, other]);
      expect(stepSchema.safeParse(after).success, other).toBe(true);
    }
  });

  test('what somebody has written stays, what was the usual follows', () => {
    const usual = usualStep('load', 0, AROUND);
    expect(withVerb(usual, 'score').caution).toBe(en.USUAL_CAUTIONS.score);
    expect(withVerb({ ...usual, caution: 'The door sticks.' }, 'score').caution).toBe('The door sticks.');
  });

  test('in any kind its shape is right', () => {
    for (const verb of VERBS_ALL)
      for (const kind of ['hands', 'timed', 'judged', 'bake'] as const)
        expect(stepSchema.safeParse(withKind(usualStep(verb, 0, AROUND), kind)).success, `${verb} ${kind}`).toBe(true);
  });

  test('any model of ripening is right as it begins, and keeps the reference of the one before', () => {
    for (const model of ['perKelvin', 'q10', 'cardinal', 'levain'] as const) {
      const ripening = ripeningOf(model, { model: 'levain', referenceC: 24 });
      expect(ripeningSchema.parse(ripening)).toMatchObject({ model, referenceC: 24 });
      expect(formulaFaults({ ...COUNTRY, method: steps.map((step) => ({ ...step, ripening })) }, CONTEXT)).toEqual([]);
    }
  });
});

describe('N16 what goes in, and what goes on a piece', () => {
  test('says its amount in one way at a time, and only an ingredient is held back', () => {
    const held = { item: 'water', pct: 3, heldBack: true };
    expect(withAddition(held, 'formula:levain')).toEqual({ formula: 'levain', pct: 3, heldBack: false });
    for (const way of ['asFormula', 'pct', 'gPerPiece'] as const) {
      const changed = withAmountWay(held, way);
      expect(amountWay(changed)).toBe(way);
      expect(stepSchema.safeParse({ ...steps[0], additions: [changed] }).success).toBe(true);
    }
  });

  test('a topping moves to another step with its weight, and nothing else does', () => {
    const { way } = productOf('olive-flat');
    const [oil] = toppingsOf(way);
    assert(oil !== undefined, 'nothing is on the flatbread');
    const moved = withToppingAt(way, oil, 0);
    expect(toppingsOf(moved)).toEqual([{ stepIndex: 0, additionIndex: 0, addition: oil.addition }]);
    expect(toppingsOf(withTopping(way, oil, null))).toEqual([]);
    expect(
      withTopping(
        withToppingAdded(way, 3, { item: 'salt', gPerPiece: 1, heldBack: false }),
        { stepIndex: 3, additionIndex: 0, addition: oil.addition },
        null,
      ),
    ).toEqual(way);
    expect(way[usualToppingStep(way)]?.verb).toBe('top');
    expect(usualToppingStep([])).toBe(-1);
  });

  test('a side prep begins at the step that takes it, as far as one does', () => {
    const product = productOf('custard-bun');
    const entries = FILE.formulas.map(({ id, name, letters, kind }) => ({
      id,
      name,
      letters,
      kind,
      version: 1,
      isArchived: false,
      atMs: null,
      hydrationPct: null,
      ingredientIds: [],
      products: [],
    }));
    const context = { ...CONTEXT, house: FILE.house, entries, formulaOf: () => null, faults: [] };
    const all = [...formulaOf(product.formula).method, ...product.way];
    const first = firstSidePrep(all, [], context);
    assert(first !== null, 'no prep was found');
    expect(productFaults({ ...product, sidePreps: [first] }, CONTEXT)).toEqual([]);
    expect(firstSidePrep([], [], context)).toBeNull();
  });
});

describe('N17 allergens as choices', () => {
  test('hold all of the list once: four cereals, eight nuts and the other twelve points of EU 1169/2011, Annex II', () => {
    expect([CEREALS.length, NUTS.length, OTHERS.length]).toEqual([4, 8, 12]);
    expect([...CEREALS, ...NUTS, ...OTHERS].toSorted()).toEqual([...allergenSchema.options].toSorted());
  });

  test('go in and out in the order of the list', () => {
    expect(withAllergen(['sesame', 'wheat'], 'milk', true)).toEqual(['wheat', 'milk', 'sesame']);
    expect(withAllergen(['wheat', 'milk'], 'wheat', false)).toEqual(['milk']);
  });
});

describe('Y5 what a plan has to know of a product', () => {
  test.each([
    ['36 h', 2160],
    ['36', 2160],
    ['1 h 30', 90],
    ['1h30min', 90],
    ['1:30', 90],
    ['1,5 Std.', 90],
    ['90 Minuten', 90],
    ['12.5 min', 12.5],
    ['2 days', 2880],
    ['1 jour 6 heures', 1800],
    ['2 Tage 1:30', 2970],
    ['0 min', 0],
  ])('a length of time typed as %s is %d minutes', (text, minutes) => {
    expect(minutesTyped(text)).toBe(minutes);
  });

  test.each(['', 'h', '36 x', '1 h 30 h', '30 min 1 h', '90 min 5', '1 2', '-3 h', '2 d 5'])('and %j is none yet', (text) => {
    expect(minutesTyped(text)).toBeNull();
  });

  test('a length is read back as it is written out, in every language', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 7 * 24 * 60 }), (minutes) => {
        const hours = Math.floor(minutes / 60);
        const over = minutes % 60 === 0 ? '' : String(minutes % 60).padStart(2, '0');
        const written = [en, de, fr].map(({ METHOD }) =>
          minutes < 90 ? METHOD.minutesShort(String(minutes)) : METHOD.hoursShort(hours, over),
        );
        for (const text of [lengthText(minutes), ...written]) expect(minutesTyped(text), text).toBe(minutes);
      }),
    );
  });

  test('a deck takes other pieces, and as many as elsewhere once nothing is said: then no list is left', () => {
    const one = withDeckRoom(undefined, 'top', 4);
    const two = withDeckRoom(one, 'hearth', 2);
    expect(two).toEqual([
      { deck: 'top', piecesPerSlot: 4 },
      { deck: 'hearth', piecesPerSlot: 2 },
    ]);
    expect(withDeckRoom(two, 'top', 5)?.[0]).toEqual({ deck: 'top', piecesPerSlot: 5 });
    expect(withDeckRoom(two, 'top', undefined)).toEqual([{ deck: 'hearth', piecesPerSlot: 2 }]);
    expect(withDeckRoom(one, 'top', undefined)).toBeUndefined();
    expect([someOf([]), someOf(['back'])]).toEqual([undefined, ['back']]);
    const product = { ...productOf('olive-flat'), deckRoom: two };
    expect(productFaults(product, CONTEXT)).toEqual([]);
    expect(productFaults({ ...product, deckRoom: withDeckRoom(two, 'cellar', 3) }, CONTEXT).map(({ path }) => path)).toEqual([
      expect.stringMatching(/\.deckRoom\[2\]\.deck$/),
    ]);
  });
});

describe('N18 where a fault stands', () => {
  const faults = [
    'formula.method',
    'formula.method[3]',
    'formula.method[3].minutes.latest',
    'formula.method[30].check',
    'formula.sidePreps[0].joins',
  ].map((path) => ({ path, message: path }));

  test('is found by its path at the place and below it, not beside it', () => {
    const place = within(placeAt('formula', ['method'], faults), [3]);
    expect([place.path, place.faultPath]).toEqual([['method', 3], 'formula.method[3]']);
    expect(place.faults.map(({ path }) => path)).toEqual(['formula.method[3]', 'formula.method[3].minutes.latest']);
    expect(ownFaultTexts(place)).toEqual(['formula.method[3]']);
    expect(faultPathOf('products[2]', ['way', 0, 'bake', 1, 'minutes'])).toBe('products[2].way[0].bake[1].minutes');
  });

  test('small weights are typed and shown in the unit of the house', () => {
    // The avoirdupois ounce is 28.349523125 g exactly: the pound of 1959, 453.59237 g, in sixteen.
    const ounces = weightMeasure({ temperature: 'F', weight: 'lb' });
    expect([ounces.unit, ounces.shown(28.349523125), ounces.stored(12)]).toEqual(['oz', 1, 340.194]);
    expect(weightMeasure({ temperature: 'C', weight: 'g' }).shown(340)).toBe(340);
  });
});
