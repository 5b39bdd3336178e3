import { describe, expect, test } from 'vitest';
import { addressOf, daysOn, searchOf, weekdayOf } from '../../display/day/day-address.ts';
import { withBook } from '../../display/day/day-book.ts';
import { weekdaysText } from '../../display/day/day-text.ts';
import { textOfBytes } from '../../display/day/file-text.ts';
import { placeAgain, placeRead, placeTyped } from '../../display/day/order-commands.ts';
import { EMPTY_DRAFT, typedIn, type OrderDraft } from '../../display/day/order-draft.ts';
import { standingOf, warningsAhead } from '../../display/day/order-rows.ts';
import { batchesOf, comparedRows, figuresInForce, figureText, type KnownFigures } from '../../display/day/plan-compared.ts';
import type { PlanNames } from '../../display/day/plan-names.ts';
import { movedWhyText } from '../../display/day/plan-words.ts';
import { planFaultText } from '../../display/day/plan-fault-words.ts';
import { PLANNING } from '../../display/words/en/day.ts';
import { standingToTake, withStanding } from '../../display/day/standing-edits.ts';
import { askWith, triedIn, withTried, type TriedChange } from '../../display/day/tried-change.ts';
import type { Order, StandingOrder } from '../../shared/documents/order.ts';
import type { MovedStep } from '../../shared/floor/events.ts';
import { proposalAskSchema, type PlanFigures } from '../../shared/plan/plan-api.ts';
import { zonedInstantMs } from '../../display/parts/zoned-instant.ts';
import { EMPTY_STATE, type FloorState, type Plan, type Workpiece } from '../../shared/floor/state.ts';
import { Floor } from './support/floor.ts';
import { harbourFile, OPENING_MS, SERVICE_DATE } from './support/harbour.ts';
import { idOf } from './support/ids.ts';

const MINUTE_MS = 60_000;
const PRODUCTS = [
  { id: 'milk-bun', name: 'Milk buns' },
  { id: 'rye-tin', name: 'Seeded rye' },
];
const STANDING: readonly StandingOrder[] = [
  { id: 'milk-bun', weekdays: [6, 7], readyAt: '06:30', productId: 'milk-bun', pieces: 60, form: 'hot', weight: 2, freshMin: 20 },
  { id: 'rye-tin', weekdays: [1], readyAt: '07:00', productId: 'rye-tin', pieces: 8, form: 'cooled', weight: 1 },
];
const ORDER: Order = {
  id: idOf(1),
  serviceDate: SERVICE_DATE,
  productId: 'bun',
  pieces: 24,
  readyMs: OPENING_MS + 180 * MINUTE_MS,
  form: 'cooled',
  weight: 1,
};
const TOLD: PlanFigures = {
  orders: 1,
  ordersOnTime: 1,
  lateMin: 0,
  latestMin: 0,
  spoilMin: 0,
  pinsBroken: 0,
  ripenessMin: 0,
  staleMin: 0,
  movedMin: 0,
  handsMin: 40,
  beginsMs: OPENING_MS,
  endsMs: OPENING_MS + 90 * MINUTE_MS,
  total: 1,
};
const PLAN: Plan = { planId: idOf(9), madeMs: OPENING_MS, steps: {}, moved: [], movedMs: null, warnings: [] };

