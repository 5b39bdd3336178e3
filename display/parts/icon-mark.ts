import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { ICON_PATHS } from './icon-paths.ts';

/** What a drawing stands for. */
export type IconName = keyof typeof ICON_PATHS;

/**
 * A drawing as large as the text beside it and in its colour. It says nothing to a screen reader: the word stands beside it,
 * or the button that holds it has a name.
 */
@customElement('icon-mark')
export class IconMark extends LitElement {
  static override styles = css`
    :host {
      display: inline-block;
      width: 1em;
      height: 1em;
      flex: none;
      vertical-align: -0.14em;
    }
    svg {
      display: block;
      width: 100%;
      height: 100%;
      overflow: visible;
      fill: none;
      stroke: currentColor;
      stroke-width: 2;
      stroke-linecap: round;
      stroke-linejoin: round;
    }
  `;

  @property({ reflect: true }) name: IconName = 'more';

  override connectedCallback(): void {
    super.connectedCallback();
    this.setAttribute('aria-hidden', 'true');
  }

  protected override render(): TemplateResult {
    return html`<svg viewBox="0 0 24 24" focusable="false"><path d=${ICON_PATHS[this.name]} /></svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'icon-mark': IconMark;
  }
}
