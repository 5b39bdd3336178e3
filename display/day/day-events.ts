import type { TriedChange } from './tried-change.ts';

const OUT = { bubbles: true, composed: true } as const;

/** A form is left as it is. */
export class EntryLeftEvent extends Event {
  static readonly type = 'entry-left';
  constructor() {
    super(EntryLeftEvent.type, OUT);
  }
}

/** Another date is to be looked at. */
export class DateWantedEvent extends Event {
  static readonly type = 'date-wanted';
  readonly date: string;

  constructor(date: string) {
    super(DateWantedEvent.type, OUT);
    this.date = date;
  }
}

/** The day is to be planned, with what is to be tried, and with one change more where there is one. */
export class DayPlanWantedEvent extends Event {
  static readonly type = 'day-plan-wanted';
  readonly change: TriedChange | null;

  constructor(change: TriedChange | null = null) {
    super(DayPlanWantedEvent.type, OUT);
    this.change = change;
  }
}

/** Something is to be tried in the next proposal, or no longer. */
export class TriedChangeEvent extends Event {
  static readonly type = 'tried-change';
  readonly change: TriedChange;
  readonly isTakenBack: boolean;

  constructor(change: TriedChange, isTakenBack = false) {
    super(TriedChangeEvent.type, OUT);
    this.change = change;
    this.isTakenBack = isTakenBack;
  }
}

/** What becomes of a proposal or an offer; to be shown, null is the plan in force. */
export class ProposalEvent extends Event {
  static readonly type = 'proposal-decided';
  readonly what: 'show' | 'keep' | 'drop';
  readonly id: string | null;

  constructor(what: ProposalEvent['what'], id: string | null) {
    super(ProposalEvent.type, OUT);
    this.what = what;
    this.id = id;
  }
}

declare global {
  interface HTMLElementEventMap {
    'entry-left': EntryLeftEvent;
    'date-wanted': DateWantedEvent;
    'day-plan-wanted': DayPlanWantedEvent;
    'tried-change': TriedChangeEvent;
    'proposal-decided': ProposalEvent;
  }
}
