import type { FastifyInstance } from 'fastify';
import type { BackupKeeper } from '../backup/backup-keeper.ts';
import { sendProblem } from './problem.ts';

/** How the house's backups stand, and one more at once: before somebody pulls the stick. */
export function serveBackups(app: FastifyInstance, backups: BackupKeeper | null): void {
  app.get('/api/backups', (_request, reply) =>
    backups === null ? sendProblem(reply, 404, 'notFound', { detail: 'This server makes no backups.' }) : reply.send(backups.status()),
  );
  app.post('/api/backups', async (_request, reply) => {
    if (backups === null) return sendProblem(reply, 404, 'notFound', { detail: 'This server makes no backups.' });
    await backups.now();
    const status = backups.status();
    if (status.fault === null) return status;
    return sendProblem(reply, 503, 'unavailable', { detail: `No backup could be made: ${status.fault}`, more: { ...status } });
  });
}
