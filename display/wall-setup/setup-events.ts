import type { Viewing } from '../wall/settings.ts';
import type { WallLook } from '../wall/wall-look.ts';
import type { WallSettings } from '../wall/wall-settings.ts';

const OUT = { bubbles: true, composed: true } as const;

/** The wall is to be as these settings say. */
export class SettingsChangedEvent extends Event {
  static readonly type = 'settings-changed';
  readonly settings: WallSettings;

  constructor(settings: WallSettings) {
    super(SettingsChangedEvent.type, OUT);
    this.settings = settings;
  }
}

/** The wall is to be read from elsewhere, or on another screen. */
export class ViewingChangedEvent extends Event {
  static readonly type = 'viewing-changed';
  readonly viewing: Viewing;

  constructor(viewing: Viewing) {
    super(ViewingChangedEvent.type);
    this.viewing = viewing;
  }
}

/** The wall is to look otherwise, or at other hours. */
export class WallLookChangedEvent extends Event {
  static readonly type = 'wall-look-changed';
  readonly look: WallLook;

  constructor(look: WallLook) {
    super(WallLookChangedEvent.type);
    this.look = look;
  }
}

/** A number was given, within its bounds. */
export class NumberGivenEvent extends Event {
  static readonly type = 'number-given';
  readonly value: number;

  constructor(value: number) {
    super(NumberGivenEvent.type);
    this.value = value;
  }
}

/** One of several was chosen, by its key. */
export class OptionChosenEvent extends Event {
  static readonly type = 'option-chosen';
  readonly key: string;

  constructor(key: string) {
    super(OptionChosenEvent.type);
    this.key = key;
  }
}

/** Other rings are wanted. */
export class RingsAgainEvent extends Event {
  static readonly type = 'rings-again';

  constructor() {
    super(RingsAgainEvent.type, OUT);
  }
}

/** Nobody has touched the page for a good while: a wall is wanted here. */
export class LeftAloneEvent extends Event {
  static readonly type = 'left-alone';

  constructor() {
    super(LeftAloneEvent.type);
  }
}

declare global {
  interface HTMLElementEventMap {
    'settings-changed': SettingsChangedEvent;
    'viewing-changed': ViewingChangedEvent;
    'wall-look-changed': WallLookChangedEvent;
    'number-given': NumberGivenEvent;
    'option-chosen': OptionChosenEvent;
    'rings-again': RingsAgainEvent;
    'left-alone': LeftAloneEvent;
  }
}
