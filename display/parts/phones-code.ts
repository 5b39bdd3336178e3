import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { JOIN } from '../words/join.ts';
import { qrPathOf, type QrPath } from './qr-path.ts';

/** A QR code, as wide as the element. Dark on light in both looks, since not every phone reads it the other way round. */
@customElement('phones-code')
export class PhonesCode extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
    svg {
      display: block;
      width: 100%;
      height: auto;
    }
    rect {
      fill: var(--code-light);
    }
    path {
      fill: var(--code-dark);
      shape-rendering: crispEdges;
    }
  `;

  /** What the code leads to. */
  @property() url = '';
  private drawn: (QrPath & { readonly url: string }) | null = null;

  protected override render(): TemplateResult {
    if (this.drawn?.url !== this.url) this.drawn = { ...qrPathOf(this.url), url: this.url };
    const { modules, path } = this.drawn;
    return html`<svg viewBox="0 0 ${modules} ${modules}" role="img" aria-label=${JOIN.code} focusable="false">
      <rect width=${modules} height=${modules} />
      <path d=${path} />
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'phones-code': PhonesCode;
  }
}
