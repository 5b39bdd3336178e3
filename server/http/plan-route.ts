import type { FastifyInstance, FastifyReply } from 'fastify';
import { z } from 'zod';
import { shapeFaults } from '../../shared/documents/bakehouse-file.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';
import { idSchema } from '../../shared/ids.ts';
import { calendarQuerySchema, proposalAskSchema, tryAskSchema, type PlanStatus } from '../../shared/plan/plan-api.ts';
import type { Floor } from '../floor/floor.ts';
import { calendarText } from '../plan/calendar-text.ts';
import { keepProposal } from '../plan/keep-proposal.ts';
import type { Planning } from '../plan/planning.ts';
import { stationCalendar } from '../plan/station-calendar.ts';
import type { Door } from './device-cookie.ts';
import { sendProblem } from './problem.ts';

const MINUTE_MS = 60_000;
const NO_SUCH_PROPOSAL = 'There is no such proposal (any more): the last few are kept until the server goes down.';

/** Bodies of what needs none; browsers may send an empty object. */
const noBodySchema = z.strictObject({}).nullish();

export interface PlanRouteOptions {
  readonly floor: Floor;
  readonly planning: Planning;
  readonly door: Door;
  readonly clock: { nowMs(): number; realMs(): number };
  readonly newId: () => string;
}

/** The plan in force, days that are tried and kept, days that are played, and the plan of a station as a calendar. */
export function servePlan(app: FastifyInstance, { floor, planning, door, clock, newId }: PlanRouteOptions): void {
  const { proposals, replanner, tries } = planning;

  app.get('/api/plan', async (_request, reply) => reply.header('Cache-Control', 'no-store').send(statusOf(floor, planning, clock.nowMs())));

  app.post('/api/plan/proposals', async (request, reply) => {
    const ask = proposalAskSchema.safeParse(request.body);
    if (!ask.success)
      return sendProblem(reply, 400, 'badInput', { detail: 'A day cannot be sought by this.', faults: shapeFaults(ask.error) });
    const faults = askFaults(floor, ask.data);
    if (faults.length > 0) return sendProblem(reply, 400, 'badInput', { detail: 'A day cannot be sought by this.', faults });
    return reply.code(202).send(proposals.ask(ask.data));
  });

  app.get<{ Params: { id: string } }>('/api/plan/proposals/:id', async (request, reply) => {
    const proposal = proposals.find(request.params.id);
    if (proposal === null) return sendProblem(reply, 404, 'notFound', { detail: NO_SUCH_PROPOSAL });
    return reply.header('Cache-Control', 'no-store').send(proposal);
  });

  app.delete<{ Params: { id: string } }>('/api/plan/proposals/:id', async (request, reply) => {
    const { id } = request.params;
    if (!proposals.forget(id) && !replanner.dismiss(id)) return sendProblem(reply, 404, 'notFound', { detail: NO_SUCH_PROPOSAL });
    return reply.code(204).send();
  });

  app.post<{ Params: { id: string } }>('/api/plan/proposals/:id/keep', async (request, reply) => {
    const body = noBodySchema.safeParse(request.body);
    if (!body.success)
      return sendProblem(reply, 400, 'badInput', { detail: 'Nothing is to be said with it.', faults: shapeFaults(body.error) });
    const { id } = request.params;
    const { device } = door.actor(request);
    const keeper = { deviceId: device.id, stationId: device.stationId };
    const moved = await replanner.keep(id, keeper);
    if (moved !== null) return sendKept(reply, moved);
    const proposal = proposals.find(id);
    if (proposal === null) return sendProblem(reply, 404, 'notFound', { detail: NO_SUCH_PROPOSAL });
    if (proposal.status !== 'done')
      return sendProblem(reply, 409, 'refused', { detail: 'This day is not planned (yet).', more: { why: 'notDone' } });
    if (proposal.isOutdated)
      return sendProblem(reply, 409, 'refused', {
        detail: 'Orders, the kitchen, the books or the batches of this day have changed since. Ask for the day again.',
        more: { why: 'outdated' },
      });
    return sendKept(reply, await keepProposal(floor, proposal, keeper, newId));
  });

  app.post('/api/plan/tries', async (request, reply) => {
    const ask = tryAskSchema.safeParse(request.body);
    if (!ask.success)
      return sendProblem(reply, 400, 'badInput', { detail: 'A day cannot be played by this.', faults: shapeFaults(ask.error) });
    const { proposalId } = ask.data;
    const proposal = proposalId === undefined ? null : proposals.find(proposalId);
    if (proposalId !== undefined && proposal?.status !== 'done')
      return sendProblem(reply, 400, 'badInput', {
        detail: 'A day cannot be played by this.',
        faults: [{ path: 'proposalId', message: proposal === null ? 'there is no such proposal' : 'this day is not planned (yet)' }],
      });
    if (proposal === null && floor.state.plan === null)
      return sendProblem(reply, 400, 'badInput', {
        detail: 'A day cannot be played by this.',
        faults: [{ path: 'proposalId', message: 'the floor follows no plan: name a proposal' }],
      });
    return reply.code(202).send(tries.ask(ask.data, proposal?.status === 'done' ? proposal : null));
  });

  app.get<{ Params: { id: string } }>('/api/plan/tries/:id', async (request, reply) => {
    const id = idSchema.safeParse(request.params.id);
    const played = id.success ? tries.find(id.data) : null;
    if (played === null) return sendProblem(reply, 404, 'notFound', { detail: 'There is no such try (any more).' });
    return reply.header('Cache-Control', 'no-store').send(played);
  });

  app.get('/api/plan/calendar', async (request, reply) => {
    const query = calendarQuerySchema.safeParse(request.query);
    if (!query.success)
      return sendProblem(reply, 400, 'badInput', {
        detail: 'Say whose plan and of which day: /api/plan/calendar?station=bench&date=2026-03-07',
        faults: shapeFaults(query.error),
      });
    const { station, date } = query.data;
    if (floor.state.kitchen?.document.stations.every(({ id }) => id !== station) !== false)
      return sendProblem(reply, 404, 'notFound', { detail: `There is no station ${station}.` });
    const { plan } = floor.state;
    const revisedMs = plan?.movedMs ?? plan?.madeMs ?? clock.nowMs();
    return reply
      .type('text/calendar; charset=utf-8')
      .header('Content-Disposition', `attachment; filename="${station}-${date}.ics"`)
      .header('X-Content-Type-Options', 'nosniff')
      .header('Cache-Control', 'no-store')
      .send(calendarText(stationCalendar(floor.state, station, date), revisedMs, `${station}.${date}`));
  });
}

