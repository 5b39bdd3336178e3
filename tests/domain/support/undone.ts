import { expect } from 'vitest';
import type { FloorCommand } from '../../../shared/floor/commands.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { Floor, Tap } from './floor.ts';

/** What undo has to bring back: everything but the journal's position and the memory of undo itself. */
function lasting(state: FloorState): Omit<FloorState, 'sequence' | 'undo'> {
  const { sequence: _sequence, undo: _undo, ...rest } = state;
  return rest;
}

/** Gives a command that changes something, takes it back, and expects everything to be as it was. */
export function expectUndone(floor: Floor, command: FloorCommand, tap: Tap = {}): void {
  const before = lasting(floor.state);
  const commandId = floor.ok(command, tap);
  expect(lasting(floor.state)).not.toEqual(before);
  floor.wait(0.2).ok({ type: 'undoCommand', commandId }, tap);
  expect(lasting(floor.state)).toEqual(before);
}
