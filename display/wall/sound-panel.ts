import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
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
    svg {
      width: 1.8em;
      height: 1.8em;
      fill: none;
      stroke: var(--call);
      stroke-width: 7;
      stroke-linecap: round;
      stroke-linejoin: round;
    }
    svg .body {
      fill: var(--call);
    }
    .more {
      font-size: var(--near);
      font-weight: var(--weight-text);
      color: var(--ink-soft);
    }
  `;

  protected override render(): TemplateResult {
    return html`<button type="button">
      <svg viewBox="0 0 100 100" aria-hidden="true" focusable="false">
        <path class="body" d="M10 38 H28 L50 20 V80 L28 62 H10 Z" />
        <path d="M63 38 Q70 50 63 62 M74 27 Q88 50 74 73" />
      </svg>
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
