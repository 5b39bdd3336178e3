import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { shapeFaults } from '../../shared/documents/bakehouse-file.ts';
import { idSchema } from '../../shared/ids.ts';
import { joiningAskSchema, joinRequestSchema, roleAskSchema, type Joined, type ListedDevice } from '../../shared/wire/access.ts';
import type { KitchenAccess, RoleChange } from '../access/kitchen-access.ts';
import type { Devices } from '../devices/devices.ts';
import { setToken, type Door } from './device-cookie.ts';
import { sendProblem } from './problem.ts';

const SECOND_MS = 1000;
const NO_SUCH_DEVICE = 'There is no such device.';

const deviceParamsSchema = z.object({ id: idSchema });

export interface AccessRouteOptions {
  readonly access: KitchenAccess;
  readonly devices: Devices;
  readonly door: Door;
  readonly hub: { readonly connectedDevices: ReadonlySet<string> };
}

/** Who is let in and as what: joining with a code, opening and closing that, and the list of devices. */
export function serveAccess(app: FastifyInstance, { access, devices, door, hub }: AccessRouteOptions): void {
  app.get('/api/access', async (request, reply) => noStore(reply).send(access.statusFor(door.visitor(request).device?.role ?? null)));

  app.post('/api/join', async (request, reply) => {
    const body = joinRequestSchema.safeParse(request.body);
    if (!body.success)
      return sendProblem(reply, 400, 'badInput', { detail: 'A device cannot join by this.', faults: shapeFaults(body.error) });
    const admission = access.admit(body.data, {
      address: request.ip,
      isSecure: request.protocol === 'https',
      before: door.browser(request, body.data.as),
    });
    switch (admission.kind) {
      case 'admitted': {
        const { device, token } = admission;
        setToken(reply, body.data.as, token);
        request.log.warn({ deviceId: device.id, role: device.role, address: request.ip }, 'a device was let in');
        return noStore(reply).send({ deviceId: device.id, name: device.name, role: device.role ?? 'look' } satisfies Joined);
      }
      case 'locked': {
        const retryS = Math.ceil(admission.forMs / SECOND_MS);
        request.log.warn({ address: request.ip, retryS }, 'somebody who is locked out typed a code');
        reply.header('Retry-After', String(retryS));
        return sendProblem(reply, 429, 'tooManyTries', { detail: `Try again in ${retryS} s.`, more: { retryS } });
      }
      case 'closed':
        return sendProblem(reply, 409, 'joiningClosed', { detail: 'Let somebody who manages the kitchen open it.' });
      case 'wrong':
        request.log.warn({ address: request.ip }, 'somebody typed a wrong code');
        return sendProblem(reply, 403, 'wrongCode', { detail: 'The code, or the picture that it came with, is not good (any more).' });
    }
  });

  app.get('/api/joining', async (_request, reply) => noStore(reply).send(access.joining));

  app.post('/api/joining', async (request, reply) => {
    const body = joiningAskSchema.safeParse(request.body);
    if (!body.success)
      return sendProblem(reply, 400, 'badInput', {
        detail: 'Say what those who join may do: {"role": "act"}.',
        faults: shapeFaults(body.error),
      });
    access.openJoining(body.data.role);
    request.log.warn({ role: body.data.role, byDeviceId: door.visitor(request).device?.id }, 'joining was opened');
    return noStore(reply).send(access.joining);
  });

  app.delete('/api/joining', async (_request, reply) => {
    access.closeJoining();
    return reply.code(204).send();
  });

  app.get('/api/devices', async (request, reply) => {
    const own = door.visitor(request).device?.id ?? null;
    const connected = hub.connectedDevices;
    const listed = devices
      .all()
      .map((device): ListedDevice => ({ ...device, isConnected: connected.has(device.id), isThis: device.id === own }));
    return noStore(reply).send({ devices: listed });
  });

  app.put('/api/devices/:id/role', async (request, reply) => {
    const body = roleAskSchema.safeParse(request.body);
    if (!body.success)
      return sendProblem(reply, 400, 'badInput', { detail: 'Say what it may do: {"role": "act"}.', faults: shapeFaults(body.error) });
    const id = idOf(request);
    request.log.warn(
      { deviceId: id, role: body.data.role, byDeviceId: door.visitor(request).device?.id },
      'a device is to get another role',
    );
    return sendChange(reply, id === null ? 'noSuchDevice' : access.changeRole(id, body.data.role));
  });

  app.delete('/api/devices/:id', async (request, reply) => {
    const id = idOf(request);
    request.log.warn({ deviceId: id, byDeviceId: door.visitor(request).device?.id }, 'a device is to be shut out');
    return sendChange(reply, id === null ? 'noSuchDevice' : access.shutOut(id));
  });

  app.delete('/api/devices/:id/name', async (request, reply) => {
    const id = idOf(request);
    if (id === null || devices.find(id) === null) return sendProblem(reply, 404, 'notFound', { detail: NO_SUCH_DEVICE });
    devices.eraseName(id);
    return reply.code(204).send();
  });
}

function sendChange(reply: FastifyReply, change: RoleChange): FastifyReply {
  switch (change) {
    case 'changed':
      return reply.code(204).send();
    case 'noSuchDevice':
      return sendProblem(reply, 404, 'notFound', { detail: NO_SUCH_DEVICE });
    case 'lastManager':
      return sendProblem(reply, 409, 'refused', {
        detail: 'Nobody else manages the kitchen; let another device do so first.',
        more: { why: 'lastManager' },
      });
  }
}

function idOf(request: FastifyRequest): string | null {
  const params = deviceParamsSchema.safeParse(request.params);
  return params.success ? params.data.id : null;
}

/** Codes and lists of devices are nobody's to keep. */
function noStore(reply: FastifyReply): FastifyReply {
  return reply.header('Cache-Control', 'no-store');
}
