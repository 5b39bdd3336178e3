import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { MappedSlot } from '../../shared/floor/slot-heats.ts';
import { OVENS } from '../words/ovens.ts';
import './slot-heat-mark.ts';

/** The slots of an oven from hot to cool, each on the scale with how sure it is; nothing while no slot is known. */
@customElement('oven-map')
export class OvenMap extends LitElement {
  static override styles = css`
    :host {
      display: block;
      font-size: var(--type-small);
    }
    h4 {
      margin: var(--space-2) 0 var(--space-1);
      font-size: var(--type-small);
      font-weight: var(--weight-word);
    }
    ol {
      display: grid;
      grid-template-columns: repeat(auto-fill, minmax(min(10em, 100%), 1fr));
      gap: var(--space-2) var(--space-4);
      margin: 0;
      padding: 0;
      list-style: none;
    }
    li {
      min-width: 0;
      overflow-wrap: anywhere;
    }
    strong {
      font-weight: var(--weight-word);
    }
    p {
      margin: var(--space-1) 0 0;
      color: var(--ink-soft);
    }
  `;

  @property({ attribute: false }) slots: readonly MappedSlot[] = [];

  protected override render(): TemplateResult | typeof nothing {
    if (this.slots.every(({ heat }) => heat.count === 0)) return nothing;
    return html`<h4>${OVENS.map}</h4>
      <ol>
        ${this.slots.map(({ name, heat }) => html`<li><strong>${name}</strong><slot-heat-mark .heat=${heat}></slot-heat-mark></li>`)}
      </ol>
      <p>${OVENS.mapMore}</p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oven-map': OvenMap;
  }
}
