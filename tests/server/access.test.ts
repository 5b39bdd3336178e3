import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { clientCommandSchema, type ClientCommand } from '../../shared/floor/commands.ts';
import {
  COMMAND_ROLES,
  everybodyManages,
  knownRoute,
  mayGive,
  mayUse,
  ROUTE_ROLES,
  type AccessRole,
  type Route,
} from '../../server/access/roles.ts';
import { freshId, LiveClient } from './support/live-client.ts';
import { openTestHouse } from './support/test-house.ts';
import { folderForTest } from './support/temporary-folder.ts';

const COMMANDS = clientCommandSchema.options.map((option) => option.shape.type.value);
const ROUTES = Object.keys(ROUTE_ROLES) as Route[];
const ROLES: readonly (AccessRole | null)[] = [null, 'look', 'act', 'manage'];

/** The roles that reach a least one, said once more by hand. */
const REACHES: Readonly<Record<AccessRole, readonly (AccessRole | null)[]>> = {
  look: ['look', 'act', 'manage'],
  act: ['act', 'manage'],
  manage: ['manage'],
};

function pagesFolder(): string {
  const folder = folderForTest();
  mkdirSync(join(folder, 'assets'));
  return folder;
}

describe('the table of roles', () => {
  it('H12 has a line for every command, and none for what is no command', () => {
    expect(Object.keys(COMMAND_ROLES).sort()).toEqual([...COMMANDS].sort());
  });

  it.each(COMMANDS)('H12 lets give %s whoever reaches its least role, and nobody else', (command: ClientCommand['type']) => {
    expect(ROLES.filter((role) => mayGive(role, command))).toEqual(REACHES[COMMAND_ROLES[command]]);
  });

  it.each(ROUTES)('H12 lets use %s whoever reaches its least role, and nobody else', (route) => {
    expect(ROLES.filter((role) => mayUse(role, route))).toEqual(REACHES[ROUTE_ROLES[route]]);
  });

  it('H12 lets hear and undo whoever may look, and change a dough only who may act', () => {
    expect(COMMANDS.filter((command) => mayGive('look', command)).sort()).toEqual(['hearAllCalls', 'hearCall', 'undoCommand']);
    expect(ROUTES.filter((route) => !mayUse('look', route))).toEqual([
      'POST /api/commands',
      'POST /api/book/import',
      'GET /api/backups',
      'POST /api/backups',
      'POST /api/plan/proposals',
      'DELETE /api/plan/proposals/:id',
      'POST /api/plan/proposals/:id/keep',
      'POST /api/plan/tries',
    ]);
  });

  it('H12 gives everybody every role until the house can give roles', () => {
    expect(everybodyManages(null)).toBe('manage');
    expect(everybodyManages({ id: freshId(), name: 'phone 1', stationId: null })).toBe('manage');
  });
});

describe('the routes', () => {
  it('H13 are those of the table: each line of it is a route', async () => {
    const { house } = await openTestHouse({ isEmpty: true, pagesFolder: pagesFolder() });
    for (const route of ROUTES) {
      const [method = '', url = ''] = route.split(' ');
      expect(house.app.hasRoute({ method, url }), route).toBe(true);
    }
  });

  it('H13 and there are no others', async () => {
    const { house } = await openTestHouse({ isEmpty: true, pagesFolder: pagesFolder() });
    // The tree that the router holds, a path a line, its methods in brackets; HEAD comes with every GET.
    const methods = [...house.app.printRoutes({ commonPrefix: false }).matchAll(/\(([A-Z, ]+)\)$/gm)].flatMap(([, list = '']) =>
      list.split(', '),
    );
    expect(methods.filter((method) => method !== 'HEAD').sort()).toEqual(ROUTES.map((route) => route.split(' ')[0] ?? '').sort());
  });

  it('H13 a route added without a line is a bug that shows at once', async () => {
    const { buildApp } = await import('../../server/http/app.ts');
    const { house } = await openTestHouse({ isEmpty: true });
    const app = await buildApp({
      hub: house.hub,
      planning: house.planning,
      floor: house.floor,
      clock: house.clock,
      log: house.app.log,
      pagesFolder: null,
      roleOf: everybodyManages,
      newId: freshId,
      backups: null,
      journal: Object.create(null) as never,
      devices: Object.create(null) as never,
    });
    expect(() => app.get('/recipes', async () => 'secret')).toThrow('the route GET /recipes has no role');
    expect(knownRoute('GET', '/recipes')).toBeNull();
    expect(knownRoute('GET', '/constructor')).toBeNull();
    await app.close();
  });

  it('H14 are closed with 403 to a device that does not reach their role, and the socket with 4403', async () => {
    let role: AccessRole | null = 'manage';
    const { house, workpiece } = await openTestHouse({ roleOf: () => role });
    const payload = { commandId: freshId(), command: { type: 'startStep', workpieceId: workpiece('C1').id, stepId: 'weigh' } };
    const { sequence } = house.floor.state;
    role = 'look';
    expect((await house.app.inject('/api/state')).statusCode).toBe(200);
    const looking = await house.app.inject({ method: 'POST', url: '/api/commands', payload });
    expect(looking.statusCode).toBe(403);
    expect(looking.json()).toMatchObject({ type: 'urn:ovenward:problem:forbidden', status: 403 });
    expect(house.floor.state.sequence).toBe(sequence);
    role = null;
    for (const url of ['/api/state', '/api/events?after=0', '/health']) expect((await house.app.inject(url)).statusCode, url).toBe(403);
    expect((await house.app.inject({ method: 'HEAD', url: '/api/state' })).statusCode).toBe(403);
    const client = await LiveClient.connect(house.app);
    expect((await client.closed()).code).toBe(4403);
    expect(client.messages).toEqual([]);
    role = 'act';
    expect((await house.app.inject({ method: 'POST', url: '/api/commands', payload })).statusCode).toBe(200);
  });

  it('H14 and by the role of the device whose cookie comes along', async () => {
    const { house, workpiece } = await openTestHouse({ roleOf: (device) => (device?.name === 'phone 1' ? 'act' : 'look') });
    const phone = await LiveClient.live(house.app);
    const post = async (headers: Record<string, string>): Promise<number> => {
      const payload = {
        commandId: freshId(),
        command: { type: 'readTemperature', workpieceId: workpiece('C1').id, where: 'dough', celsius: 25 },
      };
      return (await house.app.inject({ method: 'POST', url: '/api/commands', payload, headers })).statusCode;
    };
    expect(await post({ cookie: `ovenward-phone=${phone.deviceId}` })).toBe(200);
    expect(await post({ cookie: `ovenward-phone=${freshId()}` })).toBe(403);
    expect(await post({})).toBe(403);
  });
});
