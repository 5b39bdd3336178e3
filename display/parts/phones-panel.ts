import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { JOIN } from '../words/join.ts';
import { joinAddressOf, type JoinAddress } from './join-address.ts';
import './phones-code.ts';

/** How the server is started so that phones reach it: without --here. README.md says the same. */
const OPEN_COMMAND = 'npm start';

/** How a phone comes here: a code and the address in words, or why there is none and what to do. Sized by its font and `--code`. */
@customElement('phones-panel')
export class PhonesPanel extends LitElement {
  static override styles = css`
    :host {
      display: block;
      line-height: 1.2;
    }
    .open {
      display: flex;
      flex-wrap: wrap;
      align-items: center;
      gap: 0.5em;
    }
    :host([reversed]) .open {
      flex-flow: row-reverse nowrap;
      text-align: right;
    }
    phones-code {
      width: var(--code, 12em);
      flex: none;
    }
    p {
      margin: 0;
    }
    .title,
    .part {
      font-weight: var(--weight-word);
      color: var(--ink);
    }
    .soft {
      color: var(--ink-soft);
    }
    /* A line breaks between the parts of the address and nowhere else. */
    .part {
      white-space: nowrap;
    }
    code {
      font: inherit;
      font-weight: var(--weight-strong);
      color: var(--ink);
    }
  `;

  /** The server's addresses, the first one first. */
  @property({ attribute: false }) addresses: readonly string[] = [];
  /** The code stands at the right, with as few words as will do. */
  @property({ type: Boolean, reflect: true }) reversed = false;

  /** Somebody else says what it is about. */
  @property({ type: Boolean }) untitled = false;

  protected override render(): TemplateResult | typeof nothing {
    const join = joinAddressOf(this.addresses);
    if (join === null) return nothing;
    return join.isReachable ? this.open(join) : this.closed();
  }

  private open({ url, parts }: Extract<JoinAddress, { isReachable: true }>): TemplateResult {
    return html`<div class="open">
      <phones-code .url=${url}></phones-code>
      <div>
        ${this.untitled ? nothing : html`<p class="title">${JOIN.title}</p>`}
        ${this.reversed ? nothing : html`<p class="soft">${JOIN.scan}</p>`}
        <p>${parts.map((part) => html`<span class="part">${part}</span><wbr />`)}</p>
      </div>
    </div>`;
  }

  private closed(): TemplateResult {
    return html`<p class="title">${JOIN.closed}</p>
      <p class="soft">${JOIN.closedMore} <code>${OPEN_COMMAND}</code>. ${JOIN.closedCaution}</p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'phones-panel': PhonesPanel;
  }
}
