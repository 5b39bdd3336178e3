import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { hostnameOf, type TrustedRoot } from './trust-route.ts';

/** Nothing but our own: no inline scripts or styles, no third parties, no frames. */
function policyFor(host: string, tried: string): string {
  // 'self' is not the websocket of the same host to every browser (CSP3 section 6.7.2.8 has it so since 2018).
  return `default-src 'self'; connect-src 'self' ws://${host} wss://${host}${tried}; img-src 'self' data:; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'`;
}

/** The built pages: the entrance, the wall and where it is set up, the phone, the station, the kitchen, the formula book and the weigh-out, the way in, who was let in, the authority, and what they load. */
export async function servePages(app: FastifyInstance, pagesFolder: string, trusted: () => TrustedRoot | null): Promise<void> {
  await app.register(fastifyStatic, {
    root: join(pagesFolder, 'assets'),
    prefix: '/assets/',
    immutable: true,
    maxAge: '365d',
    index: false,
    decorateReply: true,
  });
  const page = (file: string) => async (request: FastifyRequest, reply: FastifyReply) =>
    reply
      .header('Content-Security-Policy', policyFor(request.headers.host ?? '', ''))
      .header('Cache-Control', 'no-cache')
      .sendFile(file, pagesFolder, { cacheControl: false });
  // It tries whether this browser comes through by TLS, and asks nobody else.
  app.get('/trust', (request, reply) => {
    const trust = trusted();
    const tried = trust === null ? '' : ` https://${hostnameOf(request)}:${trust.port}`;
    return reply
      .header('Content-Security-Policy', policyFor(request.headers.host ?? '', tried))
      .header('Cache-Control', 'no-cache')
      .sendFile('trust/index.html', pagesFolder, { cacheControl: false });
  });
  app.get('/', page('index.html'));
  app.get('/wall', page('wall/index.html'));
  app.get('/wall/setup', page('wall-setup/index.html'));
  app.get('/phone', page('phone/index.html'));
  app.get('/station', page('station/index.html'));
  app.get('/kitchen', page('kitchen/index.html'));
  app.get('/formulas', page('formulas/index.html'));
  app.get('/weigh', page('weigh/index.html'));
  app.get('/day', page('day/index.html'));
  app.get('/join', page('join/index.html'));
  app.get('/devices', page('devices/index.html'));
  app.get('/records', page('records/index.html'));
}
