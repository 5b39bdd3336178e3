import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { PANELS } from '../words/panels.ts';
import type { ObstacleModel } from './obstacle-model.ts';
import { FloorCommandEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** What is in the way of a dough, and the ways out, each a button that says what it does to the dough. */
@customElement('ways-list')
export class WaysList extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: block;
      }
      h2 {
        font-size: 16px;
        font-weight: var(--weight-word);
        color: var(--ink-soft);
      }
      p {
        margin-bottom: 10px;
        font-size: 20px;
        font-weight: var(--weight-word);
        line-height: 1.25;
        overflow-wrap: anywhere;
      }
      .ways {
        display: grid;
        grid-template-columns: repeat(2, minmax(0, 1fr));
        gap: 16px;
      }
      button {
        overflow-wrap: anywhere;
      }
      button small {
        font-size: 16px;
      }
    `,
  ];

  @property({ attribute: false }) obstacle: ObstacleModel | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { obstacle } = this;
    if (obstacle === null) return nothing;
    return html`
      <h2>${PANELS.inTheWay}</h2>
      <p>${obstacle.words}</p>
      <div class="ways">
        ${obstacle.ways.map(
          (way) =>
            html`<button type="button" class="middling" @act=${() => this.dispatchEvent(new FloorCommandEvent(way.command))}>
              ${way.act}${way.effect === '' ? nothing : html`<small>${way.effect}</small>`}
            </button>`,
        )}
      </div>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ways-list': WaysList;
  }
}
