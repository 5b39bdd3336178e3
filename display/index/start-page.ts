import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { LookChoice } from '../parts/look.ts';
import '../parts/page-choices.ts';
import type { Language } from '../words/page-language.ts';
import { START, startLinks } from '../words/start.ts';

/** The way to every page, and the address that other devices of the house type in. */
@customElement('start-page')
export class StartPage extends LitElement {
  static override styles = css`
    *,
    *::before,
    *::after {
      box-sizing: border-box;
    }
    main {
      max-width: 34rem;
      margin: 0 auto;
      padding: var(--space-7) var(--space-5);
      font-size: var(--type-text);
    }
    h1 {
      margin: 0 0 var(--space-2);
      font-size: var(--type-tag);
      line-height: 1.1;
    }
    p {
      margin: 0 0 var(--space-6);
      color: var(--ink-soft);
      overflow-wrap: anywhere;
    }
    p strong {
      color: var(--ink);
    }
    nav {
      display: grid;
      gap: var(--space-4);
      margin-bottom: var(--space-6);
    }
    a {
      display: block;
      padding: var(--space-4) var(--space-5);
      border: var(--hairline) solid var(--line-strong);
      border-radius: var(--radius);
      color: var(--ink);
      text-decoration: none;
      overflow-wrap: anywhere;
    }
    a:hover {
      background: var(--field);
    }
    a strong {
      display: block;
      font-size: var(--type-step);
    }
    a span {
      color: var(--ink-soft);
    }
    :focus-visible {
      outline: var(--focus);
      outline-offset: 3px;
    }
    @media (max-width: 400px) {
      main {
        padding: var(--space-5) var(--space-4);
      }
    }
  `;

  /** What other devices type in. */
  @property({ attribute: false }) address = '';
  @property({ attribute: false }) language: Language = 'en';
  @property({ attribute: false }) look: LookChoice = 'browser';

  protected override render(): TemplateResult {
    return html`<main>
      <h1>Ovenward</h1>
      <p>${START.lead}</p>
      <nav aria-label=${START.pages}>
        ${startLinks().map(({ href, name, more }) => html`<a href=${href}><strong>${name}</strong><span>${more}</span></a>`)}
      </nav>
      <p>${START.address} <strong>${this.address}</strong></p>
      <page-choices .language=${this.language} .look=${this.look}></page-choices>
    </main>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'start-page': StartPage;
  }
}
