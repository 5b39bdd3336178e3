import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { MOST_VOLUMES, VOLUME_PCT, type SoundSettings } from '../../shared/documents/house.ts';
import { minuteOfDay } from '../../shared/floor/sound-hours.ts';
import { SOUND, volumeLabelWords } from '../words/sound.ts';
import { rangeWords } from '../words/fields.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { clockTimeTyped } from './clock-time-typed.ts';
import { FieldChangedEvent } from '../desk/field-changed.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';

const MINUTES_IN_A_DAY = 24 * 60;
/** A new time of day begins so long after the one before it. */
const APART_MIN = 60;
/** What quiet hours are until somebody says otherwise. */
const USUAL_QUIET = { from: '22:00', to: '05:00' } as const;

type Volume = SoundSettings['volumes'][number];

/** How the house sounds: how loud by the time of day, when calls are silent, when the loudspeakers are tried. */
@customElement('sound-fields')
export class SoundFields extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host {
        display: grid;
        gap: 18px;
      }
      h3 {
        font-size: var(--type-text);
        font-weight: var(--weight-strong);
      }
      fieldset,
      .one {
        display: grid;
        gap: var(--space-2);
      }
      legend,
      label {
        padding: 0;
        font-size: var(--type-text);
        font-weight: var(--weight-word);
      }
      legend {
        margin-block-end: var(--space-2);
      }
      li,
      .line {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2);
      }
      ul {
        display: grid;
        gap: var(--space-2);
      }
      .unit,
      .more {
        font-size: var(--type-text);
        color: var(--ink-soft);
      }
      input:not([type='checkbox']) {
        min-height: var(--target-desk);
        padding: 6px 10px;
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        background: var(--field);
        color: var(--ink);
        font: inherit;
        font-size: var(--type-text);
      }
      input.time {
        width: 76px;
      }
      input[type='number'] {
        width: 78px;
      }
      input:not([type='checkbox'])[aria-invalid='true'] {
        border-style: dashed;
      }
      label.choice {
        display: flex;
        align-items: center;
        gap: 10px;
        min-height: var(--target-desk);
      }
      input[type='checkbox'] {
        flex: none;
        width: 26px;
        height: 26px;
        margin: 0;
        accent-color: var(--ink);
      }
      .fault {
        padding-inline-start: 10px;
        border-inline-start: 5px solid var(--lost);
        font-size: var(--type-text);
        font-weight: var(--weight-word);
      }
    `,
  ];

  @property({ attribute: false }) sound: SoundSettings | null = null;
  /** A time as it is being typed, which may be none yet. */
  @state() private typed: { readonly id: string; readonly text: string } | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { sound } = this;
    if (sound === null) return nothing;
    return html`<h3>${SOUND.settings}</h3>
      ${this.volumes(sound.volumes)} ${this.quiet(sound.quiet)}
      <div class="one">
        <label for="test">${SOUND.testAt}</label>
        ${this.time('test', sound.testAt, (at) => this.say('testAt', at))} ${isTime(sound.testAt) ? nothing : timeFault()}
      </div>`;
  }

  private volumes(volumes: readonly Volume[]): TemplateResult {
    const isFaulty = volumes.some(({ volumePct }) => !isVolume(volumePct));
    return html`<fieldset>
      <legend>${SOUND.volume}</legend>
      <ul>
        ${volumes.map((volume, index) => this.volume(volumes, volume, index))}
      </ul>
      ${isFaulty ? html`<p class="fault">${rangeWords(VOLUME_PCT.least, VOLUME_PCT.most, UNITS.percent)}</p>` : nothing}
      ${volumes.every(({ from }) => isTime(from)) ? nothing : timeFault()}
      <div>
        <button type="button" class="plain" ?disabled=${volumes.length >= MOST_VOLUMES} @click=${() => this.add(volumes)}>
          ${SOUND.addVolume}
        </button>
      </div>
    </fieldset>`;
  }

  private volume(volumes: readonly Volume[], volume: Volume, index: number): TemplateResult {
    const change = (changed: Volume): void =>
      this.say(
        'volumes',
        volumes.map((other, place) => (place === index ? changed : other)),
      );
    return html`<li>
      <label for=${`from-${index}`}>${SOUND.from}</label>
      ${this.time(`from-${index}`, volume.from, (from) => change({ ...volume, from }))}
      <input
        type="number"
        aria-label=${volumeLabelWords(volume.from)}
        min=${VOLUME_PCT.least}
        max=${VOLUME_PCT.most}
        step="1"
        aria-invalid=${!isVolume(volume.volumePct)}
        .value=${Number.isNaN(volume.volumePct) ? '' : String(volume.volumePct)}
        @input=${(event: InputEvent) => change({ ...volume, volumePct: (event.target as HTMLInputElement).valueAsNumber })}
      />
      <span class="unit">${UNITS.percent}</span>
      ${
        volumes.length === 1
          ? nothing
          : html`<button
              type="button"
              class="plain"
              @click=${() =>
                this.say(
                  'volumes',
                  volumes.filter((_other, place) => place !== index),
                )}
            >
              ${SOUND.removeVolume}
            </button>`
      }
    </li>`;
  }

  private quiet(quiet: SoundSettings['quiet']): TemplateResult {
    return html`<fieldset>
      <label class="choice">
        <input
          type="checkbox"
          .checked=${quiet !== null}
          @change=${(event: Event) => this.say('quiet', (event.target as HTMLInputElement).checked ? { ...USUAL_QUIET } : null)}
        />
        <span>${SOUND.quiet}</span>
      </label>
      ${
        quiet === null
          ? nothing
          : html`<div class="line">
                <label for="quiet-from">${SOUND.quietFrom}</label>
                ${this.time('quiet-from', quiet.from, (from) => this.say('quiet', { ...quiet, from }))}
                <label for="quiet-to">${SOUND.quietTo}</label>
                ${this.time('quiet-to', quiet.to, (to) => this.say('quiet', { ...quiet, to }))}
              </div>
              ${isTime(quiet.from) && isTime(quiet.to) ? nothing : timeFault()}`
      }
      <p class="more">${SOUND.quietMore}</p>
    </fieldset>`;
  }

  private time(id: string, value: string, changed: (value: string) => void): TemplateResult {
    // Not of type time: that one shows the browser's own hours, and the house's have 24.
    return html`<input
      id=${id}
      class="time"
      inputmode="numeric"
      maxlength="5"
      autocomplete="off"
      aria-invalid=${!isTime(value)}
      .value=${this.typed?.id === id ? this.typed.text : value}
      @input=${(event: InputEvent) => {
        const text = (event.target as HTMLInputElement).value;
        this.typed = { id, text };
        changed(clockTimeTyped(text) ?? '');
      }}
      @blur=${() => (this.typed = null)}
    />`;
  }

  private add(volumes: readonly Volume[]): void {
    const last = volumes.at(-1);
    const minute = last === undefined || !isTime(last.from) ? 0 : (minuteOfDay(last.from) + APART_MIN) % MINUTES_IN_A_DAY;
    const volumePct = last !== undefined && isVolume(last.volumePct) ? last.volumePct : VOLUME_PCT.most;
    this.say('volumes', [...volumes, { from: clockTime(minute), volumePct }]);
  }

  private say(key: keyof SoundSettings, value: unknown): void {
    this.dispatchEvent(new FieldChangedEvent(`sound.${key}`, value));
  }
}

function timeFault(): TemplateResult {
  return html`<p class="fault">${SOUND.timeNeeded}</p>`;
}

/** What is no clock time yet is kept as nothing. */
function isTime(value: string): boolean {
  return value !== '';
}

function isVolume(volumePct: number): boolean {
  return Number.isInteger(volumePct) && volumePct >= VOLUME_PCT.least && volumePct <= VOLUME_PCT.most;
}

function clockTime(minute: number): string {
  return [Math.floor(minute / 60), minute % 60].map((part) => String(part).padStart(2, '0')).join(':');
}

declare global {
  interface HTMLElementTagNameMap {
    'sound-fields': SoundFields;
  }
}
