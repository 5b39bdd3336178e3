import { describe, expect, test } from 'vitest';
import { dayFaultsOf, type Manned } from '../support/plan-day-validator.ts';
import { BATCHES, FOUR_MS, handMadePlan, handMadeState, KITCHEN } from '../support/plan-hand-made-day.ts';
import type { MadeBatch } from '../support/plan-day-threads.ts';

interface Planted {
  readonly plan?: Parameters<typeof handMadePlan>[0];
  readonly kitchen?: object;
  readonly batches?: readonly MadeBatch[];
  readonly manned?: Manned;
}

/** The faults of the hand-made day with something planted in it. */
function faults({ plan = {}, kitchen = {}, batches = BATCHES, manned = {} }: Planted): string[] {
  return dayFaultsOf(handMadeState({ ...KITCHEN, ...kitchen }), handMadePlan(plan), { proposed: batches, manned });
}

const [seeded, sour, plain] = BATCHES;
const atMs = (min: number): number => FOUR_MS + min * 60_000;

describe('X4 what holds a plan to the kitchen and the books finds every planted fault, and none where there is none', () => {
  test('a day in which everything is right has none', () => {
    expect(faults({})).toEqual([]);
    expect(faults({ manned: { bench: [{ fromMs: atMs(40), toMs: atMs(110) }] } })).toEqual([]);
  });

  test.each<[name: string, planted: Planted, found: readonly string[]]>([
    ['a step that nobody planned', { plan: { 'plain#1 cool': null } }, ['missing: cool of plain#1']],
    [
      'divided before it is mixed',
      { plan: { 'plain#1 mix': [20, 30, ['station mixing', 'mixer spiral']], 'plain#1 bulk': [25, 70] } },
      ['order: bulk of plain#1 begins 5 min too soon'],
    ],
    [
      'a load that goes on before it is shaped',
      { plan: { 'seeded#1 0 prove': [49, 93] } },
      ['order: prove of seeded#1 load 0 begins 0.5 min too soon'],
    ],
    ['work that is given no time', { plan: { 'plain#1 pack': [196, 198] } }, ['length: pack of plain#1 takes 2 min and needs 3 min']],
    ['work by the piece', { plan: { 'plain#1 shape': [76, 78] } }, ['length: shape of plain#1 takes 2 min and needs 6 min']],
    ['a rest cut short', { plan: { 'plain#1 prove': [83, 122] } }, ['length: prove of plain#1 takes 39 min, at least 40 min']],
    [
      'a rest too long',
      { plan: { 'plain#1 cool': [156, 196], 'seeded#1 1 cool': [114, 205], 'seeded#1 1 pack': [205, 208] } },
      ['overstayed: cool of seeded#1 load 1 takes 91 min, at most 90 min', 'prep', 'overstayed: cream'],
    ],
    [
      'a bake too long',
      { plan: { 'plain#1 bake': [124, 160], 'plain#1 take-out': [160, 162, ['station oven', 'deck top']], 'plain#1 cool': [162, 196] } },
      ['overstayed: bake of plain#1 takes 36 min, at most 35 min'],
    ],
    ['divided while it rests', { plan: { 'plain#1 divide': [66, 72] } }, ['order: divide of plain#1 begins 4 min too soon']],
    [
      'shaped too long after it is divided',
      { plan: { 'plain#1 bulk': [30, 60], 'plain#1 divide': [53.5, 59.5], 'plain#1 shape': [80, 86], 'plain#1 prove': [82, 122] } },
      ['order', 'order', 'overstayed: plain#1 waits 20.5 min for shape, at most 20 min'],
    ],
    ['two packed by one', { plan: { 'seeded#1 0 pack': [145, 148] } }, ['hands: oven: 2 of 1']],
    ['work of nobody', { plan: { 'plain#1 pack': [196, 199, []] } }, ['hands: nobody does pack of plain#1']],
    ['work of the wrong hands', { plan: { 'plain#1 pack': [196, 199, ['station bench']] } }, ['hands: nobody does pack of plain#1']],
    [
      'work after the end of hours',
      { manned: { oven: [{ fromMs: atMs(0), toMs: atMs(198) }] } },
      ['hands: pack of plain#1 is outside the hours of oven'],
    ],
    [
      'work in a break',
      {
        manned: {
          bench: [
            { fromMs: atMs(0), toMs: atMs(72) },
            { fromMs: atMs(76), toMs: atMs(300) },
          ],
        },
      },
      ['hands: divide of plain#1 is outside the hours of bench'],
    ],
    [
      'more dough than the mixer takes',
      { batches: [seeded, sour, { ...plain, grams: 8100 }].flatMap(given) },
      ['mixer: plain#1 weighs 8100 g, spiral takes 1000 to 8000'],
    ],
    [
      'less dough than the mixer takes',
      { batches: [{ ...seeded, grams: 900 }, sour, plain].flatMap(given) },
      ['mixer: seeded#1 weighs 900 g, spiral takes 1000 to 8000'],
    ],
    [
      'two doughs in one mixer',
      { plan: { 'plain#1 mix': [9, 19], 'plain#1 bulk': [30, 70] } },
      ['hands: mixing', 'mixer: spiral has seeded#1 and plain#1 at once'],
    ],
    [
      'seeds in the mixer of a dough without',
      { plan: { 'plain#1 mix': [19, 29] } },
      ['mixer: spiral is not cleaned of sesame between seeded#1 and plain#1'],
    ],
    ['no mixer', { plan: { 'plain#1 mix': [20, 30, ['station mixing']] } }, ['mixer: plain#1 is mixed in 0 mixers']],
    [
      'another mixer, too small',
      { plan: { 'plain#1 mix': [20, 30, ['station mixing', 'mixer small']] } },
      ['mixer: plain#1 weighs 6400 g, small takes 500 to 3000'],
    ],
    [
      'a third in two slots',
      {
        plan: {
          'plain#1 load': [113, 115],
          'plain#1 prove': [82, 113],
          'plain#1 bake': [115, 145],
          'plain#1 take-out': [145, 147],
          'seeded#1 0 pack': [147, 150],
          'seeded#1 1 pack': [150, 153],
          'plain#1 cool': [147, 196],
        },
      },
      ['length', 'hands: oven', 'deck: top: 3 of 2', 'deck: top bakes'],
    ],
    [
      'two programmes in one deck',
      {
        kitchen: {
          ovens: [
            {
              id: 'oven',
              name: 'Oven',
              decks: [{ id: 'top', name: 'Top', temperatureC: 240, slots: ['s1', 's2', 's3', 's4'].map((id) => ({ id, name: id })) }],
            },
          ],
        },
        plan: {
          'plain#1 prove': [82, 122],
          'seeded#1 1 prove': [53, 120],
          'seeded#1 1 load': [120, 122],
          'seeded#1 1 bake': [122, 137],
          'seeded#1 1 take-out': [137, 139],
          'seeded#1 1 cool': [139, 160],
          'seeded#1 1 pack': [160, 163],
        },
      },
      ['overstayed: prove of seeded#1 load 1', 'deck: top bakes'],
    ],
    [
      'a deck with no time to get hot',
      { plan: { 'plain#1 prove': [81.9, 121.9], 'plain#1 load': [121.5, 123.5], 'plain#1 bake': [123.5, 154] } },
      ['order', 'order', 'deck: top has no time to get from 200 to 240 °C'],
    ],
    [
      'no deck',
      { plan: { 'plain#1 load': [122, 124, ['station oven']], 'plain#1 bake': [124, 154, []] } },
      ['deck: bake of plain#1 bakes in no deck that it may'],
    ],
    [
      'too few bannetons',
      { kitchen: { vessels: [{ ...KITCHEN.vessels[0], count: 7 }, KITCHEN.vessels[1]] } },
      ['vessel: banneton: 8 of 7'],
    ],
    [
      'a tray for two loads',
      { kitchen: { vessels: [KITCHEN.vessels[0], { ...KITCHEN.vessels[1], count: 1 }] } },
      ['vessel: tray: 2 of 1 at 2026-03-07T04:46:00.000Z: seeded#1 load 0, seeded#1 load 1'],
    ],
    ['too little room on the shelf', { kitchen: { restPlaces: [{ ...KITCHEN.restPlaces[0], room: 1 }] } }, ['place: shelf: 2 of 1']],
    [
      'a filling that is not ready',
      { plan: { 'cream>seeded#1 cook': [130, 140], 'cream>seeded#1 keep': [140, 145] } },
      ['prep: cream for seeded#1 load 0 is not ready when it joins'],
    ],
    [
      'a filling begun too early',
      { plan: { 'cream>seeded#1 cook': [84, 94], 'cream>seeded#1 keep': [94, 145] } },
      [
        'overstayed: keep',
        'prep: cream for seeded#1 load 1 is begun too long before it joins',
        'overstayed: cream for seeded#1 load 1 is kept too long',
      ],
    ],
    [
      'a filling begun before its step',
      { plan: { 'cream>seeded#1 cook': [30, 40], 'cream>seeded#1 keep': [40, 80] } },
      ['prep: cream for seeded#1 load 0 is begun before shape', 'prep', 'overstayed', 'prep', 'prep', 'overstayed'],
    ],
    [
      'a filling that nobody makes',
      { plan: { 'cream>seeded#1 cook': null, 'cream>seeded#1 keep': null } },
      ['prep: nobody makes cream', 'prep: nobody makes cream'],
    ],
    ['a ferment just old enough, which is none', { plan: { 'sour#1 feed': [-104, -100], 'sour#1 ripen': [-100, 20] } }, []],
    [
      'a ferment younger than that',
      { plan: { 'sour#1 feed': [-103, -99], 'sour#1 ripen': [-99, 21] } },
      ['prep: sour for mix of plain#1 is not ripe'],
    ],
    [
      'a ferment past its time',
      { plan: { 'sour#1 feed': [-225, -221], 'sour#1 ripen': [-221, 19] } },
      ['overstayed: sour for mix of plain#1 is past its time'],
    ],
    [
      'too few pieces',
      { batches: [{ ...seeded, cuts: [{ productId: 'roll', pieces: 9 }] }, sour, plain].flatMap(given) },
      ['length: shape of seeded#1', 'short: 9 of 10 roll are made'],
    ],
  ])('%s', (_name, planted, expected) => {
    const found = faults(planted);
    // Each fault as it is told, as far as it is written out above.
    expect(found.map((fault) => expected.find((one) => fault.startsWith(one)) ?? fault).sort()).toEqual([...expected].sort());
  });

  test('a step planned twice, and one that belongs to nothing', () => {
    const plan = handMadePlan();
    const [first] = plan;
    const check = (steps: typeof plan): string[] => dayFaultsOf(handMadeState(), steps, { proposed: BATCHES });
    expect(check(plan)).toEqual([]);
    expect(check([...plan, ...(first === undefined ? [] : [first])])).toEqual(['unknown: sour#1   feed is planned twice']);
    expect(check([...plan, ...(first === undefined ? [] : [{ ...first, cut: 3 }])])).toEqual([
      'unknown: 1 planned steps belong to nothing',
    ]);
  });
});

function given(batch: Partial<MadeBatch> | undefined): MadeBatch[] {
  return batch === undefined ? [] : [batch as MadeBatch];
}
