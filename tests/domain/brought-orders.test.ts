import { describe, expect, test } from 'vitest';
import { readBakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import { MOST_ORDERS } from '../../shared/documents/order.ts';
import { projectionOf } from '../../shared/floor/projection.ts';
import { allocationOf, type Supply } from '../../shared/plan/orders/allocation.ts';
import { batchesFor } from '../../shared/plan/orders/batches-for.ts';
import { Floor } from './support/floor.ts';
import { bringInCommand, demoFile, demoJson, OPENING_MS, SERVICE_DATE } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';

const DAY_MS = 86_400_000;
const SUNDAY = '2026-03-08';

function demoFloor(): Floor {
  const floor = new Floor();
  floor.ok(bringInCommand(demoFile(), OPENING_MS), { deviceId: SERVER_DEVICE });
  return floor;
}

function faultsOf(change: (json: { day: { orders: object[] }; standing: object[] }) => void): readonly string[] {
  const json = demoJson();
  change(json as never);
  const read = readBakehouseFile(json);
  return read.ok ? [] : read.fault.map(({ path, message }) => `${path}: ${message}`);
}

describe('Y1 a bakehouse file brings the day’s orders and the standing ones', () => {
  test('each becomes an order of the day, whatever it was counted from, and the standing ones their first version', () => {
    const { state } = demoFloor();
    const written = demoFile().day.orders ?? [];
    const orders = Object.values(state.orders);
    expect(orders).toHaveLength(written.length);
    expect(new Set(orders.map((order) => order.label))).toEqual(new Set(['Shop', 'Market stall', 'Van']));
    expect(orders.every((order) => order.serviceDate === SERVICE_DATE)).toBe(true);
    expect(orders.map((order) => (order.readyMs - OPENING_MS) / 60_000)).toEqual(written.map((order) => order.readyAfterLoadMin));
    expect(state.standing).toEqual({
      version: 1,
      document: demoFile().standing?.map(({ product, ...rest }) => ({ ...rest, productId: product })),
    });
  });

  test('they come before the batches; no order has the id of a dough', () => {
    const { state, recorded } = demoFloor();
    const types = recorded.map(({ event }) => event.type);
    expect(types.indexOf('orderPlaced')).toBe(types.indexOf('dayOpened') + 1);
    expect(types.indexOf('workpiecePlanned')).toBeGreaterThan(types.lastIndexOf('orderPlaced'));
    expect(Object.keys(state.orders).filter((id) => state.workpieces[id] !== undefined)).toEqual([]);
  });

  test('the next day has orders of its own; standing orders that say the same are not adopted again', () => {
    const floor = demoFloor();
    const before = floor.recorded.length;
    floor.ok(bringInCommand(demoFile(), OPENING_MS + DAY_MS, SUNDAY), { deviceId: SERVER_DEVICE });
    const types = floor.recorded.slice(before).map(({ event }) => event.type);
    expect(types.filter((type) => type === 'orderPlaced')).toHaveLength(demoFile().day.orders?.length ?? Number.NaN);
    expect(types).not.toContain('standingAdopted');
    expect(floor.state.standing?.version).toBe(1);
  });

  test('a file without a word of standing orders leaves those of the house', () => {
    const floor = demoFloor();
    const { standing: _left, ...command } = bringInCommand(demoFile(), OPENING_MS + DAY_MS, SUNDAY);
    floor.ok(command, { deviceId: SERVER_DEVICE });
    expect(floor.state.standing?.document).toHaveLength(demoFile().standing?.length ?? Number.NaN);
  });

  test('an order of a product that nobody has, and one too many, are refused, and nothing is taken in', () => {
    const command = bringInCommand(demoFile(), OPENING_MS);
    const [order] = command.orders ?? [];
    if (order === undefined) throw new Error('the demo has orders');
    const floor = new Floor();
    const ghost = { ...order, productId: 'ghost' };
    expect(floor.give({ ...command, orders: [ghost] }).decision).toEqual({
      ok: false,
      fault: { code: 'productUnknown', productId: 'ghost' },
    });
    const many = Array.from({ length: MOST_ORDERS + 1 }, () => order);
    expect(floor.give({ ...command, orders: many }).decision).toEqual({ ok: false, fault: { code: 'tooManyOrders', most: MOST_ORDERS } });
    expect(floor.state.house).toBeNull();
  });
});

describe('Y2 orders of a file are checked with the rest of it', () => {
  test('a product that is not in the file, a key used twice', () => {
    expect(
      faultsOf(({ day, standing }) => {
        Object.assign(day.orders[1] ?? {}, { product: 'ghost' });
        Object.assign(standing[0] ?? {}, { product: 'ghoul' });
        Object.assign(standing[2] ?? {}, { id: 'shop-buns' });
      }),
    ).toEqual([
      'day.orders[1].product: there is no product "ghost"',
      'standing[2].id: "shop-buns" is used twice',
      'standing[0].product: there is no product "ghoul"',
    ]);
  });

  test.each([
    { name: 'both times', change: { readyAt: '08:00', readyAfterLoadMin: 10 } },
    { name: 'no time', change: { readyAfterLoadMin: undefined } },
  ])('$name', ({ change }) => {
    expect(faultsOf(({ day }) => Object.assign(day.orders[0] ?? {}, change))).toEqual([
      'day.orders[0]: an order has "readyAt": "HH:MM" or "readyAfterLoadMin": minutes, and not both',
    ]);
  });

  test('a time that no clock shows', () => {
    const faults = faultsOf(({ day }) => Object.assign(day.orders[0] ?? {}, { readyAt: '24:00', readyAfterLoadMin: undefined }));
    expect(faults).toEqual(['day.orders[0].readyAt: a clock time is written like 05:00']);
  });
});

describe('Y3 the demo’s orders are those that its batches serve', () => {
  test('every piece that is made is ordered, and every order is served in time as the batches are planned', () => {
    const { state, nowMs } = demoFloor();
    const supplies: Supply[] = Object.values(state.workpieces).flatMap((workpiece) =>
      workpiece.cuts.map((cut, index) => ({
        key: `${workpiece.tag}/${index}`,
        productId: cut.productId,
        pieces: cut.pieces,
        // Of a dough that goes several ways the last of them counts: later than it is, never earlier.
        readyMs: projectionOf(state, workpiece, nowMs)?.readyMs ?? null,
        serviceDate: workpiece.serviceDate,
      })),
    );
    const orders = Object.values(state.orders);
    const { short, spare, shares } = allocationOf(state, orders, supplies);
    expect({ short, spare }).toEqual({ short: [], spare: [] });
    const readyMs = new Map(supplies.map((supply) => [supply.key, supply.readyMs ?? Infinity]));
    const late = orders.filter(({ id, readyMs: wantedMs, loadingMin = 0, productId }) =>
      // Plain buns are out long before those with custard, of the same dough.
      productId === 'milk-bun'
        ? false
        : shares.some((share) => share.orderId === id && (readyMs.get(share.key) ?? 0) > wantedMs - loadingMin * 60_000),
    );
    expect(late).toEqual([]);
  });

  test('so nothing more has to be made for them', () => {
    const { state, nowMs } = demoFloor();
    expect(batchesFor(state, Object.values(state.orders), nowMs)).toEqual({ ok: true, value: [] });
  });
});
