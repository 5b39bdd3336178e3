import type { StepPlace } from './sheet-bar.ts';

const OUT = { bubbles: true, composed: true } as const;

/** Where a pin is to stand: on a workpiece of the floor, or on a batch that is only proposed; of the two, one is null. */
export interface PinPlace {
  readonly workpieceId: string | null;
  readonly batchKey: string | null;
  readonly cut: number | null;
  readonly load: number | null;
  readonly stepId: string;
  /** The same as the planner writes it: `ownerId|cut|load|stepId`. */
  readonly key: string;
}

/** A step is to begin exactly then. */
export class PinWantedEvent extends Event {
  static readonly type = 'pin-wanted';
  readonly place: PinPlace;
  readonly startMs: number;

  constructor(place: PinPlace, startMs: number) {
    super(PinWantedEvent.type, OUT);
    this.place = place;
    this.startMs = startMs;
  }
}

/** What was fixed may move again: a pin of the floor by its id, one of the day that is tried by its place or its order. */
export class PinLiftedEvent extends Event {
  static readonly type = 'pin-lifted';
  readonly pinId: string | null;
  readonly key: string | null;
  readonly orderId: string | null;

  constructor(lifted: { readonly pinId: string | null; readonly key?: string; readonly orderId?: string }) {
    super(PinLiftedEvent.type, OUT);
    this.pinId = lifted.pinId;
    this.key = lifted.key ?? null;
    this.orderId = lifted.orderId ?? null;
  }
}

/** An order is to come before all others. */
export class FirstWantedEvent extends Event {
  static readonly type = 'first-wanted';
  readonly orderId: string;

  constructor(orderId: string) {
    super(FirstWantedEvent.type, OUT);
    this.orderId = orderId;
  }
}

/** The day is to be played many times. */
export class TryWantedEvent extends Event {
  static readonly type = 'try-wanted';

  constructor() {
    super(TryWantedEvent.type, OUT);
  }
}

/** Something of the sheet is to be looked at closely: a step, a row, an instant's orders; null: nothing any more. */
export class SheetOpenedEvent extends Event {
  static readonly type = 'sheet-opened';
  readonly opened: Opened | null;

  constructor(opened: Opened | null) {
    super(SheetOpenedEvent.type, OUT);
    this.opened = opened;
  }
}

/** What of the sheet is open. */
export type Opened =
  | { readonly kind: 'bar'; readonly rowKey: string; readonly barKey: string }
  | { readonly kind: 'row'; readonly rowKey: string }
  | { readonly kind: 'orders'; readonly readyMs: number };

/** A step's place as a pin names it. */
export function pinPlace(place: StepPlace & { readonly key: string }, isOnFloor: boolean): PinPlace {
  const { ownerId, cut, load, stepId, key } = place;
  return { workpieceId: isOnFloor ? ownerId : null, batchKey: isOnFloor ? null : ownerId, cut, load, stepId, key };
}

declare global {
  interface HTMLElementEventMap {
    'pin-wanted': PinWantedEvent;
    'pin-lifted': PinLiftedEvent;
    'first-wanted': FirstWantedEvent;
    'try-wanted': TryWantedEvent;
    'sheet-opened': SheetOpenedEvent;
  }
}
