import { describe, expect, test } from 'vitest';
import { batchesFor } from '../../shared/plan/orders/batches-for.ts';
import { assert } from '../../shared/result.ts';
import { built, demoFloor, emptyFloor, order, ordered } from './support/planned-house.ts';

/** The day with one dough proposed, as the house would plan it for orders. */
function proposed(...orders: Parameters<typeof ordered>[1][]): ReturnType<typeof built> {
  const floor = emptyFloor();
  floor.state = ordered(floor.state, ...orders);
  const batches = batchesFor(floor.state, orders, floor.nowMs);
  assert(batches.ok, 'the orders can be made');
  return built(floor, { proposed: batches.value });
}

describe('Z1 a way is activities for what is done, judged and baked, and lags for what waits', () => {
  const day = built(demoFloor());

  test('every step of a dough that somebody does, judges or bakes, once and in order', () => {
    // C1 of the demo book: 13 steps of its method and 10 of its product's way, of which these wait: stand, bulk-1 to 3, bench-rest, prove, cool.
    expect(day.names().filter((name) => name.startsWith('C1 '))).toEqual(
      'weigh fill-bowl first-speed salt second-speed turn-out fold-1 fold-2 divide round shape score load bake take-out pack'
        .split(' ')
        .map((id) => `C1 ${id}`),
    );
    expect(day.day.rests.filter((rest) => rest.tag === 'C1').map((rest) => rest.stepId)).toEqual(
      'stand bulk-1 bulk-2 bulk-3 bench-rest prove cool'.split(' '),
    );
  });

  test('hands take longer for more pieces, by those of their own cut or load', () => {
    // Ten loaves: 1 min and 0.75 min each. Thirty buns: 1 min and 0.2 each. Sixteen tins: 1 and 0.75 each.
    expect(day.activity('C1 shape').durationS).toBe(8.5 * 60);
    expect(day.activity('M1a round').durationS).toBe(7 * 60);
    expect(day.activity('R1 tin').durationS).toBe(13 * 60);
    // Eight of them in each load: 1 min and 0.3 each.
    expect(day.activity('R1·1 pack').durationS).toBe(3.4 * 60);
    expect(day.activity('C1 bake').durationS).toBe(45 * 60);
  });

  test('a rest is its earliest, target and latest between the steps around it', () => {
    expect(day.lags('C1 turn-out', 'C1 fold-1')).toEqual([['end', 'start', 20, 30, 60]]);
    expect(day.lags('C1 shape', 'C1 score')).toEqual([['end', 'start', 60, 75, 110]]);
    expect(day.lags('C3 shape', 'C3 temper')).toEqual([['end', 'start', 480, 600, 1080]]);
    // Nothing spoils a loaf that cools for longer.
    expect(day.lags('C1 take-out', 'C1 pack')).toEqual([['end', 'start', 45, 60, null]]);
  });

  test('what is done waits for hands no longer than it bears to be lost; what begins by itself not at all', () => {
    expect(day.lags('C1 divide', 'C1 round')).toEqual([['end', 'start', 0, 0, 20]]);
    expect(day.lags('C1 weigh', 'C1 fill-bowl')).toEqual([['end', 'start', 0, 0, null]]);
    expect(day.lags('C1 fill-bowl', 'C1 first-speed')).toEqual([['end', 'start', 0, null, 0]]);
    expect(day.lags('C1 load', 'C1 bake')).toEqual([['end', 'start', 0, null, 0]]);
  });

  test('a bake has its target, and is taken out before its latest and before it is lost', () => {
    // Baked 45, 55 at the latest; taken out 8 min late it is lost. Buns: 14, 18 at the latest, lost after 4.
    expect(day.lags('C1 bake', 'C1 take-out')).toEqual([['end', 'start', 0, 0, 8]]);
    expect(day.lags('M1a bake', 'M1a take-out')).toEqual([['end', 'start', 0, 0, 4]]);
  });

  test('each cut goes its own way from the dividing on', () => {
    expect(day.lags('M1 divide', 'M1a round')).toEqual([['end', 'start', 0, 0, 20]]);
    expect(day.lags('M1 divide', 'M1b shape')).toEqual([['end', 'start', 0, 0, 20]]);
    expect(day.step('M1b shape')).toMatchObject({ cut: 1, load: undefined, productId: 'custard-bun', pieces: 30 });
    expect(day.activity('M1b shape').batch).toBe(day.activity('M1 weigh').batch);
  });

  test('part-bake and bake-off are two stays with hours between them', () => {
    expect(day.lags('O1 top', 'O1 load-bake-off')).toEqual([['end', 'start', 0, 30, 240]]);
    expect(day.holds('deck', 'O1')).toEqual([
      'O1 load-part-bake start > O1 out-part-baked end: bottom×1/top×1',
      'O1 load-bake-off start > O1 take-out end: hearth×1',
    ]);
  });

  test('two rests in a row meet at an instant, and a way that ends in one ends with it', () => {
    const floor = emptyFloor((file) => {
      const loaf = file.products.find(({ id }) => id === 'country-loaf');
      loaf?.way.splice(-1, 1, { id: 'crisp', verb: 'wait', kind: 'timed', minutes: { target: 10 } });
    });
    const cut = { productId: 'country-loaf', pieces: 10, grams: 9000 };
    const two = built(floor, { proposed: [{ batchKey: 'country#1', formulaId: 'country', grams: 9000, cuts: [cut] }] });
    const marks = two.day.steps.filter((step) => step.status === 'mark').map((step) => two.day.problem.activities[step.activity]);
    expect(marks.map((mark) => [mark?.key, mark?.durationS])).toEqual([
      ['country#1|||cool~end', 0],
      ['country#1|||crisp~end', 0],
    ]);
    const ends = two.day.problem.lags.filter((lag) => two.day.steps[lag.to]?.status === 'mark');
    expect(ends.map((lag) => [lag.minS / 60, (lag.targetS ?? 0) / 60])).toEqual([
      [45, 60],
      [10, 10],
    ]);
  });
});

