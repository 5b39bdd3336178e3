import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';

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
  `;

  @property() heading = '';
  @property({ attribute: false }) lines: readonly string[] = [];

  protected override render(): TemplateResult {
    return html`<p class="title">${this.heading}</p>
      ${this.lines.map((line) => (line === '' ? nothing : html`<p>${line}</p>`))}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-notice': WallNotice;
  }
}
