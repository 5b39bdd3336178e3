import { html, type TemplateResult } from 'lit';
import '../parts/icon-mark.ts';
import { PHONE } from '../words/phone.ts';
import { VERBS } from '../words/verbs.ts';
import type { CardModel } from './card-model.ts';
import { FloorCommandEvent, PanelWantedEvent } from './phone-events.ts';

/** What is usually said of a step beside that it is done: that it was started, that its call was heard. */
export function usualButtons(from: HTMLElement, card: CardModel): readonly TemplateResult[] {
  const key = { workpieceId: card.row.workpieceId, stepId: card.action.id };
  const started = html`<button
    type="button"
    class="middling"
    @act=${() => from.dispatchEvent(new FloorCommandEvent({ type: 'startStep', ...key }))}
  >
    <span class="with-icon"><icon-mark name="started"></icon-mark>${PHONE.started}</span><small>${VERBS[card.action.verb].running}</small>
  </button>`;
  return [...(card.canStart ? [started] : []), ...(card.canHear ? [heardButton(from, card)] : [])];
}

/** Somebody heard the call: it is silent until it is late. */
export function heardButton(from: HTMLElement, card: CardModel): TemplateResult {
  const key = { workpieceId: card.row.workpieceId, stepId: card.action.id };
  return html`<button type="button" class="middling" @act=${() => from.dispatchEvent(new FloorCommandEvent({ type: 'hearCall', ...key }))}>
    <icon-mark name="heard"></icon-mark>${PHONE.heard}
  </button>`;
}

/** The way to everything that is said less often. */
export function otherButton(from: HTMLElement): TemplateResult {
  return html`<button type="button" class="middling" @act=${() => from.dispatchEvent(new PanelWantedEvent('other'))}>
    <icon-mark name="more"></icon-mark>${PHONE.other}
  </button>`;
}
