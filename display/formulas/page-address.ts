import { formulaSchema, type Formula } from '../../shared/documents/formula.ts';

/** Sections of an open formula, in the order in which they stand. */
export const SECTIONS = ['parts', 'method', 'products', 'size', 'versions'] as const;
export type Section = (typeof SECTIONS)[number];

/** What the page shows, as the address bar has it. */
export type PageAddress =
  | { readonly shows: 'book' }
  | { readonly shows: 'inOut' }
  | { readonly shows: 'new'; readonly kind: Formula['kind']; readonly section: Section }
  | { readonly shows: 'formula'; readonly formulaId: string; readonly version: number | null; readonly section: Section };

/** Reads the part of an address behind the question mark. What it does not know is the book. */
export function addressOf(search: string): PageAddress {
  const asked = new URLSearchParams(search);
  const section = SECTIONS.find((known) => known === asked.get('section')) ?? 'parts';
  const kind = formulaSchema.shape.kind.safeParse(asked.get('new') ?? '');
  if (asked.has('new') && kind.success) return { shows: 'new', kind: kind.data, section };
  if (asked.has('in-out')) return { shows: 'inOut' };
  const formulaId = asked.get('formula');
  if (formulaId === null) return { shows: 'book' };
  const version = Number(asked.get('version') ?? '');
  return { shows: 'formula', formulaId, version: Number.isInteger(version) && version > 0 ? version : null, section };
}

/** The part of the address behind the question mark, with what else it says: the language. */
export function searchOf(address: PageAddress, before: string): string {
  const asked = new URLSearchParams(before);
  for (const key of ['formula', 'version', 'section', 'new', 'in-out']) asked.delete(key);
  if (address.shows === 'inOut') asked.set('in-out', '');
  if (address.shows === 'new') asked.set('new', address.kind);
  if (address.shows === 'formula') {
    asked.set('formula', address.formulaId);
    if (address.version !== null) asked.set('version', String(address.version));
  }
  if ('section' in address && address.section !== 'parts') asked.set('section', address.section);
  const text = asked.toString();
  return text === '' ? '' : `?${text}`;
}

/** By what name a draft is kept: a formula's id, or the place of the new one of a kind. No id has a colon. */
export function draftKeyOf(address: PageAddress): string | null {
  switch (address.shows) {
    case 'formula':
      return address.formulaId;
    case 'new':
      return `new:${address.kind}`;
    case 'book':
    case 'inOut':
      return null;
  }
}
