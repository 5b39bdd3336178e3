import type { KeepingKind } from '../../../shared/documents/keeping.ts';

/** Warum etwas kalt oder heiß bleiben muss. */
export const KEEPING_KINDS: Readonly<Record<KeepingKind, string>> = {
  egg: 'mit Ei',
  dairy: 'mit Milch, Rahm oder Käse',
  cooked: 'mit gegartem Gemüse oder Fleisch',
  filled: 'gefüllt',
};
