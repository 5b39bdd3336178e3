import { css, html, LitElement, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Role } from '../../shared/floor/role.ts';
import { unreachable } from '../../shared/result.ts';

/**
 * The shape of a role, drawn for this project: a ring with a hand, a triangle, a bar and a triangle, an octagon. It says
 * nothing to a screen reader: the word always stands beside it. (`level`, not `role`: that attribute belongs to ARIA.)
 */
@customElement('role-mark')
export class RoleMark extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      display: inline-block;
      width: 1em;
      height: 1em;
      flex: none;
    }
    svg {
      display: block;
      width: 100%;
      height: 100%;
      overflow: visible;
    }
    .ring {
      fill: none;
      stroke: var(--running);
      stroke-width: 11;
    }
    .gone {
      fill: none;
      stroke: var(--block);
      stroke-width: 11;
    }
    .hand {
      stroke: var(--block);
      stroke-width: 10;
      stroke-linecap: round;
    }
    .call {
      fill: var(--call);
    }
    .late {
      fill: var(--late);
      stroke: var(--late-outline);
      stroke-width: 6;
      stroke-linejoin: round;
    }
    .lost {
      fill: var(--lost);
      stroke: var(--lost-outline);
      stroke-width: 5;
      stroke-linejoin: round;
    }
    .cry {
      fill: var(--paper);
    }
    /* Only the symbol, never a text. */
    :host([blinks][level='late']) svg {
      animation: blink var(--blink-late) steps(1, end) infinite;
    }
    :host([blinks][level='lost']) svg {
      animation: blink var(--blink-lost) steps(1, end) infinite;
    }
    @keyframes blink {
      0% {
        opacity: 1;
      }
      60% {
        opacity: 0.2;
      }
    }
    @media (prefers-reduced-motion: reduce) {
      :host([blinks]) svg {
        animation: none !important;
      }
    }
  `;

  @property({ reflect: true }) level: Role = 'running';
  /** How much of the time is gone, 0 to 1; only a running mark shows it. */
  @property({ type: Number }) progress = 0;
  /** Somebody heard the call: the mark holds still. */
  @property({ type: Boolean }) heard = false;

  override connectedCallback(): void {
    super.connectedCallback();
    this.setAttribute('aria-hidden', 'true');
  }

  protected override updated(): void {
    this.toggleAttribute('blinks', !this.heard && (this.level === 'late' || this.level === 'lost'));
  }

  protected override render(): TemplateResult {
    return html`<svg viewBox="0 0 100 100" focusable="false">${this.shape()}</svg>`;
  }

  private shape(): TemplateResult {
    switch (this.level) {
      case 'running':
        return this.ring();
      case 'call':
        return svg`<path class="call" d="M14 6 L94 50 L14 94 Z" />`;
      case 'late':
        return svg`<path class="late" d="M5 10 H21 V90 H5 Z M35 10 L97 50 L35 90 Z" />`;
      case 'lost':
        return svg`<path class="lost" d="M31 4 H69 L96 31 V69 L69 96 H31 L4 69 V31 Z" />
          <path class="cry" d="M43 20 H57 L54.5 58 H45.5 Z M43 66 H57 V80 H43 Z" />`;
      default:
        return unreachable(this.level);
    }
  }

  private ring(): TemplateResult {
    const share = Math.min(1, Math.max(0, this.progress));
    const round = 2 * Math.PI * 40;
    return svg`<circle class="ring" cx="50" cy="50" r="40" />
      <circle class="gone" cx="50" cy="50" r="40" transform="rotate(-90 50 50)" stroke-dasharray="${(share * round).toFixed(1)} ${round.toFixed(1)}" />
      <path class="hand" d="M50 50 V27" transform="rotate(${(share * 360).toFixed(1)} 50 50)" />`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'role-mark': RoleMark;
  }
}
