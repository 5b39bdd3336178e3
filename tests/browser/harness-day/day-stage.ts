import type { BookFormula, BookIndex } from '../../../shared/book/book-api.ts';
import type { StandingOrder } from '../../../shared/documents/order.ts';
import type { Formula } from '../../../shared/documents/formula.ts';
import type { MovedStep } from '../../../shared/floor/events.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { Offer, PlanFigures, PlanStatus, Proposal, ProposalDone } from '../../../shared/plan/plan-api.ts';
import type { Reason } from '../../../shared/plan/why/reason.ts';
import { assert } from '../../../shared/result.ts';
import { demoFile, OPENING_MS, SERVICE_DATE } from '../../domain/support/harbour.ts';
import { idOf } from '../../domain/support/ids.ts';
import { busyDay, demoOrders, triedDay } from '../harness-day-sheet/sheet-stage.ts';
import { viewOf } from '../harness/staged-wall.ts';
import type { StagedAnswer, StagedDay } from './main.ts';

const MINUTE_MS = 60_000;
export const DATE = SERVICE_DATE;
/** Orders of the busy day are numbered from here. */
export const orderId = (n: number): string => idOf(700 + n);

const { formulas, products, ingredients } = demoFile();

/** The demo house's book, as the server lists it. */
export const INDEX: BookIndex = { entries: formulas.map(entryOf), ingredients: [...ingredients], ingredientsVersion: 1 };

function entryOf(formula: Formula): BookIndex['entries'][number] {
  const { id, name, letters, kind } = formula;
  const made = products.filter((product) => product.formula === id).map((product) => ({ id: product.id, name: product.name, version: 1 }));
  return { id, name, letters, kind, version: 1, isArchived: false, atMs: null, hydrationPct: null, ingredientIds: [], products: made };
}

function bookFormula(formula: Formula): BookFormula {
  const made = products.filter((product) => product.formula === formula.id).map((product) => ({ product, version: 1 }));
  return { formula, version: 1, newestVersion: 1, isArchived: false, history: [], needs: [], products: made };
}

const ok = (body: unknown): readonly StagedAnswer[] => [{ status: 200, body }];

/** The book's answers. */
export const BOOK_ANSWERS: StagedDay['answers'] = {
  'GET /api/book': ok(INDEX),
  ...Object.fromEntries(formulas.map((formula) => [`GET /api/book/formulas/${formula.id}`, ok(bookFormula(formula))])),
  'POST /api/commands': ok({}),
};

/** Figures of a day, with others in their place. */
export function figures(more: Partial<PlanFigures> = {}): PlanFigures {
  return {
    orders: 6,
    ordersOnTime: 6,
    lateMin: 0,
    latestMin: 0,
    spoilMin: 0,
    pinsBroken: 0,
    ripenessMin: 34,
    staleMin: 0,
    movedMin: 12,
    handsMin: 471,
    beginsMs: OPENING_MS + 80 * MINUTE_MS,
    endsMs: OPENING_MS + 660 * MINUTE_MS,
    total: 61,
    ...more,
  };
}

const RUNNING_ID = idOf(901);
const head = (id: string, changes: ProposalDone['ask']['changes'] = []): Pick<ProposalDone, 'id' | 'serviceDate' | 'ask' | 'askedMs'> => ({
  id,
  serviceDate: DATE,
  ask: { serviceDate: DATE, pins: [], firstOrderIds: [], changes, seed: 1 },
  askedMs: OPENING_MS + 76 * MINUTE_MS,
});

/** A day that is being sought. */
export function running(schedulesDone: number, id = RUNNING_ID): Proposal {
  const best = schedulesDone === 0 ? null : figures({ ordersOnTime: 4 });
  return { ...head(id), status: 'running', progress: { schedulesDone, schedules: 20_000, best } };
}

/** A day that was found. */
export function done(id: string, more: Partial<ProposalDone> = {}, changes: ProposalDone['ask']['changes'] = []): ProposalDone {
  const { proposal } = triedDay();
  assert(proposal !== null, 'the day that is tried has a proposal');
  return {
    ...head(id, changes),
    status: 'done',
    doneMs: OPENING_MS + 77 * MINUTE_MS,
    schedules: 20_000,
    isOutdated: false,
    batches: [...proposal.batches],
    steps: [...proposal.steps],
    cleanings: [],
    figures: figures(),
    late: [],
    warnings: [],
    reasons: [],
    ...more,
  };
}

/** Why the buns are late, and what was tried against it. */
export function busyReason(): Reason {
  const gone = { troubleLeftMin: 0, beforeMin: 31, leftMin: 0 };
  return {
    trouble: { kind: 'late', orderId: orderId(3), byMin: 24.2 },
    also: [],
    cause: {
      kind: 'busy',
      at: { batchKey: 'milk-buns#1', cut: 0, stepId: 'load' },
      resource: { kind: 'deck', id: 'top' },
      by: { batchKey: 'country#1', stepId: 'load' },
      untilMs: OPENING_MS + 190 * MINUTE_MS,
    },
    remedies: [
      { change: { kind: 'readyLater', orderId: orderId(3), minutes: 25 }, ...gone },
      { change: { kind: 'fewerPieces', orderId: orderId(3), pieces: 18 }, ...gone },
      { change: { kind: 'openEarlier', stationId: 'oven', minutes: 30 }, ...gone },
      {
        change: { kind: 'beginEarlier', batchKey: 'country#1', stepId: 'weigh', minutes: 25, startMs: OPENING_MS + 95 * MINUTE_MS },
        troubleLeftMin: 6,
        beforeMin: 31,
        leftMin: 13,
      },
    ],
  };
}

