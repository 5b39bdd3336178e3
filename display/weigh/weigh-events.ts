const OUT = { bubbles: true, composed: true } as const;

/** What stands on the screen of one weigh-out. */
export type WeighView = 'line' | 'list' | 'water' | 'dough';

/** What stands in place of the water's buttons. */
export type WaterPanel = 'flour' | 'room' | 'preferment' | 'tap' | 'water' | 'forget';

/** Another weigh-out is wanted. */
export class PieceWantedEvent extends Event {
  static readonly type = 'piece-wanted';
  readonly workpieceId: string;

  constructor(workpieceId: string) {
    super(PieceWantedEvent.type, OUT);
    this.workpieceId = workpieceId;
  }
}

/** Another view of the same weigh-out is wanted; with the line to show, where one is meant. */
export class ViewWantedEvent extends Event {
  static readonly type = 'view-wanted';
  readonly view: WeighView;
  readonly lineId: string | null;

  constructor(view: WeighView, lineId: string | null = null) {
    super(ViewWantedEvent.type, OUT);
    this.view = view;
    this.lineId = lineId;
  }
}

/** There is less of the line at hand than it wants. */
export class ShortWantedEvent extends Event {
  static readonly type = 'short-wanted';

  constructor() {
    super(ShortWantedEvent.type, OUT);
  }
}

/** The lot number that the line at hand is taken from; null for none. */
export class LotChosenEvent extends Event {
  static readonly type = 'lot-chosen';
  readonly lot: string | null;

  constructor(lot: string | null) {
    super(LotChosenEvent.type, OUT);
    this.lot = lot;
  }
}

/** Something is to be said of the water: a temperature that it is reckoned from, its own, or that what the mixer taught is forgotten. */
export class WaterPanelWantedEvent extends Event {
  static readonly type = 'water-panel-wanted';
  readonly panel: WaterPanel;

  constructor(panel: WaterPanel) {
    super(WaterPanelWantedEvent.type, OUT);
    this.panel = panel;
  }
}

/** What was asked has been answered, or need not be. */
export class OverClosedEvent extends Event {
  static readonly type = 'over-closed';

  constructor() {
    super(OverClosedEvent.type, OUT);
  }
}

declare global {
  interface HTMLElementEventMap {
    'piece-wanted': PieceWantedEvent;
    'view-wanted': ViewWantedEvent;
    'short-wanted': ShortWantedEvent;
    'lot-chosen': LotChosenEvent;
    'water-panel-wanted': WaterPanelWantedEvent;
    'over-closed': OverClosedEvent;
  }
}
