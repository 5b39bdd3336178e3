import { describe, expect, test } from 'vitest';
import type { FloorState } from '../../shared/floor/state.ts';
import { Floor } from './support/floor.ts';
import { given, type CommandOn } from './support/given.ts';
import { idOf, OTHER_PHONE, PHONE, SERVER_DEVICE } from './support/ids.ts';

/** What undo has to bring back: everything but the journal's position and the memory of undo itself. */
function lasting(state: FloorState): Omit<FloorState, 'sequence' | 'undo'> {
  const { sequence: _sequence, undo: _undo, ...rest } = state;
  return rest;
}

const ARRANGED: readonly (readonly [string, (floor: Floor) => void, CommandOn])[] = [
  ['a start', (floor) => floor.finish('C1', 'weigh'), (floor) => ({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'fill-bowl' })],
  [
    'a start that ended a rest',
    (floor) => floor.bringTo('C1', 'fold-1'),
    (floor) => ({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'fold-1' }),
  ],
  ['a first done', () => {}, (floor) => ({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'weigh' })],
  [
    'a done that ended one rest and began the next',
    (floor) => floor.bringTo('C1', 'fold-1').raiseCalls(),
    (floor) => ({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'fold-1' }),
  ],
  [
    'a done that gave the mixer free',
    (floor) => floor.bringTo('C1', 'turn-out'),
    (floor) => ({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'turn-out' }),
  ],
  ['a load', (floor) => floor.bringTo('C1', 'load'), (floor) => ({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'load' })],
  [
    'a taking out',
    (floor) => floor.bringTo('C1', 'take-out'),
    (floor) => ({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'take-out' }),
  ],
  [
    'a divide into two cuts',
    (floor) => floor.bringTo('M1', 'divide'),
    (floor) => ({ type: 'finishStep', workpieceId: floor.id('M1'), stepId: 'divide' }),
  ],
  [
    'the last step',
    (floor) => floor.bringTo('R1', 'pack'),
    (floor) => ({ type: 'finishStep', workpieceId: floor.id('R1'), stepId: 'pack' }),
  ],
  [
    'more time',
    (floor) => floor.bringTo('C1', 'fold-1').raiseCalls(),
    (floor) => ({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'fold-1', minutes: 5 }),
  ],
  [
    'heard',
    (floor) => floor.bringTo('C1', 'fold-1').raiseCalls(),
    (floor) => ({ type: 'hearCall', workpieceId: floor.id('C1'), stepId: 'fold-1' }),
  ],
  ['everything heard', (floor) => floor.bringTo('C1', 'fold-1').raiseCalls(), () => ({ type: 'hearAllCalls' })],
  [
    'a hold',
    (floor) => floor.bringTo('C1', 'fold-1').raiseCalls(),
    (floor) => ({ type: 'holdWorkpiece', workpieceId: floor.id('C1'), stepId: 'fold-1', minutes: 10 }),
  ],
  [
    'a release',
    (floor) => {
      floor.ok({ type: 'holdWorkpiece', workpieceId: floor.id('C1'), stepId: 'weigh', minutes: 10 }, { deviceId: OTHER_PHONE });
    },
    (floor) => ({ type: 'releaseWorkpiece', workpieceId: floor.id('C1'), stepId: 'weigh' }),
  ],
  [
    'a skip',
    (floor) => floor.bringTo('C1', 'fold-1'),
    (floor) => ({ type: 'skipStep', workpieceId: floor.id('C1'), stepId: 'fold-1', reason: 'strong enough' }),
  ],
  [
    'a skipped taking out',
    (floor) => floor.bringTo('R1', 'take-out'),
    (floor) => ({ type: 'skipStep', workpieceId: floor.id('R1'), stepId: 'take-out', reason: 'out already' }),
  ],
  [
    'a discard from the oven',
    (floor) => floor.bringTo('R1', 'bake'),
    (floor) => ({ type: 'discardWorkpiece', workpieceId: floor.id('R1'), reason: 'burnt' }),
  ],
  [
    'a reading',
    (floor) => floor.bringTo('C1', 'bulk-1'),
    (floor) => ({ type: 'readTemperature', workpieceId: floor.id('C1'), where: 'dough', celsius: 26 }),
  ],
];

