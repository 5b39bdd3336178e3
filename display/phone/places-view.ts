import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { countdownText } from '../parts/clock-text.ts';
import '../parts/icon-mark.ts';
import type { IconName } from '../parts/icon-mark.ts';
import '../parts/role-mark.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { PLACES } from '../words/places.ts';
import { ShowScreenEvent } from './phone-events.ts';
import '../parts/oven-map.ts';
import './slot-heat.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';
import type { DeckStand, MixerStand, Places, PlaceStand, SlotStand, Standing } from './places-model.ts';
import { placesStyles } from './places-styles.ts';
import { rowVerb } from '../parts/row-verb.ts';
import { progressOf, roleWords } from './row-words.ts';
import { bowlMark, lumpMark, vesselMarks } from './vessel-marks.ts';

const PLACE_ICONS: Readonly<Record<PlaceStand['place']['kind'], IconName>> = {
  bench: 'bench',
  'warm-shelf': 'shelf',
  prover: 'shelf',
  retarder: 'cold-room',
  'cold-room': 'cold-room',
  freezer: 'cold-room',
};

/** The house in outline, with every dough where it stands. A touch on one opens its card. */
@customElement('places-view')
export class PlacesView extends LitElement {
  static override styles = [baseStyles, buttonStyles, placesStyles];

  @property({ attribute: false }) places: Places | null = null;
  /** The dough that is looked for; null where none is. */
  @property({ attribute: false }) wantedId: string | null = null;
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) unit: 'C' | 'F' = 'C';

  protected override render(): TemplateResult | typeof nothing {
    const { places } = this;
    if (places === null) return nothing;
    return html`
      <h1 tabindex="-1">${PLACES.title}</h1>
      ${places.unplaced.length === 0 ? nothing : this.unplaced(places.unplaced)}
      <section>
        <h2>${PLACES.rest}</h2>
        ${places.places.map((stand) => this.restPlace(stand))}
      </section>
      <section>
        <h2>${PLACES.mixers}</h2>
        <ul class="slots">
          ${places.mixers.map((mixer) => this.mixer(mixer))}
        </ul>
        ${places.freeBowls.length === 0 ? nothing : html`<p class="more">${PLACES.freeBowls(places.freeBowls.join(', '))}</p>`}
      </section>
      <section>
        <h2>${PLACES.ovens}</h2>
        ${places.ovens.map(
          (oven) =>
            html`<div>
              <h3><icon-mark name="oven"></icon-mark>${oven.name}</h3>
              ${oven.decks.map((deck) => this.deck(deck))}
              <oven-map .slots=${oven.byHeat}></oven-map>
            </div>`,
        )}
      </section>
    `;
  }

  /** Brings the dough that is looked for into view. */
  showWanted(): void {
    this.renderRoot.querySelector('[aria-current]')?.scrollIntoView({ block: 'center' });
  }

  /** Takes the focus, so that whoever cannot see the drawing hears what it is. */
  focusHeading(): void {
    this.renderRoot.querySelector('h1')?.focus({ preventScroll: true });
  }

  private unplaced(standings: readonly Standing[]): TemplateResult {
    return html`<section>
      <h2>${PLACES.unplaced}</h2>
      <ul class="stands">
        ${standings.map((standing) => html`<li>${this.dough(standing)}</li>`)}
      </ul>
      <p class="more">${PLACES.unplacedMore}</p>
    </section>`;
  }

  private restPlace({ place, air, doughs }: PlaceStand): TemplateResult {
    return html`<div>
      <h3>
        <icon-mark name=${PLACE_ICONS[place.kind]}></icon-mark>${place.name}<span
          >${temperatureText(air?.ambientC ?? place.temperatureC, this.unit)}</span
        >
        ${place.room === undefined ? nothing : html`<span class="count">${PLACES.taken(doughs.length, place.room)}</span>`}
      </h3>
      <place-air .place=${place} .air=${air} .zone=${this.zone} .unit=${this.unit}></place-air>
      ${
        doughs.length === 0
          ? html`<div class="shelf"><p class="empty">${PLACES.empty}</p></div>`
          : html`<ul class="stands shelf">
              ${doughs.map((standing) => html`<li>${this.dough(standing)}</li>`)}
            </ul>`
      }
    </div>`;
  }

  private mixer({ name, dough }: MixerStand): TemplateResult {
    const bowl = dough === null ? nothing : html`<span class="held">${bowlMark()}${dough.bowlName ?? PLACES.bowlUnsaid}</span>`;
    return html`<li class="slot">
      <h3><icon-mark name="mixer"></icon-mark>${name}</h3>
      ${dough === null ? html`<p class="free">${PLACES.free}</p>` : this.button(dough, bowl)}
    </li>`;
  }

  private deck({ name, temperatureC, slots }: DeckStand): TemplateResult {
    return html`<div class="deck">
      <h3>${name}<span>${temperatureText(temperatureC, this.unit)}</span></h3>
      <ul class="slots">
        ${slots.map((slot) => this.slotIn(slot, name))}
      </ul>
    </div>`;
  }

  private slotIn(slot: SlotStand, deckName: string): TemplateResult {
    const { name, dough } = slot;
    return html`<li class="slot">
      ${dough === null ? html`<p class="free">${name}<br />${PLACES.free}</p>` : this.button(dough, html`<span class="held">${name}</span>`)}
      <slot-heat .slotStand=${slot} .deckName=${deckName} .nowMs=${this.nowMs}></slot-heat>
    </li>`;
  }

  /** A dough at rest, in what it lies as far as anybody said. */
  private dough(standing: Standing): TemplateResult {
    const { vessels, bowlName } = standing;
    const vesselsHeld = vessels.map((held) => html`<span class="held">${vesselMarks(held)}${PLACES.held(held.count, held.name)}</span>`);
    const bowl = bowlName === null ? [] : [html`<span class="held">${bowlMark()}${bowlName}</span>`];
    const held = [...vesselsHeld, ...bowl];
    return this.button(standing, html`${held.length === 0 ? html`<span class="held">${lumpMark()}${PLACES.vesselUnsaid}</span>` : held}`);
  }

  private button({ workpieceId, tag, row }: Standing, held: TemplateResult | typeof nothing): TemplateResult {
    return html`<button
      type="button"
      class="middling"
      aria-current=${workpieceId === this.wantedId ? 'true' : nothing}
      @act=${() => this.dispatchEvent(new ShowScreenEvent({ kind: 'card', workpieceId }))}
    >
      <span class="name"
        ><role-mark .level=${row.role} .progress=${progressOf(row, this.nowMs)} .heard=${row.heardMs !== null}></role-mark>${tag}</span
      >
      <span class="comes"
        ><span>${rowVerb(row)}${row.role === 'running' ? nothing : html`<span class="unseen">, ${roleWords(row)}</span>`}</span
        ><strong>${countdownText(row.dueMs, this.nowMs, this.zone)}</strong></span
      >
      ${held}
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'places-view': PlacesView;
  }
}
