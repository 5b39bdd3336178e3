import { describe, expect, test } from 'vitest';
import { readBakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import type { Step, Verb } from '../../shared/documents/method.ts';
import { ovenLanes } from '../../shared/floor/oven-lanes.ts';
import { projectionOf } from '../../shared/floor/projection.ts';
import { wayOf } from '../../shared/floor/way.ts';
import { Floor } from './support/floor.ts';
import { harbourFile, harbourJson } from './support/harbour.ts';

const MINUTE_MS = 60_000;

function steps(): readonly Step[] {
  const file = harbourFile();
  return [...file.formulas.flatMap((formula) => formula.method), ...file.products.flatMap((product) => product.way)];
}

function methodOf(letters: string): readonly Step[] {
  return harbourFile().formulas.find((formula) => formula.letters === letters)?.method ?? [];
}

function minutesOf(method: readonly Step[], verb: Verb): number {
  return method.filter((step) => step.verb === verb).reduce((sum, step) => sum + step.minutes.target, 0);
}

describe('the demo bakehouse', () => {
  test('D20 has no fault', () => {
    const result = readBakehouseFile(harbourJson());
    expect(result.ok ? [] : result.fault).toEqual([]);
  });

  test('has five formulas and the nine batches of a market Saturday', () => {
    const tags = Object.values(Floor.harbour().state.workpieces).map((workpiece) => workpiece.tag);
    expect(harbourFile().formulas).toHaveLength(5);
    expect(tags.sort()).toEqual(['C1', 'C2', 'C3', 'Ch1', 'M1', 'O1', 'O2', 'R1', 'R2']);
  });

  test('names stations, never people', () => {
    expect(harbourFile().kitchen.stations.map((station) => station.id)).toEqual(['mixer', 'bench', 'oven', 'fillings']);
  });

  test('a judged step has its check, a step that wants hands its station', () => {
    for (const step of steps()) {
      if (step.kind === 'judged') expect(step.check, step.id).toBeTruthy();
      if (step.kind === 'hands') expect(step.station, step.id).toBeTruthy();
      if (step.kind === 'timed') expect(step.place ?? step.claims[0]?.kind, step.id).toBeTruthy();
    }
  });

  test('warns where a mixer, an oven or held food can hurt, and never calls anything safe', () => {
    for (const step of steps()) {
      if (['firstSpeed', 'secondSpeed', 'turnOut', 'load', 'takeOut'].includes(step.verb)) expect(step.caution, step.id).toBeTruthy();
    }
    const held = harbourFile().products.filter((product) =>
      product.way.some((step) => step.additions.some((line) => line.item === 'custard' || line.item === 'cheese-filling')),
    );
    expect(held.map((product) => product.id)).toEqual(['custard-bun', 'cheese-boat']);
    for (const product of held) {
      expect(product.caution).toMatch(/cold.*local food codes come first/i);
      const step = product.way.find((candidate) =>
        candidate.additions.some((line) => line.item === 'custard' || line.item === 'cheese-filling'),
      );
      expect(step?.caution).toMatch(/cold.*local food codes come first/i);
    }
    expect(JSON.stringify(harbourJson())).not.toMatch(/\bsafe/i);
  });

  test('a formula weighs at least what its batches are planned with', () => {
    const { formulas, day } = harbourFile();
    for (const batch of day.batches) {
      const dough = formulas.find((formula) => formula.id === batch.formula)?.parts.at(-1);
      const partsG = dough?.items.reduce((sum, line) => sum + line.g, 0);
      expect(partsG, batch.formula).toBe(batch.doughG);
    }
  });

  test('what is taken of a preferment or a soaker is what it weighs', () => {
    for (const formula of harbourFile().formulas) {
      const weights = new Map(formula.parts.map((part) => [part.name, part.items.reduce((sum, line) => sum + line.g, 0)]));
      for (const line of formula.parts.flatMap((part) => part.items)) {
        if ('part' in line) expect(line.g, `${formula.id} ${line.part}`).toBe(weights.get(line.part));
      }
    }
  });

  test('every batch fits the mixer that it claims', () => {
    const { formulas, kitchen, day } = harbourFile();
    for (const batch of day.batches) {
      const method = formulas.find((formula) => formula.id === batch.formula)?.method ?? [];
      const ids = new Set(method.flatMap((step) => step.claims.filter((claim) => claim.kind === 'mixer').flatMap((claim) => claim.ids)));
      for (const mixer of kitchen.mixers.filter((candidate) => ids.has(candidate.id))) {
        expect(batch.doughG, `${batch.formula} in ${mixer.id}`).toBeGreaterThanOrEqual(mixer.leastG);
        expect(batch.doughG, `${batch.formula} in ${mixer.id}`).toBeLessThanOrEqual(mixer.mostG);
      }
    }
  });
});

describe('the demo day as planned', () => {
  test('lets a newcomer see three doughs within the first twenty minutes', () => {
    const startsMin = harbourFile().day.batches.map((batch) => ('afterLoadMin' in batch.start ? batch.start.afterLoadMin : Number.NaN));
    expect(startsMin[0]).toBeLessThanOrEqual(1);
    expect(startsMin.filter((min) => min <= 20)).toHaveLength(3);
    expect(startsMin).toEqual([...startsMin].sort((a, b) => a - b));
  });

  test('no mixer is wanted by two doughs at once', () => {
    const floor = Floor.harbour();
    const busy = new Map<string, { tag: string; fromMs: number; toMs: number }[]>();
    const inOrder = Object.values(floor.state.workpieces).sort((a, b) => a.plannedStartMs - b.plannedStartMs);
    for (const workpiece of inOrder) {
      const way = wayOf(floor.state, workpiece);
      const mixing = (projectionOf(floor.state, workpiece, floor.nowMs)?.stretches ?? []).filter((stretch) =>
        way.some((step) => step.id === stretch.stepId && step.claims.some((claim) => claim.kind === 'mixer')),
      );
      const claim = way.flatMap((step) => step.claims).find((candidate) => candidate.kind === 'mixer');
      const [fromMs, toMs] = [mixing[0]?.fromMs ?? 0, mixing.at(-1)?.toMs ?? 0];
      const free = claim?.ids.find((id) => (busy.get(id) ?? []).every((other) => other.toMs <= fromMs || toMs <= other.fromMs));
      expect(free, `${workpiece.tag} finds a mixer free`).toBeDefined();
      busy.set(free ?? '', [...(busy.get(free ?? '') ?? []), { tag: workpiece.tag, fromMs, toMs }]);
    }
    expect([...busy.keys()].sort()).toEqual(['planetary', 'spiral']);
  });

  test('D19 every load finds its slots, and none clashes', () => {
    const floor = Floor.harbour();
    const bookings = ovenLanes(floor.state, floor.nowMs).flatMap((deck) => deck.lanes.flatMap((lane) => lane.bookings));
    expect(bookings.filter((booking) => booking.clashesWith.length > 0)).toEqual([]);
    // C1–C3 and Ch1 take two slots each, the others one for each bake; O1 and O2 are baked twice, M1 has two cuts.
    expect(bookings).toHaveLength(4 * 2 + 2 + 2 * 2 + 2);
  });
});

// Common practice, with no source: what a baker would expect of these doughs in a small kitchen.
describe('common practice', () => {
  test('first speed lasts about 4 minutes', () => {
    for (const formula of harbourFile().formulas) expect(minutesOf(formula.method, 'firstSpeed'), formula.id).toBe(4);
  });

  test('a lean dough in a small mixer is mixed for 17 to 18 minutes in all', () => {
    for (const letters of ['C', 'O']) {
      const mixingMin = minutesOf(methodOf(letters), 'firstSpeed') + minutesOf(methodOf(letters), 'secondSpeed');
      expect(mixingMin, letters).toBeGreaterThanOrEqual(17);
      expect(mixingMin, letters).toBeLessThanOrEqual(18);
    }
  });

  test('the sourdough has a bulk of about 2 hours on a shelf of 28 °C, with folds', () => {
    const bulk = methodOf('C').filter((step) => step.verb === 'bulk');
    expect(bulk.reduce((sum, step) => sum + step.minutes.target, 0)).toBe(120);
    for (const step of bulk) expect(harbourFile().kitchen.restPlaces.find((place) => place.id === step.place)?.temperatureC).toBe(28);
    expect(methodOf('C').filter((step) => step.verb === 'fold')).toHaveLength(2);
  });

  test('the flatbread is baked off in 5 to 6 minutes in the very hot hearth, and bears half a minute', () => {
    const way = harbourFile().products.find((product) => product.id === 'olive-flat')?.way ?? [];
    const bakeOff = way.findIndex((step) => step.verb === 'bakeOff');
    expect(way[bakeOff]?.minutes.target).toBeGreaterThanOrEqual(5);
    expect(way[bakeOff]?.minutes.target).toBeLessThanOrEqual(6);
    expect(way[bakeOff + 1]?.toleranceMin.late).toBe(0.5);
  });

  test('a fold bears ten minutes', () => {
    const folds = steps().filter((step) => step.verb === 'fold');
    expect(folds.length).toBeGreaterThan(0);
    for (const fold of folds) expect(fold.toleranceMin.late).toBe(10);
  });

  test('water is 60 to 85 parts on 100 of flour in the lean doughs, salt about 2', () => {
    const { formulas, ingredients } = harbourFile();
    for (const letters of ['C', 'R', 'O', 'Ch']) {
      const lines = formulas.find((formula) => formula.letters === letters)?.parts.flatMap((part) => part.items) ?? [];
      const sumG = (kind: string): number =>
        lines.reduce(
          (sum, line) => ('item' in line && ingredients.find((item) => item.id === line.item)?.kind === kind ? sum + line.g : sum),
          0,
        );
      expect(sumG('water') / sumG('flour'), letters).toBeGreaterThan(0.6);
      expect(sumG('water') / sumG('flour'), letters).toBeLessThan(0.85);
      expect(sumG('salt') / sumG('flour'), letters).toBeGreaterThan(0.018);
      expect(sumG('salt') / sumG('flour'), letters).toBeLessThan(0.0225);
    }
  });

  test('minutes are in house time: the first tolerance of a fold is 600 000 ms', () => {
    const floor = Floor.harbour();
    floor.bringTo('C1', 'bulk-1');
    const due = floor.due('C1');
    expect(due.lateMs - due.dueMs).toBe(10 * MINUTE_MS);
  });
});
