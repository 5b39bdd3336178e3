import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { RestPlace } from '../../shared/documents/kitchen.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { AirNow } from '../../shared/floor/place-air.ts';
import { clockText } from '../parts/clock-text.ts';
import { phaseLengthText } from '../parts/moved-text.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { MINUTES_UNIT } from '../words/phone.ts';
import { NUMBERS } from '../words/numbers.ts';
import { WARMTH } from '../words/warmth.ts';
import { valuesAround } from './around-model.ts';
import { celsiusOf, degreesIn, onReadingStep, READING_STEP, readingText } from './degrees.ts';
import './number-choice.ts';
import type { ValueSaidEvent } from './number-choice.ts';
import type { ValueChosenEvent } from './number-stepper.ts';
import { FloorCommandEvent, NewlyShownEvent } from './phone-events.ts';
import { baseStyles, buttonRowStyles, buttonStyles } from './phone-styles.ts';
import { RANGE_C } from './reading-model.ts';

/** Minutes that a door stands open, with one touch. */
const OPEN_MINUTES = [5, 10, 20] as const;
/** Chips below and above what the air is thought to be: with *Another…* two full rows. */
const BELOW = 4;
const ABOVE = 3;
/** Of these the door can be left open; a bench and a shelf have none. */
const HAS_DOOR: ReadonlySet<RestPlace['kind']> = new Set(['prover', 'retarder', 'cold-room', 'freezer']);

type Said = 'temperature' | 'door' | 'programme';

/** How warm the air of a rest place is, what says so, and what can be said of it. None of that can be taken back: each takes two touches. */
@customElement('place-air')
export class PlaceAir extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    buttonRowStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-2);
        padding-block: var(--space-1) var(--space-2);
        font-size: var(--type-small);
        color: var(--ink-soft);
        overflow-wrap: anywhere;
      }
      .row {
        grid-auto-flow: row;
        grid-template-columns: repeat(auto-fit, minmax(8.5em, 1fr));
      }
      .row > button {
        border-width: 2px;
        font-size: var(--type-text);
      }
      .said {
        display: grid;
        gap: var(--space-3);
        padding-block: var(--space-2);
      }
      h4 {
        margin: 0;
        font-size: var(--type-text);
        font-weight: var(--weight-word);
        color: var(--ink);
      }
      button[aria-expanded='true'] {
        background: var(--chosen);
      }
    `,
  ];

  @property({ attribute: false }) place: RestPlace | null = null;
  @property({ attribute: false }) air: AirNow | null = null;
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) unit: 'C' | 'F' = 'C';
  @state() private opened: Said | null = null;
  /** What the air was thought to be when the chips were opened: they stay as they are under the thumb. */
  @state() private expected = 0;
  @state() private degrees: number | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { place, air } = this;
    if (place === null || air === null) return nothing;
    return html`
      <p>${this.whatSaysSo(air)}</p>
      <div class="row" role="group" aria-label=${place.name}>
        ${this.opens('temperature', WARMTH.temperature, air)} ${HAS_DOOR.has(place.kind) ? this.opens('door', WARMTH.door, air) : nothing}
        ${place.programme === undefined ? nothing : this.opens('programme', WARMTH.programme, air)}
      </div>
      ${this.opened === null ? nothing : html`<div class="said">${this.saying(this.opened, place)}</div>`}
    `;
  }

  private whatSaysSo({ read, phase, openToMs }: AirNow): string {
    const parts = [
      ...(openToMs === null ? [] : [WARMTH.openTill(clockText(openToMs, this.zone))]),
      ...(read === null ? [] : [WARMTH.read(readingText(read.celsius, this.unit), clockText(read.atMs, this.zone))]),
      ...(phase === null ? [] : [WARMTH.phase(phase.nth, phase.of, phase.nextMs === null ? null : clockText(phase.nextMs, this.zone))]),
    ];
    return parts.length === 0 ? WARMTH.set : parts.join(' · ');
  }

  private opens(what: Said, label: string, air: AirNow): TemplateResult {
    const isOpen = this.opened === what;
    return html`<button type="button" class="middling" aria-expanded=${isOpen} @act=${() => this.open(isOpen ? null : what, air)}>
      ${label}
    </button>`;
  }

  private open(what: Said | null, { ambientC }: AirNow): void {
    this.opened = what;
    this.expected = onReadingStep(this.unit, ambientC);
    this.degrees = null;
    this.dispatchEvent(new NewlyShownEvent());
  }

  private saying(what: Said, place: RestPlace): TemplateResult {
    switch (what) {
      case 'temperature':
        return this.temperature(place);
      case 'door':
        return html`<h4>${WARMTH.doorTitle(place.name)}</h4>
          <div class="row">
            ${OPEN_MINUTES.map(
              (minutes) =>
                html`<button type="button" class="middling" @act=${() => this.say({ type: 'openPlace', placeId: place.id, minutes })}>
                  <span class="number">${minutes}</span><small>${MINUTES_UNIT}</small>
                </button>`,
            )}
          </div>`;
      case 'programme':
        return html`<h4>${WARMTH.programmeTitle(place.name)}</h4>
          <p>${this.phases(place)}</p>
          <button type="button" class="middling filled" @act=${() => this.say({ type: 'beginProgramme', placeId: place.id })}>
            ${WARMTH.begin}
          </button>
          <p>${WARMTH.beginMore}</p>`;
    }
  }

  private temperature(place: RestPlace): TemplateResult {
    const { unit, expected } = this;
    const range = {
      least: Math.ceil(degreesIn(unit, RANGE_C.room.least)),
      most: Math.floor(degreesIn(unit, RANGE_C.room.most)),
    };
    const step = READING_STEP[unit];
    const say = (degrees: number): void => this.say({ type: 'readPlace', placeId: place.id, celsius: celsiusOf(unit, degrees) });
    const { degrees } = this;
    return html`<h4>${WARMTH.temperatureTitle(place.name)}</h4>
      <number-choice
        label=${WARMTH.temperatureTitle(place.name)}
        unit=${`°${unit}`}
        .values=${valuesAround(expected, step, BELOW, ABOVE, range)}
        .expected=${expected}
        .value=${degrees ?? expected}
        .step=${step}
        .digits=${1}
        .least=${range.least}
        .most=${range.most}
        @value-said=${(event: ValueSaidEvent) => say(event.value)}
        @value-chosen=${(event: ValueChosenEvent) => (this.degrees = event.value)}
      ></number-choice>
      ${
        degrees === null
          ? nothing
          : html`<button type="button" class="middling filled" @act=${() => say(degrees)}>
              ${NUMBERS.reads(readingText(celsiusOf(unit, degrees), unit))}
            </button>`
      }`;
  }

  /** "8 h at 3 °C, 2 h at 12 °C, then 20 °C". */
  private phases({ programme = [] }: RestPlace): string {
    return programme
      .map(({ minutes, temperatureC }, index) => {
        const temperature = temperatureText(temperatureC, this.unit);
        const isLast = index > 0 && index === programme.length - 1;
        return isLast ? WARMTH.programmeLast(temperature) : WARMTH.programmePhase(phaseLengthText(minutes), temperature);
      })
      .join(', ');
  }

  private say(command: ClientCommand): void {
    this.opened = null;
    this.degrees = null;
    this.dispatchEvent(new FloorCommandEvent(command));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'place-air': PlaceAir;
  }
}
