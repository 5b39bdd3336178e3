import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { SETUP } from '../words/wall-setup.ts';
import { DEFAULT_VIEWING, viewingSchema, type Viewing } from '../wall/settings.ts';
import type { Screen } from '../wall/type-sizes.ts';
import './sample-rows.ts';
import { sectionStyles } from './section-styles.ts';
import { ViewingChangedEvent, type NumberGivenEvent, type OptionChosenEvent } from './setup-events.ts';
import './setup-number.ts';
import './setup-options.ts';
import { setupStyles } from './setup-styles.ts';

/** The sizes that have a name, in minutes of arc. */
const ORDINARY = 20;
const TIRED = 26;
/** Where a size of one's own begins. */
const OWN = 23;

/** From where the wall is read and how large it writes, with rows as large as that. Says `viewing-changed`. */
@customElement('setup-reading')
export class SetupReading extends LitElement {
  static override styles = [setupStyles, sectionStyles];

  @property({ attribute: false }) viewing: Viewing = DEFAULT_VIEWING;
  @property({ attribute: false }) screen: Screen | null = null;
  @property() language = 'en';

  protected override render(): TemplateResult {
    const { viewing } = this;
    const chosen = viewing.arcmin === ORDINARY ? 'ordinary' : viewing.arcmin === TIRED ? 'tired' : 'own';
    return html`<section aria-labelledby="reading">
      <h2 id="reading">${SETUP.reading}</h2>
      <div class="beside">
        <div class="stack">
          ${this.distance(viewing)}
          <setup-options
            .legend=${SETUP.textSize}
            .options=${{ ordinary: SETUP.ordinary, tired: SETUP.tired, own: SETUP.own }}
            .chosen=${chosen}
            @option-chosen=${this.sizeChosen}
          ></setup-options>
          ${chosen === 'own' ? this.ownSize(viewing) : nothing}
        </div>
        <div class="stack">
          <p>${SETUP.samples}</p>
          <sample-rows .screen=${this.screen} .language=${this.language}></sample-rows>
        </div>
      </div>
    </section>`;
  }

  private distance(viewing: Viewing): TemplateResult {
    const { metres: bounds } = viewingSchema.shape;
    return html`<setup-number
      .label=${SETUP.metres}
      .unit=${SETUP.metre}
      .lessLabel=${SETUP.metresLess}
      .moreLabel=${SETUP.metresMore}
      .value=${viewing.metres}
      .least=${bounds.minValue ?? 0}
      .most=${bounds.maxValue ?? 0}
      .step=${0.5}
      .language=${this.language}
      @number-given=${(event: NumberGivenEvent) => this.change({ metres: event.value })}
    ></setup-number>`;
  }

  private ownSize(viewing: Viewing): TemplateResult {
    const { arcmin: bounds } = viewingSchema.shape;
    return html`<setup-number
      .label=${SETUP.ownSize}
      .unit=${SETUP.arcmin}
      .lessLabel=${SETUP.ownLess}
      .moreLabel=${SETUP.ownMore}
      .value=${viewing.arcmin}
      .least=${bounds.minValue ?? 0}
      .most=${bounds.maxValue ?? 0}
      .step=${1}
      .language=${this.language}
      @number-given=${(event: NumberGivenEvent) => this.change({ arcmin: event.value })}
    ></setup-number>`;
  }

  private sizeChosen(event: OptionChosenEvent): void {
    this.change({ arcmin: event.key === 'ordinary' ? ORDINARY : event.key === 'tired' ? TIRED : OWN });
  }

  private change(some: Partial<Viewing>): void {
    this.dispatchEvent(new ViewingChangedEvent({ ...this.viewing, ...some }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'setup-reading': SetupReading;
  }
}