/** A day that does not fit, with the reason. */
export function tooFull(id: string): ProposalDone {
  return done(id, {
    figures: figures({ ordersOnTime: 4, lateMin: 31, latestMin: 24, spoilMin: 3 }),
    late: [{ orderId: orderId(3), readyMs: OPENING_MS + 294 * MINUTE_MS, byMin: 24 }],
    warnings: [
      { kind: 'late', orderId: orderId(3), atMs: OPENING_MS + 294 * MINUTE_MS, byMin: 24.2 },
      { kind: 'spoils', batchKey: 'milk-buns#1', cut: 1, stepId: 'prove', atMs: OPENING_MS + 250 * MINUTE_MS, byMin: 3 },
    ],
    reasons: [busyReason()],
  });
}

/** What the planner has. */
export function status(proposals: readonly Proposal[], offers: readonly Offer[] = []): PlanStatus {
  return {
    houseMs: OPENING_MS,
    plan: null,
    isReplanning: false,
    fault: null,
    offers: [...offers],
    proposals: proposals.map(({ id, serviceDate, status: stands, askedMs }) => ({
      id,
      serviceDate,
      status: stands,
      askedMs,
      figures: null,
    })),
  };
}

/** A better way to go on, on offer. */
export function offer(moved: readonly MovedStep[]): Offer {
  return {
    id: idOf(950),
    madeMs: OPENING_MS + 70 * MINUTE_MS,
    before: figures({ ordersOnTime: 4, lateMin: 31 }),
    after: figures({ ordersOnTime: 6 }),
    moved: [...moved],
  };
}

/** Orders that come every week: two of them on Saturdays. */
export const STANDING: readonly StandingOrder[] = [
  {
    id: 'milk-bun',
    weekdays: [1, 2, 3, 4, 5],
    readyAt: '06:30',
    productId: 'milk-bun',
    pieces: 60,
    form: 'cooled',
    weight: 1,
    label: 'Shop',
  },
  {
    id: 'country-loaf',
    weekdays: [6],
    readyAt: '07:00',
    productId: 'country-loaf',
    pieces: 20,
    form: 'cooled',
    weight: 2,
    label: 'Market stall',
  },
  { id: 'olive-flat', weekdays: [6, 7], readyAt: '09:30', productId: 'olive-flat', pieces: 12, form: 'hot', weight: 1, freshMin: 20 },
];

/** The busy day's floor with its own six orders and with standing ones, whatever else the demo file orders. */
export function busyFloor(): { readonly state: FloorState; readonly nowMs: number } {
  const { state, nowMs } = busyDay();
  const orders = Object.fromEntries(demoOrders().map((order) => [order.id, order]));
  return { state: { ...state, orders, standing: { version: 1, document: STANDING } }, nowMs };
}

/** The page on a floor, with answers of its own beside the book's. */
export function stagedDay(
  { state, nowMs }: { readonly state: FloorState | null; readonly nowMs: number },
  answers: StagedDay['answers'],
  more: Partial<StagedDay> = {},
): StagedDay {
  return { view: viewOf(state), nowMs, answers: { ...BOOK_ANSWERS, 'GET /api/plan': ok(status([])), ...answers }, ...more };
}

/** The plan's answers: these proposals, and what they come to when they are asked for again. */
export function planAnswers(proposals: readonly (readonly Proposal[])[], offers: readonly Offer[] = []): StagedDay['answers'] {
  const last = proposals.flatMap((each) => each.at(-1) ?? []);
  return {
    'GET /api/plan': ok(status(last, offers)),
    ...Object.fromEntries(
      proposals.map((each) => [`GET /api/plan/proposals/${each[0]?.id ?? ''}`, each.map((body) => ({ status: 200, body }))]),
    ),
  };
}

/** What the page of elements shows of a day: the busy floor, and proposals of every kind. */
export interface DayParts {
  readonly floor: { readonly state: FloorState; readonly nowMs: number };
  readonly products: readonly { readonly id: string; readonly name: string }[];
  readonly proposals: readonly { readonly name: string; readonly proposal: Proposal }[];
  readonly offers: readonly Offer[];
  readonly reason: Reason;
}

/** The demo house on a busy day: one proposal is sought, two are found, one cannot be. */
export function dayParts(): DayParts {
  const floor = busyFloor();
  const fault = { code: 'noMixer', message: 'no mixer', formulaId: 'milk-buns', productId: null, grams: 64_000 };
  const failed: Proposal = { ...head(idOf(914)), status: 'failed', faults: [fault] };
  const named = [
    tooFull(idOf(911)),
    done(idOf(912), { isOutdated: true }, [{ kind: 'leaveOut', orderId: orderId(3) }]),
    running(7_000),
    failed,
  ];
  return {
    floor,
    products: products.map(({ id, name }) => ({ id, name })),
    proposals: named.map((proposal, index) => ({ name: `Proposal ${'ABCD'.charAt(index)}`, proposal })),
    offers: [offer(floor.state.plan?.moved ?? [])],
    reason: busyReason(),
  };
}
