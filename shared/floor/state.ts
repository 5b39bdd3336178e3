import type { Allergen } from '../documents/allergen.ts';
import type { Formula, Ingredient, Product } from '../documents/formula.ts';
import type { House } from '../documents/house.ts';
import type { Kitchen } from '../documents/kitchen.ts';
import type { Order, Pin, StandingOrder } from '../documents/order.ts';
import type {
  CallLevel,
  Despite,
  EventOf,
  Lot,
  MovedStep,
  PlannedStep,
  PlanWarning,
  ReadWhere,
  Serves,
  StepPins,
  VesselsHeld,
} from './events.ts';
import type { HeatSample } from '../trade/slot-heat.ts';
import type { LotsBefore } from './lots-used.ts';

/** Version of this shape: a snapshot of another version is thrown away and folded anew. */
export const STATE_VERSION = 12;

/** Days that are remembered as open, the newest ones: a day is planned once. */
export const OPEN_DATES_KEPT = 60;

/** Finished workpieces stay in the live state for so long. */
export const KEEP_FINISHED_MS = 36 * 3_600_000;

export interface ClockAnchor {
  readonly houseMs: number;
  readonly realMs: number;
  readonly pace: number;
}

/** A step of one workpiece, from its start on. Steps not begun have no life yet. */
export interface StepLife {
  readonly status: 'started' | 'done' | 'skipped';
  readonly startedMs: number | null;
  readonly endedMs: number | null;
  readonly startedBy: string | null;
  readonly endedBy: string | null;
  readonly stationId: string | null;
  /** Stations that work on it too. */
  readonly helperIds: readonly string[];
  readonly moreMin: number;
  /** Of a bake: the last phase whose prompt somebody has answered, from 0; null before any. */
  readonly phaseDone: number | null;
  /** Of a bake: it was moved within the oven. */
  readonly isMoved: boolean;
  readonly pins: StepPins | null;
  readonly piecesDone: number | null;
  readonly inferred: boolean;
  readonly despite: readonly Despite[];
  readonly reason: string | null;
}

/** The call that a workpiece has out, in ISA-18.2's sense: raised until its step moves on, heard or not. */
export interface Call {
  readonly stepId: string;
  readonly level: CallLevel;
  readonly dueMs: number;
  readonly raisedMs: number;
  readonly heardMs: number | null;
  readonly soundedCount: number;
  readonly lastSoundedMs: number | null;
}

export interface PlannedCut {
  readonly productId: string;
  readonly productVersion: number;
  readonly pieces: number;
  readonly grams: number;
}

export interface TemperatureReading {
  readonly where: ReadWhere;
  readonly celsius: number;
  readonly atMs: number;
}

/** Where a workpiece came to stand, and when; null where it stands in no rest place: on the mixer, in the oven. */
export interface Stay {
  readonly placeId: string | null;
  readonly sinceMs: number;
}

/** What is known of the air of a rest place, beside what the kitchen's document says. */
export interface PlaceAir {
  readonly readings: readonly { readonly celsius: number; readonly atMs: number }[];
  readonly openings: readonly { readonly fromMs: number; readonly toMs: number }[];
  readonly programme: {
    readonly phases: EventOf<'programmeBegun'>['phases'];
    readonly begunMs: number;
  } | null;
}

/** What one pair of readings said of how fast dough takes on the air's temperature. */
export interface DriftSample {
  readonly workpieceId: string;
  readonly grams: number;
  readonly minutes: number;
  readonly beforeC: number;
  readonly afterC: number;
  readonly ambientC: number;
  readonly selfHeatKPerH?: number | undefined;
  readonly atMs: number;
  readonly commandId: string;
}

/** By how much of its nominal minutes a rest was ripe, as a baker closed it. */
export interface RipenessSample {
  readonly workpieceId: string;
  readonly stepId: string;
  readonly factor: number;
  readonly atMs: number;
  readonly commandId: string;
}

/** What was baked in a slot says how hot it is there. */
export interface SlotHeatSample extends HeatSample {
  readonly commandId: string;
}

