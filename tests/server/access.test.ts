import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clientCommandSchema, type ClientCommand } from '../../shared/floor/commands.ts';
import { assert } from '../../shared/result.ts';
import {
  COMMAND_ROLES,
  knownRoute,
  mayGive,
  mayUse,
  ROUTE_ROLES,
  type AccessRole,
  type LeastRole,
  type Route,
} from '../../server/access/roles.ts';
import { inputsOf } from '../support/inputs-of.ts';
import { freshId, LiveClient, tokenOf } from './support/live-client.ts';
import { openTestHouse, type TestHouse } from './support/test-house.ts';
import { folderForTest } from './support/temporary-folder.ts';

const COMMANDS = clientCommandSchema.options.map((option) => option.shape.type.value);
const ROUTES = Object.keys(ROUTE_ROLES) as Route[];
const ROLES: readonly (AccessRole | null)[] = [null, 'look', 'act', 'manage'];

/** The roles that reach a least one, said once more by hand. */
const REACHES: Readonly<Record<LeastRole, readonly (AccessRole | null)[]>> = {
  anybody: [null, 'look', 'act', 'manage'],
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
      'GET /api/joining',
      'POST /api/joining',
      'DELETE /api/joining',
      'GET /api/devices',
      'PUT /api/devices/:id/role',
      'DELETE /api/devices/:id',
      'DELETE /api/devices/:id/name',
      'POST /api/commands',
      'POST /api/book/import',
      'GET /api/export',
      'GET /api/records-export',
      'GET /api/backups',
      'POST /api/backups',
      'POST /api/plan/proposals',
      'DELETE /api/plan/proposals/:id',
      'POST /api/plan/proposals/:id/keep',
      'POST /api/plan/tries',
    ]);
  });

  it('H12 shows whom nobody let in the pages and the way in, and nothing else of the house', () => {
    expect(ROUTES.filter((route) => mayUse(null, route) && !/^GET \/(?!api)/.test(route))).toEqual([
      'GET /api/trust',
      'GET /api/access',
      'POST /api/join',
    ]);
    expect(ROUTES.filter((route) => !mayUse(null, route) && !route.includes(' /api/'))).toEqual(['GET /live', 'GET /health']);
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
      access: house.access,
      door: Object.create(null) as never,
      planning: house.planning,
      floor: house.floor,
      clock: house.clock,
      log: house.app.log,
      pagesFolder: null,
      newId: freshId,
      backups: null,
      records: null,
      names: [],
      trusted: () => null,
      journal: Object.create(null) as never,
      devices: Object.create(null) as never,
    });
    expect(() => app.get('/recipes', async () => 'secret')).toThrow('the route GET /recipes has no role');
    expect(knownRoute('GET', '/recipes')).toBeNull();
    expect(knownRoute('GET', '/constructor')).toBeNull();
    await app.close();
  });

  it.each(ROLES)(
    'H14 answer 403 to a device that may %s where its role does not reach, and to no other, and change nothing by that',
    async (role) => {
      const { house, cookie } = await houseWith(role);
      const { sequence } = house.floor.state;
      const seen: Record<string, boolean> = {};
      const expected: Record<string, boolean> = {};
      for (const route of ROUTES.filter((each) => each !== 'GET /live')) {
        const [method = '', pattern = ''] = route.split(' ');
        const url = pattern.replace(':id', freshId()).replace(':name', 'dough-mass').replace('*', 'none.js');
        const answer = await house.app.inject({ method: method as 'GET', url, ...(cookie === null ? {} : { headers: { cookie } }) });
        seen[route] = answer.statusCode !== 403 || answer.json<{ type: string }>().type !== 'urn:ovenward:problem:forbidden';
        expected[route] = REACHES[ROUTE_ROLES[route]].includes(role);
        // A HEAD is a GET without the body, and asks for the same role.
        if (method === 'GET')
          expect(
            (await house.app.inject({ method: 'HEAD', url, ...(cookie === null ? {} : { headers: { cookie } }) })).statusCode === 403,
            route,
          ).toBe(!expected[route]);
      }
      expect(seen).toEqual(expected);
      expect(house.floor.state.sequence).toBe(sequence);
    },
  );

  it.each(ROLES)('H14 and the socket refuses to a device that may %s every message beyond its role', async (role) => {
    const { house, cookie, deviceId } = await houseWith(role);
    if (cookie === null || deviceId === null) {
      const client = await LiveClient.connect(house.app);
      expect((await client.closed()).code).toBe(4403);
      expect(client.messages).toEqual([]);
      return;
    }
    const phone = await LiveClient.live(house.app, { deviceId });
    for (const type of COMMANDS) {
      const outcome = await phone.give(commandOf(type, house.floor.state));
      const isForbidden = !outcome.ok && outcome.refusal.code === 'forbidden';
      expect(isForbidden, type).toBe(!REACHES[COMMAND_ROLES[type]].includes(role));
      const byHttp = await house.app.inject({
        method: 'POST',
        url: '/api/commands',
        headers: { cookie },
        payload: { commandId: freshId(), command: commandOf(type, house.floor.state) },
      });
      const mayBoth = REACHES.act.includes(role) && REACHES[COMMAND_ROLES[type]].includes(role);
      expect(byHttp.statusCode === 403, type).toBe(!mayBoth);
    }
    expect(phone.closing).toBeNull();
  });
});

/** A house that somebody has been let into with a role; null: nobody. Guests may nothing. */
async function houseWith(role: AccessRole | null): Promise<{ house: TestHouse['house']; cookie: string | null; deviceId: string | null }> {
  const { house } = await openTestHouse({ roleOfGuest: () => null, pagesFolder: pagesFolder() });
  if (role === null) return { house, cookie: null, deviceId: null };
  house.access.openJoining(role);
  const { joining } = house.access.joining;
  assert(joining !== null, 'joining is open');
  const payload = { code: joining.code, ticket: joining.ticket };
  const joined = await house.app.inject({ method: 'POST', url: '/api/join', payload });
  assert(joined.statusCode === 200, joined.body);
  const { deviceId } = joined.json<{ deviceId: string }>();
  return { house, deviceId, cookie: `ovenward-phone=${tokenOf(deviceId)}` };
}

/** A command that its schema takes: drawn from the schema, or from the house's own papers where a schema asks for more than shape. */
function commandOf(type: ClientCommand['type'], state: TestHouse['house']['floor']['state']): ClientCommand {
  const schema = clientCommandSchema.options.find((option) => option.shape.type.value === type);
  assert(schema !== undefined, `there is a command ${type}`);
  const own: Partial<Record<ClientCommand['type'], unknown>> = {
    adoptFormula: { type, formula: Object.values(state.formulas)[0], fromVersion: 1 },
    adoptProduct: { type, product: Object.values(state.products)[0], fromVersion: 1 },
    bringInBook: { type, ingredients: [], formulas: [], products: [], archived: [] },
  };
  const drawn = own[type] === undefined ? fc.sample(inputsOf(schema), { numRuns: 50, seed: 8 }) : [own[type]];
  for (const value of drawn) {
    const read = clientCommandSchema.safeParse(value);
    if (read.success) return read.data;
  }
  throw new Error(`no command ${type} could be made: ${JSON.stringify(clientCommandSchema.safeParse(drawn[0]).error?.issues[0])}`);
}