describe('I10 what is typed as an order', () => {
  const draft: OrderDraft = { ...EMPTY_DRAFT, product: ' seeded RYE ', pieces: 8, readyAt: '7.15', label: ' Van ' };

  test('is one by name or key, with the clock time as people write it, and nothing that nobody said', () => {
    const typed = typedIn(draft, PRODUCTS, false);
    expect(typed).toEqual({
      ok: true,
      value: { weekdays: [], productId: 'rye-tin', pieces: 8, readyAt: '07:15', form: 'cooled', weight: 1, label: 'Van' },
    });
    expect(typedIn({ ...draft, product: 'milk-bun', weekdays: [7, 1] }, PRODUCTS, true)).toMatchObject({
      ok: true,
      value: { productId: 'milk-bun', weekdays: [1, 7] },
    });
  });

  test.each([
    ['product', { product: 'Rye' }],
    ['pieces', { pieces: 2.5 }],
    ['pieces', { pieces: undefined }],
    ['readyAt', { readyAt: '24:00' }],
    ['freshMin', { freshMin: Number.NaN }],
    ['loadingMin', { loadingMin: -1 }],
    ['weight', { weight: 10 }],
  ] as const)('is told at its field where it is none: %s', (field, wrong) => {
    const typed = typedIn({ ...draft, ...wrong }, PRODUCTS, false);
    expect(typed.ok ? [] : Object.keys(typed.faults)).toEqual([field]);
  });

  test('a standing order needs a day', () => {
    const typed = typedIn(draft, PRODUCTS, true);
    expect(typed.ok ? [] : Object.keys(typed.faults)).toEqual(['weekdays']);
  });

  test('is ready by the house’s clocks, also on the night in which they change', () => {
    const typed = typedIn(draft, PRODUCTS, false);
    if (!typed.ok) throw new Error('it was typed rightly');
    // Clocks in Paris go from 02:00 to 03:00 on 29 March 2026 (European Union, Directive 2000/84/EC): summer time is UTC+2.
    const [order] = placeTyped(typed.value, null, '2026-03-29', 'Europe/Paris').orders;
    expect(order?.readyMs).toBe(Date.UTC(2026, 2, 29, 5, 15));
  });

  test('changed, it keeps its id, its standing order and the date on which it is wanted; put back, it is a new one', () => {
    const typed = typedIn(draft, PRODUCTS, false);
    if (!typed.ok) throw new Error('it was typed rightly');
    const before: Order = { ...ORDER, standingId: 'rye-tin', readyMs: Date.UTC(2026, 2, 8, 1) };
    const [changed] = placeTyped(typed.value, before, SERVICE_DATE, 'UTC').orders;
    expect(changed).toMatchObject({ id: before.id, standingId: 'rye-tin', readyMs: Date.UTC(2026, 2, 8, 7, 15) });
    const { id: _id, serviceDate, ...wanted } = before;
    expect(placeAgain(before)).toEqual({ type: 'placeOrders', serviceDate, orders: [wanted] });
  });

  test('what was read goes to its dates, each in a command of its own', () => {
    const { id: _id, serviceDate: _date, ...order } = ORDER;
    const read = ['2026-03-07', '2026-03-08', '2026-03-07'].map((serviceDate, line) => ({
      line,
      serviceDate,
      order: { ...order, pieces: line + 1 },
    }));
    expect(placeRead(read).map((command) => [command.serviceDate, command.orders.map(({ pieces }) => pieces)])).toEqual([
      ['2026-03-07', [1, 3]],
      ['2026-03-08', [2]],
    ]);
  });
});

describe('I11 standing orders', () => {
  const instantMs = (date: string, minute: number): number => zonedInstantMs(date, minute, 'UTC');

  test('those of the weekday become orders of the date, each once, and again once it is withdrawn', () => {
    const [taken] = standingToTake(STANDING, [], SERVICE_DATE, instantMs);
    expect(taken).toEqual({
      productId: 'milk-bun',
      pieces: 60,
      form: 'hot',
      weight: 2,
      freshMin: 20,
      readyMs: Date.UTC(2026, 2, 7, 6, 30),
      standingId: 'milk-bun',
    });
    const order: Order = { ...ORDER, standingId: 'milk-bun' };
    expect(standingToTake(STANDING, [order], SERVICE_DATE, instantMs)).toEqual([]);
    expect(standingToTake(STANDING, [order], '2026-03-08', instantMs)).toHaveLength(1);
    expect(standingToTake(STANDING, [], '2026-03-10', instantMs)).toEqual([]);
  });

  test('a new one gets a key of its own; a changed one keeps its place and key', () => {
    const { id: _id, ...typed } = STANDING[0] as StandingOrder;
    expect(withStanding(STANDING, typed, null).map(({ id }) => id)).toEqual(['milk-bun', 'rye-tin', 'milk-bun-2']);
    expect(withStanding(STANDING, { ...typed, pieces: 5 }, 'milk-bun')[0]).toEqual({ id: 'milk-bun', ...typed, pieces: 5 });
  });

  test('their days are spoken of in spans', () => {
    expect(
      [
        [1, 2, 3, 4, 5],
        [6, 7],
        [1, 3, 4, 5, 7],
        [1, 2, 3, 4, 5, 6, 7],
      ].map(weekdaysText),
    ).toEqual(['Mon–Fri', 'Sat, Sun', 'Mon, Wed–Fri, Sun', 'every day']);
  });
});

describe('I12 dates and addresses', () => {
  test('weekdays and steps of days are those of the calendar', () => {
    // 7 March 2026 is a Saturday; 2024 was a leap year.
    expect([weekdayOf('2026-03-07'), weekdayOf('2026-03-08'), daysOn('2024-02-28', 1), daysOn('2026-01-01', -1)]).toEqual([
      6,
      7,
      '2024-02-29',
      '2025-12-31',
    ]);
  });

  test('an address says what is shown, and nothing wrong is taken from it', () => {
    const address = { date: '2026-03-08', section: 'plan' } as const;
    expect(addressOf(searchOf(address))).toEqual(address);
    expect(addressOf('?date=2026-02-30&section=oven')).toEqual({ date: null, section: 'orders' });
  });

  test('files are read in the encodings that spreadsheets write', () => {
    const text = 'Stück;Pièces';
    expect(textOfBytes(new TextEncoder().encode(text))).toBe(text);
    expect(textOfBytes(Uint8Array.from(text, (letter) => letter.charCodeAt(0)))).toBe(text);
    const bytes = Uint8Array.from([0xff, 0xfe, ...Array.from(text, (letter) => [letter.charCodeAt(0), 0]).flat()]);
    expect(textOfBytes(bytes)).toBe(text);
  });
});

