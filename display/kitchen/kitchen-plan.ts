import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { isThing, type Chosen } from './chosen.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import type { PlanContext } from './plan-context.ts';
import { mixersPlan } from './plan-mixers.ts';
import { ovensPlan } from './plan-ovens.ts';
import { placesPlan, stationsPlan } from './plan-places.ts';
import { planStyles } from './plan-styles.ts';
import { tasksPlan } from './plan-tasks.ts';
import { vesselsPlan } from './plan-vessels.ts';

/** The house drawn as it stands. Whatever stands in it is a button. */
@customElement('kitchen-plan')
export class KitchenPlan extends LitElement {
  static override styles = [deskStyles, planStyles];

  @property({ attribute: false }) context: Omit<PlanContext, 'send'> | null = null;

  protected override render(): TemplateResult | typeof nothing {
    if (this.context === null) return nothing;
    const context: PlanContext = { ...this.context, send: (event) => this.dispatchEvent(event) };
    return html`<div class="rooms">
      ${mixersPlan(context)} ${placesPlan(context)} ${ovensPlan(context)} ${vesselsPlan(context)} ${stationsPlan(context)}
      ${tasksPlan(context)}
    </div>`;
  }

  /** Puts the keyboard back on a thing, where it is still drawn. */
  focusThing(chosen: Chosen): void {
    if (chosen.kind === 'house') return;
    const key = isThing(chosen) ? `${chosen.kind} ${chosen.id}` : chosen.kind;
    this.renderRoot.querySelector<HTMLElement>(`[data-thing="${key}"]`)?.focus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'kitchen-plan': KitchenPlan;
  }
}