/** A piece of dough that bakes in a slot, to see how hot it is there. */
export interface TestPiece {
  readonly referenceMin: number;
  readonly startedMs: number;
}

/** Something about a workpiece that was said otherwise before. */
export interface Correction {
  readonly what: 'start' | 'end' | 'count' | 'tag' | 'where';
  readonly stepId: string | null;
  readonly from: string | number;
  readonly to: string | number;
  readonly atMs: number;
  readonly deviceId: string;
}

/** Corrections kept in the live state for one workpiece; the journal has them all. */
export const CORRECTIONS_KEPT = 20;

/** That somebody responsible has food that is past its limit used all the same, and until when. */
export type HoldingDecision = Omit<EventOf<'holdingDecided'>, 'type' | 'workpieceId'> & { readonly deviceId: string };

/** A pot that is fed, drawn from and fed again. */
export interface Stock {
  /** So much stays when it is drawn from. */
  readonly seedG: number;
  readonly fedMs: number | null;
  readonly plannedFeeds: readonly { readonly feedMs: number; readonly grams: number }[];
}

/** What has come into a workpiece with what was drawn, put back or added, for allergens and trace. */
export interface BroughtIn {
  readonly allergens: readonly Allergen[];
  readonly lotNumbers: readonly Lot[];
}

/** A line of the weigh-out that is in the bowl. */
export interface Weighed {
  readonly grams: number;
  readonly lotNumbers: readonly string[];
  readonly atMs: number;
}

/** The water that went in, with what it was reckoned from. */
export type TakenWater = Omit<EventOf<'waterTaken'>, 'type' | 'workpieceId'>;

/** Anything worked on and waited for. */
export interface Workpiece {
  readonly id: string;
  readonly kind: 'ferment' | 'prep' | 'batch' | 'cut' | 'load';
  readonly tag: string;
  readonly serviceDate: string;
  readonly formulaId: string;
  readonly formulaVersion: number;
  /** The product, once there is only one that it can become. */
  readonly productId: string | null;
  readonly productVersion: number | null;
  readonly parentId: string | null;
  readonly childIds: readonly string[];
  readonly grams: number;
  /** What its formula is scaled to: as planned or scaled anew, without what came on top of it and what was lost since. */
  readonly scaledToG: number;
  readonly pieces: number | null;
  /** Pieces that were planned, so that a shortfall can be told. */
  readonly plannedPieces: number | null;
  /** Dough left beside it: what a divide did not use, what was trimmed. It can be put back into another dough. */
  readonly scrapG: number;
  readonly plannedStartMs: number;
  /** When the step that stands next could begin: the end of the one before, or the planned start. */
  readonly readyMs: number;
  readonly cuts: readonly PlannedCut[];
  /** The steps begun so far, by their id. */
  readonly steps: Readonly<Record<string, StepLife>>;
  readonly placeId: string | null;
  /** Where it has stood, the oldest first; a cut's begin with its batch's. */
  readonly stays: readonly Stay[];
  readonly mixerId: string | null;
  readonly bowlId: string | null;
  readonly vessels: readonly VesselsHeld[];
  readonly slotIds: readonly string[];
  readonly readings: readonly TemperatureReading[];
  readonly corrections: readonly Correction[];
  /** For food that has to be kept, the oldest first. */
  readonly holdingDecisions: readonly HoldingDecision[];
  /** For a living ferment. */
  readonly stock: Stock | null;
  /** For a prep: where it joins. */
  readonly serves: Serves | null;
  readonly broughtIn: BroughtIn;
  /** What is in the bowl already, by line of the weigh-out. */
  readonly weighed: Readonly<Record<string, Weighed>>;
  readonly water: TakenWater | null;
  readonly call: Call | null;
  readonly heldUntilMs: number | null;
  /** By how much the clock was set in all, up to when it left the floor: its instants are of the clock as it was then. */
  readonly jumpedMs: number;
  /** Out of the floor: packed, divided into cuts, or discarded. */
  readonly finishedMs: number | null;
  readonly ending: 'finished' | 'divided' | 'discarded' | null;
  /** The command that last changed it: undoing an earlier one would pull the ground from under it. Hearing changes nothing. */
  readonly lastCommandId: string | null;
  /** The command that last had a step done on it. */
  readonly lastDoneCommandId: string | null;
}

