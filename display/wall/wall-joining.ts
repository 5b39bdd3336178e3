import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Joining, JoiningStatus } from '../../shared/wire/joining.ts';
import { NOBODY_JOINS } from '../../shared/wire/joining.ts';
import { digitsText } from '../parts/digits-text.ts';
import { joinAddressOf } from '../parts/join-address.ts';
import '../parts/phones-code.ts';
import { JOIN } from '../words/join.ts';

/**
 * While devices are let in: a picture that brings one phone to where it types, and the six digits; and that nobody is let in after too many
 * wrong codes. Sized by its font and `--code`.
 */
@customElement('wall-joining')
export class WallJoining extends LitElement {
  static override styles = css`
    :host {
      display: block;
      padding: 0.5em;
      border: var(--rule) solid var(--ink);
      background: var(--paper);
      color: var(--ink);
      line-height: 1.2;
    }
    .open {
      display: flex;
      align-items: center;
      gap: 0.7em;
    }
    phones-code {
      flex: none;
      width: var(--code, 12em);
    }
    h2,
    p {
      margin: 0;
      font-size: 1em;
    }
    h2,
    .digits {
      font-weight: var(--weight-strong);
    }
    .digits {
      font-size: 2em;
      line-height: 1.1;
      white-space: nowrap;
    }
    .soft {
      color: var(--ink-soft);
    }
    .part {
      white-space: nowrap;
    }
  `;

  @property({ attribute: false }) status: JoiningStatus = NOBODY_JOINS;
  /** The server's addresses, the first one first. */
  @property({ attribute: false }) addresses: readonly string[] = [];

  protected override render(): TemplateResult | typeof nothing {
    const { joining, lockedUntilMs } = this.status;
    if (lockedUntilMs !== null) return html`<p role="status">${JOIN.locked}</p>`;
    return joining === null ? nothing : html`<section role="status" aria-label=${JOIN.joining}>${this.open(joining)}</section>`;
  }

  private open({ code, ticket, role }: Joining): TemplateResult {
    const address = joinAddressOf(this.addresses);
    const url = address?.isReachable === true && ticket !== null ? new URL(`/join#${ticket}`, address.url) : null;
    return html`<div class="open">
      ${url === null ? nothing : html`<phones-code .url=${url.href}></phones-code>`}
      <div>
        <h2>${JOIN.joining}</h2>
        <p>${JOIN.roles[role]}</p>
        <p class="soft">${url === null ? JOIN.joinDigits : JOIN.joinScan}</p>
        <p class="digits">${digitsText(code)}</p>
        ${url === null ? nothing : html`<p class="soft">${JOIN.joinAt} <span class="part">${url.host}/join</span></p>`}
      </div>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-joining': WallJoining;
  }
}
