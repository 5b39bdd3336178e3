import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../parts/role-mark.ts';
import { fittingText } from '../parts/text-width.ts';
import { WALL } from '../words/wall.ts';

/** The mark before late words, with the space behind it, in em. */
const MARK_EM = 1.1;

/** The house's time and name, and whether link and sound are in order. */
@customElement('wall-header')
export class WallHeader extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      display: flex;
      align-items: center;
      gap: var(--gap);
      height: var(--header);
      padding: 0 var(--gap) 0 calc(var(--edge) + var(--gap));
      white-space: nowrap;
    }
    .clock {
      font-size: var(--glance);
      font-weight: var(--weight-strong);
      line-height: 1;
    }
    .side {
      flex: 1;
      min-width: 0;
      text-align: right;
      font-size: var(--near);
      line-height: 1.08;
      color: var(--ink-soft);
    }
    .name {
      color: var(--ink);
      font-weight: var(--weight-word);
    }
    .late {
      color: var(--ink);
      font-weight: var(--weight-strong);
    }
    .mark {
      font-size: 0.72em;
      vertical-align: -0.06em;
    }
    .link {
      display: flex;
      align-items: center;
      justify-content: flex-end;
      gap: 0.3em;
      color: var(--ink);
      font-size: var(--second);
      font-weight: var(--weight-strong);
      line-height: 1;
    }
    .link role-mark {
      font-size: 0.8em;
    }
  `;

  @property() clock = '';
  @property() houseName = '';
  /** What is wrong with the house itself; stands in place of its name. */
  @property({ attribute: false }) wrongWords: string | null = null;
  @property() soundWords = '';
  /** No device can sound: that is late business. */
  @property({ type: Boolean }) soundIsLate = false;
  /** Clock time of the server's last word; null while the link stands. */
  @property() lastContact: string | null = null;
  /** Room for the names beside the clock, and the size by which their widths are reckoned, in px; 0 where nobody said. */
  @property({ type: Number }) sideRoomPx = 0;
  @property({ type: Number }) sideSizePx = 0;

  protected override render(): TemplateResult {
    return html`<time class="clock">${this.clock}</time>
      <div class="side">${this.lastContact === null ? this.state() : this.noLink(this.lastContact)}</div>`;
  }

  private state(): TemplateResult {
    return html`${this.wrongWords === null ? html`<div class="name">${this.fitted(this.houseName, 0)}</div>` : html`<div class="late" role="status"><role-mark class="mark" level="late" heard></role-mark>${this.fitted(this.wrongWords, MARK_EM)}</div>`}
      <div class=${this.soundIsLate ? 'late' : nothing}>
        ${this.soundIsLate ? html`<role-mark class="mark" level="late" heard></role-mark>` : nothing}
        ${this.fitted(this.soundWords, this.soundIsLate ? MARK_EM : 0)}
      </div>`;
  }

  private fitted(text: string, takenEm: number): string {
    return this.sideSizePx === 0 ? text : fittingText(text, this.sideSizePx, this.sideRoomPx - takenEm * this.sideSizePx);
  }

  private noLink(lastContact: string): TemplateResult {
    return html`<div class="link" role="status"><role-mark level="late" heard></role-mark>${WALL.noLink} ${lastContact}</div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-header': WallHeader;
  }
}