/** An edge of the genealogy, with its amount. */
export interface Edge {
  readonly kind: 'draw' | 'join' | 'divide' | 'load' | 'putBack' | 'feed';
  readonly fromId: string;
  readonly toId: string;
  readonly grams: number;
  readonly atMs: number;
  readonly commandId: string;
  /** By how much the clock had been set by then, in all; missing: not at all. */
  readonly jumpedMs?: number;
}

/** Vessels on their way back to the shelf: washed, floured, cooled. */
export interface VesselReturn {
  readonly vesselId: string;
  readonly count: number;
  readonly freeMs: number;
  readonly commandId: string;
}

/** What a mixer has had in it since it was cleaned. */
export interface Residue {
  readonly allergens: readonly Allergen[];
  readonly commandId: string;
}

/** What undoing one device's last command puts back: the workpieces as they were; null for one that it made. */
export interface UndoEntry {
  readonly commandId: string;
  /** Of the command's last event: the device with the least has been idle for longest. */
  readonly sequence: number;
  readonly before: Readonly<Record<string, Workpiece | null>>;
  readonly residuesBefore: Readonly<Record<string, Residue | null>>;
  /** Cleanings that were over when the command took the mixer, and that nobody keeps from then on. */
  readonly cleanedBefore: readonly EventOf<'resourceBlocked'>[];
  /** By ingredient. */
  readonly lotsBefore: Readonly<Record<string, LotsBefore>>;
}

/** The last test of the loudspeakers: asked for, played, answered. */
export interface SoundTest {
  readonly why: EventOf<'soundTestAsked'>['why'];
  readonly askedMs: number;
  readonly soundedMs: number | null;
  readonly byDeviceId: string | null;
  readonly answeredMs: number | null;
  readonly heard: boolean | null;
}

export interface Versioned<Document> {
  readonly version: number;
  readonly document: Document;
}

/** What one dough said of a mixer's warming; said again, the last counts. */
export interface RiseSample {
  readonly workpieceId: string;
  readonly formulaId: string;
  readonly loadG: number;
  readonly riseK: number;
  readonly atMs: number;
  readonly commandId: string;
}

/** What was found of a step's minutes, and was left as its document has it. */
export type LeftLesson = Omit<EventOf<'lessonLeft'>, 'type'>;

/** A version of a document: where it stands in the journal, and when it was kept (null in older journals). */
export interface KeptVersion {
  readonly version: number;
  readonly sequence: number;
  readonly atMs: number | null;
}

/** The plan that the floor follows: when each step that has not begun is to begin. */
export interface Plan {
  readonly planId: string;
  /** When a whole plan was kept; moves since do not change it. */
  readonly madeMs: number | null;
  /** By workpiece; what it is still to be divided into stands under it. */
  readonly steps: Readonly<Record<string, readonly PlannedStep[]>>;
  /** What the last change moved. */
  readonly moved: readonly MovedStep[];
  readonly movedMs: number | null;
  readonly warnings: readonly PlanWarning[];
}

