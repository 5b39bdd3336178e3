import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { clockText } from '../parts/clock-text.ts';
import { NUMBERS, READ_WHERE } from '../words/numbers.ts';
import { valuesAround } from './around-model.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';
import { celsiusOf, onReadingStep, readingText } from './degrees.ts';
import './number-choice.ts';
import type { ValueSaidEvent } from './number-choice.ts';
import type { ValueChosenEvent } from './number-stepper.ts';
import { askedReading, lastReading, readingCommand, readingField, readWheres, wantedC, type ReadWhere } from './reading-model.ts';

/** Chips below and above the expected reading: with *Another…* two full rows. */
const BELOW = 3;
const ABOVE = 4;

/** What a probe reads, of dough, core, water, filling or room: one touch around what is expected. */
@customElement('temperature-panel')
export class TemperaturePanel extends CardPanel {
  @state() private chosen: ReadWhere | null = null;
  @state() private degrees: number | null = null;
  /** When the chips were shown: they stay as they are under the thumb. */
  private shownMs: number | null = null;

  protected override panel(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    const wheres = readWheres(floor, workpiece);
    const where = this.chosen ?? askedReading(floor, workpiece) ?? wheres[0] ?? 'dough';
    const field = readingField(floor, workpiece, where, this.unit, (this.shownMs ??= this.nowMs));
    const { expected, step } = field;
    const degrees = this.degrees ?? field.start;
    const say = (value: number): void => this.say(readingCommand(workpiece.id, where, value, this.unit));
    return html`
      <h2>${NUMBERS.temperatureTitle(card.tag)}</h2>
      ${this.known(floor, workpiece, where)}
      <number-choice
        data-where=${where}
        label=${READ_WHERE[where]}
        unit=${`°${this.unit}`}
        .values=${expected === null ? [] : valuesAround(expected, step, BELOW, ABOVE, field)}
        .expected=${this.wanted(floor, workpiece, where)}
        .value=${degrees}
        .step=${step}
        .digits=${1}
        .least=${field.least}
        .most=${field.most}
        @value-said=${(event: ValueSaidEvent) => say(event.value)}
        @value-chosen=${(event: ValueChosenEvent) => (this.degrees = event.value)}
      ></number-choice>
      ${
        this.degrees === null && expected !== null
          ? nothing
          : this.doing(NUMBERS.reads(readingText(celsiusOf(this.unit, degrees), this.unit)), true, () => say(degrees))
      }
      ${where === 'core' || where === 'filling' ? html`<p class="note">${NUMBERS.coreCaution}</p>` : nothing}
      ${wheres.length < 2 ? nothing : html`<div class="row">${wheres.map((one) => this.chip(READ_WHERE[one], () => this.ask(one), one === where))}</div>`}
    `;
  }

  /** What the formula or the step wants, as the chips count; null where neither says. */
  private wanted(floor: FloorState, workpiece: Workpiece, where: ReadWhere): number | null {
    const wanted = wantedC(floor, workpiece, where);
    return wanted === null ? null : onReadingStep(this.unit, wanted);
  }

  /** "wanted 25 °C · last 24.5 °C at 04:10". */
  private known(floor: FloorState, workpiece: Workpiece, where: ReadWhere): TemplateResult | typeof nothing {
    const wanted = wantedC(floor, workpiece, where);
    const last = lastReading(floor, workpiece, where);
    const parts = [
      ...(wanted === null ? [] : [NUMBERS.wanted(readingText(wanted, this.unit))]),
      ...(last === null ? [] : [NUMBERS.lastRead(readingText(last.celsius, this.unit), clockText(last.atMs, this.zone))]),
    ];
    return parts.length === 0 ? nothing : html`<p class="note">${parts.join(' · ')}</p>`;
  }

  private ask(where: ReadWhere): void {
    this.chosen = where;
    this.degrees = null;
    this.shownMs = null;
    this.turned();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'temperature-panel': TemperaturePanel;
  }
}
