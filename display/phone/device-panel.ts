import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Station } from '../../shared/documents/kitchen.ts';
import { NAME_CHARACTERS } from '../../shared/documents/names.ts';
import type { Device } from '../../shared/wire/down.ts';
import { PANELS } from '../words/panels.ts';
import { PHONE } from '../words/phone.ts';
import { fieldStyles } from './field-styles.ts';
import { IntroduceEvent, ShowScreenEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** What this phone is called, and where it is. Stations stand for people. */
@customElement('device-panel')
export class DevicePanel extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    fieldStyles,
    css`
      :host {
        display: grid;
        gap: 20px;
        padding: 16px;
      }
      h1 {
        font-size: 28px;
        font-weight: var(--weight-strong);
      }
      .field {
        display: grid;
        gap: 6px;
      }
      .stations {
        display: grid;
        grid-template-columns: repeat(2, minmax(0, 1fr));
        gap: 16px;
      }
      .stations button {
        min-height: 72px;
        border-width: 2px;
      }
      .stations button[aria-pressed='true'] {
        background: var(--ink);
        color: var(--paper);
      }
    `,
  ];

  @property({ attribute: false }) device: Device | null = null;
  @property({ attribute: false }) stations: readonly Station[] = [];
  @state() private typedName: string | null = null;
  /** undefined: as it is. */
  @state() private chosenId: string | null | undefined = undefined;

  protected override render(): TemplateResult {
    const stationId = this.stationId;
    return html`
      <h1>${PHONE.thisPhone}</h1>
      <form @submit=${this.submit}>
        <div class="field">
          <label for="name">${PHONE.name}</label>
          <input
            id="name"
            maxlength=${NAME_CHARACTERS}
            autocomplete="off"
            enterkeyhint="done"
            .value=${this.typedName ?? this.device?.name ?? ''}
            @input=${this.typed}
          />
        </div>
      </form>
      <div class="field" role="group" aria-labelledby="where">
        <p id="where" class="label">${PHONE.station}</p>
        <div class="stations">
          ${this.stations.map((station) => this.stationButton(station.id, station.name, stationId))}${this.stationButton(null, PHONE.noStation, stationId)}
        </div>
      </div>
      <div class="stations">
        <button type="button" class="middling filled" @act=${this.save}>${PHONE.save}</button>
        <button type="button" class="middling" @act=${() => this.dispatchEvent(new ShowScreenEvent({ kind: 'dayEnd' }))}>
          ${PANELS.dayEnd}
        </button>
      </div>
    `;
  }

  private get stationId(): string | null {
    return this.chosenId === undefined ? (this.device?.stationId ?? null) : this.chosenId;
  }

  private stationButton(id: string | null, name: string, chosen: string | null): TemplateResult {
    return html`<button type="button" aria-pressed=${id === chosen} @act=${() => (this.chosenId = id)}>${name}</button>`;
  }

  private typed(event: InputEvent): void {
    this.typedName = (event.target as HTMLInputElement).value;
  }

  private submit(event: Event): void {
    event.preventDefault();
    this.save();
  }

  private save(): void {
    const name = (this.typedName ?? this.device?.name ?? '').trim();
    this.dispatchEvent(new IntroduceEvent(name === '' ? null : name, this.stationId));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'device-panel': DevicePanel;
  }
}
