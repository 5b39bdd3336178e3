import fastifyCookie from '@fastify/cookie';
import fastifyWebsocket from '@fastify/websocket';
import fastify, { type FastifyBaseLogger, type FastifyInstance } from 'fastify';
import { MAX_UP_BYTES } from '../../shared/wire/protocol.ts';
import type { LiveHub } from '../live/live-hub.ts';
import { serveApi, type ApiOptions } from './api.ts';
import { setCookiesOnUpgrade } from './device-cookie.ts';
import { serveLive } from './live-route.ts';
import { servePages } from './pages.ts';
import { sendProblem } from './problem.ts';

/** Largest body of a request, in bytes. */
const MAX_BODY_BYTES = 256 * 1024;

export interface AppOptions extends Omit<ApiOptions, 'clientCount'> {
  readonly hub: LiveHub;
  readonly log: FastifyBaseLogger;
  /** Where the built pages are; null serves the api alone. */
  readonly pagesFolder: string | null;
}

/** The web server around a floor, not listening yet. */
export async function buildApp({ hub, log, pagesFolder, ...api }: AppOptions): Promise<FastifyInstance> {
  const app: FastifyInstance = fastify({ loggerInstance: log, bodyLimit: MAX_BODY_BYTES, forceCloseConnections: true });
  await app.register(fastifyCookie);
  await app.register(fastifyWebsocket, { options: { maxPayload: MAX_UP_BYTES, perMessageDeflate: false } });
  setCookiesOnUpgrade(app);
  app.setErrorHandler<Error & { statusCode?: number; code?: string }>((error, request, reply) => {
    if (error.code === 'FST_ERR_CTP_BODY_TOO_LARGE') return sendProblem(reply, 413, 'tooLarge', { detail: `At most ${MAX_BODY_BYTES} bytes.` });
    if (error.code === 'FST_ERR_CTP_INVALID_MEDIA_TYPE') return sendProblem(reply, 415, 'wrongMediaType', { detail: 'Send application/json.' });
    if (error.statusCode !== undefined && error.statusCode < 500) return sendProblem(reply, error.statusCode, 'badInput', { detail: error.message });
    request.log.error({ error }, 'a request failed');
    return sendProblem(reply, 500, 'unexpected', { detail: 'The fault is in the server’s log.' });
  });
  app.setNotFoundHandler((request, reply) => sendProblem(reply, 404, 'notFound', { detail: `There is no ${request.method} ${request.url.split('?')[0] ?? ''}` }));
  serveLive(app, hub, api);
  serveApi(app, { ...api, clientCount: () => hub.clientCount });
  if (pagesFolder !== null) await servePages(app, pagesFolder);
  return app;
}
