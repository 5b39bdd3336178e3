import type { DeviceBook } from '../../../server/live/live-hub.ts';
import type { Device } from '../../../shared/wire/down.ts';

/** The house's book of devices, in memory. It outlives the server's process, as the one on disk does. */
export class MemoryDeviceBook implements DeviceBook {
  readonly #devices = new Map<string, Device>();

  add(device: Device): void {
    this.#devices.set(device.id, device);
  }

  all(): readonly Device[] {
    return [...this.#devices.values()];
  }

  introduce(id: string, name: string | null, stationId: string | null): Device | null {
    const known = this.#devices.get(id);
    if (known === undefined) return null;
    const device = { ...known, name: name ?? known.name, stationId };
    this.#devices.set(id, device);
    return device;
  }

  touch(): void {}
}
