import type { KeepingKind } from '../../../shared/documents/keeping.ts';

/** Pourquoi un aliment se garde au froid ou au chaud. */
export const KEEPING_KINDS: Readonly<Record<KeepingKind, string>> = {
  egg: 'contient de l’œuf',
  dairy: 'contient du lait, de la crème ou du fromage',
  cooked: 'contient des légumes ou de la viande cuits',
  filled: 'fourré',
};

/** Where that is said of a prep or a product. */
export const KEEPING_EDIT = {
  kind: 'À garder au froid ou au chaud',
  from: 'Son temps compte à partir de',
  no: 'non',
  fromUsual: 'l’étape habituelle',
  note: 'Selon les règles que la maison a choisies\u202f; la règle de l’autorité locale et votre conseil agréé passent avant.',
} as const;
