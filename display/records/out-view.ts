import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { RECORD_TABLES, tableNamed, type TableDescription } from '../../shared/records/tables.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { RECORDS_OUT } from '../words/records-out.ts';
import { recordsStyles } from './records-styles.ts';

const FORMATS = ['csv', 'jsonl'] as const;

/** What is asked of a backup as an example. */
const EXAMPLE_SQL = "SELECT service_date, count(*) FROM batches WHERE kind = 'batch' GROUP BY service_date;";
const ARCHIVE_COMMANDS = [
  'npm run -s archive -- --data DIR --month YYYY-MM --to FILE',
  'npm run -s archive -- --verify FILE --key FILE.pem --data DIR',
].join('\n');

/** What is chosen to be taken along. */
interface Chosen {
  readonly table: string;
  readonly format: string;
  readonly from: string;
  readonly to: string;
}

/** The records on their way out of the house's own pages: a table as a file, a backup in a tool of one's own, a month to keep. */
@customElement('out-view')
export class OutView extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    recordsStyles,
    css`
      a.filled {
        display: inline-grid;
        align-items: center;
        min-height: var(--target-desk);
        box-sizing: border-box;
        padding: 6px 14px;
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        background: var(--ink);
        color: var(--paper);
        font-weight: var(--weight-word);
        text-decoration: none;
      }
      p {
        max-width: 46rem;
      }
      pre,
      code {
        font-family: monospace;
        overflow-wrap: anywhere;
      }
      th code {
        white-space: nowrap;
      }
      label {
        grid-template-columns: minmax(0, 1fr);
        max-width: 100%;
      }
      pre {
        white-space: pre-wrap;
        padding: var(--space-2) var(--space-3);
        border-inline-start: 4px solid var(--line);
      }
      summary {
        min-height: var(--target-desk);
        cursor: pointer;
      }
    `,
  ];

  @state() private chosen: Chosen = { table: 'batches', format: 'csv', from: '', to: '' };
  /** What the address asks for: a table that is chosen already. */
  @property({ attribute: false }) query = new URLSearchParams();

  protected override willUpdate(changed: ReadonlyMap<PropertyKey, unknown>): void {
    if (!changed.has('query')) return;
    const [table, from, to] = ['table', 'from', 'to'].map((name) => this.query.get(name) ?? '');
    this.chosen = { ...this.chosen, table: tableNamed(table ?? '')?.name ?? 'batches', from: from ?? '', to: to ?? '' };
  }

  protected override render(): TemplateResult {
    return html`<section>
        <h2>${RECORDS_OUT.title}</h2>
        <p>${RECORDS_OUT.lead} ${RECORDS_OUT.managersOnly}</p>
        ${this.form()}
      </section>
      <section>
        <h2>${RECORDS_OUT.tables}</h2>
        <p>${RECORDS_OUT.units}</p>
        <div class="wide" tabindex="0" role="region" aria-label=${RECORDS_OUT.tables}>
          <table>
            <thead>
              <tr>
                <th scope="col">${RECORDS_OUT.table}</th>
                <th scope="col">${RECORDS_OUT.rows}</th>
                <th scope="col">${RECORDS_OUT.columns}</th>
              </tr>
            </thead>
            <tbody>
              ${RECORD_TABLES.map(tableRow)}
            </tbody>
          </table>
        </div>
      </section>
      <section>
        <h2>${RECORDS_OUT.open}</h2>
        <p>${RECORDS_OUT.openLead}</p>
        <pre>${EXAMPLE_SQL}</pre>
      </section>
      <section>
        <h2>${RECORDS_OUT.archive}</h2>
        <p>${RECORDS_OUT.archiveLead}</p>
        <pre>${ARCHIVE_COMMANDS}</pre>
        <p>${RECORDS_OUT.archiveKey}</p>
      </section>`;
  }

  private form(): TemplateResult {
    const { table, format, from, to } = this.chosen;
    const isAlwaysWhole = tableNamed(table)?.periodBy === null;
    const isBackwards = !isAlwaysWhole && from !== '' && to !== '' && to < from;
    return html`<form @change=${this.changed} @submit=${(event: SubmitEvent) => event.preventDefault()}>
        <label
          >${RECORDS_OUT.table}<select name="table">
            ${RECORD_TABLES.map(({ name }) => html`<option ?selected=${name === table}>${name}</option>`)}
          </select></label
        >
        <label
          >${RECORDS_OUT.format}<select name="format">
            ${FORMATS.map((each) => html`<option value=${each} ?selected=${each === format}>${RECORDS_OUT.formats[each]}</option>`)}
          </select></label
        >
        ${
          isAlwaysWhole
            ? nothing
            : html`<label>${RECORDS_OUT.from}<input type="date" name="from" .value=${from} /></label>
                <label>${RECORDS_OUT.to}<input type="date" name="to" .value=${to} /></label>`
        }
        ${isBackwards ? nothing : html`<a class="filled" href=${exportAddress(this.chosen)} download>${RECORDS_OUT.download}</a>`}
      </form>
      <p role="status">${isBackwards ? RECORDS_OUT.endsBefore : isAlwaysWhole ? RECORDS_OUT.wholeAlways : ''}</p>`;
  }

  private readonly changed = (event: Event): void => {
    const field = event.target;
    if (field instanceof HTMLSelectElement || field instanceof HTMLInputElement)
      this.chosen = { ...this.chosen, [field.name]: field.value };
  };
}

/** Where a table is downloaded from; what is not said is left out. */
export function exportAddress({ table, format, from, to }: Chosen): string {
  const query = new URLSearchParams({ table, format });
  if (tableNamed(table)?.periodBy !== null) for (const [name, date] of Object.entries({ from, to })) if (date !== '') query.set(name, date);
  return `/api/records-export?${query.toString()}`;
}

function tableRow({ name, columns }: TableDescription): TemplateResult {
  const says: Readonly<Record<string, string>> = RECORDS_OUT.says;
  return html`<tr>
    <th scope="row"><code>${name}</code></th>
    <td>${says[name]}</td>
    <td>
      <details>
        <summary>${columns.length}</summary>
        <code>${columns.map((column) => column.name).join(', ')}</code>
      </details>
    </td>
  </tr>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'out-view': OutView;
  }
}
