import { createServer, type Server } from 'node:https';
import type { FastifyInstance } from 'fastify';
import type { Logger } from 'pino';
import type { Timers } from '../floor/alarm-clock.ts';
import { limitConnections, REQUEST_TIMEOUT_MS, SLOW_LIMITS } from '../http/edge.ts';
import { LEAF_DAYS, openAuthority, type Authority, type Credentials } from './authority.ts';

const DAY_MS = 24 * 3_600_000;
/** A leaf is made anew when it is good for less than that, or when this machine's names or addresses are others. */
const RENEW_BEFORE_MS = 30 * DAY_MS;
const LOOK_EVERY_MS = 3_600_000;
/** A root that is good for less is told of. */
const ROOT_WARN_MS = 180 * DAY_MS;

export interface SecureOptions {
  readonly app: FastifyInstance;
  /** Where the authority is kept. */
  readonly folder: string;
  readonly names: readonly string[];
  /** This machine's addresses, asked for anew with each look. */
  readonly addresses: () => readonly string[];
  readonly wallMs: () => number;
  readonly timers: Timers;
  readonly log: Pick<Logger, 'warn'>;
}

/** The same pages and sockets over TLS, with a certificate of the bakehouse's own authority that renews itself. */
export class SecureServer {
  readonly authority: Authority;
  readonly #options: SecureOptions;
  readonly #server: Server;
  #credentials: Credentials;
  #madeFor: string;
  #timer: { cancel(): void } | null = null;

  private constructor(options: SecureOptions, authority: Authority, credentials: Credentials, addresses: readonly string[]) {
    const { app } = options;
    this.#options = options;
    this.authority = authority;
    this.#credentials = credentials;
    this.#madeFor = namesOf(options, addresses);
    this.#server = createServer(
      { ...credentials, minVersion: 'TLSv1.2', requestTimeout: REQUEST_TIMEOUT_MS, ...SLOW_LIMITS },
      (request, response) => app.routing(request, response),
    );
    // The app takes upgrades from its own server alone: these are handed to it as if they had come there.
    this.#server.on('upgrade', (request, socket, head) => app.server.emit('upgrade', request, socket, head));
    limitConnections(this.#server);
    this.#warn();
    this.#wait();
  }

  /** Opens or makes the authority, makes a leaf, and gets ready to listen. */
  static async open(options: SecureOptions): Promise<SecureServer> {
    const addresses = options.addresses();
    const authority = await openAuthority(options.folder, options.names, addresses, options.wallMs());
    const credentials = await authority.leaf(options.names, addresses, options.wallMs());
    return new SecureServer(options, authority, credentials, addresses);
  }

  /** Until when the present certificate is good. */
  get notAfterMs(): number {
    return this.#credentials.notAfterMs;
  }

  /** Listens; the port that it got. */
  listen(port: number, host: string): Promise<number> {
    return new Promise((resolve, reject) => {
      this.#server.once('error', reject);
      this.#server.listen(port, host, () => {
        const address = this.#server.address();
        resolve(typeof address === 'object' && address !== null ? address.port : port);
      });
    });
  }

  /** Makes a new certificate where the present one is near its end, or speaks for another machine than this is by now. */
  async look(): Promise<void> {
    const { names, wallMs } = this.#options;
    const addresses = this.#options.addresses();
    const leftMs = this.#credentials.notAfterMs - wallMs();
    // Longer than one is good for: it was made by a clock that has been set back since, and is not good yet.
    const isNear = leftMs < RENEW_BEFORE_MS || leftMs > (LEAF_DAYS + 1) * DAY_MS;
    if (!isNear && namesOf(this.#options, addresses) === this.#madeFor) return;
    this.#credentials = await this.authority.leaf(names, addresses, wallMs());
    this.#madeFor = namesOf(this.#options, addresses);
    this.#warn();
    // Connections that stand go on with the old one; new ones get this.
    this.#server.setSecureContext(this.#credentials);
  }

  close(): void {
    this.#timer?.cancel();
    this.#server.close();
    this.#server.closeAllConnections();
  }

  #warn(): void {
    const { log, wallMs } = this.#options;
    const { leftOut } = this.#credentials;
    if (leftOut.length > 0)
      log.warn({ leftOut }, 'the bakehouse’s root was made before this machine had these names and addresses: it cannot speak for them');
    if (this.authority.notAfterMs - wallMs() < ROOT_WARN_MS)
      log.warn({ notAfterMs: this.authority.notAfterMs }, 'the bakehouse’s root is at its end: make a new one');
  }

  #wait(): void {
    this.#timer = this.#options.timers.set(() => {
      void this.look()
        .catch((error: unknown) => this.#options.log.warn({ err: error }, 'no new certificate could be made'))
        .finally(() => this.#wait());
    }, LOOK_EVERY_MS);
  }
}

function namesOf({ names }: SecureOptions, addresses: readonly string[]): string {
  return JSON.stringify([names, addresses]);
}
