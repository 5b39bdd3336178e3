import { deviceListSchema, type ListedDevice } from '../../shared/wire/access.ts';
import { joiningStatusSchema, type AccessRole, type JoiningStatus } from '../../shared/wire/joining.ts';
import { answerTo, type Answer } from '../parts/answer-to.ts';

/** What is shown of the devices that were let in. */
export type DevicesShown =
  | { readonly phase: 'asking' | 'failed' | 'forbidden' }
  | { readonly phase: 'here'; readonly devices: readonly ListedDevice[]; readonly joining: JoiningStatus; readonly atMs: number };

/** What somebody wants of a device, or of letting devices in. */
export type DeviceWish =
  | { readonly type: 'openJoining'; readonly role: AccessRole }
  | { readonly type: 'closeJoining' }
  | { readonly type: 'changeRole'; readonly id: string; readonly role: AccessRole }
  | { readonly type: 'shutOut'; readonly id: string }
  | { readonly type: 'eraseName'; readonly id: string };

/** What came of a wish. */
export type WishAnswer = 'done' | 'lastManager' | 'gone' | 'forbidden' | 'failed';

/** Asks who was let in, and whether anybody is let in now. Never rejects. */
export async function askDevices(fetching: typeof fetch, wallMs: () => number): Promise<DevicesShown> {
  const [list, joining] = await Promise.all([answerTo(fetching, 'GET', '/api/devices'), answerTo(fetching, 'GET', '/api/joining')]);
  if (list?.status === 403) return { phase: 'forbidden' };
  const devices = deviceListSchema.safeParse(list?.body);
  const status = joiningStatusSchema.safeParse(joining?.body);
  if (!devices.success || !status.success) return { phase: 'failed' };
  return { phase: 'here', devices: devices.data.devices, joining: status.data, atMs: wallMs() };
}

/** Does what somebody wants. Never rejects. */
export async function grant(fetching: typeof fetch, wish: DeviceWish): Promise<WishAnswer> {
  const answer = await sent(fetching, wish);
  switch (answer?.status) {
    case 200:
    case 204:
      return 'done';
    case 403:
      return 'forbidden';
    case 404:
      return 'gone';
    case 409:
      return 'lastManager';
    default:
      return 'failed';
  }
}

function sent(fetching: typeof fetch, wish: DeviceWish): Promise<Answer | null> {
  switch (wish.type) {
    case 'openJoining':
      return answerTo(fetching, 'POST', '/api/joining', { role: wish.role });
    case 'closeJoining':
      return answerTo(fetching, 'DELETE', '/api/joining');
    case 'changeRole':
      return answerTo(fetching, 'PUT', `/api/devices/${wish.id}/role`, { role: wish.role });
    case 'shutOut':
      return answerTo(fetching, 'DELETE', `/api/devices/${wish.id}`);
    case 'eraseName':
      return answerTo(fetching, 'DELETE', `/api/devices/${wish.id}/name`);
  }
}
