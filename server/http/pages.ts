import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';

/** Nothing but our own: no inline scripts or styles, no third parties, no frames. */
function policyFor(host: string): string {
  // 'self' is not the websocket of the same host to every browser (CSP3 section 6.7.2.8 has it so since 2018).
  return `default-src 'self'; connect-src 'self' ws://${host} wss://${host}; img-src 'self' data:; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'`;
}

/** The built pages: the entrance, the wall and where it is set up, the phone, the station, the kitchen, the formula book and the weigh-out, the way in and who was let in, and what they load. */
export async function servePages(app: FastifyInstance, pagesFolder: string): Promise<void> {
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
      .header('Content-Security-Policy', policyFor(request.headers.host ?? ''))
      .header('Cache-Control', 'no-cache')
      .sendFile(file, pagesFolder, { cacheControl: false });
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
}
