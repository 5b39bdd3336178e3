import type { KeepingKind } from '../../../shared/documents/keeping.ts';

/** Why food has to be kept cold or hot. */
export const KEEPING_KINDS: Readonly<Record<KeepingKind, string>> = {
  egg: 'egg in it',
  dairy: 'milk, cream or cheese in it',
  cooked: 'cooked vegetables or meat in it',
  filled: 'filled',
};