describe('Z2 loads below a cut are shaped first to last and baked in turn', () => {
  test('as many as the floor would make, as even as they come', () => {
    const day = proposed(order(1, 'rye-tin', 13, 9));
    expect(day.step('rye#1 ·1 seed').pieces).toBe(7);
    expect(day.step('rye#1 ·2 seed').pieces).toBe(6);
  });

  test('each proves from when its own share has been shaped', () => {
    const day = built(demoFloor());
    // Both loads are half of 13 min of work; the rest is 45, 60, 85.
    expect(day.lags('R1 tin', 'R1·1 seed')).toEqual([['start', 'start', 45 + 6.5, 60 + 6.5, 85 + 6.5]]);
    expect(day.lags('R1 tin', 'R1·2 seed')).toEqual([['end', 'start', 45, 60, 85]]);
  });

  test('and goes into the oven after the one before it', () => {
    expect(built(demoFloor()).lags('R1·1 load', 'R1·2 load')).toEqual([['start', 'start', 0, null, null]]);
  });

  test('tins go with their loads', () => {
    expect(built(demoFloor()).holds('vessel', 'R1')).toEqual([
      'R1 tin start > R1·1 depan end: tin×8',
      'R1 tin start > R1·2 depan end: tin×8',
    ]);
  });
});

describe('Z3 preps are ready when they join, are not begun too early, and keep only so long', () => {
  const day = built(demoFloor());

  test('ready so long before, kept no longer than the last rest bears', () => {
    // Custard: 10 min before the filling; kept at most 720 min in the cold.
    expect(day.lags('Cu1 cover', 'M1b fill')).toEqual([['end', 'start', 10, null, 720]]);
  });

  test('not before the step that its order rule names', () => {
    expect(day.lags('M1 divide', 'Cu1 weigh')).toEqual([['start', 'start', 0, null, null]]);
  });

  test('last minute: begun at most so long before it joins', () => {
    // Cheese filling: within 45 min, ready 5 min before.
    expect(day.lags('Cf1 weigh', 'Ch1 top')).toEqual([['start', 'start', 0, null, 45]]);
    expect(day.lags('Cf1 stir', 'Ch1 top')).toEqual([['end', 'start', 5, null, 240]]);
  });

  test('those of a batch that is only proposed are there as the floor will plan them', () => {
    const tried = proposed(order(1, 'custard-bun', 40, 10));
    expect(tried.lags('custard>milk-buns#1 cover', 'milk-buns#1 fill')).toEqual([['end', 'start', 10, null, 720]]);
    expect(tried.activity('custard>milk-buns#1 cook').batch).toBe(tried.activity('milk-buns#1 weigh').batch);
  });
});

describe('Z4 what draws on a ferment draws while it is ripe', () => {
  test('from the feed on: not before its earliest, wanted at its target, not after its latest', () => {
    const floor = demoFloor().bringTo('L1', 'ripen');
    const day = built(floor);
    // Fed at 03:04, ripe from 3 h on, best after 4, past it after 8.
    const ripe = day.day.rests.find((rest) => rest.stepId === 'ripen' && rest.status === 'begun');
    expect(ripe?.lags.map((index) => day.day.problem.lags[index]).map((lag) => [(lag?.minS ?? 0) / 60, (lag?.targetS ?? 0) / 60])).toEqual(
      Array.from({ length: 4 }, () => [180, 240]),
    );
    expect(
      ripe?.lags.map((index) => day.day.steps[day.day.problem.lags[index]?.to ?? -1]).map((step) => `${step?.tag} ${step?.stepId}`),
    ).toEqual(['C1 fill-bowl', 'C2 fill-bowl', 'R1 fill-bowl', 'C3 fill-bowl']);
  });

  test('the pot is fed again when they all have drawn, and is ripe', () => {
    const day = built(demoFloor().bringTo('L1', 'ripen'));
    const feed = day.step('L1 feed');
    const into = day.day.problem.lags
      .filter((lag) => lag.to === feed.activity)
      .map((lag) => `${day.day.steps[lag.from]?.tag} ${day.day.steps[lag.from]?.stepId}`);
    expect(into.sort()).toEqual(['C1 fill-bowl', 'C2 fill-bowl', 'C3 fill-bowl', 'L1 ripen', 'R1 fill-bowl']);
  });

  test('feeds that orders need come the night before, one after another', () => {
    const day = proposed(order(1, 'country-loaf', 20, 8));
    expect(day.lags('levain#1 feed', 'country#1 fill-bowl')).toEqual([['end', 'start', 180, 240, 480]]);
    expect(day.lags('levain#1 feed', 'country#2 fill-bowl')).toEqual([['end', 'start', 180, 240, 480]]);
  });
});
