import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { PANELS } from '../words/panels.ts';
import { VERBS } from '../words/verbs.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';
import { heldBackG, takeChoices, type TakeChoice } from './takes-model.ts';

/** Step of the weights, in grams. */
const STEP_G = 10;
/** Heavier than anything that a step takes, in grams. */
const MOST_G = 10_000_000;

interface Wanted {
  readonly fromId?: string;
  readonly grams?: number;
}

/** What a step takes of ferments, preps and water held back, where it is not what the formula says. */
@customElement('inputs-panel')
export class InputsPanel extends CardPanel {
  @state() private wanted: ReadonlyMap<string, Wanted> = new Map();
  @state() private share: number | null = null;

  protected override panel(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    const takes = takeChoices(floor, workpiece, card.action, this.nowMs);
    const heldG = heldBackG(floor, workpiece, card.action);
    return html`
      <h2>${PANELS.inputsTitle(card.tag)}</h2>
      ${takes.map((take) => this.take(take))} ${heldG === null ? nothing : this.held(heldG)}
      ${this.doing(PANELS.inputsDone(card.tag, VERBS[card.action.verb].done), true, () => this.finish(card, takes, heldG))}
    `;
  }

  private take(take: TakeChoice): TemplateResult {
    const wanted = this.wanted.get(take.formulaId) ?? {};
    const fromId = wanted.fromId ?? take.sources[0]?.workpieceId;
    const want = (more: Wanted): void => void (this.wanted = new Map([...this.wanted, [take.formulaId, { ...wanted, ...more }]]));
    return html`
      <section>
        <h3>${take.name}</h3>
        <div class="two">
          ${take.sources.map(
            (source) =>
              html`<button
                type="button"
                class="middling"
                aria-pressed=${source.workpieceId === fromId}
                @act=${() => want({ fromId: source.workpieceId })}
              >
                ${source.tag}<small>${this.weightText(source.grams)}</small>
              </button>`,
          )}
        </div>
        ${
          take.sources.length === 0
            ? html`<p class="note">${PANELS.noSource}</p>`
            : this.weightStepper(PANELS.weight, wanted.grams ?? Math.round(take.grams), { stepG: STEP_G, mostG: MOST_G }, (grams) =>
                want({ grams }),
              )
        }
      </section>
    `;
  }

  private held(heldG: number): TemplateResult {
    return html`
      <section>
        <h3>${PANELS.heldBack(this.weightText(heldG))}</h3>
        <div class="row">
          ${PANELS.heldShares.map(({ share, text }) => this.chip(text, () => (this.share = share), share === (this.share ?? 1)))}
        </div>
      </section>
    `;
  }

  /** What nobody changed is left to the formula. */
  private finish(card: CardModel, takes: readonly TakeChoice[], heldG: number | null): void {
    const draws = takes.flatMap((take) => {
      const wanted = this.wanted.get(take.formulaId);
      const fromWorkpieceId = wanted?.fromId ?? take.sources[0]?.workpieceId;
      return fromWorkpieceId === undefined ? [] : [{ fromWorkpieceId, grams: wanted?.grams ?? take.grams }];
    });
    this.say({
      type: 'finishStep',
      ...this.onStep(card),
      ...(this.wanted.size === 0 ? {} : { draws }),
      ...(heldG === null || this.share === null ? {} : { usedHeldBackG: heldG * this.share }),
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'inputs-panel': InputsPanel;
  }
}
