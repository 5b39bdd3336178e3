import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { shapeFaults } from '../../shared/documents/bakehouse-file.ts';
import { clientCommandSchema, tapTimeSchema } from '../../shared/floor/commands.ts';
import { idSchema } from '../../shared/ids.ts';
import { mayGive } from '../access/roles.ts';
import type { Floor } from '../floor/floor.ts';
import { JournalError, type Journal } from '../journal/journal.ts';
import type { Door } from './device-cookie.ts';
import { sendProblem } from './problem.ts';

/** Events in one answer at most. */
const MAX_EVENTS = 1000;

const eventsQuerySchema = z.strictObject({
  after: z.coerce.number().int().min(0),
  limit: z.coerce.number().int().min(1).max(MAX_EVENTS).default(MAX_EVENTS),
});

const commandBodySchema = z.strictObject({
  commandId: idSchema,
  command: clientCommandSchema,
  /** Missing: the tap is now. */
  tap: tapTimeSchema.default({ agoMonotonicMs: 0, agoWallMs: 0 }),
});

export interface ApiOptions {
  readonly floor: Floor;
  readonly journal: Journal;
  readonly door: Door;
  readonly clock: { nowMs(): number; realMs(): number };
  readonly clientCount: () => number;
}

/** What scripts and other programs of the house read and say. */
export function serveApi(app: FastifyInstance, { floor, journal, door, clock, clientCount }: ApiOptions): void {
  app.get('/health', async (_request, reply) => {
    const isWritable = floor.isWritable && (await isReadable(journal, floor.kitchenId));
    const health = { journalWritable: isWritable, sequence: floor.state.sequence, clients: clientCount(), houseMs: clock.nowMs() };
    if (isWritable) return health;
    return sendProblem(reply, 503, 'unavailable', { detail: 'The journal does not take what happens on the floor.', more: health });
  });

  app.get('/api/state', async () => ({
    sequence: floor.state.sequence,
    kitchenId: floor.kitchenId,
    houseMs: clock.nowMs(),
    state: floor.state,
  }));

  app.get('/api/events', async (request, reply) => {
    const query = eventsQuerySchema.safeParse(request.query);
    if (!query.success)
      return sendProblem(reply, 400, 'badInput', {
        detail: 'Say after which sequence number: /api/events?after=0',
        faults: shapeFaults(query.error),
      });
    const events = await journal.read(floor.kitchenId, query.data.after, query.data.limit);
    return { events, next: events.at(-1)?.sequence ?? query.data.after };
  });

  app.post('/api/commands', async (request, reply) => {
    const body = commandBodySchema.safeParse(request.body);
    if (!body.success) return sendProblem(reply, 400, 'badInput', { detail: 'The command is not right.', faults: shapeFaults(body.error) });
    const { device, role } = door.actor(request);
    const { commandId, command, tap } = body.data;
    if (!mayGive(role, command.type)) return sendProblem(reply, 403, 'forbidden', { detail: `This device may not ${command.type}.` });
    const outcome = await floor.submit({ commandId, deviceId: device.id, stationId: device.stationId, command, tap });
    if (outcome.ok) return outcome;
    if (outcome.refusal.code === 'notKept') {
      return sendProblem(reply, 503, 'notKept', {
        detail: 'Nothing happened; send the same command again with the same id.',
        more: { refusal: outcome.refusal },
      });
    }
    return sendProblem(reply, 409, 'refused', { detail: `Refused: ${outcome.refusal.code}.`, more: { refusal: outcome.refusal } });
  });
}

async function isReadable(journal: Journal, kitchenId: string): Promise<boolean> {
  try {
    await journal.head(kitchenId);
    return true;
  } catch (error) {
    if (error instanceof JournalError) return false;
    throw error;
  }
}
