import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { repeat } from 'lit/directives/repeat.js';
import type { ListedDevice } from '../../shared/wire/access.ts';
import type { AccessRole, JoiningStatus } from '../../shared/wire/joining.ts';
import { columnStyles } from '../desk/column-styles.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { browserZone } from '../parts/browser-zone.ts';
import { pastText } from '../parts/day-clock-text.ts';
import { digitsText } from '../parts/digits-text.ts';
import { DEVICES } from '../words/devices.ts';
import type { DevicesShown, DeviceWish, WishAnswer } from './device-store.ts';

const ROLES: readonly AccessRole[] = ['look', 'act', 'manage'];

/** Somebody wants something of a device, or of letting devices in. */
export class DeviceWishEvent extends Event {
  static readonly type = 'device-wish';
  readonly wish: DeviceWish;

  constructor(wish: DeviceWish) {
    super(DeviceWishEvent.type, { bubbles: true, composed: true });
    this.wish = wish;
  }
}

/** Who was let into the kitchen, as what, and when it was last there; letting in more, and shutting out. */
@customElement('devices-page')
export class DevicesPage extends LitElement {
  static override styles = [
    deskStyles,
    columnStyles,
    plainButtonStyles,
    css`
      main {
        gap: var(--space-5);
        max-width: 52rem;
        padding: var(--space-5) var(--space-4);
      }
      h2 {
        font-size: var(--type-step);
      }
      section {
        display: grid;
        gap: var(--space-3);
      }
      .digits {
        font-size: var(--type-figure);
        font-weight: var(--weight-strong);
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: var(--space-2) var(--space-4);
        align-items: center;
        padding-block: var(--space-3);
        border-top: var(--hairline) solid var(--line);
      }
      .name {
        font-size: var(--type-button);
        font-weight: var(--weight-word);
        overflow-wrap: anywhere;
      }
      .buttons {
        grid-column: 1 / -1;
      }
      label {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-1) var(--space-2);
      }
      select {
        min-height: var(--target-desk);
        padding: 6px 10px;
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        background: var(--paper);
        color: var(--ink);
        font: inherit;
      }
      a {
        color: var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) shown: DevicesShown = { phase: 'asking' };
  /** What came of the last wish. */
  @property({ attribute: false }) said: WishAnswer | null = null;
  @property({ attribute: false }) zone = browserZone();
  @state() private nextRole: AccessRole = 'act';
  /** What is asked a second time before it is done. */
  @state() private askedId: string | null = null;

  protected override render(): TemplateResult {
    const { shown } = this;
    return html`<main>
      <h1>${DEVICES.title}</h1>
      ${shown.phase === 'here' ? html`${this.joining(shown.joining)}${this.list(shown.devices, shown.atMs)}` : html`<p role="status">${DEVICES[shown.phase]}</p>`}
      <p><a href="/api/export" download>${DEVICES.everything}</a></p>
      <p><a href="/kitchen">${DEVICES.toKitchen}</a></p>
    </main>`;
  }

  private joining({ joining, lockedUntilMs }: JoiningStatus): TemplateResult {
    return html`<section aria-labelledby="joining">
      <h2 id="joining">${DEVICES.joining}</h2>
      <div role="status">
        ${lockedUntilMs === null ? nothing : html`<p class="fault">${DEVICES.locked(pastText(lockedUntilMs, lockedUntilMs, this.zone))}</p>`}
        ${
          joining === null
            ? html`<p class="soft">${DEVICES.joiningClosed}</p>`
            : html`<p>${DEVICES.joiningOpen[joining.role]}</p>
                <p class="digits">${digitsText(joining.code)}</p>
                <p class="soft">${DEVICES.joiningUntil(pastText(joining.untilMs, joining.untilMs, this.zone))}</p>`
        }
      </div>
      <label>${DEVICES.joinAs} ${this.roleSelect(this.nextRole, (role) => (this.nextRole = role))}</label>
      <div class="buttons">
        <button type="button" class="plain filled" @click=${() => this.wish({ type: 'openJoining', role: this.nextRole })}>
          ${joining === null ? DEVICES.open : DEVICES.openAnew}
        </button>
        ${joining === null ? nothing : html`<button type="button" class="plain" @click=${() => this.wish({ type: 'closeJoining' })}>${DEVICES.close}</button>`}
      </div>
    </section>`;
  }

  private list(devices: readonly ListedDevice[], atMs: number): TemplateResult {
    const inside = devices.filter(({ role }) => role !== null);
    return html`<section aria-labelledby="inside">
      <h2 id="inside">${DEVICES.inside(inside.length)}</h2>
      <p class="fault" role="alert" ?hidden=${this.said === null || this.said === 'done'}>
        ${this.said === null ? nothing : DEVICES.said[this.said]}
      </p>
      <ul>
        ${repeat(
          inside,
          ({ id }) => id,
          (device) => this.line(device, atMs),
        )}
      </ul>
    </section>`;
  }

  private line(device: ListedDevice, atMs: number): TemplateResult {
    const { id, name, role } = device;
    const isAsked = this.askedId === id;
    return html`<li>
      <div>
        <div class="name">${name}${device.isThis ? ` · ${DEVICES.isThis}` : ''}</div>
        <div class="soft">
          ${DEVICES.kinds[device.kind]} ·
          ${device.isConnected ? DEVICES.connected : DEVICES.lastSeen(pastText(device.lastSeenMs, atMs, this.zone))}
        </div>
      </div>
      ${this.roleSelect(role ?? 'look', (wanted) => this.wish({ type: 'changeRole', id, role: wanted }), DEVICES.roleOf(name))}
      <div class="buttons">
        ${
          isAsked
            ? html`<button type="button" class="plain filled" @click=${() => this.shutOut(id)}>${DEVICES.shutOutSure(name)}</button>
                <button type="button" class="plain" @click=${() => (this.askedId = null)}>${DEVICES.keep}</button>`
            : html`<button type="button" class="plain" @click=${() => (this.askedId = id)} aria-label=${`${DEVICES.shutOut}: ${name}`}>
                  ${DEVICES.shutOut}
                </button>
                <button
                  type="button"
                  class="plain"
                  @click=${() => this.wish({ type: 'eraseName', id })}
                  aria-label=${`${DEVICES.eraseName}: ${name}`}
                >
                  ${DEVICES.eraseName}
                </button>`
        }
      </div>
    </li>`;
  }

  private roleSelect(chosen: AccessRole, choose: (role: AccessRole) => void, label?: string): TemplateResult {
    return html`<select
      aria-label=${label ?? DEVICES.joinAs}
      .value=${live(chosen)}
      @change=${(event: Event) => {
        const role = ROLES.find((each) => event.target instanceof HTMLSelectElement && each === event.target.value);
        if (role !== undefined) choose(role);
      }}
    >
      ${ROLES.map((role) => html`<option value=${role} ?selected=${role === chosen}>${DEVICES.roles[role]}</option>`)}
    </select>`;
  }

  private shutOut(id: string): void {
    this.askedId = null;
    this.wish({ type: 'shutOut', id });
  }

  private wish(wish: DeviceWish): void {
    this.said = null;
    this.dispatchEvent(new DeviceWishEvent(wish));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'devices-page': DevicesPage;
  }
  interface HTMLElementEventMap {
    'device-wish': DeviceWishEvent;
  }
}
