import { describe, expect, test } from 'vitest';
import { prune } from '../../shared/floor/prune.ts';
import { KEEP_FINISHED_MS, type Edge } from '../../shared/floor/state.ts';
import { Floor } from './support/floor.ts';
import { bringInCommand, harbourFile } from './support/harbour.ts';
import { idOf, SERVER_DEVICE } from './support/ids.ts';

const HOUR_MIN = 60;

/** M1 divided into its cuts and both packed, everything else as planned. */
function bunsPacked(): Floor {
  const floor = Floor.harbour().bringTo('M1', 'divide');
  floor.finish('M1', 'divide');
  floor.bringTo('M1a', 'pack').finish('M1a', 'pack');
  floor.bringTo('M1b', 'pack').finish('M1b', 'pack');
  return floor;
}

function tags(floor: Floor): string[] {
  return Object.values(floor.state.workpieces)
    .map((workpiece) => workpiece.tag)
    .sort();
}

describe('D16 the live state is open work and the last 36 hours', () => {
  test('36 hours after they left the floor, when the next one leaves it', () => {
    expect(KEEP_FINISHED_MS).toBe(36 * 3_600_000);
    const floor = bunsPacked();
    floor.wait(36 * HOUR_MIN).ok({ type: 'discardWorkpiece', workpieceId: floor.id('R2'), reason: 'too old' });
    // Divided at 98, the plain buns packed at 192, the filled ones at 231: only the last are within 36 hours.
    expect(tags(floor)).toEqual(['C1', 'C2', 'C3', 'Ch1', 'M1b', 'O1', 'O2', 'R1', 'R2']);
    floor.wait(1).ok({ type: 'discardWorkpiece', workpieceId: floor.id('R1'), reason: 'too old' });
    expect(tags(floor)).toEqual(['C1', 'C2', 'C3', 'Ch1', 'O1', 'O2', 'R1', 'R2']);
  });

  test('edges go with the last of their ends', () => {
    const floor = bunsPacked();
    expect(floor.state.edges).toHaveLength(2);
    floor.wait(36 * HOUR_MIN).ok({ type: 'discardWorkpiece', workpieceId: floor.id('R2'), reason: 'too old' });
    expect(floor.state.edges.map((edge) => edge.toId)).toEqual([floor.id('M1b')]);
    floor.wait(1).ok({ type: 'discardWorkpiece', workpieceId: floor.id('R1'), reason: 'too old' });
    expect(floor.state.edges).toEqual([]);
  });

  test('what a pot gave and was fed goes after the 36 hours, though the pot stays', () => {
    const floor = Floor.harbour();
    const { id } = floor.piece('C1');
    const [from, to] = [floor.id('R1'), floor.id('R2')];
    const edge = (kind: 'draw' | 'feed' | 'divide', fromId: string, toId: string, ageH: number): Edge => ({
      kind,
      fromId,
      toId,
      grams: 100,
      atMs: floor.nowMs - ageH * HOUR_MIN * 60_000,
      commandId: id,
    });
    const gone = idOf(4711);
    const edges = [
      edge('draw', from, gone, 37),
      edge('draw', from, gone, 35),
      edge('feed', from, from, 37),
      edge('feed', from, from, 35),
      edge('draw', from, to, 37),
      edge('divide', gone, to, 37),
    ];
    const state = { ...floor.state, edges };
    // Something has to go before anything is looked at.
    const finished = { ...floor.piece('C1'), finishedMs: floor.nowMs - 37 * HOUR_MIN * 60_000 };
    const after = prune({ ...state, workpieces: { ...state.workpieces, [id]: finished } }, floor.nowMs);
    expect(after.edges).toEqual([edges[1], edges[3], edges[4], edges[5]]);
  });

  test('open work stays, however old', () => {
    const floor = Floor.harbour();
    expect(prune(floor.state, floor.nowMs + 100 * KEEP_FINISHED_MS)).toBe(floor.state);
  });

  test('an old version of a document goes when nothing was made of it any more, the newest stays', () => {
    const floor = Floor.harbour().only('M1');
    const command = bringInCommand(harbourFile(), floor.nowMs, '2026-03-08');
    const formulas = command.formulas.map((formula) => ({ ...formula, name: `${formula.name}, new` }));
    floor.wait(37 * HOUR_MIN).ok({ ...command, formulas, batches: [] }, { deviceId: SERVER_DEVICE });
    expect(Object.keys(floor.state.formulas)).toHaveLength(10);
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('M1'), reason: 'too old' });
    expect(Object.keys(floor.state.formulas).sort()).toEqual([
      'cheese-boats@2',
      'country@2',
      'milk-buns@1',
      'milk-buns@2',
      'olive-flatbread@2',
      'rye@2',
    ]);
  });

  test('an event about what is no longer there changes nothing but the sequence', () => {
    const floor = Floor.harbour();
    const before = floor.state;
    const gone = { workpieceId: idOf(88_888), stepId: 'pack', atMs: floor.nowMs };
    floor.record({ type: 'stepDone', ...gone });
    floor.record({ type: 'callHeard', ...gone, level: 'call' });
    floor.record({
      type: 'callSounded',
      burst: 'late',
      calls: [{ workpieceId: gone.workpieceId, stepId: 'pack', level: 'late' }],
      atMs: floor.nowMs,
    });
    floor.record({
      type: 'loadsMade',
      ...gone,
      children: [
        { workpieceId: idOf(88_889), tag: 'C1·1', productId: 'country-loaf', productVersion: 1, pieces: 1, grams: 1, vessels: [] },
      ],
      restPieces: 0,
      restG: 0,
    });
    floor.record({ type: 'fermentFed', workpieceId: gone.workpieceId, seedG: 1, flourG: 1, waterG: 1, discardedG: 0, atMs: floor.nowMs });
    expect(floor.state.workpieces).toEqual(before.workpieces);
    expect(floor.state.sequence).toBe(before.sequence + 5);
  });

  test('undo of what has gone is refused', () => {
    const floor = Floor.harbour();
    const commandId = floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('R1'), reason: 'no tins' });
    floor.wait(37 * HOUR_MIN).ok({ type: 'discardWorkpiece', workpieceId: floor.id('R2'), reason: 'no tins' }, { deviceId: SERVER_DEVICE });
    expect(floor.give({ type: 'undoCommand', commandId }).decision).toEqual({ ok: false, fault: { code: 'nothingToUndo' } });
  });
});
