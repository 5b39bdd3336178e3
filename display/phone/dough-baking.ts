import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { phasesAt, type PhaseAt } from '../../shared/floor/bake-phases.ts';
import { dueOf, type Due } from '../../shared/floor/due.ts';
import type { FloorState, StepLife } from '../../shared/floor/state.ts';
import { place } from '../parts/place.ts';
import { BAKE_CORE } from '../words/warmth.ts';
import { VERBS } from '../words/verbs.ts';
import { coreLines, phaseTexts } from './bake-texts.ts';
import { coreCurve } from './core-curve.ts';
import './core-picture.ts';
import { baseStyles } from './phone-styles.ts';

const MINUTE_MS = 60_000;

/** How a card's load bakes: its programme by phases, and its core on the way to the target, in words and as a picture. */
@customElement('dough-baking')
export class DoughBaking extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: block;
        font-size: var(--type-text);
        overflow-wrap: anywhere;
      }
      h2 {
        margin: var(--space-3) 0 2px;
        font-size: var(--type-small);
        font-weight: var(--weight-word);
        color: var(--ink-soft);
      }
      .bar {
        position: relative;
        display: flex;
        height: var(--space-4);
        margin-block: var(--space-2);
        border: 2px solid var(--ink);
      }
      .bar i + i {
        border-inline-start: 2px solid var(--ink);
      }
      /* Steam is in: hatched, so that it is seen without colour. */
      .bar i[data-steam] {
        background: repeating-linear-gradient(45deg, var(--ink) 0 2px, transparent 2px 7px);
      }
      .bar b {
        position: absolute;
        inset-block: -6px;
        width: 4px;
        background: var(--ink);
        transform: translateX(-50%);
      }
      ol {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li[aria-current] {
        font-weight: var(--weight-strong);
      }
      .when {
        font-weight: var(--weight-word);
      }
      .small {
        font-size: var(--type-small);
        color: var(--ink-soft);
      }
    `,
  ];

  @property({ attribute: false }) floor: FloorState | null = null;
  @property({ attribute: false }) workpieceId = '';
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) unit: 'C' | 'F' = 'C';

  protected override render(): TemplateResult | typeof nothing {
    const workpiece = this.floor?.workpieces[this.workpieceId];
    const due = this.floor === null || workpiece === undefined ? null : dueOf(this.floor, workpiece);
    const life = due === null ? undefined : workpiece?.steps[due.step.id];
    if (due === null || life === undefined || due.step.kind !== 'bake') return nothing;
    return html`${this.programme(due, life)} ${this.core(due)}`;
  }

  private programme({ step, dueMs }: Due, life: StepLife): TemplateResult {
    const phases = phasesAt(step, life, dueMs);
    const current = phases.findIndex(({ fromMs, toMs }) => this.nowMs >= fromMs && this.nowMs < toMs);
    return html`<h2>${VERBS[step.verb].running}</h2>
      ${this.bar(phases)}
      <ol>
        ${phaseTexts(phases, this.zone, this.unit).map(
          (text, index) => html`<li aria-current=${index === current ? 'step' : nothing}>${text}</li>`,
        )}
      </ol>`;
  }

  private bar(phases: readonly PhaseAt[]): TemplateResult | typeof nothing {
    const [first, last] = [phases[0], phases.at(-1)];
    if (first === undefined || last === undefined || last.toMs <= first.fromMs) return nothing;
    const share = (atMs: number): number => Math.min(1, Math.max(0, (atMs - first.fromMs) / (last.toMs - first.fromMs)));
    const steam = phases.map((_at, index) => phases.slice(0, index + 1).findLast(({ phase }) => phase.steam !== undefined)?.phase.steam);
    return html`<div class="bar" aria-hidden="true">
      ${phases.map(
        ({ fromMs, toMs }, index) =>
          html`<i ?data-steam=${steam[index] === 'in'} ${place({ width: `${(share(toMs) - share(fromMs)) * 100}%` })}></i>`,
      )}
      <b ${place({ left: `${share(this.nowMs) * 100}%` })}></b>
    </div>`;
  }

  private core({ core, dueMs }: Due): TemplateResult | typeof nothing {
    if (core === null) return nothing;
    const lines = coreLines(core, this.zone, this.unit);
    // The picture moves by the minute: finer steps of it cannot be seen.
    const minuteMs = Math.floor(this.nowMs / MINUTE_MS) * MINUTE_MS;
    return html`<h2>${BAKE_CORE.title}</h2>
      ${lines.map((line, index) => html`<p class=${index === 1 ? 'when' : ''}>${line}</p>`)}
      <core-picture
        .curve=${coreCurve(core, dueMs, minuteMs)}
        .label=${lines.join('; ')}
        .nowMs=${minuteMs}
        .zone=${this.zone}
        .unit=${this.unit}
      ></core-picture>
      <p class="small">${BAKE_CORE.notEnough}</p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'dough-baking': DoughBaking;
  }
}
