import type { FastifyInstance } from 'fastify';
import { shapeFaults } from '../../shared/documents/bakehouse-file.ts';
import { isQuestion, QUESTIONS } from '../../shared/records/questions.ts';
import type { Devices } from '../devices/devices.ts';
import { RecordsBroken, type Records } from '../records/records.ts';
import { sendProblem } from './problem.ts';

export interface RecordsRouteOptions {
  /** Null where no records are kept. */
  readonly records: Records | null;
  readonly devices: Pick<Devices, 'all'>;
}

/** What the records answer, each question by its name; how far they are stands beside every answer. */
export function serveRecords(app: FastifyInstance, { records, devices }: RecordsRouteOptions): void {
  app.get<{ Params: { question: string } }>('/api/records/:question', async (request, reply) => {
    const { question } = request.params;
    if (!isQuestion(question)) {
      const detail = `The records answer ${Object.keys(QUESTIONS).join(', ')}; there is no "${question.slice(0, 40)}".`;
      return sendProblem(reply, 404, 'notFound', { detail });
    }
    const asked = QUESTIONS[question].safeParse(request.query);
    if (!asked.success)
      return sendProblem(reply, 400, 'badInput', { detail: 'The records cannot be asked that way.', faults: shapeFaults(asked.error) });
    if (records === null) return sendProblem(reply, 503, 'unavailable', { detail: 'This server keeps no records.' });
    try {
      const { answer, progress } = await records.ask(question, asked.data);
      if (answer === null && progress.sequence >= progress.of)
        return await sendProblem(reply, 404, 'notFound', { detail: 'That is not in the records.' });
      const whole = question === 'names' ? { ...(answer as object), devices: namedDevices(devices) } : answer;
      return await reply.header('Cache-Control', 'no-store').send({ progress, answer: whole });
    } catch (error) {
      if (!(error instanceof RecordsBroken)) throw error;
      return sendProblem(reply, 500, 'unexpected', { detail: 'The fault is in the server’s log.' });
    }
  });
}

function namedDevices(devices: RecordsRouteOptions['devices']): readonly { id: string; name: string }[] {
  return devices.all().map(({ id, name }) => ({ id, name }));
}
