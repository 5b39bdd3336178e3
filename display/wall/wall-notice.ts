import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../parts/phones-panel.ts';
import type { Notice } from './notice.ts';

/** What the wall says when it has no doughs to show. */
@customElement('wall-notice')
export class WallNotice extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      display: block;
      padding: calc(var(--gap) * 1.5) calc(var(--gap) + var(--edge));
    }
    p {
      margin: 0;
      max-width: 30em;
      font-size: var(--near);
      line-height: 1.3;
      color: var(--ink-soft);
      overflow-wrap: anywhere;
    }
    .title {
      margin-bottom: 0.25em;
      font-size: var(--second);
      font-weight: var(--weight-word);
      line-height: 1.1;
      color: var(--ink);
    }
    .links {
      display: flex;
      flex-wrap: wrap;
      gap: 0.4em;
      margin-top: 0.5em;
      font-size: var(--near);
    }
    a {
      padding: 0.15em 0.5em;
      border: var(--hairline) solid var(--ink);
      border-radius: var(--radius);
      color: var(--ink);
      line-height: 1.2;
      text-decoration: none;
    }
    a:focus-visible {
      outline: var(--focus);
      outline-offset: var(--focus-gap);
    }
    phones-panel {
      margin-top: calc(var(--gap) * 2);
      font-size: var(--near);
    }
    :host([centred]) p {
      margin-inline: auto;
    }
    :host([centred]) .links {
      justify-content: center;
    }
  `;

  @property({ attribute: false }) notice: Notice | null = null;
  /** How phones come here: said where there is nothing else to say. */
  @property({ attribute: false }) addresses: readonly string[] = [];

  protected override render(): TemplateResult | typeof nothing {
    const { notice } = this;
    if (notice === null) return nothing;
    return html`<p class="title">${notice.heading}</p>
      ${notice.lines.map((line) => html`<p>${line}</p>`)}
      ${notice.links.length === 0 ? nothing : html`<div class="links">${notice.links.map(({ href, text }) => html`<a href=${href}>${text}</a>`)}</div>`}
      ${this.addresses.length === 0 ? nothing : html`<phones-panel .addresses=${this.addresses}></phones-panel>`}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-notice': WallNotice;
  }
}
