import type { ClientCommand } from '../../shared/floor/commands.ts';

const OUT = { bubbles: true, composed: true } as const;

/** A thumb said something to the floor. */
export class FloorCommandEvent extends Event {
  static readonly type = 'floor-command';
  readonly command: ClientCommand;

  constructor(command: ClientCommand) {
    super(FloorCommandEvent.type, OUT);
    this.command = command;
  }
}

/** What the phone is to show: the list, the card of a dough, where everything stands, itself, or the end of the day. */
export type Screen =
  | { readonly kind: 'list' }
  | { readonly kind: 'card'; readonly workpieceId: string }
  /** With the dough that is looked for, where one is. */
  | { readonly kind: 'places'; readonly workpieceId: string | null }
  | { readonly kind: 'device' }
  | { readonly kind: 'dayEnd' };

/** What stands in place of a card's buttons. */
export type Panel =
  | 'actions'
  | 'other'
  | 'skip'
  | 'more'
  | 'where'
  | 'howFar'
  | 'handOver'
  | 'putRight'
  | 'count'
  | 'inputs'
  | 'extra'
  | 'feed'
  | 'planFeed'
  | 'move'
  | 'loads'
  | 'join'
  | 'putBack'
  | 'loss'
  | 'discard'
  | 'decideHolding'
  | 'temperature'
  | 'minutes'
  | 'add';

/** Another panel of the card is wanted. */
export class PanelWantedEvent extends Event {
  static readonly type = 'panel-wanted';
  readonly panel: Panel;

  constructor(panel: Panel) {
    super(PanelWantedEvent.type, OUT);
    this.panel = panel;
  }
}

export class ShowScreenEvent extends Event {
  static readonly type = 'show-screen';
  readonly screen: Screen;

  constructor(screen: Screen) {
    super(ShowScreenEvent.type, OUT);
    this.screen = screen;
  }
}

/** One step back, from whatever is open. */
export class GoBackEvent extends Event {
  static readonly type = 'go-back';

  constructor() {
    super(GoBackEvent.type, OUT);
  }
}

/** What this device is to be called, and where it is. */
export class IntroduceEvent extends Event {
  static readonly type = 'introduce';
  readonly deviceName: string | null;
  readonly stationId: string | null;

  constructor(deviceName: string | null, stationId: string | null) {
    super(IntroduceEvent.type, OUT);
    this.deviceName = deviceName;
    this.stationId = stationId;
  }
}

/** Whose doughs the list is to show; null for everybody's. */
export class FilterChosenEvent extends Event {
  static readonly type = 'filter-chosen';
  readonly stationId: string | null;

  constructor(stationId: string | null) {
    super(FilterChosenEvent.type, OUT);
    this.stationId = stationId;
  }
}

/** The deliberate touch that a page asks for after it was in a pocket. */
export class GoOnEvent extends Event {
  static readonly type = 'go-on';

  constructor() {
    super(GoOnEvent.type, OUT);
  }
}

/** What was told of refused taps has been read. */
export class PutAwayEvent extends Event {
  static readonly type = 'put-away';

  constructor() {
    super(PutAwayEvent.type, OUT);
  }
}

/** These stand elsewhere than they did, or mean something else: the thumb cannot have meant them yet. */
export class RowsMovedEvent extends Event {
  static readonly type = 'rows-moved';
  readonly rows: readonly Element[];

  constructor(rows: readonly Element[]) {
    super(RowsMovedEvent.type, OUT);
    this.rows = rows;
  }
}

/** The same buttons are there and mean something else now. */
export class NewlyShownEvent extends Event {
  static readonly type = 'newly-shown';

  constructor() {
    super(NewlyShownEvent.type, OUT);
  }
}

declare global {
  interface HTMLElementEventMap {
    'floor-command': FloorCommandEvent;
    'show-screen': ShowScreenEvent;
    'go-back': GoBackEvent;
    introduce: IntroduceEvent;
    'panel-wanted': PanelWantedEvent;
    'rows-moved': RowsMovedEvent;
    'newly-shown': NewlyShownEvent;
    'filter-chosen': FilterChosenEvent;
    'put-away': PutAwayEvent;
    'go-on': GoOnEvent;
  }
}
