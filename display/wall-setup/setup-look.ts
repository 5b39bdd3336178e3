import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { SETUP, WALL_LOOKS } from '../words/wall-setup.ts';
import { clockOfMinutes, DEFAULT_WALL_LOOK, minutesOfClock, WALL_LOOK_CHOICES, type WallLook } from '../wall/wall-look.ts';
import { sectionStyles } from './section-styles.ts';
import { WallLookChangedEvent, type OptionChosenEvent } from './setup-events.ts';
import './setup-options.ts';
import { setupStyles } from './setup-styles.ts';

/** Light or dark, always or by the hours of the house. Says `wall-look-changed`. */
@customElement('setup-look')
export class SetupLook extends LitElement {
  static override styles = [setupStyles, sectionStyles];

  @property({ attribute: false }) look: WallLook = DEFAULT_WALL_LOOK;

  protected override render(): TemplateResult {
    const { choice } = this.look;
    return html`<section aria-labelledby="look">
      <h2 id="look">${SETUP.look}</h2>
      <setup-options untitled .legend=${SETUP.look} .options=${WALL_LOOKS} .chosen=${choice} @option-chosen=${this.chosen}></setup-options>
      ${choice === 'hours' ? this.hours() : nothing}
    </section>`;
  }

  private hours(): TemplateResult {
    return html`<div class="hours" role="group" aria-labelledby="look" aria-describedby="hours-more">
        <div class="field">
          <label for="from">${SETUP.nightFrom}</label>
          <input
            id="from"
            type="time"
            required
            .value=${clockOfMinutes(this.look.nightFromMin)}
            @input=${(event: Event) => this.given('nightFromMin', event)}
          />
        </div>
        <div class="field">
          <label for="to">${SETUP.nightTo}</label>
          <input
            id="to"
            type="time"
            required
            .value=${clockOfMinutes(this.look.nightToMin)}
            @input=${(event: Event) => this.given('nightToMin', event)}
          />
        </div>
      </div>
      <p id="hours-more" class="soft">${SETUP.nightMore}</p>`;
  }

  private chosen(event: OptionChosenEvent): void {
    const choice = WALL_LOOK_CHOICES.find((known) => known === event.key);
    if (choice !== undefined) this.change({ choice });
  }

  private given(end: 'nightFromMin' | 'nightToMin', event: Event): void {
    // Empty while a time is half typed.
    const minutes = minutesOfClock((event.target as HTMLInputElement).value);
    if (minutes !== null) this.change({ [end]: minutes });
  }

  private change(some: Partial<WallLook>): void {
    this.dispatchEvent(new WallLookChangedEvent({ ...this.look, ...some }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'setup-look': SetupLook;
  }
}
