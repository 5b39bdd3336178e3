const OUT = { bubbles: true, composed: true } as const;

/** This screen stands at a station. */
export class StationChosenEvent extends Event {
  static readonly type = 'station-chosen';
  readonly stationId: string;

  constructor(stationId: string) {
    super(StationChosenEvent.type, OUT);
    this.stationId = stationId;
  }
}

/** The page is to ask where it stands. */
export class ChoiceWantedEvent extends Event {
  static readonly type = 'choice-wanted';

  constructor() {
    super(ChoiceWantedEvent.type, OUT);
  }
}

declare global {
  interface HTMLElementEventMap {
    'station-chosen': StationChosenEvent;
    'choice-wanted': ChoiceWantedEvent;
  }
}
