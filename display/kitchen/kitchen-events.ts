import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { Inwards } from '../desk/inwards.ts';
import type { Chosen, PlaceKind } from './chosen.ts';

const OUT = { bubbles: true, composed: true } as const;

/** Something is to be said to the floor. */
export class KitchenCommandEvent extends Event {
  static readonly type = 'kitchen-command';
  readonly command: ClientCommand;

  constructor(command: ClientCommand) {
    super(KitchenCommandEvent.type, OUT);
    this.command = command;
  }
}

/** A thing of the kitchen is to be looked at closely; null: nothing any more. */
export class ThingChosenEvent extends Event {
  static readonly type = 'thing-chosen';
  readonly chosen: Chosen | null;

  constructor(chosen: Chosen | null) {
    super(ThingChosenEvent.type, OUT);
    this.chosen = chosen;
  }
}

/** One more of a kind, in the thing that it belongs to: a deck in its oven, a slot in its deck, a bowl beside its mixer. */
export class ThingAddedEvent extends Event {
  static readonly type = 'thing-added';
  readonly kind: PlaceKind;
  readonly withinId: string | null;

  constructor(kind: PlaceKind, withinId: string | null = null) {
    super(ThingAddedEvent.type, OUT);
    this.kind = kind;
    this.withinId = withinId;
  }
}

/** What is chosen is to be taken out of the kitchen, or to stand elsewhere among its like: -1 is one earlier. */
export class ThingMovedEvent extends Event {
  static readonly type = 'thing-moved';
  readonly by: -1 | 1 | 'out';

  constructor(by: -1 | 1 | 'out') {
    super(ThingMovedEvent.type, OUT);
    this.by = by;
  }
}

/** The kitchen itself says something else, not one of its things: where, and what; undefined takes it away. */
export class KitchenChangedEvent extends Event {
  static readonly type = 'kitchen-changed';
  readonly path: Inwards;
  readonly value: unknown;

  constructor(path: Inwards, value: unknown) {
    super(KitchenChangedEvent.type, OUT);
    this.path = path;
    this.value = value;
  }
}

/** What becomes of the draft. */
export class DraftEvent extends Event {
  static readonly type = 'draft';
  readonly what: 'keep' | 'putBack' | 'takeNewer';

  constructor(what: DraftEvent['what']) {
    super(DraftEvent.type, OUT);
    this.what = what;
  }
}

declare global {
  interface HTMLElementEventMap {
    'kitchen-command': KitchenCommandEvent;
    'thing-chosen': ThingChosenEvent;
    'thing-added': ThingAddedEvent;
    'thing-moved': ThingMovedEvent;
    'kitchen-changed': KitchenChangedEvent;
    draft: DraftEvent;
  }
}
