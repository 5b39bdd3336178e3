import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../parts/role-mark.ts';
import { unseenStyles } from '../parts/unseen-styles.ts';
import { countAndWord } from './count-word.ts';
import type { Role } from '../../shared/floor/role.ts';

/** Several doughs as one line: how many, in which stage or role, and when the first of them is due. */
@customElement('wall-group')
export class WallGroup extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      display: grid;
      grid-template-columns: var(--edge) var(--mark) var(--tag) minmax(0, 1fr) auto;
      column-gap: var(--gap);
      align-content: center;
      align-items: baseline;
      height: 100%;
      padding-right: var(--gap);
      font-size: var(--second);
      line-height: 1;
      white-space: nowrap;
      color: var(--ink-soft);
    }
    role-mark {
      grid-column: 2;
      align-self: center;
    }
    .count {
      grid-column: 3;
      font-weight: var(--weight-word);
    }
    .word {
      grid-column: 4;
      min-width: 0;
    }
    .word.alone {
      grid-column: 3 / 5;
    }
    .tags {
      margin-left: 0.8em;
      font-size: var(--near);
      font-weight: var(--weight-word);
    }
    .countdown {
      grid-column: 5;
      font-weight: var(--weight-word);
    }
    .strong {
      color: var(--ink);
      font-weight: var(--weight-strong);
    }
    ${unseenStyles}
  `;

  @property() words = '';
  @property() countdown = '';
  /** Calls that have no row of their own carry the strongest role among them. */
  @property() level: Role = 'running';
  @property() levelWord = '';
  @property({ type: Boolean }) heard = false;
  /** The tags of what it holds, where there is no axis to show them on. */
  @property() tags = '';

  protected override render(): TemplateResult {
    const isCalling = this.level !== 'running';
    const { count, word } = countAndWord(this.words);
    const strong = isCalling ? 'strong' : '';
    return html`${isCalling ? html`<role-mark .level=${this.level} .heard=${this.heard}></role-mark><span class="unseen">${this.levelWord}</span>` : nothing}
      ${count === '' ? nothing : html`<div class="count ${strong}">${count}</div>`}
      <div class="word ${count === '' ? 'alone' : ''} ${strong}">
        ${word}${this.tags === '' ? nothing : html`<span class="tags">${this.tags}</span>`}
      </div>
      <div class="countdown ${strong}">${this.countdown}</div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-group': WallGroup;
  }
}