function statusOf(floor: Floor, { proposals, replanner }: Planning, houseMs: number): PlanStatus {
  const { plan } = floor.state;
  return {
    houseMs,
    plan:
      plan === null
        ? null
        : {
            planId: plan.planId,
            madeMs: plan.madeMs,
            ageMin: plan.madeMs === null ? null : Math.max(0, (houseMs - plan.madeMs) / MINUTE_MS),
            movedMs: plan.movedMs,
            moved: [...plan.moved],
            warnings: [...plan.warnings],
            figures: replanner.known?.figures ?? null,
            cleanings: [...(replanner.known?.cleanings ?? [])],
          },
    isReplanning: replanner.isReplanning,
    fault: replanner.fault,
    offers: [...replanner.offers],
    proposals: proposals.all().map((proposal) => ({
      id: proposal.id,
      serviceDate: proposal.serviceDate,
      status: proposal.status,
      askedMs: proposal.askedMs,
      figures: proposal.status === 'done' ? proposal.figures : null,
    })),
  };
}

/** Orders that the ask names and the house has not, each with its path. */
function askFaults(
  { state }: Floor,
  { changes, firstOrderIds, serviceDate }: z.infer<typeof proposalAskSchema>,
): readonly { readonly path: string; readonly message: string }[] {
  const faultOf = (path: string, orderId: string): readonly { readonly path: string; readonly message: string }[] => {
    const order = state.orders[orderId];
    if (order === undefined) return [{ path, message: 'there is no such order' }];
    return order.serviceDate === serviceDate ? [] : [{ path, message: `this order is for ${order.serviceDate}` }];
  };
  const isClosed = state.closedDates.includes(serviceDate);
  return [
    ...(isClosed ? [{ path: 'serviceDate', message: 'this day is over' }] : []),
    ...firstOrderIds.flatMap((orderId, index) => faultOf(`firstOrderIds[${index}]`, orderId)),
    ...changes.flatMap(({ orderId }, index) => faultOf(`changes[${index}].orderId`, orderId)),
  ];
}

function sendKept(reply: FastifyReply, outcome: Outcome): FastifyReply {
  if (outcome.ok) return reply.send({ sequence: outcome.sequence });
  if (outcome.refusal.code === 'notKept')
    return sendProblem(reply, 503, 'notKept', { detail: 'Nothing happened; keep it again.', more: { refusal: outcome.refusal } });
  return sendProblem(reply, 409, 'refused', { detail: `Refused: ${outcome.refusal.code}.`, more: { refusal: outcome.refusal } });
}
