import type { CallLevel } from './events.ts';

/** What a row shows: nothing to do yet, your move, past its tolerance, being lost. */
export type Role = 'running' | CallLevel;

const STRENGTH: Readonly<Record<Role, number>> = { running: 0, call: 1, late: 2, lost: 3 };

/** Whether one role presses more than another. */
export function isStronger(role: Role, than: Role): boolean {
  return STRENGTH[role] > STRENGTH[than];
}
