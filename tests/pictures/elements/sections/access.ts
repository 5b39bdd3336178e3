import type { TemplateResult } from 'lit';
import '../../../../display/devices/devices-page.ts';
import type { DevicesShown } from '../../../../display/devices/device-store.ts';
import '../../../../display/join/join-page.ts';
import type { JoinAnswer } from '../../../../display/join/join-store.ts';
import '../../../../display/trust/trust-page.ts';
import type { TrustShown } from '../../../../display/trust/trust-page.ts';
import '../../../../display/wall/wall-joining.ts';
import type { ListedDevice } from '../../../../shared/wire/access.ts';
import { NOBODY_JOINS, type Joining } from '../../../../shared/wire/joining.ts';
import { made } from '../made.ts';
import { section, shelf, specimen } from '../specimen.ts';

const NOW_MS = Date.UTC(2026, 2, 7, 4, 20, 0);
const MINUTE_MS = 60_000;
const JOINING: Joining = { role: 'act', code: '483201', ticket: 'b3ZlbndhcmQgdGlja2V0IQ', untilMs: NOW_MS + 9 * MINUTE_MS };
const LOCKED = { joining: null, lockedUntilMs: NOW_MS + 8 * MINUTE_MS };
const ADDRESSES = ['http://192.0.2.10:8420'];

const DEVICES: readonly ListedDevice[] = [
  device({ kind: 'wall', name: 'wall 1', role: 'look', isConnected: true }),
  device({ name: 'Office phone', role: 'manage', isThis: true, isConnected: true }),
  device({ name: 'Bench phone with a name that is rather longer than others', role: 'act', lastSeenMs: NOW_MS - 50 * MINUTE_MS }),
  device({ name: 'phone 4', role: 'act', lastSeenMs: NOW_MS - 20_000 * MINUTE_MS }),
  device({ name: 'phone 5', role: null }),
];

const LISTS: readonly (readonly [string, DevicesShown])[] = [
  ['open', { phase: 'here', devices: DEVICES, joining: { joining: JOINING, lockedUntilMs: null }, atMs: NOW_MS }],
  ['closed', { phase: 'here', devices: DEVICES.slice(0, 2), joining: NOBODY_JOINS, atMs: NOW_MS }],
  ['locked', { phase: 'here', devices: DEVICES.slice(1, 2), joining: LOCKED, atMs: NOW_MS }],
  ['failed', { phase: 'failed' }],
];

const FINGERPRINT = Array.from({ length: 32 }, (_, index) => (index * 37 + 11).toString(16).slice(-2).padStart(2, '0').toUpperCase()).join(
  ':',
);
const TRUSTS: readonly (readonly [string, TrustShown])[] = [
  ['not yet', { phase: 'here', fingerprint: FINGERPRINT, isTrusted: false }],
  ['trusted', { phase: 'here', fingerprint: FINGERPRINT, isTrusted: true }],
  ['none', { phase: 'none' }],
];

const UNCLAIMED = { role: null, isClaimed: false, isJoiningOpen: false };
const OPEN = { role: null, isClaimed: true, isJoiningOpen: true };
const ANSWERS: readonly JoinAnswer[] = [{ kind: 'wrongCode' }, { kind: 'joiningClosed' }, { kind: 'tooManyTries', minutes: 10 }];

function device(given: Partial<ListedDevice>): ListedDevice {
  const id = `device${String(given.name).replaceAll(' ', '')}`.slice(0, 21).padEnd(21, 'x');
  return {
    id: `${id}A`,
    kind: 'phone',
    name: 'phone',
    stationId: null,
    role: null,
    firstSeenMs: NOW_MS - 90_000 * MINUTE_MS,
    lastSeenMs: NOW_MS,
    isConnected: false,
    isThis: false,
    ...given,
  };
}

/** Being let in: what the wall shows, where a phone types, and who is in. */
export function accessSection(): TemplateResult {
  return section('access', 'Being let in', [
    shelf('On the wall', [
      specimen(
        'wall-joining, open',
        'on-desk',
        made('wall-joining', { status: { joining: JOINING, lockedUntilMs: null }, addresses: ADDRESSES }),
      ),
      specimen(
        'wall-joining, here only',
        'on-desk',
        made('wall-joining', { status: { joining: JOINING, lockedUntilMs: null }, addresses: [] }),
      ),
      specimen('wall-joining, locked', 'on-desk', made('wall-joining', { status: LOCKED })),
    ]),
    shelf('Where one types', [
      specimen('join-page, unclaimed', 'on-desk', made('join-page', { access: UNCLAIMED })),
      specimen('join-page, open', 'on-desk', made('join-page', { access: OPEN })),
      specimen('join-page, scanned', 'on-desk', made('join-page', { access: OPEN, isScanned: true })),
      specimen('join-page, closed', 'on-desk', made('join-page', { access: { ...OPEN, isJoiningOpen: false } })),
      specimen('join-page, in', 'on-desk', made('join-page', { access: { role: 'act', isClaimed: true, isJoiningOpen: false } })),
      ...ANSWERS.map((answer) =>
        specimen(`join-page, ${answer.kind}`, 'on-desk', made('join-page', { access: OPEN, isScanned: true, answer })),
      ),
    ]),
    shelf(
      'The bakehouse’s root',
      TRUSTS.map(([name, shown]) =>
        specimen(
          `trust-page, ${name}`,
          'on-desk',
          made('trust-page', { shown, url: 'http://192.0.2.10:8420/trust', secureUrl: 'https://192.0.2.10:8443/phone' }),
        ),
      ),
    ),
    shelf(
      'Who is in',
      LISTS.map(([name, shown]) => specimen(`devices-page, ${name}`, 'whole', made('devices-page', { shown, zone: 'UTC' }))),
      'stacked',
    ),
  ]);
}
