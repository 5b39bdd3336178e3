import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Station } from '../../shared/documents/kitchen.ts';
import { NAME_CHARACTERS } from '../../shared/documents/names.ts';
import type { Device } from '../../shared/wire/down.ts';
import '../parts/icon-mark.ts';
import { LOOK_CHOICES, type LookChoice } from '../parts/look.ts';
import { LanguageChosenEvent, LookChosenEvent } from '../parts/choice-events.ts';
import { CHOICES, LOOK_NAMES } from '../words/choices.ts';
import { LANGUAGE_NAMES, LANGUAGES, type Language } from '../words/page-language.ts';
import { PANELS } from '../words/panels.ts';
import { PHONE } from '../words/phone.ts';
import { THIS_PHONE } from '../words/this-phone.ts';
import { fieldStyles } from './field-styles.ts';
import { IntroduceEvent, ShowScreenEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** What this phone is called, where it is, and how it speaks and looks. Stations stand for people. */
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
        padding: var(--space-4);
      }
      h1 {
        font-size: var(--type-figure);
        font-weight: var(--weight-strong);
      }
      .field {
        display: grid;
        gap: 6px;
      }
      .stations {
        display: grid;
        grid-template-columns: repeat(2, minmax(0, 1fr));
        gap: var(--space-4);
      }
      .stations button {
        min-height: var(--target);
        border-width: 2px;
        overflow-wrap: anywhere;
      }
      .three {
        grid-template-columns: repeat(3, minmax(0, 1fr));
      }
      .three button {
        padding-inline: var(--space-1);
        font-size: var(--type-text);
      }
      .field input:not([type='radio']) {
        min-height: var(--target);
      }
      a {
        display: flex;
        align-items: center;
        gap: var(--space-3);
        min-height: var(--target);
        padding: var(--space-2) var(--space-3);
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius-button);
        color: var(--ink);
        font-size: var(--type-button);
        font-weight: var(--weight-word);
      }
      a icon-mark {
        font-size: var(--type-figure);
      }
      .stations button[aria-pressed='true'] {
        background: var(--ink);
        color: var(--paper);
      }
    `,
  ];

  @property({ attribute: false }) device: Device | null = null;
  @property({ attribute: false }) stations: readonly Station[] = [];
  @property({ attribute: false }) language: Language = 'en';
  @property({ attribute: false }) look: LookChoice = 'browser';
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
      ${this.choice(
        'language',
        CHOICES.language,
        LANGUAGES,
        (one) => LANGUAGE_NAMES[one],
        this.language,
        (one) => new LanguageChosenEvent(one),
      )}
      ${this.choice(
        'look',
        CHOICES.look,
        LOOK_CHOICES,
        (one) => LOOK_NAMES[one],
        this.look,
        (one) => new LookChosenEvent(one),
      )}
      <slot name="sound"></slot>
      <a href="/station"><icon-mark name="station"></icon-mark>${THIS_PHONE.stationPage}</a>
    `;
  }

  /** What is chosen here holds at once, without Save. */
  private choice<Value extends string>(
    id: string,
    label: string,
    values: readonly Value[],
    text: (value: Value) => string,
    chosen: Value,
    event: (value: Value) => Event,
  ): TemplateResult {
    return html`
      <div class="field" role="group" aria-labelledby=${id}>
        <p id=${id} class="label">${label}</p>
        <div class="stations three">
          ${values.map(
            (value) =>
              html`<button type="button" aria-pressed=${value === chosen} @act=${() => this.dispatchEvent(event(value))}>
                ${text(value)}
              </button>`,
          )}
        </div>
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
