import type { ClientCommand } from '../../../shared/floor/commands.ts';
import { unreachable } from '../../../shared/result.ts';
import { idOf } from './ids.ts';
import type { Seen } from './other-words.ts';

const MINUTE_MS = 60_000;

export const ORDER_WORDS = [
  ['placeOrders', 6],
  ['withdrawOrders', 4],
  ['adoptStanding', 1],
  ['setPin', 6],
  ['liftPin', 4],
] as const;

export type OrderWord = (typeof ORDER_WORDS)[number][0];

/** Orders and pins: most of them could be meant, some are of things that nobody makes or knows. */
export function orderWord(type: OrderWord, { digits, state, workpiece, stepId, nowMs }: Seen): ClientCommand {
  const productId = digits.amongOr([...Object.keys(state.productVersions), 'sawdust-loaf'], 'sawdust-loaf');
  const orderId = digits.amongOr(Object.keys(state.orders), idOf(77));
  switch (type) {
    case 'placeOrders': {
      const known = digits.onceIn(3) ? { id: orderId } : {};
      const readyMs = nowMs + digits.below(600) * MINUTE_MS;
      return {
        type,
        serviceDate: digits.amongOr([...state.openDates, ...state.closedDates], '2026-03-08'),
        orders: [{ ...known, productId, pieces: 1 + digits.below(60), readyMs, form: digits.onceIn(5) ? 'hot' : 'cooled', weight: 1 }],
      };
    }
    case 'withdrawOrders':
      return { type, orderIds: [orderId] };
    case 'adoptStanding': {
      const standing = [
        { id: 'market', productId, pieces: 1 + digits.below(40), weekdays: [6], readyAt: '07:00', form: 'cooled' as const, weight: 1 },
      ];
      return { type, fromVersion: Math.max(0, (state.standing?.version ?? 0) - (digits.onceIn(6) ? 1 : 0)), standing };
    }
    case 'setPin':
      return digits.onceIn(3)
        ? { type, pin: { kind: 'first', orderId } }
        : { type, pin: { kind: 'startsAt', workpieceId: workpiece.id, stepId, startMs: nowMs + digits.below(120) * MINUTE_MS } };
    case 'liftPin':
      if (Object.keys(state.pins).length === 0 && !digits.onceIn(4)) return { type: 'setPin', pin: { kind: 'first', orderId } };
      return { type, pinId: digits.amongOr(Object.keys(state.pins), idOf(78)) };
    default:
      return unreachable(type);
  }
}
