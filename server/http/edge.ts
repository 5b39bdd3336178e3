import type { Server } from 'node:http';
import { isIP, type Socket } from 'node:net';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { Buckets, type Flow } from '../access/bucket.ts';
import { networkOf } from '../access/wrong-codes.ts';
import { sendProblem } from './problem.ts';

/** What one address may ask: a house that opens thirty pages at once, and then as much as no finger asks. */
const REQUESTS: Flow = { burst: 2000, perS: 200 };
/** Addresses that are remembered. */
const MOST_ADDRESSES = 1000;
/** Open connections, of everybody and of one address: three hundred screens with two each, and air. */
export const MAX_CONNECTIONS = 1000;
export const MAX_CONNECTIONS_PER_ADDRESS = 700;
const SECOND_MS = 1000;

/** How long a whole request may take to come in, in ms. */
export const REQUEST_TIMEOUT_MS = 30_000;
/** How long its head may take, and how often Node looks, in ms: for the http server's options. */
export const SLOW_LIMITS = { headersTimeout: 10_000, connectionsCheckingInterval: 5_000 };

/** On every answer: nothing is guessed, nothing of it is another site's, and whatever is no page runs nothing. Pages bring a policy of their own. */
const HEADERS = {
  'Content-Security-Policy': "default-src 'none'; frame-ancestors 'none'",
  'X-Content-Type-Options': 'nosniff',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
} as const;

export interface EdgeOptions {
  /** Names by which this machine is reached, in lower case, beside localhost and its addresses. */
  readonly names: readonly string[];
  readonly clock: { monotonicMs(): number };
}

/**
 * Looks at every request and upgrade before anything else does: whether it is for this server, whether another site's page sends it, and
 * whether its address asks for more than a house does.
 */
export function guardEdge(app: FastifyInstance, { names, clock }: EdgeOptions): void {
  const buckets = new Buckets(REQUESTS, MOST_ADDRESSES);
  const own = new Set(['localhost', ...names]);
  app.addHook('onRequest', async (request, reply) => {
    reply.headers(HEADERS);
    const waitMs = buckets.take(networkOf(request.ip ?? ''), clock.monotonicMs());
    if (waitMs > 0) {
      const retryS = Math.ceil(waitMs / SECOND_MS);
      reply.header('Retry-After', String(retryS));
      return sendProblem(reply, 429, 'tooManyRequests', { detail: `Ask again in ${retryS} s.`, more: { retryS } });
    }
    if (!isOwnHost(request.headers.host ?? '', own))
      return sendProblem(reply, 421, 'otherHost', {
        detail: 'This server does not go by that name. Start it with --name for one more, or use its address.',
      });
    // Asked over TLS by a page of ours that came by plain http, which is another site to browsers; it tells nothing that is not on that page.
    if (request.url === '/api/trust') reply.header('Cross-Origin-Resource-Policy', 'cross-origin');
    else if (isOfOtherSite(request)) return sendProblem(reply, 403, 'forbidden', { detail: 'This is for the pages of this server.' });
    return undefined;
  });
}

/**
 * Whether a Host header names this server: an IP address, localhost, or a name that was told. A name that somebody else has made lead here
 * (DNS rebinding) is none of those, and only an IP address that leads here is reached by it.
 */
export function isOwnHost(host: string, own: ReadonlySet<string>): boolean {
  const parsed = URL.canParse(`http://${host}`) ? new URL(`http://${host}`) : null;
  // What a URL makes of it must be what was said: no user, path or other ways to write a number.
  if (parsed === null || parsed.username !== '' || parsed.pathname !== '/' || parsed.search !== '') return false;
  const said = withoutPort(host.toLowerCase());
  const name = said.startsWith('[') && said.endsWith(']') ? said.slice(1, -1) : said.replace(/\.$/, '');
  return isIP(name) !== 0 || own.has(name);
}

/** A Host header's host alone. */
export function withoutPort(host: string): string {
  return host.replace(/:\d{1,5}$/, '');
}

/** Whether a page of another site sends this: by its Origin (RFC 6454 section 7), where something is changed or a socket opened, and by what browsers say of where a fetch comes from. */
function isOfOtherSite(request: FastifyRequest): boolean {
  const { origin, host, 'sec-fetch-site': site, 'sec-fetch-mode': mode } = request.headers;
  const isReading = (request.method === 'GET' || request.method === 'HEAD') && !request.ws;
  if (!isReading && origin !== undefined && origin !== originOf(`${request.protocol}://${host ?? ''}`)) return true;
  return site === 'cross-site' && !(isReading && mode === 'navigate');
}

function originOf(url: string): string | null {
  return URL.canParse(url) ? new URL(url).origin : null;
}

/** Turns away politely whoever comes when there are too many: with an answer, not with silence. */
export function limitConnections(server: Pick<Server, 'on'>): void {
  const byAddress = new Map<string, number>();
  let count = 0;
  server.on('connection', (socket: Socket) => {
    const address = networkOf(socket.remoteAddress ?? '');
    const own = (byAddress.get(address) ?? 0) + 1;
    count += 1;
    byAddress.set(address, own);
    socket.once('close', () => {
      count -= 1;
      const left = (byAddress.get(address) ?? 1) - 1;
      if (left === 0) byAddress.delete(address);
      else byAddress.set(address, left);
    });
    if (count > MAX_CONNECTIONS || own > MAX_CONNECTIONS_PER_ADDRESS) refuse(socket);
  });
}

const BUSY = JSON.stringify({ type: 'urn:ovenward:problem:unavailable', title: 'Too many connections', status: 503 });

function refuse(socket: Socket): void {
  socket.on('error', () => {});
  socket.end(
    `HTTP/1.1 503 Service Unavailable\r\nRetry-After: 5\r\nConnection: close\r\nContent-Type: application/problem+json\r\nContent-Length: ${BUSY.length}\r\n\r\n${BUSY}`,
    () => socket.destroy(),
  );
}
