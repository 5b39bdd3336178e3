import type { FastifyInstance, FastifyReply } from 'fastify';
import { calculate } from '../../shared/calc/calculate.ts';
import type { CalcFault } from '../../shared/trade/calc-part.ts';
import { sendProblem } from './problem.ts';

/** The trade's sums for scripts and other programs of the house: the same bodies, answers and faults as `npm run calc`. */
export function serveCalc(app: FastifyInstance): void {
  app.post<{ Params: { name: string } }>('/api/calc/:name', {
    errorHandler: (error, _request, reply) => {
      // What is no JSON never comes to the sum; it is answered like any other input that is not right.
      if (error.statusCode !== 400) throw error;
      void sendFault(reply, { code: 'notJson', field: 'body', message: error.message });
    },
    handler: async (request, reply) => {
      const result = calculate(request.params.name, request.body);
      return result.ok ? result.value : sendFault(reply, result.fault);
    },
  });
}

function sendFault(reply: FastifyReply, { code, field, message }: CalcFault): FastifyReply {
  const status = code === 'nameUnknown' ? 404 : 400;
  return sendProblem(reply, status, code === 'nameUnknown' ? 'notFound' : 'badInput', { detail: message, more: { code, field, message } });
}
