import { html, nothing, type TemplateResult } from 'lit';

/** A column of a table: its heading, and whether figures stand in it. */
export interface Column {
  readonly head: string;
  readonly isFigure?: boolean;
  /** Sentences stand in it: it is to have room. */
  readonly isWide?: boolean;
}

/** A table of records under its heading; nothing where it would have no rows. The first cell of a row names it. */
export function tableSection(
  id: string,
  heading: string,
  columns: readonly Column[],
  rows: readonly (readonly unknown[])[],
  more: TemplateResult | typeof nothing = nothing,
): TemplateResult | typeof nothing {
  if (rows.length === 0) return nothing;
  return html`<section aria-labelledby=${id}>
    <h2 id=${id}>${heading}</h2>
    ${tableOf(heading, columns, rows)} ${more}
  </section>`;
}

/** The table alone, in a box that scrolls where it is wider than the screen. */
export function tableOf(label: string, columns: readonly Column[], rows: readonly (readonly unknown[])[]): TemplateResult {
  return html`<div class="wide" tabindex="0" role="group" aria-label=${label}>
    <table>
      <thead>
        <tr>
          ${columns.map((column) => html`<th scope="col" class=${classOf(column)}>${column.head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          (row) =>
            html`<tr>
              ${row.map((cell, index) => {
                const name = classOf(columns[index]);
                return index === 0 ? html`<th scope="row" class=${name}>${cell}</th>` : html`<td class=${name}>${cell}</td>`;
              })}
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

function classOf(column: Column | undefined): string {
  return column?.isFigure === true ? 'figure' : column?.isWide === true ? 'sentences' : '';
}
