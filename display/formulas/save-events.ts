const OUT = { bubbles: true, composed: true } as const;

/** What becomes of the draft of a formula. */
export class SaveEvent extends Event {
  static readonly type = 'save-draft';
  readonly what: 'save' | 'putBack' | 'takeNewer' | 'look';

  constructor(what: SaveEvent['what']) {
    super(SaveEvent.type, OUT);
    this.what = what;
  }
}

/** A fault's field is to be shown and to have the keyboard. */
export class FaultChosenEvent extends Event {
  static readonly type = 'fault-chosen';
  readonly path: string;

  constructor(path: string) {
    super(FaultChosenEvent.type, OUT);
    this.path = path;
  }
}

declare global {
  interface HTMLElementEventMap {
    'save-draft': SaveEvent;
    'fault-chosen': FaultChosenEvent;
  }
}
