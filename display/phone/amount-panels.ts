import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { PutBackKind } from '../../shared/documents/formula.ts';
import type { CommandOf } from '../../shared/floor/commands.ts';
import { lossNamed } from '../../shared/floor/events.ts';
import { refusalOf } from '../../shared/floor/ways-out/asked.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { LOSSES, PUT_BACK } from '../words/floor.ts';
import { PANELS } from '../words/panels.ts';
import { THIS_PHONE } from '../words/this-phone.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';
import { putBackChoices } from './more-model.ts';
import './number-stepper.ts';
import type { ValueChosenEvent } from './number-stepper.ts';
import { sourcesOf, type Source } from './takes-model.ts';

/** Step of the weights, in grams. */
const STEP_G = 10;
/** What a thumb begins from where nothing says how much, in grams. */
const SOME_G = 100;

type Loss = CommandOf<'nameLoss'>['what'];

/** What is no longer there of a dough. */
@customElement('loss-panel')
export class LossPanel extends CardPanel {
  @state() private what: Loss | null = null;
  @state() private grams = SOME_G;
  @state() private pieces = 1;

  protected override panel(card: CardModel, _floor: FloorState, workpiece: Workpiece): TemplateResult {
    const { what } = this;
    const countsPieces = what === 'pieces' && workpiece.pieces !== null && workpiece.pieces > 0;
    const grams = countsPieces
      ? Math.round((workpiece.grams / (workpiece.pieces ?? 1)) * this.pieces)
      : Math.min(this.grams, workpiece.grams);
    return html`
      <h2>${PANELS.lossTitle(card.tag)}</h2>
      <div class="two">
        ${lossNamed.shape.what.options.map((option) => this.chip(LOSSES[option], () => (this.what = option), option === what))}
      </div>
      ${
        countsPieces
          ? html`<number-stepper
              label=${PANELS.pieces}
              .value=${this.pieces}
              .least=${1}
              .most=${workpiece.pieces}
              @value-chosen=${(event: ValueChosenEvent) => (this.pieces = event.value)}
            ></number-stepper>`
          : this.weightStepper(PANELS.weight, grams, { stepG: STEP_G, mostG: Math.floor(workpiece.grams) }, (said) => (this.grams = said))
      }
      ${this.doing(PANELS.lossDo(this.weightText(grams)), what !== null && grams > 0, () => {
        if (what === null) return;
        this.say({ type: 'nameLoss', workpieceId: workpiece.id, what, grams, ...(countsPieces ? { pieces: this.pieces } : {}) });
      })}
    `;
  }
}

/** More of a ferment or a prep than the way says. */
@customElement('extra-panel')
export class ExtraPanel extends CardPanel {
  @state() private fromId: string | null = null;
  @state() private grams = SOME_G;

  protected override panel(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    const sources = sourcesOf(floor, workpiece);
    const from = sources.find((source) => source.workpieceId === this.fromId) ?? sources[0];
    return html`
      <h2>${PANELS.extraTitle(card.tag)}</h2>
      <div class="two">
        ${sources.map(
          (source) =>
            html`<button type="button" class="middling" aria-pressed=${source === from} @act=${() => (this.fromId = source.workpieceId)}>
              ${source.tag}<small>${this.weightText(source.grams)}</small>
            </button>`,
        )}
      </div>
      ${
        from === undefined
          ? nothing
          : html`${this.weightStepper(PANELS.weight, Math.min(this.grams, Math.floor(from.grams)), { stepG: STEP_G, mostG: Math.floor(from.grams) }, (said) => (this.grams = said))}
            ${this.draw(floor, workpiece, from)}`
      }
    `;
  }

  /** The draw as a button; where it would take of the seed, it says so and is said knowingly. */
  private draw(floor: FloorState, workpiece: Workpiece, from: Source): TemplateResult {
    const grams = Math.min(this.grams, Math.floor(from.grams));
    const draw = { type: 'drawFrom' as const, fromWorkpieceId: from.workpieceId, toWorkpieceId: workpiece.id, grams };
    const refusal = refusalOf(floor, draw, this.nowMs);
    if (refusal?.code !== 'lastOfFerment')
      return this.doing(PANELS.extraDo(this.weightText(grams), from.tag), grams > 0, () => this.say(draw));
    return html`<button type="button" class="middling filled" @act=${() => this.say({ ...draw, despite: ['lastOfFerment'] })}>
      ${PANELS.extraDo(this.weightText(grams), from.tag)}: ${THIS_PHONE.drawDespite}<small
        >${THIS_PHONE.lastOfIt(this.weightText(refusal.seedG))}</small
      >
    </button>`;
  }
}

/** Scrap, trim and old dough that go back into a dough in the bowl. */
@customElement('put-back-panel')
export class PutBackPanel extends CardPanel {
  @state() private chosen = 0;
  @state() private what: PutBackKind | null = null;
  @state() private grams: number | null = null;

  protected override panel(_card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    const choices = putBackChoices(floor, workpiece);
    const choice = choices[this.chosen] ?? choices[0];
    if (choice === undefined) return html`<h2>${PANELS.putBackTitle}</h2>`;
    const what = choice.whats.find((kind) => kind === this.what) ?? choice.whats[0] ?? 'scrap';
    const mostG = Math.floor(choice.mostG);
    const grams = Math.min(this.grams ?? mostG, mostG);
    return html`
      <h2>${PANELS.putBackTitle}</h2>
      <div class="two">
        ${choices.map((pair, index) => this.chip(PANELS.putBackPair(pair.from.tag, pair.to.tag), () => (this.chosen = index), pair === choice))}
      </div>
      ${choice.whats.length < 2 ? nothing : html`<div class="row">${choice.whats.map((kind) => this.chip(PUT_BACK[kind], () => (this.what = kind), kind === what))}</div>`}
      ${this.weightStepper(PANELS.weight, grams, { stepG: STEP_G, mostG }, (said) => (this.grams = said))}
      ${this.doing(PANELS.putBackDo(this.weightText(grams)), grams > 0, () =>
        this.say({ type: 'putBack', fromWorkpieceId: choice.from.workpieceId, toWorkpieceId: choice.to.workpieceId, what, grams }),
      )}
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'loss-panel': LossPanel;
    'extra-panel': ExtraPanel;
    'put-back-panel': PutBackPanel;
  }
}
