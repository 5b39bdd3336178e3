import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { House } from '../../shared/documents/house.ts';
import type { Ingredient } from '../../shared/documents/formula.ts';
import type { Verb } from '../../shared/documents/method.ts';
import type { GoesIn } from '../../shared/floor/goes-in.ts';
import { clockText } from '../parts/clock-text.ts';
import '../parts/icon-mark.ts';
import { baseStyles } from '../phone/phone-styles.ts';
import { VERBS } from '../words/verbs.ts';
import { WEIGH } from '../words/weigh.ts';
import { bigWeight } from './big-weight.ts';
import './lot-choice.ts';
import type { LotChoice } from './lot-choice.ts';
import { atHandG, scaleShowsG, type PlacedLine } from './weigh-model.ts';
import { weighStyles } from './weigh-styles.ts';
import { weightText } from '../parts/weight-text.ts';

/** One line of a weigh-out, large: how much of what, what the scale shows, when the rest of it goes in, and its lot. */
@customElement('weigh-line')
export class WeighLineElement extends LitElement {
  static override styles = [
    baseStyles,
    weighStyles,
    css`
      .scale {
        font-size: var(--type-title);
        font-weight: var(--weight-word);
        font-variant-numeric: tabular-nums;
      }
      .out {
        margin-block: var(--space-2);
        padding: var(--space-2) var(--space-3);
        background: var(--ink);
        color: var(--paper);
        font-size: var(--type-step);
        font-weight: var(--weight-strong);
      }
      .in {
        margin-top: var(--space-2);
        font-size: var(--type-title);
        font-weight: var(--weight-strong);
      }
      lot-choice {
        margin-top: var(--space-3);
      }
    `,
  ];

  @property({ attribute: false }) placed: PlacedLine | null = null;
  @property({ attribute: false }) kind: Ingredient['kind'] | null = null;
  @property({ attribute: false }) units: House['units'] = { temperature: 'C', weight: 'g' };
  @property({ attribute: false }) zone = 'UTC';
  /** The verb of each step that a portion goes in at. */
  @property({ attribute: false }) verbs: ReadonlyMap<string, Verb> = new Map();
  /** Whether a lot number belongs to it. */
  @property({ attribute: false }) hasLot = false;
  @property({ attribute: false }) lot: string | null = null;
  @property({ attribute: false }) notSent = false;
  @query('lot-choice') private lotChoice!: LotChoice | null;

  /** One step back: a lot that is typed is let be. False where none is. */
  stepBack(): boolean {
    return this.lotChoice?.stepBack() ?? false;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { placed, units } = this;
    if (placed === null) return nothing;
    const { line, part } = placed;
    return html`
      ${part.isDough ? nothing : html`<p class="place">${WEIGH.ownBowl(part.name)}</p>`}
      <h2 tabindex="-1">${line.name}</h2>
      ${bigWeight(atHandG(line), units, line.divisionG)}
      ${atHandG(line) === line.grams ? nothing : html`<p class="note">${WEIGH.inAll(weightText(line.grams, units, line.divisionG))}</p>`}
      ${line.takeOutG > 0 ? html`<p class="out">${WEIGH.takeOut(weightText(line.takeOutG, units, line.divisionG))}</p>` : nothing}
      ${this.scale(placed)}
      ${line.portions.filter(({ stepId, isHeldBack }) => stepId !== null || isHeldBack).map((portion) => this.portion(portion, placed))}
      ${this.origin()} ${this.state()}
      ${this.hasLot && !line.isIn ? html`<lot-choice .lots=${line.lots} .chosen=${this.lot}></lot-choice>` : nothing}
      ${this.kind === 'flour' ? html`<p class="caution">${WEIGH.dustCaution}</p>` : nothing}
      ${line.portions.some(({ stepId }) => stepId !== null) ? html`<p class="caution">${WEIGH.mixerCaution}</p>` : nothing}
    `;
  }

  private scale(placed: PlacedLine): TemplateResult | typeof nothing {
    const shownG = scaleShowsG(placed);
    if (shownG === null || shownG === atHandG(placed.line)) return nothing;
    const { divisionG } = placed.line;
    return html`<p class="scale">${WEIGH.scaleShows(weightText(shownG, this.units, divisionG))}</p>
      <p class="place">${WEIGH.scaleNote}</p>`;
  }

  private portion({ stepId, grams, isHeldBack }: GoesIn, { line }: PlacedLine): TemplateResult {
    const verb = stepId === null ? undefined : this.verbs.get(stepId);
    const name = verb === undefined ? null : VERBS[verb].running;
    const weight = weightText(grams, this.units, line.divisionG);
    return html`<p class="note strong">${isHeldBack ? WEIGH.heldBack(weight, name) : WEIGH.later(weight, name ?? '')}</p>`;
  }

  private origin(): TemplateResult | typeof nothing {
    switch (this.placed?.line.kind) {
      case 'formula':
        return html`<p class="note soft">${WEIGH.fromPot}</p>`;
      case 'seed':
        return html`<p class="note soft">${WEIGH.ofSeed}</p>`;
      case 'part':
        return html`<p class="note soft">${WEIGH.ofPart}</p>`;
      case 'ingredient':
      case undefined:
        return nothing;
    }
  }

  private state(): TemplateResult | typeof nothing {
    const line = this.placed?.line;
    if (line === undefined || line.weighed === null) return nothing;
    const { grams, atMs, lotNumbers } = line.weighed;
    const words = [
      WEIGH.inSince(weightText(grams, this.units, line.divisionG), clockText(atMs, this.zone)),
      ...lotNumbers.map((lot) => WEIGH.lotOf(lot)),
      ...(this.notSent ? [WEIGH.notSent] : []),
    ];
    return html`<p class="in mark"><icon-mark name="done"></icon-mark><span>${words.join(' · ')}</span></p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'weigh-line': WeighLineElement;
  }
}
