import { Readable } from 'node:stream';
import type { FastifyInstance } from 'fastify';
import type { Devices } from '../devices/devices.ts';
import type { Journal } from '../journal/journal.ts';

/** JSON Lines: one JSON value a line, each with its newline. */
const JSON_LINES = 'application/jsonl; charset=utf-8';
/** Events read from the journal at once. */
const PAGE_EVENTS = 1000;

export interface ExportRouteOptions {
  readonly journal: Journal;
  readonly kitchenId: string;
  readonly devices: Devices;
  readonly clock: { realMs(): number };
}

/** Everything that the house has kept as one file: what it is, its devices by their names, every event, and the head of the hash chain. */
export function serveExport(app: FastifyInstance, options: ExportRouteOptions): void {
  app.get('/api/export', async (_request, reply) =>
    reply
      .type(JSON_LINES)
      .header('Cache-Control', 'no-store')
      .header('Content-Disposition', 'attachment; filename="ovenward-everything.jsonl"')
      .send(Readable.from(lines(options))),
  );
}

/** Written as it is read, a page of the journal after the other: the file may be larger than the server's memory. */
async function* lines({ journal, kitchenId, devices, clock }: ExportRouteOptions): AsyncGenerator<string> {
  const head = await journal.head(kitchenId);
  yield lineOf({ line: 'ovenward', kitchenId, exportedMs: clock.realMs(), events: head.sequence });
  for (const device of devices.all()) yield lineOf({ line: 'device', ...device });
  for (let after = 0; after < head.sequence;) {
    const events = await journal.read(kitchenId, after, Math.min(PAGE_EVENTS, head.sequence - after));
    const last = events.at(-1);
    if (last === undefined) throw new Error(`the journal ends at ${after}, before its head at ${head.sequence}`);
    yield events.map((event) => lineOf({ line: 'event', ...event })).join('');
    after = last.sequence;
  }
  yield lineOf({ line: 'head', sequence: head.sequence, hash: head.hash });
}

function lineOf(value: unknown): string {
  return `${JSON.stringify(value)}\n`;
}
