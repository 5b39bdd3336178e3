import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it, onTestFinished } from 'vitest';
import { Devices, MAX_DEVICES, TOUCH_EVERY_MS, type DevicesOptions } from '../../server/devices/devices.ts';
import { idOf } from './support/journal-events.ts';
import { folderForTest } from './support/temporary-folder.ts';

let folder: string;
beforeEach(() => {
  folder = folderForTest();
});

function devicesIn(options: DevicesOptions = {}): Devices {
  const devices = new Devices(join(folder, 'devices.db'), options);
  onTestFinished(() => devices.close());
  return devices;
}

describe('the devices', () => {
  it('J23 gives a new device random bytes as its id and the next number of its kind as its name', () => {
    let drawn = 0;
    const devices = devicesIn({ randomBytes: (length) => new Uint8Array(length).fill((drawn += 1)) });
    expect(devices.create('phone', 1000)).toEqual({
      id: 'AQEBAQEBAQEBAQEBAQEBAQ',
      kind: 'phone',
      name: 'phone 1',
      stationId: null,
      firstSeenMs: 1000,
      lastSeenMs: 1000,
      role: null,
      isVouched: false,
    });
    expect(devices.create('wall', 2000).name).toBe('wall 1');
    expect(devices.create('phone', 3000).name).toBe('phone 2');
    expect(devices.all().map(({ name }) => name)).toEqual(['wall 1', 'phone 1', 'phone 2']);
  });

  it('J23 knows its devices again after closing and opening', () => {
    const devices = devicesIn();
    const phone = devices.create('phone', 1000);
    const introduced = devices.introduce(phone.id, 'Bench phone', 'bench');
    expect(introduced).toEqual({ ...phone, name: 'Bench phone', stationId: 'bench' });
    devices.close();
    expect(devicesIn().find(phone.id)).toEqual(introduced);
  });

  it('J23 knows no device of another id, and none of what is no id', () => {
    const devices = devicesIn();
    devices.create('phone', 1000);
    for (const id of [idOf(5), '', 'phone 1', '../../etc/passwd', 'A'.repeat(5000)]) {
      expect(devices.find(id)).toBeNull();
      expect(devices.introduce(id, 'Name', null)).toBeNull();
      devices.touch(id, 5000);
      devices.eraseName(id);
    }
    expect(devices.all()).toHaveLength(1);
  });

  it('J23 writes down at most once a minute that a device is there', () => {
    const devices = devicesIn();
    const { id } = devices.create('phone', 1000);
    const lastSeen = (atMs: number): number | undefined => {
      devices.touch(id, atMs);
      return devices.find(id)?.lastSeenMs;
    };
    expect(lastSeen(1000 + TOUCH_EVERY_MS - 1)).toBe(1000);
    expect(lastSeen(1000 + TOUCH_EVERY_MS)).toBe(1000 + TOUCH_EVERY_MS);
    // The house's clock was set back.
    expect(lastSeen(0)).toBe(0);
    expect(devices.find(id)?.firstSeenMs).toBe(1000);
  });

  it('J24 remembers no more than it may and forgets the one not seen for longest', () => {
    expect(MAX_DEVICES).toBe(1000);
    const devices = devicesIn({ maxDevices: 3 });
    const [first, second, third] = [1, 2, 3].map((n) => devices.create('phone', n * 1000));
    devices.touch(first?.id ?? '', 1_000_000);
    const fourth = devices.create('phone', 4000);
    expect(devices.all().map(({ id }) => id)).toEqual([first?.id, third?.id, fourth.id]);
    // Not the new one itself, though the clock says that it is the oldest.
    const fifth = devices.create('wall', 0);
    expect(devices.all().map(({ id }) => id)).toEqual([fifth.id, first?.id, fourth.id]);
    expect(devices.find(second?.id ?? '')).toBeNull();
  });

  it('J25 erases a name so that none of its bytes are left in the folder', () => {
    const devices = devicesIn();
    const { id } = devices.create('phone', 1000);
    const other = devices.create('phone', 1000);
    devices.introduce(other.id, 'Oven phone', null);
    devices.introduce(id, 'Quillfeather the first', 'bench');
    devices.introduce(id, 'Quillfeather the second', 'bench');
    const files = (): string =>
      readdirSync(folder)
        .map((name) => readFileSync(join(folder, name), 'latin1'))
        .join('');
    expect(files()).toContain('Quillfeather the second');
    expect(files()).not.toContain('Quillfeather the first');
    devices.eraseName(id);
    expect(files()).not.toContain('Quillfeather');
    expect(files()).toContain('Oven phone');
    expect(devices.find(id)).toMatchObject({ name: 'phone 1', stationId: 'bench' });
  });

  it('J25 leaves no bytes of the name of a device that is forgotten', () => {
    const devices = devicesIn({ maxDevices: 1 });
    const { id } = devices.create('phone', 1000);
    devices.introduce(id, 'Quillfeather', null);
    devices.create('phone', 2000);
    devices.close();
    expect(
      readdirSync(folder)
        .map((name) => readFileSync(join(folder, name), 'latin1'))
        .join(''),
    ).not.toContain('Quillfeather');
  });
});