describe('I13 what is tried otherwise', () => {
  const later: TriedChange = { kind: 'readyLater', orderId: idOf(1), minutes: 20 };
  const fewer: TriedChange = { kind: 'fewerPieces', orderId: idOf(1), pieces: 12 };
  const first: TriedChange = { kind: 'first', orderId: idOf(2) };
  const pinned: TriedChange = { kind: 'startsAt', key: 'country#1|0||shape', startMs: OPENING_MS };

  test('the last of a kind counts, and the planner is asked with all of it', () => {
    const tried = [later, fewer, first, pinned, { ...later, minutes: 40 }].reduce<readonly TriedChange[]>(withTried, []);
    const ask = askWith(SERVICE_DATE, tried);
    expect(proposalAskSchema.parse(ask)).toEqual(ask);
    expect(ask.changes).toEqual([fewer, { ...later, minutes: 40 }]);
    expect(new Set(triedIn(ask))).toEqual(new Set(tried));
  });
});

describe('I14 how orders and days stand by the plan in force', () => {
  const floor = Floor.harbour().state;
  const [bun] = Object.values(floor.workpieces).flatMap(({ cuts }) => cuts);
  const order: Order = { ...ORDER, productId: bun?.productId ?? '' };
  const planned = (warnings: Plan['warnings'], orders: readonly Order[] = [order]): FloorState => ({
    ...floor,
    orders: Object.fromEntries(orders.map((each) => [each.id, each])),
    plan: { ...PLAN, warnings },
  });
  const late = { kind: 'late', orderId: order.id, atMs: ORDER.readyMs, byMin: 12 } as const;
  const short = { kind: 'short', orderId: order.id, pieces: 3 } as const;

  test('on time, late, short; not planned where nothing of it is made; unsaid without a plan', () => {
    expect(standingOf({ ...floor, plan: null }, order)).toBeNull();
    expect(standingOf(planned([]), order)).toEqual({ kind: 'onTime' });
    expect(standingOf(planned([late]), order)).toEqual({ kind: 'late', byMin: 12 });
    expect(standingOf(planned([late, short]), order)).toEqual({ kind: 'short', pieces: 3 });
    expect(standingOf(planned([]), { ...order, productId: 'nothing' })).toEqual({ kind: 'notPlanned' });
  });

  test('a day that nobody has planned is not foreseen to be short', () => {
    const other: Order = { ...order, serviceDate: '2026-03-09' };
    const state = planned([{ ...short, orderId: other.id }, late], [other]);
    expect(warningsAhead(state)).toEqual([late]);
    expect(standingOf(state, other)).toEqual({ kind: 'late', byMin: 12 });
  });

  test('the plan in force is compared by what stands in it', () => {
    const [workpiece] = Object.values(floor.workpieces);
    const step = (min: number, minutes: number, kind: 'station' | 'mixer'): Plan['steps'][string][number] => ({
      workpieceId: workpiece?.id ?? '',
      stepId: 'fold-1',
      plannedStartMs: OPENING_MS + min * MINUTE_MS,
      plannedEndMs: OPENING_MS + (min + minutes) * MINUTE_MS,
      resources: [{ kind, id: 'bench' }],
    });
    const state = planned([late]);
    const steps = { [workpiece?.id ?? '']: [step(10, 5, 'station'), step(20, 15, 'station'), step(40, 30, 'mixer')] };
    const inForce = { ...state, plan: { ...PLAN, warnings: [late], steps } };
    const figures = figuresInForce(inForce, SERVICE_DATE, null);
    expect(figures).toMatchObject({ orders: 1, ordersOnTime: 0, latestMin: 12, handsMin: 20 });
    expect([figures?.beginsMs, figures?.endsMs]).toEqual([OPENING_MS + 10 * MINUTE_MS, OPENING_MS + 70 * MINUTE_MS]);
    expect(figuresInForce(state, '2026-03-09', null)).toBeNull();
    expect(comparedRows([figures ?? {}])).not.toContain('spoilMin');
    expect(comparedRows([figures ?? {}, { spoilMin: 4 }])).toContain('spoilMin');
  });

  test('what no plan shows by itself is as the planner told it; of the date’s orders the page knows better', () => {
    const [workpiece] = Object.values(floor.workpieces);
    const step: Plan['steps'][string][number] = {
      workpieceId: workpiece?.id ?? '',
      stepId: 'fold-1',
      plannedStartMs: OPENING_MS,
      plannedEndMs: OPENING_MS + 5 * MINUTE_MS,
      resources: [],
    };
    const state = planned([late]);
    const inForce = { ...state, plan: { ...PLAN, warnings: [late], steps: { [step.workpieceId]: [step] } } };
    const told: PlanFigures = { ...TOLD, orders: 9, ordersOnTime: 9, ripenessMin: 31, staleMin: 7, movedMin: 55 };
    const figures = figuresInForce(inForce, SERVICE_DATE, told);
    expect(figures).toEqual({ ...told, orders: 1, ordersOnTime: 0, latestMin: 12, movedMin: 0 });
    const ripeness = (known: KnownFigures | null): string => figureText('ripenessMin', known ?? {}, String).text;
    expect([ripeness(figuresInForce(inForce, SERVICE_DATE, null)), ripeness(figures)]).toEqual([PLANNING.unknown, '31 min']);
  });

  test('what was divided off is part of its batch', () => {
    const roots = Object.values(floor.workpieces).filter(({ serviceDate }) => serviceDate === SERVICE_DATE);
    const [first] = roots;
    const cut = { ...first, id: idOf(400), parentId: first?.id ?? '' } as Workpiece;
    expect(batchesOf({ ...floor, workpieces: { ...floor.workpieces, [cut.id]: cut } }, SERVICE_DATE)).toBe(roots.length);
    expect(batchesOf(floor, '2026-03-09')).toBe(0);
  });
});