/** The live state of one kitchen: documents in force, open work, and the last 36 hours. The fold of the journal. */
export interface FloorState {
  readonly stateVersion: number;
  readonly sequence: number;
  readonly clock: ClockAnchor | null;
  /** By how much the clock was set, in all. */
  readonly jumpedMs: number;
  readonly house: Versioned<House> | null;
  readonly kitchen: Versioned<Kitchen> | null;
  readonly ingredients: Versioned<readonly Ingredient[]> | null;
  /** By id and version, as `country@2`. */
  readonly formulas: Readonly<Record<string, Formula>>;
  readonly products: Readonly<Record<string, Product>>;
  /** The newest version of each. */
  readonly formulaVersions: Readonly<Record<string, number>>;
  readonly productVersions: Readonly<Record<string, number>>;
  /** Every version of each formula and product, the oldest first, so that two can be compared. */
  readonly formulaHistory: Readonly<Record<string, readonly KeptVersion[]>>;
  readonly productHistory: Readonly<Record<string, readonly KeptVersion[]>>;
  /** Ids of formulas that are out of the way in the book. */
  readonly archivedFormulas: readonly string[];
  /** What was found of steps' minutes and not taken over, the oldest first. */
  readonly leftLessons: readonly LeftLesson[];
  /** By ingredient: lot numbers that were used, the last used first. */
  readonly lotsUsed: Readonly<Record<string, readonly string[]>>;
  /** By mixer: what doughs have said of its warming, the oldest first. */
  readonly rises: Readonly<Record<string, readonly RiseSample[]>>;
  /** By rest place. */
  readonly placeAir: Readonly<Record<string, PlaceAir>>;
  /** By kind of vessel (`none` where it stands in nothing that is counted), the oldest first. */
  readonly drifts: Readonly<Record<string, readonly DriftSample[]>>;
  /** By formula, the oldest first. */
  readonly ripeness: Readonly<Record<string, readonly RipenessSample[]>>;
  /** By slot, the oldest first. */
  readonly slotHeat: Readonly<Record<string, readonly SlotHeatSample[]>>;
  /** By slot. */
  readonly testPieces: Readonly<Record<string, TestPiece>>;
  readonly serviceDate: string | null;
  readonly openDates: readonly string[];
  /** Days that are over, the newest ones: a day is planned once, and not again after its end. */
  readonly closedDates: readonly string[];
  readonly workpieces: Readonly<Record<string, Workpiece>>;
  readonly edges: readonly Edge[];
  /** Orders of days that are not over. */
  readonly orders: Readonly<Record<string, Order>>;
  readonly standing: Versioned<readonly StandingOrder[]> | null;
  readonly pins: Readonly<Record<string, Pin>>;
  readonly plan: Plan | null;
  readonly deckC: Readonly<Record<string, number>>;
  /** By deck: how hot it was when it was set last, and when that was. */
  readonly deckSets: Readonly<Record<string, { readonly fromC: number; readonly sinceMs: number }>>;
  readonly vesselReturns: readonly VesselReturn[];
  /** By mixer. */
  readonly residues: Readonly<Record<string, Residue>>;
  readonly blocked: readonly EventOf<'resourceBlocked'>[];
  /** By device: what its undo would put back. */
  readonly undo: Readonly<Record<string, UndoEntry>>;
  /** The last burst of each level, for grouping what follows soon after. */
  readonly lastSoundedMs: Readonly<Partial<Record<CallLevel, number>>>;
  readonly soundTest: SoundTest | null;
  /** When the last test sounded that somebody heard. */
  readonly soundHeardMs: number | null;
  /** When the last test sounded that somebody did not hear; null once one is heard. */
  readonly soundUnheardMs: number | null;
}

/** The state of a kitchen of which nothing is known yet. */
export const EMPTY_STATE: FloorState = {
  stateVersion: STATE_VERSION,
  sequence: 0,
  clock: null,
  jumpedMs: 0,
  house: null,
  kitchen: null,
  ingredients: null,
  formulas: {},
  products: {},
  formulaVersions: {},
  productVersions: {},
  formulaHistory: {},
  productHistory: {},
  archivedFormulas: [],
  leftLessons: [],
  lotsUsed: {},
  rises: {},
  placeAir: {},
  drifts: {},
  ripeness: {},
  slotHeat: {},
  testPieces: {},
  serviceDate: null,
  openDates: [],
  closedDates: [],
  workpieces: {},
  edges: [],
  orders: {},
  standing: null,
  pins: {},
  plan: null,
  deckC: {},
  deckSets: {},
  vesselReturns: [],
  residues: {},
  blocked: [],
  undo: {},
  lastSoundedMs: {},
  soundTest: null,
  soundHeardMs: null,
  soundUnheardMs: null,
};

/** The key of one version of a formula or product. */
export function versionKey(id: string, version: number): string {
  return `${id}@${version}`;
}
