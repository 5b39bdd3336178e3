import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { batchAnswerSchema, type BatchAnswer, type NamesAnswer } from '../../shared/records/answers.ts';
import { batchRecord, type BatchRecord } from '../../shared/records/batch-record.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { BATCH_RECORD } from '../words/batch-record.ts';
import { RECORDS } from '../words/records.ts';
import { AskedController, askedView } from './asked.ts';
import { batchCurves, type BatchCurves } from './batch-curves.ts';
import { curvesSection, keptSection } from './batch-curves-shown.ts';
import { callsSection, changesSection, lossesSection, moreTimeSection, stepsSection } from './batch-happened.ts';
import { fateSection, lotsSection, temperaturesSection, waterSection, wentInSection } from './batch-made.ts';
import { factsSection } from './batch-facts.ts';
import { recordsStyles } from './records-styles.ts';
import { nameIn, NO_NAMES, searchOf, type RecordsTools } from './records-tools.ts';
import { following } from './follow.ts';

/** One batch, from flour to what became of each load: a page for the inspector, the owner, and whoever makes it again. */
@customElement('batch-view')
export class BatchView extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    recordsStyles,
    css`
      .top p {
        color: var(--ink-soft);
      }
      .top .buttons {
        margin-inline-start: auto;
      }
      dl {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(11rem, 1fr));
        gap: var(--space-3) var(--space-5);
        margin: 0;
      }
      dl > div {
        min-width: 0;
      }
      .late {
        font-weight: var(--weight-strong);
      }
      .figures {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 24rem), 1fr));
        gap: var(--space-5);
      }
      figure {
        margin: 0;
      }
      figcaption {
        margin-bottom: var(--space-2);
        font-weight: var(--weight-word);
      }
      .caution {
        margin-top: var(--space-6);
        padding-top: var(--space-3);
        border-top: 2px solid var(--ink);
        font-size: var(--type-small);
      }
      @media print {
        .figures {
          grid-template-columns: 1fr 1fr;
        }
      }
    `,
  ];

  @property({ attribute: false }) tools: RecordsTools | null = null;
  @property({ attribute: false }) names: NamesAnswer = NO_NAMES;
  @property({ attribute: false }) query = new URLSearchParams();
  private readonly asked = new AskedController<BatchAnswer>(this, 'batch', batchAnswerSchema);
  /** Worked out once for each answer: a fold of some hundred events. */
  private worked: { readonly of: BatchAnswer; readonly record: BatchRecord | null; readonly curves: BatchCurves } | null = null;

  protected override willUpdate(): void {
    if (this.tools !== null) this.asked.ask(this.tools, { id: this.query.get('id') ?? '' });
  }

  protected override render(): TemplateResult {
    return askedView(this.asked.shown, (answer) => {
      if (this.worked?.of !== answer) this.worked = { of: answer, record: batchRecord(answer), curves: batchCurves(answer) };
      const { record, curves } = this.worked;
      return record === null ? html`<p role="status">${RECORDS.missing}</p>` : this.whole(answer, record, curves);
    });
  }

  private whole(answer: BatchAnswer, record: BatchRecord, curves: BatchCurves): TemplateResult {
    const { names } = this;
    const { root } = record;
    const formula = nameIn(names, 'formulas', root.formula);
    return html`<article aria-labelledby="of">
      <div class="top">
        <h2 id="of">${BATCH_RECORD.heading(root.tag, root.product === null ? formula : nameIn(names, 'products', root.product))}</h2>
        <p>
          ${root.serviceDate} ·
          ${BATCH_RECORD.version(formula, root.formulaVersion)}${names.house === '' ? nothing : html` · ${names.house}`}
        </p>
        <div class="buttons screen-only">
          <a class="plain" href=${searchOf('batches', { formula: root.formula })} @click=${following(this.tools)}
            >${RECORDS.menu.batches}</a
          >
          <a class="plain" href=${searchOf('trace', { id: root.id })} @click=${following(this.tools)}>${BATCH_RECORD.toTrace}</a>
          <button class="plain" @click=${() => globalThis.print()}>${BATCH_RECORD.print}</button>
        </div>
      </div>
      ${factsSection(answer, record, names)} ${stepsSection(record, names)} ${wentInSection(record, names)} ${waterSection(record, names)}
      ${temperaturesSection(record, names)} ${curvesSection(curves, names)} ${keptSection(record, curves, names)}
      ${moreTimeSection(record, names)} ${changesSection(record, names)} ${callsSection(answer, record, names)}
      ${lossesSection(record, names)} ${fateSection(answer, record, names)} ${lotsSection(answer, record, names, this.tools)}
      <p class="caution">${BATCH_RECORD.caution}</p>
    </article>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'batch-view': BatchView;
  }
}
