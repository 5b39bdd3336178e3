import type { KeepingKind } from '../../../shared/documents/keeping.ts';

/** Why food has to be kept cold or hot. */
export const KEEPING_KINDS: Readonly<Record<KeepingKind, string>> = {
  egg: 'egg in it',
  dairy: 'milk, cream or cheese in it',
  cooked: 'cooked vegetables or meat in it',
  filled: 'filled',
};

/** Where that is said of a prep or a product. */
export const KEEPING_EDIT = {
  kind: 'Has to be kept cold or hot',
  from: 'Its time counts from',
  no: 'no',
  fromUsual: 'the usual step',
  note: 'By the rule set that the house has chosen; the local authority’s rule and your own licensed advice come first.',
} as const;
