import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply } from 'fastify';

/** Nothing but our own: no inline scripts or styles, no third parties, no frames. */
const CONTENT_SECURITY_POLICY =
  "default-src 'self'; connect-src 'self' ws: wss:; img-src 'self' data:; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

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
  const page = (file: string) => async (_request: unknown, reply: FastifyReply) =>
    reply
      .header('Content-Security-Policy', CONTENT_SECURITY_POLICY)
      .header('X-Content-Type-Options', 'nosniff')
      .header('Referrer-Policy', 'no-referrer')
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
