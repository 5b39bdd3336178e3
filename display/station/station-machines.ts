import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FloorState } from '../../shared/floor/state.ts';
import { clockText, countdownText } from '../parts/clock-text.ts';
import { dayTag, floorDateOf } from '../parts/day-tag.ts';
import '../parts/role-mark.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { zoneOf } from '../phone/floor-facts.ts';
import { baseStyles } from '../phone/phone-styles.ts';
import { deckHeatTexts } from '../parts/deck-heat-text.ts';
import { rowVerb } from '../parts/row-verb.ts';
import { progressOf } from '../phone/row-words.ts';
import { BLOCKED_WHY } from '../words/floor.ts';
import { blockedTillWords, inSlotWords, nextLoadWords, STATION } from '../words/station.ts';
import type { DeckLine, MixerLine, SlotLine } from './station-model.ts';

/** The machines of a station: mixers with what is in them, decks with when each slot is free. */
@customElement('station-machines')
export class StationMachines extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
        padding: var(--space-4);
        overflow-wrap: anywhere;
      }
      h2 {
        color: var(--ink-soft);
        font-size: var(--type-text);
        font-weight: var(--weight-word);
      }
      .machine {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 2px 12px;
        padding: var(--space-2) 0;
        border-top: 1px solid var(--line);
        font-size: var(--type-title);
      }
      .name {
        font-weight: var(--weight-strong);
      }
      .soft {
        color: var(--ink-soft);
        font-size: var(--type-text);
      }
      .state {
        margin-inline-start: auto;
        font-weight: var(--weight-word);
        white-space: nowrap;
      }
      role-mark {
        align-self: center;
        font-size: var(--type-title);
      }
      .blocked {
        padding: 0 var(--space-2);
        border: var(--hairline) solid var(--ink);
        font-weight: var(--weight-word);
      }
      .slots {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 130px), 1fr));
        gap: var(--space-2);
        flex: 1 0 100%;
      }
      .slot {
        display: grid;
        align-content: start;
        min-width: 0;
        padding: 6px 10px;
        border: var(--hairline) dashed var(--ink);
        border-radius: var(--radius);
        background: var(--field);
      }
      .slot.full {
        border-style: solid;
        background: var(--rest);
      }
      .slot.full .soft {
        color: var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) floor: FloorState | null = null;
  @property({ attribute: false }) mixers: readonly MixerLine[] = [];
  @property({ attribute: false }) decks: readonly DeckLine[] = [];
  @property({ attribute: false }) nowMs = 0;

  protected override render(): TemplateResult | typeof nothing {
    const { floor } = this;
    if (floor === null) return nothing;
    return html`
      ${
        this.mixers.length === 0
          ? nothing
          : html`<section>
              <h2>${STATION.mixers}</h2>
              <ul>
                ${this.mixers.map((line) => this.mixer(floor, line))}
              </ul>
            </section>`
      }
      ${
        this.decks.length === 0
          ? nothing
          : html`<section>
              <h2>${STATION.ovens}</h2>
              <ul>
                ${this.decks.map((line) => this.deck(floor, line))}
              </ul>
            </section>`
      }
    `;
  }

  private mixer(floor: FloorState, { mixer, row, block }: MixerLine): TemplateResult {
    return html`<li class="machine">
      <span class="name">${mixer.name}</span>${this.blocked(floor, block)}
      ${
        row === null
          ? html`<span class="state">${block === null ? STATION.mixerEmpty : nothing}</span>`
          : html`<role-mark .level=${row.role} .progress=${progressOf(row, this.nowMs)} .heard=${true}></role-mark>
              <span>${dayTag(row.tag, row.serviceDate, floorDateOf(floor))} ${rowVerb(row)}</span>
              <span class="state">${countdownText(row.dueMs, this.nowMs, zoneOf(floor))}</span>`
      }
    </li>`;
  }

  private deck(floor: FloorState, line: DeckLine): TemplateResult {
    const { name, temperatureC, freeMs, block, slots } = line;
    const unit = floor.house?.document.units.temperature ?? 'C';
    const empty = deckHeatTexts(line, this.nowMs, zoneOf(floor), unit)[0] ?? STATION.deckFree;
    return html`<li class="machine">
      <span class="name">${name}</span><span class="soft">${temperatureText(temperatureC, unit)}</span>${this.blocked(floor, block)}
      <span class="state">${block !== null ? nothing : freeMs === null ? empty : countdownText(freeMs, this.nowMs, zoneOf(floor))}</span>
      <ul class="slots">
        ${slots.map((slot) => this.slotItem(floor, slot))}
      </ul>
    </li>`;
  }

  private slotItem(floor: FloorState, { name, inside, next }: SlotLine): TemplateResult {
    const zone = zoneOf(floor);
    return html`<li class="slot ${inside === null ? '' : 'full'}">
      <span class="soft">${name}</span>
      <span>${inside === null ? STATION.deckFree : inSlotWords(inside.tag, countdownText(inside.outMs, this.nowMs, zone))}</span>
      ${next === null ? nothing : html`<span class="soft">${nextLoadWords(next.tag, clockText(next.fromMs, zone))}</span>`}
    </li>`;
  }

  private blocked(floor: FloorState, block: MixerLine['block']): TemplateResult | typeof nothing {
    if (block === null) return nothing;
    const until = block.untilMs === undefined ? null : clockText(block.untilMs, zoneOf(floor));
    return html`<span class="blocked">${blockedTillWords(BLOCKED_WHY[block.why], until)}</span>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'station-machines': StationMachines;
  }
}
