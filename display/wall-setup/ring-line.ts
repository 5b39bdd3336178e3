import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { place } from '../parts/place.ts';
import { GAPS as GAP_WORDS, ringWords, scoreWords, SETUP } from '../words/wall-setup.ts';
import { degreesOf, GAPS, RING_UNITS, ringPath, type Gap } from './ring-geometry.ts';
import { scoreOf } from './ring-answers.ts';
import { RingsAgainEvent } from './setup-events.ts';
import { setupStyles } from './setup-styles.ts';

const KEYS: Readonly<Record<string, Gap>> = { ArrowUp: 'up', ArrowRight: 'right', ArrowDown: 'down', ArrowLeft: 'left' };

/** A line of rings with gaps, and buttons for what somebody afar calls out. Says `rings-again`. */
@customElement('ring-line')
export class RingLine extends LitElement {
  static override styles = [
    setupStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
      }
      .rings {
        display: flex;
        flex-wrap: wrap;
        gap: 1em;
        padding-bottom: 0.4em;
      }
      .ring {
        padding-bottom: var(--space-2);
        border-bottom: var(--rule) solid transparent;
      }
      .asked {
        border-bottom-color: var(--call);
      }
      .answered {
        border-bottom-color: var(--rest);
      }
      svg {
        display: block;
        width: 1em;
        height: 1em;
        fill: var(--ink);
      }
      .answers {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2);
      }
      .score {
        font-weight: var(--weight-word);
      }
    `,
  ];

  /** Where the gaps point, ring by ring. */
  @property({ attribute: false }) gaps: readonly Gap[] = [];
  @property({ type: Number }) diameterPx = 10;
  @query('.again') private readonly again!: HTMLButtonElement;
  @state() private answers: readonly Gap[] = [];

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('gaps') || changed.has('diameterPx')) this.answers = [];
  }

  protected override updated(changed: PropertyValues): void {
    // The buttons are gone with the last answer: the keyboard goes on from the one that is left.
    if (changed.has('answers') && this.answers.length > 0 && this.answers.length === this.gaps.length) this.again.focus();
  }

  protected override render(): TemplateResult {
    const score = scoreOf(this.gaps, this.answers);
    return html`<div class="rings" aria-hidden="true" ${place({ 'font-size': `${this.diameterPx}px` })}>
        ${this.gaps.map((gap, index) => this.ring(gap, index))}
      </div>
      <div class="answers" role="group" aria-labelledby="question" @keydown=${this.keyed}>
        <span id="question" aria-live="polite">${score === null ? this.question : SETUP.rings}</span>
        ${score === null ? GAPS.map((gap) => html`<button type="button" @click=${() => this.answer(gap)}>${GAP_WORDS[gap]}</button>`) : nothing}
        <button type="button" class="again" @click=${() => this.dispatchEvent(new RingsAgainEvent())}>${SETUP.ringsAgain}</button>
      </div>
      <p class="score" role="status">${score === null ? nothing : scoreWords(score.right, this.gaps.length, score.passed)}</p>`;
  }

  private ring(gap: Gap, index: number): TemplateResult {
    const { length } = this.answers;
    const half = RING_UNITS / 2;
    return html`<div class="ring ${index === length ? 'asked' : index < length ? 'answered' : ''}">
      <svg viewBox="${-half} ${-half} ${RING_UNITS} ${RING_UNITS}" focusable="false">
        <path d=${ringPath()} transform="rotate(${degreesOf(gap)})" />
      </svg>
    </div>`;
  }

  private get question(): string {
    return ringWords(Math.min(this.answers.length + 1, this.gaps.length), this.gaps.length);
  }

  private keyed(event: KeyboardEvent): void {
    const gap = KEYS[event.key];
    if (gap === undefined || scoreOf(this.gaps, this.answers) !== null) return;
    event.preventDefault();
    this.answer(gap);
  }

  private answer(gap: Gap): void {
    this.answers = [...this.answers, gap];
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ring-line': RingLine;
  }
}
