import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import '../parts/icon-mark.ts';
import { WALL } from '../words/wall.ts';

/** Covers the wall while its sound waits for a touch: a silent wall that looks ready would be trusted. */
@customElement('sound-panel')
export class SoundPanel extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      position: absolute;
      inset: 0;
      z-index: 2;
      display: grid;
      place-items: center;
    }
    button {
      position: absolute;
      inset: 0;
      display: flex;
      flex-direction: column;
      align-items: center;
      justify-content: center;
      gap: 0.35em;
      padding: 0 1em;
      border: calc(var(--glance) * 0.16) solid var(--call);
      background: var(--paper);
      color: var(--ink);
      font: inherit;
      font-size: var(--glance);
      font-weight: var(--weight-strong);
      line-height: 1.1;
      text-align: center;
      cursor: pointer;
    }
    icon-mark {
      color: var(--call);
      font-size: 1.8em;
    }
    .more {
      font-size: var(--near);
      font-weight: var(--weight-text);
      color: var(--ink-soft);
    }
  `;

  protected override render(): TemplateResult {
    return html`<button type="button">
      <icon-mark name="sound"></icon-mark>
      ${WALL.soundPanel}
      <span class="more">${WALL.soundPanelMore}</span>
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sound-panel': SoundPanel;
  }
}