describe('D12 undo puts back exactly what a command found', () => {
  test.each(ARRANGED)('%s', (_name, arrange, command) => {
    const floor = Floor.harbour();
    arrange(floor);
    const before = floor.state;
    floor.wait(0.2);
    const commandId = floor.ok(command(floor));
    expect(lasting(floor.state)).not.toEqual(lasting(before));
    floor.wait(0.2).ok({ type: 'undoCommand', commandId });
    expect(lasting(floor.state)).toEqual(lasting(before));
    expect(floor.state.undo[PHONE]).toBeUndefined();
  });

  test('it says which command and which workpieces, and stays in the journal', () => {
    const floor = Floor.harbour().bringTo('M1', 'divide');
    const commandId = floor.finish('M1', 'divide');
    const workpieceIds = [floor.id('M1'), floor.id('M1a'), floor.id('M1b')];
    const sequence = floor.state.sequence;
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.recorded.at(-1)).toMatchObject({
      sequence: sequence + 1,
      event: { type: 'commandUndone', undoneCommandId: commandId, workpieceIds, atMs: floor.nowMs },
    });
  });

  test('what was undone can be done again', () => {
    const floor = Floor.harbour().bringTo('M1', 'divide');
    const commandId = floor.finish('M1', 'divide');
    floor.ok({ type: 'undoCommand', commandId });
    floor.finish('M1', 'divide');
    expect([floor.piece('M1a').pieces, floor.piece('M1b').pieces]).toEqual([30, 30]);
    expect(floor.state.edges).toHaveLength(2);
  });
});

