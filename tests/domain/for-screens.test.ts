import { describe, expect, test } from 'vitest';
import { boardRows } from '../../shared/floor/board.ts';
import { allergensOf } from '../../shared/floor/contents.ts';
import { openDues } from '../../shared/floor/due.ts';
import { forScreens, lacksDocuments, screenDocuments } from '../../shared/floor/for-screens.ts';
import { projectionOf } from '../../shared/floor/projection.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { takesOf } from '../../shared/floor/takes.ts';
import { Floor } from './support/floor.ts';
import { bringInCommand, demoFile } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';
import { days, liveDay } from './support/live-day.ts';
import { FILLING } from './support/small-book.ts';
import fc from 'fast-check';

function demoFloor(): Floor {
  const floor = new Floor();
  floor.ok(bringInCommand(demoFile(), floor.nowMs), { deviceId: SERVER_DEVICE });
  return floor;
}

const unused = {
  ...FILLING,
  id: 'idle',
  name: 'Idle',
  letters: 'I',
  parts: [{ name: 'Idle', role: 'preferment' as const, items: [{ item: 'salt', g: 5 }] }],
};

/** Everything that a screen works out of a state. */
function shown(state: FloorState, nowMs: number): unknown {
  const open = Object.values(state.workpieces).filter((workpiece) => workpiece.finishedMs === null);
  return {
    rows: boardRows(state, nowMs),
    projections: open.map((workpiece) => projectionOf(state, workpiece, nowMs)),
    allergens: open.map((workpiece) => allergensOf(state, workpiece)),
    takes: openDues(state).map(({ workpiece, action }) => takesOf(state, workpiece, action)),
  };
}

describe('R13 screens get the documents that the floor has to do with, and no more', () => {
  test('a formula that nothing is made of stays at the house; its version is still told', () => {
    const floor = demoFloor();
    floor.ok({ type: 'adoptFormula', fromVersion: 0, formula: unused });
    const { formulas, formulaVersions, formulaHistory, workpieces } = forScreens(floor.state);
    expect(Object.keys(formulas)).not.toContain('idle@1');
    expect(formulaVersions['idle']).toBe(1);
    expect(formulaHistory).toEqual({});
    expect(workpieces).toBe(floor.state.workpieces);
  });

  test('the version that a batch began with, the newest beside it, and what these take from', () => {
    const floor = demoFloor();
    const country = floor.state.formulas['country@1'];
    if (country === undefined) throw new Error('the demo house has a country dough');
    floor.ok({ type: 'adoptFormula', fromVersion: 0, formula: unused });
    floor.ok({ type: 'adoptFormula', fromVersion: 1, formula: { ...country, note: 'wetter' } });
    expect(Object.keys(forScreens(floor.state).formulas)).toEqual(
      expect.arrayContaining(['country@1', 'country@2', 'levain@1', 'custard@1']),
    );
    expect(Object.keys(forScreens(floor.state).products).sort()).toEqual(Object.keys(floor.state.products).sort());
  });

  test('with nothing on the floor, none', () => {
    const floor = demoFloor().only();
    floor.nowMs += 40 * 3_600_000;
    const empty = { ...floor.state, workpieces: {}, undo: {} };
    expect([forScreens(empty).formulas, forScreens(empty).products]).toEqual([{}, {}]);
  });

  test('whatever happens on a day, every screen shows the same by it as by the whole state', () => {
    fc.assert(
      fc.property(days, (day) => {
        const { state, nowMs } = liveDay(day);
        expect(shown(forScreens(state), nowMs)).toEqual(shown(state, nowMs));
        expect(forScreens(forScreens(state))).toEqual(forScreens(state));
      }),
      { seed: 20260307, numRuns: 12, endOnFailure: true },
    );
  });

  test('whatever happens, a screen that follows by events has what it needs, or is told that it has not', () => {
    fc.assert(
      fc.property(days, (day) => {
        let known = { formulas: new Set<string>(), products: new Set<string>() };
        let isFirst = true;
        liveDay(day, (floor, before, _given, commandId) => {
          if (isFirst) known = copyOf(screenDocuments(before));
          isFirst = false;
          const events = floor.recorded.filter((recorded) => recorded.commandId === commandId && recorded.sequence > before.sequence);
          const needs = screenDocuments(floor.state);
          if (lacksDocuments(screenDocuments(before), needs, events)) known = copyOf(needs);
          for (const { event } of events) {
            if (event.type === 'formulaAdopted') known.formulas.add(`${event.formula.id}@${event.version}`);
            if (event.type === 'productAdopted') known.products.add(`${event.product.id}@${event.version}`);
          }
          expect([...needs.formulas].filter((key) => !known.formulas.has(key))).toEqual([]);
          expect([...needs.products].filter((key) => !known.products.has(key))).toEqual([]);
        });
      }),
      { seed: 20260307, numRuns: 12, endOnFailure: true },
    );
  });

  test('R14 a book of 2 000 formulas does not make the snapshot longer by more than their versions', () => {
    const floor = demoFloor();
    const before = JSON.stringify(forScreens(floor.state)).length;
    const formulas = Array.from({ length: 2000 }, (_, index) => ({ ...unused, id: `idle-${index}`, name: `Idle ${index}` }));
    formulas.forEach((formula) => floor.record({ type: 'formulaAdopted', version: 1, formula }));
    const after = JSON.stringify(forScreens(floor.state)).length;
    // "idle-1999":1, are 14 characters each.
    expect(after - before).toBeLessThan(2000 * 15);
    expect(JSON.stringify(floor.state).length - before).toBeGreaterThan(2000 * 200);
  });
});

function copyOf({ formulas, products }: ReturnType<typeof screenDocuments>): { formulas: Set<string>; products: Set<string> } {
  return { formulas: new Set(formulas), products: new Set(products) };
}
