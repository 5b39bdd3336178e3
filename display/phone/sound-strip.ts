import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FloorView } from '../link/floor-link.ts';
import '../parts/icon-mark.ts';
import { noWallWords, SOUND } from '../words/sound.ts';
import { baseStyles } from './phone-styles.ts';

/** Says on a phone that it is the house's voice, that another device is since no wall can, or that the house has none. Nothing while a wall sounds. */
@customElement('sound-strip')
export class SoundStrip extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: block;
      }
      p {
        display: flex;
        align-items: center;
        gap: var(--space-2);
        padding: var(--space-1) var(--space-4);
        border-bottom: var(--hairline) solid var(--ink);
        font-size: var(--type-text);
        font-weight: var(--weight-word);
      }
      icon-mark {
        flex: none;
        font-size: var(--type-title);
      }
    `,
  ];

  @property({ attribute: false }) view: FloorView | null = null;
  /** A screen that is fixed to a station is no phone. */
  @property({ type: Boolean }) fixed = false;

  protected override render(): TemplateResult {
    return html`<div role="status">${this.line()}</div>`;
  }

  private line(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null || view.connection.phase !== 'live') return nothing;
    if (view.soundingDeviceId === null)
      return html`<p><icon-mark name="sound-off"></icon-mark>${this.fixed ? SOUND.nobodyFixed : SOUND.nobody}</p>`;
    if (view.soundingDeviceId !== view.device?.id) {
      const other = view.devices.find(({ id }) => id === view.soundingDeviceId);
      return view.soundingPage === 'wall' || other === undefined
        ? nothing
        : html`<p><icon-mark name="sound"></icon-mark>${noWallWords(other.name)}</p>`;
    }
    return html`<p><icon-mark name="sound"></icon-mark>${this.fixed ? SOUND.thisFixed : SOUND.thisPhone}</p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sound-strip': SoundStrip;
  }
}
