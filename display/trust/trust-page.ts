import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { columnStyles } from '../desk/column-styles.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import '../parts/phones-code.ts';
import { TRUST } from '../words/trust.ts';

/** What is known of this browser and the bakehouse's root. */
export type TrustShown =
  | { readonly phase: 'asking' | 'none' | 'failed' }
  | {
      readonly phase: 'here';
      readonly fingerprint: string;
      /** Whether this browser has come through by TLS: null while that is being tried. */
      readonly isTrusted: boolean | null;
    };

/** How a phone takes in the bakehouse's own root, and whether it has. */
@customElement('trust-page')
export class TrustPage extends LitElement {
  static override styles = [
    deskStyles,
    columnStyles,
    css`
      main {
        gap: var(--space-4);
        max-width: 36rem;
        padding: var(--space-5) var(--space-4);
      }
      h2 {
        font-size: var(--type-step);
      }
      ol {
        margin: 0;
        padding-inline-start: 1.4em;
      }
      a.go {
        display: flex;
        align-items: center;
        justify-content: center;
        min-height: var(--target);
        padding: var(--space-2) var(--space-4);
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        background: var(--ink);
        color: var(--paper);
        font-size: var(--type-button);
        font-weight: var(--weight-word);
        text-align: center;
        text-decoration: none;
      }
      .print {
        overflow-wrap: anywhere;
      }
      .is {
        padding-inline-start: 10px;
        border-inline-start: 5px solid var(--ink);
        font-weight: var(--weight-word);
      }
      phones-code {
        width: min(60vw, 12rem);
      }
    `,
  ];

  @property({ attribute: false }) shown: TrustShown = { phase: 'asking' };
  /** This page, for a phone to scan off another screen. */
  @property() url = '';
  /** Where this browser goes on to, over TLS. */
  @property() secureUrl = '';

  protected override render(): TemplateResult {
    const { shown } = this;
    return html`<main>
      <h1>${TRUST.title}</h1>
      ${shown.phase === 'here' ? this.root(shown.fingerprint, shown.isTrusted) : html`<p role="status">${TRUST[shown.phase]}</p>`}
    </main>`;
  }

  private root(fingerprint: string, isTrusted: boolean | null): TemplateResult {
    if (isTrusted === true)
      return html`<p class="is" role="status">${TRUST.isTrusted}</p>
        <a class="go" href=${this.secureUrl}>${TRUST.goOn}</a>`;
    return html`<p>${TRUST.why}</p>
      <a class="go" href="/root.crt" download="bakehouse-root.crt">${TRUST.take}</a>
      <p class="print"><span class="soft">${TRUST.compare}</span> ${fingerprint}</p>
      <section>
        <h2>iOS</h2>
        <ol>
          ${TRUST.ios.map((step) => html`<li>${step}</li>`)}
        </ol>
      </section>
      <section>
        <h2>Android</h2>
        <ol>
          ${TRUST.android.map((step) => html`<li>${step}</li>`)}
        </ol>
      </section>
      <p class="is" role="status">${isTrusted === null ? TRUST.trying : TRUST.notYet}</p>
      ${
        this.url === ''
          ? nothing
          : html`<p class="soft">${TRUST.scan}</p>
              <phones-code .url=${this.url}></phones-code>`
      }
      <p class="soft">${TRUST.caution}</p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trust-page': TrustPage;
  }
}
