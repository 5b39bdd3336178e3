import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { testWantsAnswer } from '../../shared/floor/sound-test.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { FloorView } from '../link/floor-link.ts';
import { clockText } from '../parts/clock-text.ts';
import { SOUND, soundAskWords } from '../words/sound.ts';
import { FloorCommandEvent } from './phone-events.ts';
import { baseStyles, buttonRowStyles, buttonStyles } from './phone-styles.ts';

/** Asks whether the last test of the loudspeakers was heard where this device is. Nothing while no test wants an answer. */
@customElement('sound-ask')
export class SoundAsk extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    buttonRowStyles,
    css`
      :host {
        display: block;
      }
      section {
        display: grid;
        gap: var(--space-2);
        padding: var(--space-3) var(--space-4);
        border-top: var(--hairline) solid var(--ink);
      }
      p {
        font-size: var(--type-text);
        font-weight: var(--weight-word);
      }
    `,
  ];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) nowMs = 0;

  protected override render(): TemplateResult | typeof nothing {
    const state = this.view?.state ?? null;
    const test = state?.soundTest ?? null;
    if (state === null || !testWantsAnswer(test, this.nowMs)) return nothing;
    const clock = clockText(test.soundedMs, state.house?.document.zone ?? 'UTC');
    return html`<section aria-labelledby="question">
      <p id="question" role="status">${soundAskWords(clock, this.station(state))}</p>
      <div class="row">
        <button type="button" class="middling" @act=${() => this.answer(true)}>${SOUND.heard}</button>
        <button type="button" class="middling" @act=${() => this.answer(false)}>${SOUND.notHeard}</button>
      </div>
    </section>`;
  }

  private station(state: FloorState): string | null {
    const stationId = this.view?.device?.stationId ?? null;
    return state.kitchen?.document.stations.find((station) => station.id === stationId)?.name ?? null;
  }

  private answer(heard: boolean): void {
    this.dispatchEvent(new FloorCommandEvent({ type: 'answerSoundTest', heard }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sound-ask': SoundAsk;
  }
}
