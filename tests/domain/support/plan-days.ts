import type { FloorState } from '../../../shared/floor/state.ts';
import { Floor } from './floor.ts';

/** The plain demo day as it opens. */
export function harbourState(): FloorState {
  return Floor.harbour().state;
}
