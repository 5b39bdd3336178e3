import type { FloorState } from '../../floor/state.ts';

/** When stations are manned and when cleanings may be done, as instants: what clock times and weekdays come to in the house's zone. */
export interface DayCalendars {
  /** By station: when somebody is there, in order and apart from each other. A station that is not named is always manned. */
  readonly stations: Readonly<Record<string, readonly { readonly fromMs: number; readonly toMs: number }[]>>;
  /** The windows of the kitchen's cleanings, one for each day that the plan may reach into. */
  readonly cleanings: readonly { readonly id: string; readonly fromMs: number; readonly toMs: number }[];
}

/** A batch that is not on the floor yet. */
export interface ProposedBatch {
  /** Unique in a proposal: the formula and its number, `country#1`. */
  readonly batchKey: string;
  readonly formulaId: string;
  /** What is mixed; at least what its cuts weigh. For a living ferment, what the pot weighs once it is fed. */
  readonly grams: number;
  readonly cuts: readonly { readonly productId: string; readonly pieces: number; readonly grams: number }[];
  readonly notBeforeMs?: number;
  /** The day that it is made for: its pieces go to the orders of that day first. */
  readonly serviceDate?: string;
}

/** Everything that a plan is made from. */
export interface DayInput {
  readonly state: FloorState;
  readonly nowMs: number;
  readonly calendars: DayCalendars;
  readonly proposed: readonly ProposedBatch[];
  /** The instant until which calendars reach. Behind it everybody is there, so that any day has some plan, if a late one. */
  readonly calendarsEndMs: number;
  /** Starts that are tried, by the keys of activities, beside the pins that the house keeps. */
  readonly pins?: readonly { readonly key: string; readonly startMs: number }[];
  /** Orders that are tried before all others, beside those that the house has put first. */
  readonly firstOrderIds?: readonly string[];
}

/** Why a batch cannot be made in this kitchen at all, whatever else there is to do. Weights in grams. */
export type BuildFault = { readonly batchKey: string; readonly formulaId: string; readonly productId: string | null } & (
  | { readonly code: 'documentMissing'; readonly kind: 'formula' | 'product'; readonly id: string }
  /** No mixer that will do takes so much, so little, or has the speed. */
  | { readonly code: 'noMixer'; readonly stepId: string; readonly grams: number; readonly mixerIds: readonly string[] }
  /** No deck that will do has so many slots. */
  | {
      readonly code: 'noDeck';
      readonly stepId: string;
      readonly deckIds: readonly string[];
      readonly slotsNeeded: number;
      readonly mostSlots: number;
    }
  /** The kitchen has fewer of them than one batch or load takes. */
  | {
      readonly code: 'tooFewVessels';
      readonly stepId: string;
      readonly vesselIds: readonly string[];
      readonly needed: number;
      readonly most: number;
    }
  /** More hands at once than the station has. */
  | {
      readonly code: 'tooFewHands';
      readonly stepId: string;
      readonly stationIds: readonly string[];
      readonly needed: number;
      readonly most: number;
    }
);
