import type { Inwards } from '../desk/inwards.ts';
import type { Section } from './page-address.ts';

const OUT = { bubbles: true, composed: true } as const;

/** The draft says something else: `formula` or `products`, and from there inwards. */
export class DraftChangedEvent extends Event {
  static readonly type = 'draft-changed';
  readonly path: Inwards;
  readonly value: unknown;

  constructor(path: Inwards, value: unknown) {
    super(DraftChangedEvent.type, OUT);
    this.path = path;
    this.value = value;
  }
}

/** Another section of the formula is to be shown. */
export class SectionChosenEvent extends Event {
  static readonly type = 'section-chosen';
  readonly section: Section;

  constructor(section: Section) {
    super(SectionChosenEvent.type, OUT);
    this.section = section;
  }
}

/** The formula is to have one product more. */
export class ProductAddedEvent extends Event {
  static readonly type = 'product-added';

  constructor() {
    super(ProductAddedEvent.type, OUT);
  }
}

/** The book's list is wanted back. */
export class BookWantedEvent extends Event {
  static readonly type = 'book-wanted';

  constructor() {
    super(BookWantedEvent.type, OUT);
  }
}

declare global {
  interface HTMLElementEventMap {
    'draft-changed': DraftChangedEvent;
    'section-chosen': SectionChosenEvent;
    'book-wanted': BookWantedEvent;
    'product-added': ProductAddedEvent;
  }
}
