import { isDeepStrictEqual } from 'node:util';
import { dueOf } from '../../../shared/floor/due.ts';
import { nextSound } from '../../../shared/floor/sounding.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { Violations } from './violation.ts';

/** S5: after the clock was set everything on the floor has just as long left as before, and what is over stays as it was. */
export function checkJump(before: FloorState, after: FloorState, byMs: number, violations: Violations): void {
  for (const workpiece of Object.values(before.workpieces)) {
    const moved = after.workpieces[workpiece.id];
    if (moved === undefined) {
      violations.report('S5', `${workpiece.tag} is gone after the clock was set`);
      continue;
    }
    const due = dueOf(before, workpiece);
    if (due === null) {
      violations.demand(
        'S5',
        isDeepStrictEqual(moved, workpiece),
        () => `${workpiece.tag} was off the floor and has changed when the clock was set`,
      );
      continue;
    }
    const dueAfter = dueOf(after, moved);
    const instants = [
      due.dueMs,
      due.lateMs,
      due.lostMs,
      due.earliestMs,
      due.startedMs,
      workpiece.heldUntilMs,
      workpiece.call?.heardMs,
      workpiece.call?.lastSoundedMs,
    ];
    const instantsAfter = [
      dueAfter?.dueMs,
      dueAfter?.lateMs,
      dueAfter?.lostMs,
      dueAfter?.earliestMs,
      dueAfter?.startedMs,
      moved.heldUntilMs,
      moved.call?.heardMs,
      moved.call?.lastSoundedMs,
    ];
    instants.forEach((instantMs, index) => {
      const wanted = typeof instantMs === 'number' ? instantMs + byMs : instantMs;
      violations.demand(
        'S5',
        instantsAfter[index] === wanted,
        () => `${workpiece.tag} has not just as long left after the clock was set (instant ${index})`,
      );
    });
  }
  // Asked at the beginning of time, it says when the first burst is due.
  const soundMs = nextSound(before, 0)?.atMs ?? null;
  const soundAfterMs = nextSound(after, 0)?.atMs ?? null;
  violations.demand(
    'S5',
    soundAfterMs === (soundMs === null ? null : soundMs + byMs),
    () => 'the next burst is not just as far off after the clock was set',
  );
}
