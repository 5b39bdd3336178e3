import type { CommandOf, FloorCommand } from '../../shared/floor/commands.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { ProposalDone } from '../../shared/plan/plan-api.ts';
import type { TentativeChange } from '../../shared/plan/tentative-change.ts';
import { unreachable } from '../../shared/result.ts';
import type { Floor } from '../floor/floor.ts';

/** Whoever keeps a day. */
export interface Keeper {
  readonly deviceId: string;
  readonly stationId: string | null;
}

/**
 * The command that makes a proposed day the day. Warnings about doughs that have no id yet are not part of it: the re-plan
 * that follows says them.
 */
export function keepCommand({
  serviceDate,
  batches,
  steps,
}: Pick<ProposalDone, 'serviceDate' | 'batches' | 'steps'>): CommandOf<'adoptProposal'> {
  return { type: 'adoptProposal', serviceDate, batches, steps, warnings: [] };
}

/**
 * Keeps a proposed day with everything that it was tried with: orders become as they were tried, the day is adopted, and
 * what was pinned stays pinned. The first refusal among these, or the outcome of the adoption.
 */
export async function keepProposal(floor: Floor, proposal: ProposalDone, keeper: Keeper, newId: () => string): Promise<Outcome> {
  const give = async (command: FloorCommand): Promise<Outcome> => {
    const tap = command.type === 'adoptProposal' ? null : { agoMonotonicMs: 0, agoWallMs: 0 };
    return floor.submit({ commandId: newId(), ...keeper, command, tap });
  };
  // Given together, they are decided and kept as one group.
  const outcomes = await Promise.all([...orderCommands(floor.state, proposal), keepCommand(proposal)].map(give));
  const refused = outcomes.find((outcome) => !outcome.ok);
  const adopted = outcomes.at(-1);
  if (refused !== undefined || adopted === undefined) return refused ?? { ok: false, refusal: { code: 'nothingChanges' } };
  await Promise.all(pinCommands(floor.state, proposal).map(give));
  return adopted;
}

function orderCommands(state: FloorState, { ask, serviceDate }: ProposalDone): readonly FloorCommand[] {
  const changed = new Map(Object.values(state.orders).map((order) => [order.id, order]));
  const touched = new Set<string>();
  for (const change of ask.changes) {
    const order = changed.get(change.orderId);
    if (order === undefined) continue;
    touched.add(order.id);
    const after = changedOrder(order, change);
    if (after === null) changed.delete(order.id);
    else changed.set(order.id, after);
  }
  const orderIds = [...touched].filter((id) => !changed.has(id));
  const orders = [...touched].flatMap((id) => {
    const order = changed.get(id);
    if (order === undefined) return [];
    const { serviceDate: _same, ...wanted } = order;
    return [wanted];
  });
  return [
    ...(orders.length === 0 ? [] : [{ type: 'placeOrders', serviceDate, orders } satisfies FloorCommand]),
    ...(orderIds.length === 0 ? [] : [{ type: 'withdrawOrders', orderIds } satisfies FloorCommand]),
  ];
}

type Order = FloorState['orders'][string];

/** An order as it is tried; null where it is left out. */
export function changedOrder(order: Order, change: TentativeChange): Order | null {
  switch (change.kind) {
    case 'readyLater':
      return { ...order, readyMs: order.readyMs + change.minutes * 60_000 };
    case 'fewerPieces':
      return { ...order, pieces: change.pieces };
    case 'leaveOut':
      return null;
    default:
      return unreachable(change);
  }
}

/** Pins of the ask that the day has kept, on the workpieces that its batches became; and which order comes first. */
function pinCommands(state: FloorState, { ask, batches }: ProposalDone): readonly FloorCommand[] {
  const first = ask.firstOrderIds.slice(0, 1).map((orderId): FloorCommand => ({ type: 'setPin', pin: { kind: 'first', orderId } }));
  const taken = new Set<string>();
  const starts = ask.pins.flatMap(({ key, startMs }): FloorCommand[] => {
    const [batchKey = '', cutText = '', loadText = '', stepId = ''] = key.split('|');
    const formulaId = batches.find((batch) => batch.batchKey === batchKey)?.formulaId ?? batchKey.split('>')[0];
    const cut = cutText === '' ? {} : { cut: Number(cutText) };
    const load = loadText === '' ? {} : { load: Number(loadText) };
    const found = Object.entries(state.plan?.steps ?? {}).find(
      ([workpieceId, steps]) =>
        !taken.has(workpieceId + key) &&
        (workpieceId === batchKey || state.workpieces[workpieceId]?.formulaId === formulaId) &&
        steps.some((step) => step.stepId === stepId && step.cut === cut.cut && step.load === load.load && step.plannedStartMs === startMs),
    );
    if (found === undefined) return [];
    const [workpieceId] = found;
    taken.add(workpieceId + key);
    return [{ type: 'setPin', pin: { kind: 'startsAt', workpieceId, ...cut, ...load, stepId, startMs } }];
  });
  return [...first, ...starts];
}
