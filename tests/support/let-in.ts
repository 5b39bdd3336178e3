import { join } from 'node:path';
import type { AccessRole } from '../../shared/wire/joining.ts';
import { assert } from '../../shared/result.ts';
import { DEVICES_FILE } from '../../server/devices/devices-schema.ts';
import { Devices } from '../../server/devices/devices.ts';

/** The data folders of the servers that tests have started, by port. */
const folders = new Map<number, string>();

/** A server listens there on that folder. */
export function listensAt(port: number, dataFolder: string): void {
  folders.set(port, dataFolder);
}

/** Whether a test started a server there. */
export function isServerOfTests(port: number): boolean {
  return folders.has(port);
}

/** A device that is let in, and the cookie by which it is known. */
export interface LetIn {
  readonly deviceId: string;
  readonly cookieName: string;
  readonly token: string;
  /** As a request sends it. */
  readonly cookie: string;
}

/**
 * Lets a new device into the house whose server listens on a port: written into its file of devices beside the running server. No wall
 * shows a code by it; being let in by codes has tests of its own.
 */
export function letIn(port: number, kind: 'wall' | 'phone' = 'phone', role: AccessRole = 'manage'): LetIn {
  const folder = folders.get(port);
  assert(folder !== undefined, `a test started the server on port ${port}`);
  const devices = new Devices(join(folder, DEVICES_FILE));
  try {
    const { id: deviceId } = devices.create(kind, Date.now());
    const token = devices.letIn(deviceId, role);
    const cookieName = `ovenward-${kind}`;
    return { deviceId, cookieName, token, cookie: `${cookieName}=${token}` };
  } finally {
    devices.close();
  }
}
