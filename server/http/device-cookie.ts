import type { IncomingMessage } from 'node:http';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { AccessRole } from '../../shared/wire/joining.ts';
import type { PageKind } from '../../shared/wire/up.ts';
import type { RoleOfGuest } from '../access/roles.ts';
import type { Devices, KnownDevice } from '../devices/devices.ts';

/** Browsers keep a cookie for 400 days at most (RFC 6265bis section 5.5). */
const MAX_AGE_S = 400 * 24 * 3600;

/** What a browser can be to the house. */
export type BrowserKind = 'wall' | 'phone';

/** Who asks, and what it may do; null and null: somebody who was not let in. */
export interface Visitor {
  readonly device: KnownDevice | null;
  readonly role: AccessRole | null;
}

/** Whoever gives a command: on a device, since every event says on which. */
export interface Actor {
  readonly device: KnownDevice;
  readonly role: AccessRole | null;
}

export interface DoorOptions {
  readonly devices: Devices;
  readonly roleOfGuest: RoleOfGuest;
  readonly clock: { realMs(): number };
}

/** What an upgrade's request came to, with the cookie to set where the device is new: no reply object reaches that answer. */
const upgrades = new WeakMap<IncomingMessage, { readonly visitor: Visitor; readonly cookie: string | null }>();

/** Makes answers to upgrades carry the cookie of a device that is new. */
export function setCookiesOnUpgrade(app: FastifyInstance): void {
  app.websocketServer.on('headers', (headers: string[], request: IncomingMessage) => {
    const cookie = upgrades.get(request)?.cookie ?? null;
    if (cookie !== null) headers.push(`Set-Cookie: ${cookie}`);
  });
}

/** Gives a browser the token of the device that it is from now on. */
export function setToken(reply: FastifyReply, kind: BrowserKind, token: string): void {
  reply.header('Set-Cookie', cookieOf(kind, token, reply.request.protocol === 'https'));
}

/** Tells who somebody is by the token in their cookie, and by nothing that they say. */
export class Door {
  readonly #options: DoorOptions;

  constructor(options: DoorOptions) {
    this.#options = options;
  }

  /** Who sends a request: the phone that this browser is, else the wall, else a guest. */
  visitor(request: FastifyRequest): Visitor {
    const known = this.#known(request, 'phone') ?? this.#known(request, 'wall');
    if (known !== null) return known;
    return { device: null, role: this.#options.roleOfGuest({ isHere: isHere(request), page: null }) };
  }

  /** Who gives a command by http: as `visitor`, guests on the one device of all scripts. */
  actor(request: FastifyRequest): Actor {
    const { devices, clock } = this.#options;
    const { device, role } = this.visitor(request);
    if (device !== null) return { device, role };
    const script = devices.all().find(({ kind }) => kind === 'script') ?? devices.create('script', clock.realMs());
    devices.touch(script.id, clock.realMs());
    return { device: script, role };
  }

  /** What a browser was till now, as a wall or as a phone. */
  browser(request: FastifyRequest, kind: BrowserKind): KnownDevice | null {
    return this.#known(request, kind)?.device ?? null;
  }

  /** Who opens a websocket. A guest that may be here becomes a device, and gets its token with the answer. */
  upgrade(request: FastifyRequest, page: PageKind): Visitor {
    const settled = upgrades.get(request.raw);
    if (settled !== undefined) return settled.visitor;
    const kind = browserKindOf(page);
    const known = this.#known(request, kind);
    const entry = known === null ? this.#takeIn(request, page, kind) : { visitor: known, cookie: null };
    upgrades.set(request.raw, entry);
    return entry.visitor;
  }

  #takeIn(request: FastifyRequest, page: PageKind, kind: BrowserKind): { readonly visitor: Visitor; readonly cookie: string | null } {
    const { devices, clock, roleOfGuest } = this.#options;
    const role = roleOfGuest({ isHere: isHere(request), page });
    if (role === null) return { visitor: { device: null, role }, cookie: null };
    const device = devices.create(kind, clock.realMs());
    const isSecure = request.protocol === 'https';
    // On this machine itself nobody has to vouch for a wall.
    const token = devices.letIn(device.id, role, { isSecure, isVouched: true });
    return { visitor: { device: { ...device, role, isVouched: true }, role }, cookie: cookieOf(kind, token, isSecure) };
  }

  #known(request: FastifyRequest, kind: BrowserKind): Actor | null {
    const { devices, clock } = this.#options;
    const device = devices.findByToken(request.cookies[cookieName(kind, request.protocol === 'https')] ?? '', request.protocol === 'https');
    if (device === null || device.kind !== kind || device.role === null) return null;
    devices.touch(device.id, clock.realMs());
    return { device, role: device.role };
  }
}

/**
 * A wall and a phone in one browser are two devices. Over TLS the name says that no page of another host can have set it, and that it never
 * goes without (RFC 6265bis section 4.1.3.2): whoever was let in over plain http is let in anew.
 */
function cookieName(kind: BrowserKind, isSecure: boolean): string {
  return `${isSecure ? '__Host-' : ''}ovenward-${kind}`;
}

/** No script reads it, no page of another site sends it, and over TLS it never goes without. */
function cookieOf(kind: BrowserKind, token: string, isSecure: boolean): string {
  return `${cookieName(kind, isSecure)}=${token}; Max-Age=${MAX_AGE_S}; Path=/; HttpOnly; SameSite=Strict${isSecure ? '; Secure' : ''}`;
}

/** What sort of device a page makes of its browser: a screen that is bolted to a station acts as a phone does. */
function browserKindOf(page: PageKind): BrowserKind {
  return page === 'wall' ? 'wall' : 'phone';
}

/** Whether a request comes from this machine itself, and not through a program on it that passes on others' (RFC 7239 and what was usual before). */
export function isHere(request: FastifyRequest): boolean {
  const { forwarded, 'x-forwarded-for': forwardedFor } = request.headers;
  return forwarded === undefined && forwardedFor === undefined && /^(?:::ffff:)?127\.\d+\.\d+\.\d+$|^::1$/.test(request.ip);
}
