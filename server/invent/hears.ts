import type { CommandOf } from '../../shared/floor/commands.ts';
import type { CallLevel } from '../../shared/floor/events.ts';
import type { DayMind } from './day-mind.ts';

const SECOND_MS = 1000;
/** How many calls of a level somebody says that they heard, and within which seconds; the others are answered by the work alone. */
const HEARD: Readonly<Record<CallLevel, { readonly share: number; readonly fromS: number; readonly toS: number }>> = {
  call: { share: 0.35, fromS: 6, toS: 75 },
  late: { share: 0.9, fromS: 12, toS: 160 },
  lost: { share: 1, fromS: 5, toS: 35 },
};

/** Somebody hears a call that was raised, or nobody does. */
export function hearCall({ floor, hands, agenda, chance }: DayMind, { workpieceId, stepId, level }: CommandOf<'raiseCall'>): void {
  const { share, fromS, toS } = HEARD[level];
  if (!chance.is(share)) return;
  agenda.note(floor.nowMs + chance.between(fromS, toS) * SECOND_MS, () => {
    const call = floor.state.workpieces[workpieceId]?.call ?? null;
    if (call === null || call.stepId !== stepId || call.heardMs !== null) return;
    const hand = hands.at(chance.pick(['bench', 'oven', 'mixer']));
    if (chance.is(0.04)) floor.give({ type: 'hearAllCalls' }, hands.wall);
    else floor.give({ type: 'hearCall', workpieceId, stepId }, hand);
  });
}
