import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { testIsUnderWay, workpieceBeingLost } from '../../shared/floor/sound-test.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { FloorView } from '../link/floor-link.ts';
import { dayClockText } from '../parts/day-clock-text.ts';
import { lastHeardWords, lostFirstWords, SOUND, soundsOnWords } from '../words/sound.ts';
import { FloorCommandEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';
import './sound-ask.ts';

/** Which device sounds, when it was last heard, and a test of it now. */
@customElement('sound-settings')
export class SoundSettings extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }
      h2 {
        font-size: var(--type-button);
        font-weight: var(--weight-word);
      }
      p {
        font-size: var(--type-text);
      }
      button {
        width: 100%;
      }
      sound-ask {
        margin-inline: calc(-1 * var(--space-4));
      }
    `,
  ];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) nowMs = 0;

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null || view.state === null) return nothing;
    return html`<h2>${SOUND.title}</h2>
      <p>${this.who(view)} ${this.heard(view.state)}</p>
      ${this.test(view.state)}
      <sound-ask .view=${view} .nowMs=${this.nowMs}></sound-ask>`;
  }

  private who(view: FloorView): string {
    const device = view.devices.find(({ id }) => id === view.soundingDeviceId);
    return device === undefined ? SOUND.nobodyNow : soundsOnWords(device.name);
  }

  private heard(state: FloorState): string {
    if (state.soundHeardMs === null) return SOUND.never;
    return lastHeardWords(dayClockText(state.soundHeardMs, this.nowMs, state.house?.document.zone ?? 'UTC'));
  }

  private test(state: FloorState): TemplateResult {
    const lost = workpieceBeingLost(state);
    if (testIsUnderWay(state.soundTest)) return html`<p role="status">${SOUND.testWaits}</p>`;
    if (lost !== null) return html`<p>${lostFirstWords(lost.tag)}</p>`;
    return html`<button type="button" class="middling" @act=${this.ask}>${SOUND.testNow}</button>`;
  }

  private ask(): void {
    this.dispatchEvent(new FloorCommandEvent({ type: 'askSoundTest' }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sound-settings': SoundSettings;
  }
}
