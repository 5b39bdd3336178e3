import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { broughtInBy, readBookFile } from '../../shared/book/book-file.ts';
import { shapeFaults } from '../../shared/documents/bakehouse-file.ts';
import { keySchema } from '../../shared/documents/names.ts';
import { bookInFaults } from '../../shared/floor/book-in-faults.ts';
import { mayGive } from '../access/roles.ts';
import type { Floor } from '../floor/floor.ts';
import type { Journal } from '../journal/journal.ts';
import { BookShelf } from './book-shelf.ts';
import type { Door } from './device-cookie.ts';
import { sendProblem } from './problem.ts';

/** Largest book that can be brought in, in bytes. */
const MAX_BOOK_BYTES = 32 * 1024 * 1024;
/** Faults in one answer at most: nobody mends more of a file before trying again. */
const MOST_FAULTS = 500;

const JSON_TYPE = 'application/json; charset=utf-8';

const formulaParamsSchema = z.strictObject({ id: keySchema });
const formulaQuerySchema = z.strictObject({ version: z.coerce.number().int().min(1).optional() });

export interface BookRouteOptions {
  readonly floor: Floor;
  readonly journal: Journal;
  readonly door: Door;
  readonly newId: () => string;
}

/** The formula book: its list, one formula in any version, the whole of it out and in as a file. Saves are commands. */
export function serveBook(app: FastifyInstance, { floor, journal, door, newId }: BookRouteOptions): void {
  const shelf = new BookShelf(journal, floor.kitchenId);

  app.get('/api/book', async (_request, reply) => reply.type(JSON_TYPE).send(shelf.listText(floor.state)));

  app.get('/api/book/formulas/:id', async (request, reply) => {
    const params = formulaParamsSchema.safeParse(request.params);
    const query = formulaQuerySchema.safeParse(request.query);
    if (!params.success) return sendProblem(reply, 404, 'notFound', { detail: 'There is no such formula.' });
    if (!query.success)
      return sendProblem(reply, 400, 'badInput', { detail: 'Say which version: ?version=2', faults: shapeFaults(query.error) });
    const found = await shelf.formula(floor.state, params.data.id, query.data.version ?? null);
    return found ?? sendProblem(reply, 404, 'notFound', { detail: `There is no formula ${params.data.id} in that version.` });
  });

  app.get('/api/book/export', async (_request, reply) =>
    reply.type(JSON_TYPE).header('Content-Disposition', 'attachment; filename="formula-book.json"').send(shelf.fileText(floor.state)),
  );

  app.post('/api/book/import', { bodyLimit: MAX_BOOK_BYTES }, async (request, reply) => {
    const file = readBookFile(request.body);
    if (!file.ok)
      return sendProblem(reply, 400, 'badInput', { detail: 'The file is not a book.', faults: file.fault.slice(0, MOST_FAULTS) });
    const faults = bookInFaults(floor.state, file.value);
    if (faults.length > 0)
      return sendProblem(reply, 400, 'badInput', {
        detail: 'The book cannot be taken in; nothing was.',
        faults: faults.slice(0, MOST_FAULTS),
      });
    const { device, role } = door.actor(request);
    if (!mayGive(role, 'bringInBook')) return sendProblem(reply, 403, 'forbidden', { detail: 'This device may not bring in a book.' });
    const brought = broughtInBy(floor.state, file.value);
    const { ingredients, formulas, products, archived } = file.value;
    const outcome = await floor.submit({
      commandId: newId(),
      deviceId: device.id,
      stationId: device.stationId,
      command: { type: 'bringInBook', ingredients, formulas, products, archived },
      tap: { agoMonotonicMs: 0, agoWallMs: 0 },
    });
    if (outcome.ok) return { sequence: outcome.sequence, ...brought };
    switch (outcome.refusal.code) {
      case 'nothingChanges':
        return { sequence: floor.state.sequence, ...brought };
      case 'documentFaulty':
        return sendProblem(reply, 400, 'badInput', {
          detail: 'The book cannot be taken in; nothing was.',
          faults: outcome.refusal.faults,
        });
      case 'notKept':
        return sendProblem(reply, 503, 'notKept', { detail: 'Nothing happened; send the book again.', more: { refusal: outcome.refusal } });
      default:
        return sendProblem(reply, 409, 'refused', { detail: `Refused: ${outcome.refusal.code}.`, more: { refusal: outcome.refusal } });
    }
  });
}
