const OUT = { bubbles: true, composed: true } as const;

/** A field of a form says something else; undefined takes the value away. `key` may lead inwards: `units.weight`. */
export class FieldChangedEvent extends Event {
  static readonly type = 'field-changed';
  readonly key: string;
  readonly value: unknown;

  constructor(key: string, value: unknown) {
    super(FieldChangedEvent.type, OUT);
    this.key = key;
    this.value = value;
  }
}

declare global {
  interface HTMLElementEventMap {
    'field-changed': FieldChangedEvent;
  }
}
