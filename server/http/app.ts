import fastifyCookie from '@fastify/cookie';
import fastifyWebsocket from '@fastify/websocket';
import fastify, { type FastifyBaseLogger, type FastifyInstance } from 'fastify';
import { MAX_UP_BYTES } from '../../shared/wire/protocol.ts';
import type { KitchenAccess } from '../access/kitchen-access.ts';
import { knownRoute, mayUse } from '../access/roles.ts';
import type { BackupKeeper } from '../backup/backup-keeper.ts';
import type { Devices } from '../devices/devices.ts';
import type { LiveHub } from '../live/live-hub.ts';
import type { Planning } from '../plan/planning.ts';
import type { Records } from '../records/records.ts';
import { serveAccess } from './access-route.ts';
import { serveApi, type ApiOptions } from './api.ts';
import { serveBackups } from './backup-route.ts';
import { serveBook } from './book-route.ts';
import { serveCalc } from './calc-route.ts';
import { setCookiesOnUpgrade, type Door } from './device-cookie.ts';
import { serveLive } from './live-route.ts';
import { servePages } from './pages.ts';
import { servePlan } from './plan-route.ts';
import { guardEdge, limitConnections, REQUEST_TIMEOUT_MS, SLOW_LIMITS } from './edge.ts';
import { serveRecordsExport } from './records-export-route.ts';
import { serveRecords } from './records-route.ts';
import { serveExport } from './export-route.ts';
import { sendProblem } from './problem.ts';
import { parseSafely } from './safe-json.ts';
import { guardPlain, serveTrust, type TrustedRoot } from './trust-route.ts';
import { serveWeighOut } from './weigh-out-route.ts';

/** Largest body of a request, in bytes. */
const MAX_BODY_BYTES = 256 * 1024;
/** How long websockets may take to say farewell when the server goes down; one that is stalled would hold it up for half a minute. */
const FAREWELL_MS = 500;

export interface AppOptions extends Omit<ApiOptions, 'clientCount'> {
  /** Ids for what a request begins that names none itself. */
  readonly newId: () => string;
  readonly hub: LiveHub;
  readonly access: KitchenAccess;
  readonly devices: Devices;
  readonly planning: Planning;
  /** Null where no backups are made. */
  readonly backups: BackupKeeper | null;
  /** Null where no records are kept. */
  readonly records: Records | null;
  readonly log: FastifyBaseLogger;
  /** The bakehouse's authority; null where the server speaks no TLS. */
  readonly trusted: () => TrustedRoot | null;
  /** Names by which this machine is reached, in lower case, beside localhost and its addresses. */
  readonly names: readonly string[];
  readonly clock: ApiOptions['clock'] & { monotonicMs(): number };
  /** Where the built pages are; null serves the api alone. */
  readonly pagesFolder: string | null;
}

