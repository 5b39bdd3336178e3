import type { FastifyInstance } from 'fastify';
import { idSchema } from '../../shared/ids.ts';
import { weighOutCsv } from '../../shared/floor/weigh-out-csv.ts';
import { weighOutOf } from '../../shared/floor/weigh-out.ts';
import type { Floor } from '../floor/floor.ts';
import { sendProblem } from './problem.ts';

/** The weigh-out of a dough, prep or feed for a spreadsheet. */
export function serveWeighOut(app: FastifyInstance, { floor }: { readonly floor: Floor }): void {
  app.get<{ Params: { id: string } }>('/api/weigh-out/:id', async (request, reply) => {
    const id = idSchema.safeParse(request.params.id);
    if (!id.success) return sendProblem(reply, 400, 'badInput', { detail: 'Name the workpiece by its id: /api/weigh-out/ID.' });
    const workpiece = floor.state.workpieces[id.data];
    const weighOut = workpiece === undefined ? null : weighOutOf(floor.state, workpiece);
    if (workpiece === undefined || weighOut === null)
      return sendProblem(reply, 404, 'notFound', { detail: 'No dough, prep or feed of this id is weighed out on the floor.' });
    return reply
      .type('text/csv; charset=utf-8')
      .header('Content-Disposition', `attachment; filename="weigh-out-${fileSafe(workpiece.tag)}-${workpiece.serviceDate}.csv"`)
      .header('X-Content-Type-Options', 'nosniff')
      .header('Cache-Control', 'no-store')
      .send(weighOutCsv(weighOut, workpiece));
  });
}

/** Letters and digits of a tag: whatever else it has is not part of a file's name. */
function fileSafe(tag: string): string {
  return tag.replaceAll(/[^A-Za-z0-9]/g, '-');
}
