import { describe, expect, test } from 'vitest';
import { madeG, sharesOf } from '../../shared/documents/amounts.ts';
import { readBakehouseFile, type BakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import type { Step, Verb } from '../../shared/documents/method.ts';
import { ovenLanes } from '../../shared/floor/oven-lanes.ts';
import { projectionOf } from '../../shared/floor/projection.ts';
import { wayOf } from '../../shared/floor/way.ts';
import { Floor } from './support/floor.ts';
import { bringInCommand, demoFile, demoJson, harbourFile, harbourJson, OPENING_MS } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';

const MINUTE_MS = 60_000;

/** The demo of `npm start`, and the same house with doughs only, on which most tests work. */
const HOUSES = [
  { name: 'the demo bakehouse', file: demoFile(), json: demoJson() },
  { name: 'the bakehouse with doughs only', file: harbourFile(), json: harbourJson() },
];

function stepsOf(file: BakehouseFile): readonly Step[] {
  return [...file.formulas.flatMap((formula) => formula.method), ...file.products.flatMap((product) => product.way)];
}

function methodOf(file: BakehouseFile, letters: string): readonly Step[] {
  return file.formulas.find((formula) => formula.letters === letters)?.method ?? [];
}

function minutesOf(method: readonly Step[], verb: Verb): number {
  return method.filter((step) => step.verb === verb).reduce((sum, step) => sum + step.minutes.target, 0);
}

function floorOf(file: BakehouseFile): Floor {
  const floor = new Floor();
  floor.ok(bringInCommand(file, OPENING_MS), { deviceId: SERVER_DEVICE });
  return floor;
}

function tagsOf(file: BakehouseFile): readonly string[] {
  return Object.values(floorOf(file).state.workpieces)
    .map((workpiece) => workpiece.tag)
    .sort();
}

/** Whether a step brings in a filling of milk, cheese or egg that somebody made before. */
function takesHeldFilling(step: Step): boolean {
  const held = ['custard', 'cheese-filling'];
  return step.additions.some((line) => held.includes(line.item ?? '') || held.includes(line.formula ?? ''));
}

describe.each(HOUSES)('$name', ({ file, json }) => {
  test('D20 has no fault', () => {
    const result = readBakehouseFile(json);
    expect(result.ok ? [] : result.fault).toEqual([]);
  });

  test('names stations, never people', () => {
    expect(file.kitchen.stations.map((station) => station.id)).toEqual(['mixer', 'bench', 'oven', 'fillings']);
  });

  test('a judged step has its check, a step that wants hands its station, a rest its place', () => {
    for (const step of stepsOf(file)) {
      if (step.kind === 'judged') expect(step.check, step.id).toBeTruthy();
      if (step.kind === 'hands') expect(step.station, step.id).toBeTruthy();
      if (step.kind === 'timed') expect(step.place ?? step.claims[0]?.kind, step.id).toBeTruthy();
    }
  });

  test('warns where a mixer, an oven or held food can hurt, and never calls anything safe', () => {
    for (const step of stepsOf(file)) {
      if (['firstSpeed', 'secondSpeed', 'turnOut', 'load', 'takeOut', 'cook'].includes(step.verb))
        expect(step.caution, step.id).toBeTruthy();
    }
    const held = file.products.filter((product) => product.way.some(takesHeldFilling));
    expect(held.map((product) => product.id)).toEqual(['custard-bun', 'cheese-boat']);
    for (const product of held) {
      expect(product.caution).toMatch(/cold.*local food codes come first/i);
      expect(product.way.find(takesHeldFilling)?.caution).toMatch(/cold.*local food codes come first/i);
    }
    expect(JSON.stringify(json)).not.toMatch(/\bsafe/i);
  });

  test('a formula weighs what its doughs are planned with', () => {
    const doughs = file.day.batches.filter((batch) => batch.cuts.length > 0);
    expect(doughs.length).toBeGreaterThan(0);
    for (const batch of doughs) {
      const formula = file.formulas.find((candidate) => candidate.id === batch.formula);
      expect(formula === undefined ? null : madeG(formula), batch.formula).toBe(batch.doughG);
    }
  });

  test('what is taken of a preferment or a soaker is what it weighs', () => {
    for (const formula of file.formulas) {
      const weights = new Map(formula.parts.map((part) => [part.name, part.items.reduce((sum, line) => sum + line.g, 0)]));
      for (const line of formula.parts.flatMap((part) => part.items)) {
        if ('part' in line) expect(line.g, `${formula.id} ${line.part}`).toBe(weights.get(line.part));
      }
    }
  });

  test('every batch fits the mixer that it claims', () => {
    const { formulas, kitchen, day } = file;
    for (const batch of day.batches) {
      const method = formulas.find((formula) => formula.id === batch.formula)?.method ?? [];
      const ids = new Set(method.flatMap((step) => step.claims.filter((claim) => claim.kind === 'mixer').flatMap((claim) => claim.ids)));
      for (const mixer of kitchen.mixers.filter((candidate) => ids.has(candidate.id))) {
        expect(batch.doughG, `${batch.formula} in ${mixer.id}`).toBeGreaterThanOrEqual(mixer.leastG);
        expect(batch.doughG, `${batch.formula} in ${mixer.id}`).toBeLessThanOrEqual(mixer.mostG);
      }
    }
  });

  test('lets a newcomer see three doughs within the first twenty minutes', () => {
    const startsMin = file.day.batches.map((batch) => ('afterLoadMin' in batch.start ? batch.start.afterLoadMin : Number.NaN));
    expect(startsMin[0]).toBeLessThanOrEqual(1);
    expect(startsMin.filter((min) => min <= 20)).toHaveLength(3);
    expect(startsMin).toEqual([...startsMin].sort((a, b) => a - b));
  });

  test('no mixer is wanted by two doughs at once', () => {
    const floor = floorOf(file);
    const busy = new Map<string, { tag: string; fromMs: number; toMs: number }[]>();
    const inOrder = Object.values(floor.state.workpieces)
      .filter((workpiece) => workpiece.kind === 'batch')
      .sort((a, b) => a.plannedStartMs - b.plannedStartMs);
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
    const floor = floorOf(file);
    const bookings = ovenLanes(floor.state, floor.nowMs).flatMap((deck) => deck.lanes.flatMap((lane) => lane.bookings));
    expect(bookings.filter((booking) => booking.clashesWith.length > 0)).toEqual([]);
    // C1–C3 and the boats take two slots each, O1 and O2 are baked twice, M1 has two cuts; rye is 16 tins, 8 to a slot.
    expect(bookings).toHaveLength(4 * 2 + 2 + 2 * 2 + 2);
  });
});

describe('what stands on the two floors', () => {
  test('five formulas and the nine batches of a market Saturday', () => {
    expect(harbourFile().formulas).toHaveLength(5);
    expect(tagsOf(harbourFile())).toEqual(['C1', 'C2', 'C3', 'Ch1', 'M1', 'O1', 'O2', 'R1', 'R2']);
  });

  test('the demo has the levain pot and the two preps beside them, and its rye in one mix', () => {
    expect(tagsOf(demoFile())).toEqual(['C1', 'C2', 'C3', 'Cf1', 'Ch1', 'Cu1', 'L1', 'M1', 'O1', 'O2', 'R1']);
  });

  test('what the demo’s preps make is what their pieces take', () => {
    const { workpieces } = floorOf(demoFile()).state;
    const gramsOf = (tag: string): number | undefined => Object.values(workpieces).find((workpiece) => workpiece.tag === tag)?.grams;
    expect(gramsOf('Cu1'), '30 buns, 25 g each').toBe(750);
    expect(gramsOf('Cf1'), '16 boats, 110 g each').toBe(1760);
  });

  test('the pot has levain for all doughs that take it, and its seed, and is ripe while they are mixed', () => {
    const { formulas, day } = demoFile();
    const pot = formulas.find((formula) => formula.id === 'levain');
    const ripen = pot?.method.find((step) => step.verb === 'ripen');
    let takenG = 0;
    for (const batch of day.batches) {
      const lines = formulas.find((formula) => formula.id === batch.formula)?.parts.flatMap((part) => part.items) ?? [];
      const takesG = lines.reduce((sum, line) => ('formula' in line && line.formula === 'levain' ? sum + line.g : sum), 0);
      takenG += takesG;
      if (takesG === 0 || !('afterLoadMin' in batch.start)) continue;
      expect(batch.start.afterLoadMin).toBeGreaterThanOrEqual(ripen?.minutes.target ?? Number.NaN);
      expect(batch.start.afterLoadMin).toBeLessThanOrEqual(ripen?.minutes.latest ?? Number.NaN);
    }
    const madeInPotG = day.batches[0]?.doughG ?? 0;
    expect(takenG).toBe(3 * 1500 + 2700);
    expect(madeInPotG - takenG).toBeGreaterThanOrEqual(pot?.seedG ?? Number.NaN);
    expect(madeInPotG - takenG, 'little is thrown away').toBeLessThan(2 * (pot?.seedG ?? 0));
  });
});

// Common practice, with no source: what a baker would expect of these doughs in a small kitchen.
describe.each(HOUSES)('common practice: $name', ({ file }) => {
  test('first speed lasts about 4 minutes', () => {
    const doughs = file.formulas.filter((formula) => formula.kind === 'dough');
    for (const formula of doughs) expect(minutesOf(formula.method, 'firstSpeed'), formula.id).toBe(4);
  });

  test('a lean dough in a small mixer is mixed for 17 to 18 minutes in all', () => {
    for (const letters of ['C', 'O']) {
      const mixingMin = minutesOf(methodOf(file, letters), 'firstSpeed') + minutesOf(methodOf(file, letters), 'secondSpeed');
      expect(mixingMin, letters).toBeGreaterThanOrEqual(17);
      expect(mixingMin, letters).toBeLessThanOrEqual(18);
    }
  });

  test('the sourdough has a bulk of about 2 hours on a shelf of 28 °C, with folds', () => {
    const bulk = methodOf(file, 'C').filter((step) => step.verb === 'bulk');
    expect(bulk.reduce((sum, step) => sum + step.minutes.target, 0)).toBe(120);
    for (const step of bulk) expect(file.kitchen.restPlaces.find((place) => place.id === step.place)?.temperatureC).toBe(28);
    expect(methodOf(file, 'C').filter((step) => step.verb === 'fold')).toHaveLength(2);
  });

  test('the flatbread is baked off in 5 to 6 minutes in the very hot hearth, and bears half a minute', () => {
    const way = file.products.find((product) => product.id === 'olive-flat')?.way ?? [];
    const bakeOff = way.findIndex((step) => step.verb === 'bakeOff');
    expect(way[bakeOff]?.minutes.target).toBeGreaterThanOrEqual(5);
    expect(way[bakeOff]?.minutes.target).toBeLessThanOrEqual(6);
    expect(way[bakeOff + 1]?.toleranceMin.late).toBe(0.5);
  });

  test('a fold bears ten minutes', () => {
    const folds = stepsOf(file).filter((step) => step.verb === 'fold');
    expect(folds.length).toBeGreaterThan(0);
    for (const fold of folds) expect(fold.toleranceMin.late).toBe(10);
  });

  test('water is 60 to 85 parts on 100 of flour in the lean doughs, salt about 2', () => {
    const { formulas, ingredients } = file;
    for (const letters of ['C', 'R', 'O', 'Ch']) {
      const formula = formulas.find((candidate) => candidate.letters === letters);
      const shares = formula === undefined ? [] : [...sharesOf(formula, (id) => formulas.find((other) => other.id === id) ?? null)];
      const sumOf = (kind: string): number =>
        shares.reduce((sum, [id, share]) => (ingredients.find((item) => item.id === id)?.kind === kind ? sum + share : sum), 0);
      expect(sumOf('water') / sumOf('flour'), letters).toBeGreaterThan(0.6);
      expect(sumOf('water') / sumOf('flour'), letters).toBeLessThan(0.85);
      expect(sumOf('salt') / sumOf('flour'), letters).toBeGreaterThan(0.018);
      expect(sumOf('salt') / sumOf('flour'), letters).toBeLessThan(0.0225);
    }
  });

  test('minutes are in house time: the first tolerance of a fold is 600 000 ms', () => {
    const floor = floorOf(file).bringTo('C1', 'bulk-1');
    const due = floor.due('C1');
    expect(due.lateMs - due.dueMs).toBe(10 * MINUTE_MS);
  });
});
