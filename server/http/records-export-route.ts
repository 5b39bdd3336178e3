import type { FastifyInstance, FastifyReply } from 'fastify';
import { shapeFaults } from '../../shared/documents/bakehouse-file.ts';
import { exportAskedSchema, exportFileName, type ExportFormat } from '../../shared/records/export-asked.ts';
import { RecordsBroken, type Records } from '../records/records.ts';
import { sendProblem } from './problem.ts';

const MEDIA_TYPES: Readonly<Record<ExportFormat, string>> = {
  csv: 'text/csv; charset=utf-8; header=present',
  jsonl: 'application/jsonl; charset=utf-8',
};
/** Who takes nothing for so long has gone, whatever the socket says: others wait for its place. */
const STALLED_MS = 60_000;
const ASK_AGAIN_S = 10;

export interface RecordsExportOptions {
  /** Null where no records are kept. */
  readonly records: Records | null;
  /** The house's zone, in which a period's days are. */
  readonly zone: () => string;
}

/** A table of the records as a file, written as it is taken: it may be larger than the server's memory. */
export function serveRecordsExport(app: FastifyInstance, { records, zone }: RecordsExportOptions): void {
  app.get('/api/records-export', async (request, reply) => {
    const asked = exportAskedSchema.safeParse(request.query);
    if (!asked.success)
      return sendProblem(reply, 400, 'badInput', { detail: 'No table can be written out that way.', faults: shapeFaults(asked.error) });
    if (records === null) return sendProblem(reply, 503, 'unavailable', { detail: 'This server keeps no records.' });
    const asFile = (): FastifyReply =>
      reply
        .type(MEDIA_TYPES[asked.data.format])
        .header('Cache-Control', 'no-store')
        .header('Content-Disposition', `attachment; filename="${exportFileName(asked.data)}"`);
    if (request.method === 'HEAD') return asFile().send('');
    const pouring = records.pour(asked.data, zone());
    if (pouring === null) {
      reply.header('Retry-After', String(ASK_AGAIN_S));
      return sendProblem(reply, 429, 'tooManyRequests', {
        detail: 'As many tables as may be are being written out; ask again when one is done.',
      });
    }
    try {
      const { stream, progress } = await pouring;
      if (stream === null) {
        reply.header('Retry-After', String(ASK_AGAIN_S));
        const detail = `The records are being made: ${progress.sequence} of ${progress.of} events are in them.`;
        return await sendProblem(reply, 503, 'unavailable', { detail });
      }
      reply.raw.setTimeout(STALLED_MS, () => void stream.destroy());
      if (reply.raw.destroyed) stream.destroy();
      return await asFile().send(stream);
    } catch (error) {
      if (!(error instanceof RecordsBroken)) throw error;
      return sendProblem(reply, 500, 'unexpected', { detail: 'The fault is in the server’s log.' });
    }
  });
}