describe('I41 why a step moved is told of something else, or of its time', () => {
  const names: PlanNames = {
    order: (id) => id,
    step: ({ workpieceId = '', stepId }) => `${workpieceId} ${stepId}`,
    resource: ({ id }) => id,
    dayClock: String,
  };
  const at = { workpieceId: 'C1', stepId: 'fold', fromMs: 1_000_000 };
  const later = { ...at, toMs: 2_000_000 };
  const earlier = { ...at, toMs: 500_000 };
  const dough = (workpieceId: string, stepId: string): MovedStep['because'] => ({ what: 'dough', workpieceId, stepId });

  test.each([
    [{ ...later, because: dough('C1', 'bulk') }, 'waits for C1 bulk'],
    [{ ...earlier, because: dough('C1', 'bulk') }, PLANNING.goesWith('C1 bulk')],
    [{ ...later, because: dough('C1', 'fold') }, PLANNING.notBegun],
    [{ ...earlier, because: dough('C1', 'fold') }, 'its own dough'],
    [{ ...later, cut: 1, because: dough('C1', 'fold') }, 'its own dough'],
    [{ ...later, because: { what: 'dough' } }, 'its own dough'],
    [{ ...later, because: { what: 'resource', resource: { kind: 'mixer', id: 'spiral' } } }, 'spiral is taken'],
    [later, ''],
  ] as const)('%j', (moved, words) => {
    expect(movedWhyText(moved, names)).toBe(words);
  });
});

describe('I15 what only the book knows', () => {
  test('the documents of what is ordered stand beside those of what is on the floor', () => {
    const { formulas, products } = harbourFile();
    const [formula] = formulas;
    const made = products.filter((product) => product.formula === formula?.id);
    if (formula === undefined) throw new Error('the house has a formula');
    const loaded = {
      formula,
      version: 3,
      newestVersion: 3,
      isArchived: false,
      history: [],
      needs: [],
      products: made.map((product) => ({ product, version: 2 })),
    };
    const state = withBook(EMPTY_STATE, [loaded]);
    expect(state.formulas[`${formula.id}@3`]).toEqual(formula);
    expect(state.formulaVersions[formula.id]).toBe(3);
    for (const { id } of made) expect(state.products[`${id}@2`]?.id).toBe(id);
    expect(withBook(state, [])).toBe(state);
  });

  test('faults of a day are told with names and weights; one that is not known as the planner wrote it', () => {
    const names = { formula: (id: string) => `«${id}»`, product: (id: string) => `<${id}>` };
    const text = (fault: { code: string; message: string }): string => planFaultText(fault, names, { temperature: 'C', weight: 'g' });
    expect(text({ code: 'noMixer', message: '', formulaId: 'rye', productId: null, grams: 64_000 } as never)).toBe(
      '«rye»: no mixer takes 64\u00a0kg',
    );
    expect(text({ code: 'noDeck', message: '', productId: 'bun', slotsNeeded: 4, mostSlots: 2 } as never)).toContain(
      '<bun>: needs 4 slots',
    );
    expect(text({ code: 'noDeck', message: '', productId: 'bun', pieces: 40, mostPieces: 12 } as never)).toContain('40 pieces');
    expect(text({ code: 'another', message: 'as it was written' })).toBe('as it was written');
  });
});
