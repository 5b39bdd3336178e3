import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { DeckLanes } from '../../shared/floor/oven-lanes.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { place, px } from '../parts/place.ts';
import { fittingText } from '../parts/text-width.ts';
import { WALL } from '../words/wall.ts';
import type { Arrangement } from './arrangement.ts';
import { blockedMixers } from './blocks.ts';
import { deckModel } from './deck-model.ts';
import type { DeckPlan } from './governor.ts';
import { LoadTextMemory } from './load-text-memory.ts';
import { widthSizes } from './type-sizes.ts';
import './wall-deck.ts';
import './wall-lanes.ts';

/** A mixer's name takes no more than this share of its line: why it cannot be used is to be read. */
const MOST_NAME = 0.4;

/** The ovens at the bottom of the wall, their decks as they stand, and the mixers that cannot be used. */
@customElement('wall-ovens')
export class WallOvens extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      position: relative;
      display: block;
    }
    section {
      border-top: var(--rule) solid var(--line-strong);
    }
    .line {
      display: grid;
      grid-template-columns: var(--left) minmax(0, 1fr);
    }
    .line > :nth-child(2) {
      margin-left: calc(var(--now) / 2);
    }
    .deck + .deck {
      border-top: var(--hairline) solid var(--rest);
    }
    .deck + .new-oven {
      border-top-color: var(--line-strong);
    }
    .more,
    .mixers {
      display: flex;
      align-items: center;
      padding-left: calc(var(--edge) + var(--gap));
      border-top: var(--hairline) solid var(--rest);
      font-size: var(--near);
      color: var(--ink-soft);
    }
    .mixers {
      width: var(--left);
      gap: var(--gap);
      color: var(--ink);
      font-weight: var(--weight-word);
      line-height: 1;
      white-space: nowrap;
    }
    .hatch {
      width: 1.4em;
      height: 0.8em;
      flex: none;
      border: 3px solid var(--block);
      background: repeating-linear-gradient(-45deg, var(--running) 0 6px, var(--paper) 6px 20px);
    }
  `;

  @property({ attribute: false }) state: FloorState | null = null;
  @property({ attribute: false }) arrangement: Arrangement | null = null;
  @property({ attribute: false }) decks: readonly DeckLanes[] = [];
  @property({ type: Number }) nowMs = 0;
  @property({ type: Number }) axisPx = 0;

  private readonly names = new Map<string, LoadTextMemory>();

  protected override render(): TemplateResult | typeof nothing {
    const { state, arrangement } = this;
    if (state === null || arrangement === null) return nothing;
    const { plan } = arrangement;
    return html`<section aria-label=${WALL.ovens}>
      ${plan.decks.map((deck) => this.deck(state, deck, arrangement))}
      ${plan.hiddenDecks === 0 ? nothing : html`<div class="more" ${place({ height: px(plan.hiddenDecksPx) })}>+${plan.hiddenDecks} ${WALL.moreDecks}</div>`}
      ${plan.blockedMixersPx === 0 ? nothing : this.mixers(state, arrangement)}
    </section>`;
  }

  /** The line keeps its height until the next event, even when the last cleaning has run out meanwhile. */
  private mixers(state: FloorState, { plan, columns }: Arrangement): TemplateResult {
    const roomPx = plan.leftPx - columns.edgePx - 4 * columns.gapPx - plan.sizes.nearPx * 1.4;
    const { nearPx } = widthSizes(plan.sizes);
    const words = blockedMixers(state, this.nowMs, (name) => fittingText(name, nearPx, roomPx * MOST_NAME)).join(' · ');
    return html`<div class="mixers" ${place({ height: px(plan.blockedMixersPx) })}>
      ${words === '' ? nothing : html`<span class="hatch"></span><span>${fittingText(words, nearPx, roomPx)}</span>`}
    </div>`;
  }

  private deck(state: FloorState, deckPlan: DeckPlan, arrangement: Arrangement): TemplateResult | typeof nothing {
    const deck = this.decks[deckPlan.index];
    if (deck === undefined) return nothing;
    const { plan } = arrangement;
    const model = deckModel(
      state,
      deck,
      this.nowMs,
      deckPlan.lanes,
      this.axisPx,
      widthSizes(plan.sizes).nearPx,
      this.namesOf(deck.deck.id),
    );
    const isNewOven = this.decks[deckPlan.index - 1]?.ovenId !== deck.ovenId;
    return html`<div class="line deck ${isNewOven ? 'new-oven' : ''}" ${place({ height: px(deckPlan.heightPx) })}>
      <wall-deck
        .model=${model}
        .sizes=${plan.sizes}
        .namePx=${arrangement.deckNamePx}
        .widthPx=${plan.leftPx}
        .gapPx=${arrangement.columns.gapPx}
        .edgePx=${arrangement.columns.edgePx}
      ></wall-deck>
      ${plan.showsAxis ? html`<wall-lanes .model=${model} .lanePx=${plan.laneHeightPx}></wall-lanes>` : nothing}
    </div>`;
  }

  private namesOf(deckId: string): LoadTextMemory['place'] {
    const memory = this.names.get(deckId) ?? new LoadTextMemory();
    this.names.set(deckId, memory);
    return memory.place;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-ovens': WallOvens;
  }
}
