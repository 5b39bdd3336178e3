import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { House } from '../../shared/documents/house.ts';
import type { TakenWater } from '../../shared/floor/state.ts';
import type { WaterPlan } from '../../shared/floor/water-plan.ts';
import { clockText } from '../parts/clock-text.ts';
import '../parts/icon-mark.ts';
import { degreesIn, readingText } from '../phone/degrees.ts';
import { baseStyles, buttonStyles } from '../phone/phone-styles.ts';
import { numberWords, READ_WHERE } from '../words/numbers.ts';
import { WEIGH } from '../words/weigh.ts';
import { customaryWords, differenceText } from './degree-words.ts';
import { inputsAsked, knownOf, type InputWhere, type WaterModel } from './water-model.ts';
import { WaterPanelWantedEvent } from './weigh-events.ts';
import { weighStyles } from './weigh-styles.ts';
import { weightText } from '../parts/weight-text.ts';
import { weightSpoken } from './spoken-weight.ts';

/** The water of a dough: how warm, how much of it as ice, what that is reckoned from, and what the mixer is known to do. */
@customElement('water-view')
export class WaterView extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    weighStyles,
    css`
      .top,
      .amounts {
        display: flex;
        flex-wrap: wrap;
        align-items: flex-end;
        gap: var(--space-1) var(--space-5);
      }
      .amounts {
        margin-block: var(--space-2);
      }
      @media (max-height: 719px) {
        .top,
        .amounts {
          column-gap: var(--space-4);
        }
        .amounts dd.figure {
          font-size: var(--type-figure);
        }
      }
      .amounts div {
        display: flex;
        flex-direction: column-reverse;
      }
      dt {
        font-size: var(--type-small);
        color: var(--ink-soft);
      }
      .amounts dd {
        font-size: var(--type-verb);
        font-weight: var(--weight-strong);
        line-height: 1.1;
        font-variant-numeric: tabular-nums;
      }
      h3 {
        margin: var(--space-4) 0 var(--space-2);
        font-size: var(--type-small);
        font-weight: var(--weight-word);
        color: var(--ink-soft);
      }
      .inputs {
        display: grid;
        grid-template-columns: repeat(2, minmax(0, 1fr));
        gap: var(--space-4);
      }
      .inputs button {
        border-width: 2px;
      }
      .inputs strong {
        font-size: var(--type-figure);
        font-variant-numeric: tabular-nums;
      }
      .inputs small,
      .inputs span {
        font-size: var(--type-small);
      }
      .rise {
        font-size: var(--type-title);
        font-weight: var(--weight-word);
      }
      .hard {
        margin-block: var(--space-2);
        padding: var(--space-2) var(--space-3);
        border: var(--rule) solid var(--ink);
        font-size: var(--type-title);
        font-weight: var(--weight-strong);
      }
    `,
  ];

  @property({ attribute: false }) model: WaterModel | null = null;
  @property({ attribute: false }) taken: TakenWater | null = null;
  @property({ attribute: false }) units: House['units'] = { temperature: 'C', weight: 'g' };
  @property({ attribute: false }) zone = 'UTC';
  /** How cold the house's ice is, in °C. */
  @property({ attribute: false }) iceC = 0;

  protected override render(): TemplateResult {
    const { model } = this;
    if (model === null)
      return html`<h2 tabindex="-1">${WEIGH.waterTitle}</h2>
        <p class="note">${WEIGH.noTarget}</p>`;
    const { plan } = model;
    return html`
      <h2 tabindex="-1">${plan === null || plan.liquid.isWater ? WEIGH.waterTitle : plan.liquid.name}</h2>
      ${plan === null ? html`<p class="note strong">${WEIGH.inputsMissing}</p>` : this.plan(plan)} ${this.takenNote()}
      <h3>${WEIGH.inputs}</h3>
      <div class="inputs" role="group" aria-label=${WEIGH.inputs}>${inputsAsked(model).map((where) => this.input(model, where))}</div>
      ${plan === null ? nothing : this.rise(plan, model)}
    `;
  }

  private plan(plan: WaterPlan): TemplateResult {
    const unit = this.units.temperature;
    const { ice, coldestDoughC, balance, liquid } = plan;
    return html`
      <p class="place">${WEIGH.waterFor(readingText(plan.doughC, unit))}</p>
      <div class="top">
        <p class="huge">
          <span class="unseen">${WEIGH.waterC}: </span>${numberWords(degreesIn(unit, plan.requiredC))}<small> °${unit}</small>
        </p>
        <dl class="amounts">
          ${ice === null || ice.iceG === 0 ? this.amount(liquid.name, liquid.grams) : [this.amount(WEIGH.iceAt(readingText(this.iceC, unit)), ice.iceG), this.amount(WEIGH.tapWater, ice.tapWaterG)]}
        </dl>
      </div>
      ${coldestDoughC === null ? nothing : html`<p class="hard">${WEIGH.notReachable(readingText(coldestDoughC, unit))}</p>`}
      ${liquid.heldBackG === 0 ? nothing : html`<p class="note">${WEIGH.heldBackOfIt(weightText(liquid.heldBackG, this.units))}</p>`}
      ${liquid.isWater && ice === null ? html`<p class="note strong">${WEIGH.tapUnknown}</p>` : nothing}
      ${balance === null ? nothing : html`<p class="note">${WEIGH.secondOpinion(this.balanceText(balance))}</p>`}
    `;
  }

  private balanceText({ requiredC, ice }: NonNullable<WaterPlan['balance']>): string {
    const water = readingText(requiredC, this.units.temperature);
    return ice === null || ice.iceG === 0 ? water : WEIGH.withIce(water, weightText(ice.iceG, this.units));
  }

  private amount(name: string, grams: number): TemplateResult {
    return html`<div>
      <dt>${name}</dt>
      <dd class="figure">
        <span class="unseen">${weightSpoken(grams, this.units)}</span><span aria-hidden="true">${weightText(grams, this.units)}</span>
      </dd>
    </div>`;
  }

  private takenNote(): TemplateResult | typeof nothing {
    const { taken } = this;
    if (taken === null) return nothing;
    return html`<p class="note strong mark">
      <icon-mark name="done"></icon-mark
      ><span>${WEIGH.waterWasIn(readingText(taken.waterC, this.units.temperature), clockText(taken.atMs, this.zone))}</span>
    </p>`;
  }

  private input(model: WaterModel, where: InputWhere): TemplateResult {
    const known = knownOf(model, where);
    const from =
      known === null
        ? WEIGH.inputUnknown
        : known.from === 'reading' && known.atMs !== null
          ? WEIGH.inputAt(clockText(known.atMs, this.zone))
          : WEIGH.inputFrom[known.from === 'place' ? 'place' : 'room'];
    return html`<button type="button" class="middling" @act=${() => this.dispatchEvent(new WaterPanelWantedEvent(where))}>
      <span>${READ_WHERE[where]}</span>
      <strong>${known === null ? '?' : readingText(known.celsius, this.units.temperature)}</strong>
      <small>${from}</small>
    </button>`;
  }

  private rise({ rise }: WaterPlan, { customary, mixer }: WaterModel): TemplateResult {
    const unit = this.units.temperature;
    const words = [
      ...(customary === null || customary.form === 'rise' ? [] : [customaryWords(customary)]),
      WEIGH.riseWords(differenceText(rise.riseK, unit)),
      ...(rise.spreadK === null ? [] : [WEIGH.riseSpread(differenceText(rise.spreadK, unit))]),
    ];
    const from = [...(rise.count === 0 ? [] : [WEIGH.riseFrom(rise.count)]), WEIGH.riseSource[rise.from]];
    return html`
      <h3>${mixer === null ? WEIGH.rise : WEIGH.riseOf(mixer.name)}</h3>
      <p class="rise">${words.join(' · ')}</p>
      <p class="place">${from.join(' · ')}</p>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'water-view': WaterView;
  }
}
