import type { FastifyInstance, FastifyRequest } from 'fastify';
import { TRUSTS_COOKIE, type Trust } from '../../shared/wire/trust.ts';
import { isHere } from './device-cookie.ts';
import { withoutPort } from './edge.ts';
import { sendProblem } from './problem.ts';

/** What is given out over plain http while the server speaks TLS: the root, the page that says what to do with it, and what that page loads. */
const PLAIN = /^\/(?:trust$|root\.crt$|api\/trust$|assets\/)/;

/** The bakehouse's authority as pages and phones get it. */
export interface TrustedRoot extends Trust {
  /** In PEM. */
  readonly root: string;
}

/**
 * Over plain http nobody but this machine itself gets anything of the house while it speaks TLS: pages lead to where its root is taken in,
 * or, in browsers that have come through by TLS before, to the same page over TLS.
 */
export function guardPlain(app: FastifyInstance, trusted: () => TrustedRoot | null): void {
  app.addHook('onRequest', async (request, reply) => {
    const trust = trusted();
    if (trust === null || request.protocol === 'https' || isHere(request) || PLAIN.test(pathOf(request))) return undefined;
    const isPage = request.method === 'GET' && !request.ws && !pathOf(request).startsWith('/api/');
    if (!isPage) return sendProblem(reply, 403, 'forbidden', { detail: 'This house is spoken to over TLS only.' });
    if (request.cookies[TRUSTS_COOKIE] === '1') return reply.redirect(`https://${hostnameOf(request)}:${trust.port}${request.url}`, 307);
    return reply.redirect(`/trust?to=${encodeURIComponent(request.url)}`, 303);
  });
}

/** The root certificate, and what the page about it shows. */
export function serveTrust(app: FastifyInstance, trusted: () => TrustedRoot | null): void {
  app.get('/root.crt', async (_request, reply) => {
    const trust = trusted();
    if (trust === null)
      return sendProblem(reply, 404, 'notFound', { detail: 'This server has no authority of its own: start it with --tls.' });
    // What iOS and Android know as something to install.
    return reply.type('application/x-x509-ca-cert').header('Cache-Control', 'no-store').send(trust.root);
  });
  app.get('/api/trust', async (_request, reply) => {
    const trust = trusted();
    if (trust === null)
      return sendProblem(reply, 404, 'notFound', { detail: 'This server has no authority of its own: start it with --tls.' });
    const { fingerprint, port } = trust;
    return reply.header('Cache-Control', 'no-store').send({ fingerprint, port } satisfies Trust);
  });
}

function pathOf(request: FastifyRequest): string {
  return request.url.split('?')[0] ?? '';
}

/** The host as it was asked for, without its port: the guard at the edge has found it to be one of this machine's. */
export function hostnameOf(request: FastifyRequest): string {
  return withoutPort(request.headers.host ?? '');
}
