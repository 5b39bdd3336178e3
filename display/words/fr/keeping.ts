import type { KeepingKind } from '../../../shared/documents/keeping.ts';

/** Pourquoi un aliment se garde au froid ou au chaud. */
export const KEEPING_KINDS: Readonly<Record<KeepingKind, string>> = {
  egg: 'contient de l’œuf',
  dairy: 'contient du lait, de la crème ou du fromage',
  cooked: 'contient des légumes ou de la viande cuits',
  filled: 'fourré',
};
