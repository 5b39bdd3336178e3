import { unreachable } from '../result.ts';
import { soundSettingsSchema, waterSettingsSchema } from '../documents/house.ts';
import type { EventOf, FloorEvent } from './events.ts';
import { withLeft } from './left-lessons.ts';
import { OPEN_DATES_KEPT, versionKey, type FloorState, type Workpiece } from './state.ts';

type DocumentEvent = EventOf<
  | 'houseAdopted'
  | 'kitchenAdopted'
  | 'ingredientsAdopted'
  | 'ingredientAdopted'
  | 'dayOpened'
  | 'dayClosed'
  | 'workpiecePlanned'
  | 'feedPlanned'
  | 'lessonLeft'
>;

const TYPES: ReadonlySet<string> = new Set<DocumentEvent['type']>([
  'houseAdopted',
  'kitchenAdopted',
  'ingredientsAdopted',
  'ingredientAdopted',
  'dayOpened',
  'dayClosed',
  'workpiecePlanned',
  'feedPlanned',
  'lessonLeft',
]);

/** Whether the event is about documents, days or plans. */
export function isDocumentEvent(event: FloorEvent): event is DocumentEvent {
  return TYPES.has(event.type);
}

/** What a document, a day or a plan changes. */
export function evolveDocuments(state: FloorState, event: DocumentEvent): FloorState {
  switch (event.type) {
    case 'houseAdopted':
      // Houses of older journals say nothing of sound and water: what is usual holds for them.
      return {
        ...state,
        house: {
          version: event.version,
          document: {
            ...event.house,
            sound: soundSettingsSchema.parse(event.house.sound),
            water: waterSettingsSchema.parse(event.house.water),
          },
        },
      };
    case 'kitchenAdopted':
      return { ...state, kitchen: { version: event.version, document: event.kitchen } };
    case 'ingredientsAdopted':
      return { ...state, ingredients: { version: event.version, document: event.ingredients } };
    case 'ingredientAdopted': {
      const others = state.ingredients?.document ?? [];
      const index = others.findIndex((other) => other.id === event.ingredient.id);
      const document = index === -1 ? [...others, event.ingredient] : others.with(index, event.ingredient);
      return { ...state, ingredients: { version: event.version, document } };
    }
    case 'dayOpened':
      return {
        ...state,
        serviceDate: event.serviceDate,
        openDates: [...state.openDates.filter((date) => date !== event.serviceDate), event.serviceDate].slice(-OPEN_DATES_KEPT),
      };
    case 'dayClosed':
      return {
        ...state,
        openDates: state.openDates.filter((date) => date !== event.serviceDate),
        closedDates: [...state.closedDates, event.serviceDate].slice(-OPEN_DATES_KEPT),
        orders: Object.fromEntries(Object.entries(state.orders).filter(([, order]) => order.serviceDate > event.serviceDate)),
      };
    case 'workpiecePlanned':
      return { ...state, workpieces: { ...state.workpieces, [event.workpieceId]: plannedWorkpiece(state, event) } };
    case 'feedPlanned': {
      const pot = state.workpieces[event.workpieceId];
      if (pot === undefined || pot.stock === null) return state;
      const plannedFeeds = [...pot.stock.plannedFeeds, { feedMs: event.feedMs, grams: event.grams }].sort((a, b) => a.feedMs - b.feedMs);
      return { ...state, workpieces: { ...state.workpieces, [pot.id]: { ...pot, stock: { ...pot.stock, plannedFeeds }, call: null } } };
    }
    case 'lessonLeft':
      return { ...state, leftLessons: withLeft(state.leftLessons, event) };
    default:
      return unreachable(event);
  }
}

function plannedWorkpiece(state: FloorState, event: EventOf<'workpiecePlanned'>): Workpiece {
  const seedG = state.formulas[versionKey(event.formulaId, event.formulaVersion)]?.seedG;
  const only = event.cuts.length === 1 ? event.cuts[0] : undefined;
  return {
    id: event.workpieceId,
    kind: event.kind,
    tag: event.tag,
    serviceDate: event.serviceDate,
    formulaId: event.formulaId,
    formulaVersion: event.formulaVersion,
    productId: only?.productId ?? null,
    productVersion: only?.productVersion ?? null,
    parentId: null,
    childIds: [],
    grams: event.grams,
    scaledToG: event.grams,
    pieces: only?.pieces ?? null,
    plannedPieces: only?.pieces ?? null,
    scrapG: 0,
    plannedStartMs: event.plannedStartMs,
    readyMs: event.plannedStartMs,
    cuts: event.cuts,
    steps: {},
    placeId: null,
    stays: [],
    mixerId: null,
    bowlId: null,
    vessels: [],
    slotIds: [],
    readings: [],
    corrections: [],
    holdingDecisions: [],
    jumpedMs: state.jumpedMs,
    stock: event.kind === 'ferment' && seedG !== undefined ? { seedG, fedMs: null, plannedFeeds: [] } : null,
    serves: event.serves ?? null,
    broughtIn: { allergens: [], lotNumbers: [] },
    weighed: {},
    water: null,
    call: null,
    heldUntilMs: null,
    finishedMs: null,
    ending: null,
    lastCommandId: null,
    lastDoneCommandId: null,
  };
}
