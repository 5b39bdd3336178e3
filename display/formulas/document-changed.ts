import type { Inwards } from '../desk/inwards.ts';

/** A part of the draft says something else: where it stands in the document, and what is there now; undefined takes it away. */
export class DocumentChangedEvent extends Event {
  static readonly type = 'document-changed';
  readonly path: Inwards;
  readonly value: unknown;

  constructor(path: Inwards, value: unknown) {
    super(DocumentChangedEvent.type, { bubbles: true, composed: true });
    this.path = path;
    this.value = value;
  }
}

declare global {
  interface HTMLElementEventMap {
    'document-changed': DocumentChangedEvent;
  }
}
