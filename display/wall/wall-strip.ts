import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import { place, px } from '../parts/place.ts';
import type { BakeBlock, Span, StripModel } from './strip-model.ts';

/** A dough's way right of NOW: its rest to the tick, the dotted way on, its bakes; when a ferment is ripe, where a prep joins. */
@customElement('wall-strip')
export class WallStrip extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      display: block;
      height: 100%;
      padding-top: var(--row-top, 0px);
      font-size: var(--near);
      line-height: 1.08;
      white-space: nowrap;
    }
    .name {
      padding-left: 0.3em;
      font-weight: var(--weight-word);
    }
    .name span {
      background: var(--paper);
      box-shadow: 0 0 0 0.1em var(--paper);
    }
    .track {
      position: relative;
      height: 1.1em;
    }
    .track > * {
      position: absolute;
      top: 50%;
      transform: translateY(-50%);
    }
    .rest {
      height: 0.42em;
      background: var(--running);
    }
    .way {
      height: 0;
      border-top: 4px dotted var(--running);
    }
    .ripe {
      height: 0.8em;
      background: repeating-linear-gradient(90deg, var(--rest) 0 4px, var(--paper) 4px 10px);
      border: 3px solid var(--running);
    }
    .join {
      width: 0.5em;
      height: 0.5em;
      margin-left: -0.25em;
      border: 5px solid var(--ink-soft);
      border-radius: 50%;
      background: var(--paper);
    }
    .due {
      width: 6px;
      height: 1.1em;
      margin-left: -3px;
      background: var(--ink);
    }
    .bake {
      height: 0.86em;
      background: var(--block);
      border-radius: var(--radius);
    }
    .time {
      color: var(--ink-soft);
      background: var(--paper);
      box-shadow: 0 0 0 4px var(--paper);
      line-height: 1;
    }
  `;

  @property({ attribute: false }) model: StripModel | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { model } = this;
    if (model === null) return nothing;
    return html`<div class="name"><span>${model.name}</span></div>
      <div class="track">
        ${model.ripe === null ? nothing : bar('ripe', model.ripe)} ${model.rest === null ? nothing : bar('rest', model.rest)}
        ${model.way === null ? nothing : bar('way', model.way)}
        ${repeat(
          model.bakes,
          (_, index) => index,
          (bake) => bar('bake', bake),
        )}
        ${model.duePx === null ? nothing : html`<div class="due" ${place({ left: px(Math.round(model.duePx)) })}></div>`}
        ${model.join === null ? nothing : html`<div class="join" ${place({ left: px(Math.round(model.join.fromPx)) })}></div>`}
        ${model.bakes.map(time)} ${model.join === null ? nothing : time(model.join)}
      </div>`;
  }
}

function bar(look: string, span: Span): TemplateResult {
  return html`<div class=${look} ${place({ left: px(Math.round(span.fromPx)), width: px(Math.round(span.toPx - span.fromPx)) })}></div>`;
}

function time(bake: BakeBlock): TemplateResult | typeof nothing {
  if (bake.textPx === null) return nothing;
  return html`<div class="time" ${place({ left: px(Math.round(bake.textPx)) })}>${bake.text}</div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-strip': WallStrip;
  }
}
