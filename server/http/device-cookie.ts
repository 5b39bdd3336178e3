import type { IncomingMessage } from 'node:http';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { Device } from '../../shared/wire/down.ts';
import type { PageKind } from '../../shared/wire/up.ts';
import type { Devices } from '../devices/devices.ts';

/** Browsers keep a cookie for 400 days at most (RFC 6265bis section 5.5). */
const MAX_AGE_S = 400 * 24 * 3600;

/** What sort of device a page makes of its browser: a screen that is bolted to a station acts as a phone does. */
function deviceKindOf(page: PageKind): 'wall' | 'phone' {
  return page === 'wall' ? 'wall' : 'phone';
}

/** A wall and a phone in one browser are two devices. */
function cookieName(kind: 'wall' | 'phone'): string {
  return `ovenward-${kind}`;
}

/** What an upgrade's request came to, with the cookie to set where the device is new: no reply object reaches that answer. */
const upgrades = new WeakMap<IncomingMessage, { readonly device: Device; readonly cookie: string | null }>();

/** Makes answers to upgrades carry the cookie of a device that is new. */
export function setCookiesOnUpgrade(app: FastifyInstance): void {
  app.websocketServer.on('headers', (headers: string[], request: IncomingMessage) => {
    const cookie = upgrades.get(request)?.cookie ?? null;
    if (cookie !== null) headers.push(`Set-Cookie: ${cookie}`);
  });
}

/** The device behind an upgrade: its cookie's, or a new one that gets its cookie with the answer. Never what a message says. */
export function deviceOfUpgrade(request: FastifyRequest, devices: Devices, page: PageKind, nowMs: number): Device {
  const settled = upgrades.get(request.raw);
  if (settled !== undefined) return settled.device;
  const kind = deviceKindOf(page);
  const name = cookieName(kind);
  const known = devices.find(request.cookies[name] ?? '');
  if (known !== null && known.kind === kind) {
    devices.touch(known.id, nowMs);
    upgrades.set(request.raw, { device: known, cookie: null });
    return known;
  }
  const device = devices.create(kind, nowMs);
  upgrades.set(request.raw, { device, cookie: `${name}=${device.id}; Max-Age=${MAX_AGE_S}; Path=/; HttpOnly; SameSite=Strict` });
  return device;
}

/** The device behind a request by http, or null where its browser or program has not been here before. */
export function knownDevice(request: FastifyRequest, devices: Devices): Device | null {
  return devices.find(request.cookies[cookieName('phone')] ?? '') ?? devices.find(request.cookies[cookieName('wall')] ?? '');
}

/** The device behind a command by http: a phone's cookie, or the one device of all scripts. */
export function deviceOfRequest(request: FastifyRequest, devices: Devices, nowMs: number): Device {
  const known = devices.find(request.cookies[cookieName('phone')] ?? '');
  if (known !== null) return known;
  const script = devices.all().find((device) => device.kind === 'script') ?? devices.create('script', nowMs);
  devices.touch(script.id, nowMs);
  return script;
}
