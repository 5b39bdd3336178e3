import type { KeepingKind } from '../../../shared/documents/keeping.ts';

/** Warum etwas kalt oder heiß bleiben muss. */
export const KEEPING_KINDS: Readonly<Record<KeepingKind, string>> = {
  egg: 'mit Ei',
  dairy: 'mit Milch, Rahm oder Käse',
  cooked: 'mit gegartem Gemüse oder Fleisch',
  filled: 'gefüllt',
};

/** Where that is said of a prep or a product. */
export const KEEPING_EDIT = {
  kind: 'Muss kalt oder heiß gehalten werden',
  from: 'Ihre Zeit zählt ab',
  no: 'nein',
  fromUsual: 'dem üblichen Schritt',
  note: 'Nach dem Regelwerk, das das Haus gewählt hat; die Vorschrift der örtlichen Behörde und der eigene fachliche Rat gehen vor.',
} as const;
