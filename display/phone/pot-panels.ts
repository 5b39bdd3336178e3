import { html, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { clockText, weekdayText } from '../parts/clock-text.ts';
import { zonedDate } from '../parts/zoned-instant.ts';
import { PANELS } from '../words/panels.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';
import { feedTargetG, feedTimes, usualFeed, type Feed, type FeedTime } from './feed-model.ts';

/** Step of the weights, in grams. */
const STEP_G = 10;
/** Heavier than any pot, in grams. */
const MOST_G = 10_000_000;
/** From here on in the day it is night, for words. */
const EVENING = '18:00';

/** What goes into a pot, where it is not what the formula says. */
@customElement('feed-panel')
export class FeedPanel extends CardPanel {
  @state() private said: Partial<Feed> = {};

  protected override panel(card: CardModel, floor: FloorState, pot: Workpiece): TemplateResult {
    const usual = usualFeed(floor, pot) ?? { seedG: 0, flourG: 0, waterG: 0 };
    const feed: Feed = { ...usual, ...this.said };
    const totalG = feed.seedG + feed.flourG + feed.waterG;
    return html`
      <h2>${PANELS.feedTitle(card.tag)}</h2>
      ${this.weight('seedG', PANELS.feedSeed, feed.seedG)} ${this.weight('flourG', PANELS.feedFlour, feed.flourG)}
      ${this.weight('waterG', PANELS.feedWater, feed.waterG)}
      <p class="note" role="status">${PANELS.feedMakes(this.weightText(totalG))}</p>
      ${this.doing(PANELS.feedDone(card.tag), totalG > 0, () => this.say({ type: 'finishStep', ...this.onStep(card), feed }))}
    `;
  }

  private weight(which: keyof Feed, label: string, grams: number): TemplateResult {
    return this.weightStepper(label, grams, { stepG: STEP_G, mostG: MOST_G }, (said) => (this.said = { ...this.said, [which]: said }));
  }
}

/** When a pot is to be fed next, and up to how much. */
@customElement('plan-feed-panel')
export class PlanFeedPanel extends CardPanel {
  @state() private wantedG: number | null = null;

  protected override panel(card: CardModel, _floor: FloorState, pot: Workpiece): TemplateResult {
    const grams = this.wantedG ?? Math.round(feedTargetG(pot));
    return html`
      <h2>${PANELS.planFeedTitle(card.tag)}</h2>
      ${this.weightStepper(PANELS.planFeedUpTo, grams, { stepG: STEP_G * 10, leastG: 1, mostG: MOST_G }, (wantedG) => (this.wantedG = wantedG))}
      <div class="two">
        ${feedTimes(this.nowMs, this.zone).map(
          (time) =>
            html`<button
              type="button"
              class="middling"
              @act=${() => this.say({ type: 'planFeed', workpieceId: pot.id, feedMs: time.feedMs, grams })}
            >
              <span class="number">${clockText(time.feedMs, this.zone)}</span><small>${this.dayWords(time)}</small>
            </button>`,
        )}
      </div>
    `;
  }

  private dayWords({ date, feedMs }: FeedTime): string {
    if (date === zonedDate(this.nowMs, this.zone)) return clockText(feedMs, this.zone) >= EVENING ? PANELS.tonight : PANELS.today;
    return date === zonedDate(this.nowMs, this.zone, 1) ? PANELS.tomorrow : weekdayText(date);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'feed-panel': FeedPanel;
    'plan-feed-panel': PlanFeedPanel;
  }
}
