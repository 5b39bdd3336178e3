import { html, nothing, type TemplateResult } from 'lit';
import type { BookEntry } from '../../shared/book/book-api.ts';
import { BOOK } from '../words/book.ts';
import { numberWords } from '../words/numbers.ts';

/** How a row stands in its list. */
export interface RowStanding {
  /** From 0. */
  readonly index: number;
  readonly count: number;
  /** It is the one that is open. */
  readonly isOpen: boolean;
  /** The keyboard is on it. */
  readonly isActive: boolean;
}

/** A formula as one line of the book. */
export function bookRow(entry: BookEntry, { index, count, isOpen, isActive }: RowStanding): TemplateResult {
  return html`<div
    role="option"
    id="row-${index}"
    class=${isActive ? 'active' : ''}
    data-formula=${entry.id}
    aria-selected=${isOpen}
    aria-posinset=${index + 1}
    aria-setsize=${count}
  >
    <span class="letters">${entry.letters}</span>
    <span class="name">${entry.name}</span>
    <span class="facts">${factsOf(entry)}</span>
    ${entry.products.length === 0 ? nothing : html`<span class="facts">${entry.products.map(({ name }) => name).join(', ')}</span>`}
  </div>`;
}

function factsOf(entry: BookEntry): string {
  const water = entry.hydrationPct === null ? [] : [BOOK.water(numberWords(entry.hydrationPct))];
  return [BOOK.kind[entry.kind], ...water, BOOK.version(entry.version)].join(' · ');
}