describe('D12 undo is the device’s own, for its last command, while nothing rests on it', () => {
  const UNDO_NOTHING = { code: 'nothingToUndo' } as const;

  test('not of a command of another device, not twice, not of one before the last', () => {
    const floor = Floor.harbour();
    const first = floor.finish('C1', 'weigh');
    expect(floor.give({ type: 'undoCommand', commandId: first }, { deviceId: OTHER_PHONE }).decision).toEqual({
      ok: false,
      fault: UNDO_NOTHING,
    });
    const second = floor.finish('R1', 'weigh');
    expect(floor.give({ type: 'undoCommand', commandId: first }).decision).toEqual({ ok: false, fault: UNDO_NOTHING });
    floor.ok({ type: 'undoCommand', commandId: second });
    expect(floor.give({ type: 'undoCommand', commandId: second }).decision).toEqual({ ok: false, fault: UNDO_NOTHING });
  });

  test('a refused command does not take the undo of the one before away', () => {
    const floor = Floor.harbour();
    const commandId = floor.finish('C1', 'weigh');
    floor.give({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'weigh' });
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.piece('C1').steps).toEqual({});
  });

  test('what the server raised and sounded meanwhile is no obstacle', () => {
    const floor = Floor.harbour().only('C1').bringTo('C1', 'first-speed').wait(4);
    const commandId = floor.finish('C1', 'first-speed');
    floor.wait(20).raiseCalls();
    floor.ok(
      { type: 'noteSounded', burst: 'call', calls: [{ workpieceId: floor.id('C1'), stepId: 'salt', level: 'call' }] },
      { deviceId: SERVER_DEVICE },
    );
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.due('C1').step.id).toBe('first-speed');
  });

  test('not once somebody else has changed the workpiece', () => {
    const floor = Floor.harbour();
    const commandId = floor.finish('C1', 'weigh');
    floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'fill-bowl' }, { deviceId: OTHER_PHONE });
    expect(floor.give({ type: 'undoCommand', commandId }).decision).toEqual({ ok: false, fault: { code: 'workRestsOnIt', tag: 'C1' } });
  });

  test('again, once the other has taken that back', () => {
    const floor = Floor.harbour();
    const commandId = floor.finish('C1', 'weigh');
    const others = floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'fill-bowl' }, { deviceId: OTHER_PHONE });
    floor.ok({ type: 'undoCommand', commandId: others }, { deviceId: OTHER_PHONE });
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.piece('C1').steps).toEqual({});
  });

  test('after a divide: until a cut has a step done', () => {
    const floor = Floor.harbour().bringTo('M1', 'divide');
    const commandId = floor.finish('M1', 'divide');
    floor.ok({ type: 'startStep', workpieceId: floor.id('M1b'), stepId: 'shape' }, { deviceId: OTHER_PHONE });
    const begun = new Floor(floor.state, floor.nowMs);
    begun.ok({ type: 'undoCommand', commandId }, { commandId: idOf(4_000) });
    expect(Object.values(begun.state.workpieces).some((workpiece) => workpiece.kind === 'cut')).toBe(false);
    floor.finish('M1b', 'shape', { deviceId: OTHER_PHONE });
    expect(floor.give({ type: 'undoCommand', commandId }).decision).toEqual({ ok: false, fault: { code: 'workRestsOnIt', tag: 'M1b' } });
  });

  test('not once the slot has been taken since', () => {
    given((floor) => floor.bringTo('R1', 'take-out').bringTo('C1', 'load'))
      .when((floor) => ({ type: 'undoCommand', commandId: takeOutThenLoad(floor) }))
      .thenRefusal<'workRestsOnIt'>({ code: 'workRestsOnIt', tag: 'C1' });
  });

  test('not once the mixer has been taken since', () => {
    const floor = Floor.harbour().bringTo('C1', 'turn-out').bringTo('C2', 'fill-bowl');
    const commandId = floor.finish('C1', 'turn-out');
    floor.ok({ type: 'startStep', workpieceId: floor.id('C2'), stepId: 'fill-bowl' }, { deviceId: OTHER_PHONE });
    expect(floor.give({ type: 'undoCommand', commandId }).decision).toEqual({ ok: false, fault: { code: 'workRestsOnIt', tag: 'C2' } });
  });

  test('two hundred devices are remembered, the one longest idle is forgotten first', () => {
    const floor = Floor.harbour();
    const device = (n: number): string => idOf(2_000_000 + n);
    const commandIds = Array.from({ length: 201 }, (_, n) =>
      floor.ok({ type: 'readTemperature', workpieceId: floor.id('C1'), where: 'room', celsius: 20 }, { deviceId: device(n) }),
    );
    expect(Object.keys(floor.state.undo)).toHaveLength(200);
    expect(floor.give({ type: 'undoCommand', commandId: commandIds[0] ?? '' }, { deviceId: device(0) }).decision).toEqual({
      ok: false,
      fault: UNDO_NOTHING,
    });
    floor.ok({ type: 'undoCommand', commandId: commandIds[200] ?? '' }, { deviceId: device(200) });
  });
});

/** R1 is taken out by one phone and C1 loaded into its slots by another. Returns the first one's command. */
function takeOutThenLoad(floor: Floor): string {
  const commandId = floor.finish('R1', 'take-out');
  floor.finish('C1', 'load', { deviceId: OTHER_PHONE });
  return commandId;
}

describe('D9 a call is raised once for each level of a step', () => {
  test('undoing heard after the call has become late does not bring the weaker call back', () => {
    const floor = Floor.harbour().bringTo('C1', 'bulk-1');
    const due = floor.due('C1');
    floor.until(due.dueMs);
    floor.raiseCalls();
    const heard = floor.ok({ type: 'hearCall', workpieceId: floor.id('C1'), stepId: due.action.id });
    floor.until(due.lateMs);
    floor.raiseCalls();
    expect(floor.piece('C1').call?.level).toBe('late');
    const raised = floor.piece('C1').call;
    floor.ok({ type: 'undoCommand', commandId: heard });
    expect(floor.piece('C1').call).toEqual(raised);
  });
});
