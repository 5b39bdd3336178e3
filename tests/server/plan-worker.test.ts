import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { planStatusSchema, proposalSchema, type Proposal } from '../../shared/plan/plan-api.ts';
import { freshId } from './support/live-client.ts';
import { ensureServerBuilt, ServerProcess } from './support/server-process.ts';
import { folderForTest } from './support/temporary-folder.ts';

const HARBOUR = fileURLToPath(new URL('../../fixtures/harbour-plain.json', import.meta.url));

beforeAll(ensureServerBuilt, 120_000);
// A busy machine may take seconds to start a process; nothing here measures how long.
vi.setConfig({ testTimeout: 60_000 });

const DAY_MS = 86_400_000;
/** How soon another process is asked again whether it has got there. */
const ASK_AGAIN_MS = 20;

function pause(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ASK_AGAIN_MS));
}

async function found(server: ServerProcess, id: string): Promise<Proposal> {
  for (;;) {
    const proposal = proposalSchema.parse((await server.get(`/api/plan/proposals/${id}`)).body);
    if (proposal.status !== 'running') return proposal;
    await pause();
  }
}

describe('the planner of a server that runs', () => {
  it('E15 works on threads of its own: a day is found, kept, and the plan followed, while the server answers', async () => {
    const server = await ServerProcess.started(['--data', join(folderForTest(), 'data'), '--port', '0', '--bakehouse', HARBOUR]);
    const serviceDate = new Date(Date.now() + DAY_MS).toISOString().slice(0, 10);
    const orders = [{ productId: 'country-loaf', pieces: 20, readyMs: Date.parse(`${serviceDate}T11:00Z`) }];
    const placed = await server.post('/api/commands', { commandId: freshId(), command: { type: 'placeOrders', serviceDate, orders } });
    expect(placed.status).toBe(200);
    const asked = await server.post('/api/plan/proposals', { serviceDate, schedules: 200 });
    expect(asked.status).toBe(202);
    const { id } = proposalSchema.parse(asked.body);
    const proposal = await found(server, id);
    expect(proposal).toMatchObject({ status: 'done', figures: { orders: 1 } });
    expect((await server.post(`/api/plan/proposals/${id}/keep`, {})).status).toBe(200);
    const { plan, workpieces } = await server.state();
    const [first] = Object.values(workpieces);
    expect(Object.keys(plan?.steps ?? {})).toContain(first?.id);
    // More time for what is under way: the live thread, which has heard of all of it, moves what comes after.
    await server.post('/api/commands', { commandId: freshId(), command: { type: 'startStep', workpieceId: first?.id, stepId: 'weigh' } });
    await server.post('/api/commands', {
      commandId: freshId(),
      command: { type: 'giveMoreTime', workpieceId: first?.id, stepId: 'weigh', minutes: 120 },
    });
    for (;;) {
      const status = planStatusSchema.parse((await server.get('/api/plan')).body);
      expect(status.fault).toBeNull();
      if (status.plan?.moved.some(({ workpieceId }) => workpieceId === first?.id) === true) break;
      await pause();
    }
    expect(await server.end('SIGTERM')).toMatchObject({ code: 0, signal: null, stderr: '' });
  });
});
