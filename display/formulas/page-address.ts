import { formulaSchema, type Formula } from '../../shared/documents/formula.ts';

/** Sections of an open formula, in the order in which they stand. */
export const SECTIONS = ['parts', 'method', 'products', 'size', 'versions'] as const;
export type Section = (typeof SECTIONS)[number];

/** What the page shows, as the address bar has it. */
export type PageAddress =
  | { readonly shows: 'book' }
  | { readonly shows: 'inOut' }
  /** One that nobody has saved; several of a kind may be begun, each at a place of its own, from 1. */
  | { readonly shows: 'new'; readonly kind: Formula['kind']; readonly place: number; readonly section: Section }
  | { readonly shows: 'formula'; readonly formulaId: string; readonly version: number | null; readonly section: Section };

/** Reads the part of an address behind the question mark. What it does not know is the book. */
export function addressOf(search: string): PageAddress {
  const asked = new URLSearchParams(search);
  const section = SECTIONS.find((known) => known === asked.get('section')) ?? 'parts';
  const kind = formulaSchema.shape.kind.safeParse(asked.get('new') ?? '');
  if (asked.has('new') && kind.success) return { shows: 'new', kind: kind.data, place: placeOf(asked.get('place')), section };
  if (asked.has('in-out')) return { shows: 'inOut' };
  const formulaId = asked.get('formula');
  if (formulaId === null) return { shows: 'book' };
  const version = Number(asked.get('version') ?? '');
  return { shows: 'formula', formulaId, version: Number.isInteger(version) && version > 0 ? version : null, section };
}

/** The part of the address behind the question mark, with what else it says: the language. */
export function searchOf(address: PageAddress, before: string): string {
  const asked = new URLSearchParams(before);
  for (const key of ['formula', 'version', 'section', 'new', 'place', 'in-out']) asked.delete(key);
  if (address.shows === 'inOut') asked.set('in-out', '');
  if (address.shows === 'new') {
    asked.set('new', address.kind);
    if (address.place > 1) asked.set('place', String(address.place));
  }
  if (address.shows === 'formula') {
    asked.set('formula', address.formulaId);
    if (address.version !== null) asked.set('version', String(address.version));
  }
  if ('section' in address && address.section !== 'parts') asked.set('section', address.section);
  const text = asked.toString();
  return text === '' ? '' : `?${text}`;
}

/** Places for formulas that are begun and not saved, of each kind. */
export const MOST_PLACES = 20;

function placeOf(text: string | null): number {
  const place = Number(text ?? '1');
  return Number.isInteger(place) && place >= 1 && place <= MOST_PLACES ? place : 1;
}

/** By what name the draft of a new formula is kept. */
export function newDraftKey(kind: Formula['kind'], place: number): string {
  return place === 1 ? `new:${kind}` : `new:${kind}:${place}`;
}

/** By what name a draft is kept: a formula's id, or the place of the new one of a kind. No id has a colon. */
export function draftKeyOf(address: PageAddress): string | null {
  switch (address.shows) {
    case 'formula':
      return address.formulaId;
    case 'new':
      return newDraftKey(address.kind, address.place);
    case 'book':
    case 'inOut':
      return null;
  }
}