/** The web server around a floor, not listening yet. */
export async function buildApp({
  hub,
  access,
  devices,
  planning,
  backups,
  records,
  log,
  pagesFolder,
  newId,
  names,
  trusted,
  clock,
  ...rest
}: AppOptions): Promise<FastifyInstance> {
  const api = { ...rest, clock };
  const app: FastifyInstance = fastify({
    loggerInstance: log,
    bodyLimit: MAX_BODY_BYTES,
    forceCloseConnections: true,
    onProtoPoisoning: 'error',
    onConstructorPoisoning: 'error',
    requestTimeout: REQUEST_TIMEOUT_MS,
    http: SLOW_LIMITS,
  });
  limitConnections(app.server);
  // Text is no command; left in, a form on a page of another site could send one.
  app.removeContentTypeParser('text/plain');
  app.removeContentTypeParser('application/json');
  app.addContentTypeParser<string>('application/json', { parseAs: 'string' }, (_request, body, done) => {
    try {
      done(null, parseSafely(body));
    } catch (error) {
      if (!(error instanceof SyntaxError)) throw error;
      done(Object.assign(new Error(`The body is not JSON: ${error.message}`), { statusCode: 400 }));
    }
  });
  await app.register(fastifyCookie);
  await serveWebsockets(app);
  // After the websockets' own hook, which says of a request whether it is an upgrade; before all of ours.
  guardEdge(app, { names, clock });
  guardPlain(app, trusted);
  guardRoutes(app, api.door);
  app.setErrorHandler<Error & { statusCode?: number; code?: string }>((error, request, reply) => {
    if (error.code === 'FST_ERR_CTP_BODY_TOO_LARGE')
      return sendProblem(reply, 413, 'tooLarge', { detail: `At most ${request.routeOptions.bodyLimit} bytes.` });
    if (error.code === 'FST_ERR_CTP_INVALID_MEDIA_TYPE')
      return sendProblem(reply, 415, 'wrongMediaType', { detail: 'Send application/json.' });
    if (error.statusCode !== undefined && error.statusCode < 500)
      return sendProblem(reply, error.statusCode, 'badInput', { detail: error.message });
    request.log.error({ err: error }, 'a request failed');
    return sendProblem(reply, 500, 'unexpected', { detail: 'The fault is in the server’s log.' });
  });
  app.setNotFoundHandler((request, reply) =>
    sendProblem(reply, 404, 'notFound', { detail: `There is no ${request.method} ${request.url.split('?')[0] ?? ''}` }),
  );
  serveLive(app, hub, api.door);
  serveAccess(app, { access, devices, door: api.door, hub });
  serveApi(app, { ...api, clientCount: () => hub.clientCount });
  serveBook(app, { ...api, newId });
  serveTrust(app, trusted);
  serveBackups(app, backups);
  serveExport(app, { ...api, devices, kitchenId: api.floor.kitchenId });
  serveRecords(app, { records, devices });
  serveRecordsExport(app, { records, zone: () => api.floor.state.house?.document.zone ?? 'UTC' });
  serveCalc(app);
  serveWeighOut(app, api);
  servePlan(app, { ...api, planning, newId });
  if (pagesFolder !== null) await servePages(app, pagesFolder, trusted);
  return app;
}

async function serveWebsockets(app: FastifyInstance): Promise<void> {
  await app.register(fastifyWebsocket, {
    options: { maxPayload: MAX_UP_BYTES, perMessageDeflate: false },
    errorHandler: (error, socket, request) => {
      // The socket says why and closes by itself where a client broke the protocol; what is left is a bug of ours.
      if ('code' in error && String(error.code).startsWith('WS_ERR_')) return;
      request.log.error({ err: error }, 'a websocket failed');
      socket.terminate();
    },
  });
  setCookiesOnUpgrade(app);
  let farewell: NodeJS.Timeout | undefined;
  app.addHook('preClose', (done) => {
    farewell = setTimeout(() => {
      for (const client of app.websocketServer.clients) client.terminate();
    }, FAREWELL_MS);
    done();
  });
  app.addHook('onClose', async () => clearTimeout(farewell));
}

/** Holds every route against the table of roles; one without a line there is a bug and does not start. */
function guardRoutes(app: FastifyInstance, door: Door): void {
  app.addHook('onRoute', ({ method, url }) => {
    for (const each of [method].flat()) {
      if (knownRoute(each, url) === null) throw new Error(`the route ${each} ${url} has no role: see server/access/roles.ts`);
    }
  });
  app.addHook('onRequest', async (request, reply) => {
    const route = knownRoute(request.method, request.routeOptions.url ?? '');
    // A page cannot see why an upgrade was refused: the hub lets it in and closes it with the reason.
    if (route === null || request.ws || mayUse(null, route) || mayUse(door.visitor(request).role, route)) return undefined;
    request.log.info({ address: request.ip, route }, 'somebody may not use this route');
    return sendProblem(reply, 403, 'forbidden', { detail: `This device may not use ${route}.` });
  });
}
