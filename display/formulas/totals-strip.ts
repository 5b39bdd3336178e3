import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Overall } from '../../shared/book/overall.ts';
import type { House } from '../../shared/documents/house.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import { TOTALS } from '../words/formulas.ts';
import { figureRows } from './totals-figures.ts';

const SHOWN = ['hydration', 'salt', 'prefermented', 'weight'] as const;

/** The figures that one looks at while typing, on one line where there is no room for the whole panel. */
@customElement('totals-strip')
export class TotalsStrip extends LitElement {
  static override styles = [
    deskStyles,
    css`
      dl {
        display: grid;
        grid-template-columns: repeat(4, auto);
        justify-content: space-between;
        gap: 0 var(--space-2);
        margin: 0;
        padding: 6px 12px;
        border-top: 1px solid var(--ink-soft);
        background: var(--floor);
      }
      dt {
        font-size: var(--type-small);
        color: var(--ink-soft);
        line-height: 1.1;
        max-width: 14ch;
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      dd {
        margin: 0;
        font-size: var(--type-text);
        font-weight: var(--weight-strong);
        font-variant-numeric: tabular-nums;
        white-space: nowrap;
      }
    `,
  ];

  @property({ attribute: false }) overall: Overall | null = null;
  @property({ attribute: false }) units: House['units'] = { temperature: 'C', weight: 'g' };

  protected override render(): TemplateResult | typeof nothing {
    const { overall } = this;
    if (overall === null) return nothing;
    const rows = figureRows(overall, this.units).filter(({ key }) => SHOWN.some((shown) => shown === key));
    return html`<dl aria-label=${TOTALS.strip}>
      ${rows.map(
        ({ words, figure, unit }) =>
          html`<div>
            <dt>${words}</dt>
            <dd>${figure}${unit}</dd>
          </div>`,
      )}
    </dl>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'totals-strip': TotalsStrip;
  }
}
