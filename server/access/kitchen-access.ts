import { randomBytes } from 'node:crypto';
import type { AccessStatus, JoinRequest } from '../../shared/wire/access.ts';
import { higherRole } from './roles.ts';
import type { AccessRole, JoiningStatus } from '../../shared/wire/joining.ts';
import type { Devices, KnownDevice } from '../devices/devices.ts';
import type { Timers } from '../floor/alarm-clock.ts';
import { consoleCode, isSameSecret, plainCode } from './codes.ts';
import { JoiningDesk } from './joining.ts';
import { WrongCodes } from './wrong-codes.ts';

/** Somebody with a code: let in with a token, or why not. */
export type Admission =
  | { readonly kind: 'admitted'; readonly device: KnownDevice; readonly token: string }
  | { readonly kind: 'wrong' }
  /** No code is good at present. */
  | { readonly kind: 'closed' }
  | { readonly kind: 'locked'; readonly forMs: number };

/** Whoever comes with a code: from where, how, and what its browser was till now. */
export interface Comer {
  readonly address: string;
  /** Over TLS: its token is good there alone. */
  readonly isSecure: boolean;
  readonly before: KnownDevice | null;
}

/** What came of changing a device's role. */
export type RoleChange = 'changed' | 'noSuchDevice' | 'lastManager';

export interface KitchenAccessOptions {
  readonly devices: Devices;
  readonly clock: { monotonicMs(): number; realMs(): number };
  readonly timers: Timers;
  /** Everybody but this machine comes by TLS: who manages otherwise does not count. */
  readonly isTls?: boolean;
  /** A code for the console is wanted though the kitchen is claimed: every phone that manages it is lost. */
  readonly isClaimedAnew?: boolean;
}

/** Who is let into the kitchen, and as what. Roles stand in the file of devices; codes and tickets only in memory. */
export class KitchenAccess {
  readonly #options: KitchenAccessOptions;
  readonly #joining: JoiningDesk;
  readonly #wrongCodes: WrongCodes;
  readonly #listeners: (() => void)[] = [];
  readonly #changed: ((deviceId: string) => void)[] = [];
  #unlock: { cancel(): void } | null = null;
  #consoleCode: string | null;

  constructor(options: KitchenAccessOptions) {
    this.#options = options;
    const { clock, timers } = options;
    this.#joining = new JoiningDesk({ clock, timers, randomBytes, onChange: () => this.#tell() });
    this.#wrongCodes = new WrongCodes(() => clock.monotonicMs());
    this.#consoleCode = options.isClaimedAnew === true || !this.isClaimed ? consoleCode(randomBytes) : null;
  }

  /** For the server's console: makes whoever types it manage the kitchen, once. Null where the kitchen is claimed. */
  get consoleCode(): string | null {
    return this.#consoleCode;
  }

  get isClaimed(): boolean {
    return this.#managers() > 0;
  }

  /** Called when what walls show of joining changes. */
  onJoiningChanged(listener: () => void): void {
    this.#listeners.push(listener);
  }

  /** Called when a device's role was changed or taken. */
  onRoleChanged(listener: (deviceId: string) => void): void {
    this.#changed.push(listener);
  }

  /** How joining stands, for walls and for those who manage. */
  get joining(): JoiningStatus {
    const lockedMs = this.#wrongCodes.overallLockedMs();
    return {
      joining: lockedMs > 0 ? null : this.#joining.shown,
      lockedUntilMs: lockedMs > 0 ? Math.round(this.#options.clock.realMs() + lockedMs) : null,
    };
  }

  openJoining(role: AccessRole): void {
    this.#joining.open(role);
  }

  closeJoining(): void {
    this.#joining.close();
  }

  /** How the house stands to a device of that role; null: to whom nobody let in. */
  statusFor(role: AccessRole | null): AccessStatus {
    return { role, isClaimed: this.isClaimed, isJoiningOpen: this.joining.joining !== null };
  }

  /** Lets in whoever knows a code: a new device with a role and a token that nobody else has. `before`: what the browser was till now. */
  admit({ code, ticket = null, as, name = null }: JoinRequest, { address, isSecure, before }: Comer): Admission {
    const lockedMs = this.#wrongCodes.lockedMs(address);
    if (lockedMs > 0) return { kind: 'locked', forMs: lockedMs };
    const isConsole = this.#isConsoleCode(code);
    const role = isConsole ? 'manage' : this.#roleFor(code, ticket);
    if (role === 'closed') return { kind: 'closed' };
    if (role === 'wrong') {
      this.#wrongCodes.add(address);
      this.#tellWhenUnlocked();
      return { kind: 'wrong' };
    }
    this.#wrongCodes.forgive(address);
    const { devices, clock } = this.#options;
    const known = before?.kind === as ? before : null;
    // Kept first: what was typed is used up only once somebody is in by it.
    const { device, token } = devices.admit({
      before: known,
      kind: as,
      // Who is in already is not lowered by coming once more.
      role: higherRole(role, known?.role ?? role),
      isVouched: ticket !== null || isConsole || known?.isVouched === true,
      isSecure,
      name,
      nowMs: Math.round(clock.realMs()),
    });
    if (isConsole) this.#consoleCode = null;
    else this.#joining.use(ticket);
    for (const listener of this.#changed) listener(device.id);
    return { kind: 'admitted', device, token };
  }

  /** Gives a device another role; its open sockets are closed and come back with it. The last one that manages stays as it is. */
  changeRole(deviceId: string, role: AccessRole): RoleChange {
    const { devices } = this.#options;
    const device = devices.find(deviceId);
    if (device === null || device.role === null) return 'noSuchDevice';
    if (device.role === 'manage' && role !== 'manage' && this.#managers() === 1) return 'lastManager';
    devices.setRole(deviceId, role);
    for (const listener of this.#changed) listener(deviceId);
    return 'changed';
  }

  /** Shuts a device out at once and forgets its name; its id stays known, since the journal names it. */
  shutOut(deviceId: string): RoleChange {
    const { devices } = this.#options;
    const device = devices.find(deviceId);
    if (device === null) return 'noSuchDevice';
    if (device.role === 'manage' && this.#managers() === 1) return 'lastManager';
    devices.shutOut(deviceId);
    for (const listener of this.#changed) listener(deviceId);
    return 'changed';
  }

  stop(): void {
    this.#joining.close();
    this.#unlock?.cancel();
  }

  #managers(): number {
    return this.#options.devices.managers(this.#options.isTls === true);
  }

  #isConsoleCode(code: string): boolean {
    return this.#consoleCode !== null && isSameSecret(plainCode(code), plainCode(this.#consoleCode));
  }

  #roleFor(code: string, ticket: string | null): AccessRole | 'wrong' | 'closed' {
    const role = this.#joining.roleFor(code, ticket);
    // Where the console's code would have been good, a code that is not is a guess.
    return role === 'closed' && this.#consoleCode !== null ? 'wrong' : role;
  }

  #tellWhenUnlocked(): void {
    const lockedMs = this.#wrongCodes.overallLockedMs();
    if (lockedMs === 0) return;
    this.#unlock?.cancel();
    this.#unlock = this.#options.timers.set(() => this.#tell(), lockedMs);
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}
