import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { BookFormula } from '../../shared/book/book-api.ts';
import type { Change } from '../../shared/book/formula-diff.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { clockText } from '../parts/clock-text.ts';
import { zonedDate } from '../parts/zoned-instant.ts';
import { CHANGES, VERSIONS } from '../words/book.ts';
import type { EditorContext } from './editor-context.ts';
import { VersionsWantedEvent } from './version-events.ts';
import { differences, versionGroups, type VersionGroup, type VersionRow } from './version-rows.ts';

/** A shape for each change beside its word: what differs is never told by colour alone. */
const MARKS: Readonly<Record<Change, string>> = { same: '', changed: '≠', moved: '↕', added: '+', removed: '−' };

/** Two versions of a formula side by side, every line with what became of it. */
@customElement('version-compare')
export class VersionCompare extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-4);
        font-size: var(--type-text);
        font-variant-numeric: tabular-nums;
      }
      h2 {
        font-size: var(--type-title);
        font-weight: var(--weight-strong);
      }
      .which {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        gap: var(--space-3) var(--space-4);
      }
      .which label {
        display: grid;
        gap: var(--space-1);
        min-width: 0;
        font-weight: var(--weight-word);
      }
      select {
        max-width: 100%;
        min-height: var(--target-desk);
        padding: 6px 10px;
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        background: var(--field);
        color: var(--ink);
        font: inherit;
        font-size: var(--type-text);
      }
      table {
        width: 100%;
        border-collapse: collapse;
        table-layout: fixed;
      }
      th,
      td {
        padding: 6px var(--space-2);
        border-bottom: 1px solid var(--line);
        text-align: start;
        vertical-align: baseline;
        font-weight: var(--weight-text);
        overflow-wrap: anywhere;
      }
      thead th {
        border-bottom: var(--hairline) solid var(--line-strong);
        font-size: var(--type-small);
      }
      tbody th[scope='rowgroup'] {
        padding-top: var(--space-4);
        font-size: var(--type-button);
        font-weight: var(--weight-strong);
      }
      tr.differs th,
      tr.differs td {
        background: var(--floor);
        font-weight: var(--weight-word);
      }
      tr.removed .left {
        text-decoration: line-through;
      }
      .change {
        width: 24%;
        white-space: nowrap;
      }
      .mark {
        display: inline-block;
        width: 26px;
        margin-inline-end: var(--space-2);
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        font-weight: var(--weight-strong);
        line-height: 22px;
        text-align: center;
      }
      tr.added .mark {
        background: var(--ink);
        color: var(--paper);
      }
      tr.removed .mark {
        border-style: dashed;
      }
      .note {
        display: block;
        font-size: var(--type-small);
        font-weight: var(--weight-text);
        color: var(--ink-soft);
        white-space: normal;
      }
      .same-word {
        color: var(--ink-soft);
      }
      @media (max-width: 600px) {
        .change {
          width: 29%;
          white-space: normal;
          hyphens: auto;
        }
        .mark {
          display: block;
        }
        th,
        td {
          padding-inline: 4px;
          font-size: var(--type-small);
        }
      }
    `,
  ];

  @property({ attribute: false }) left: BookFormula | null = null;
  @property({ attribute: false }) right: BookFormula | null = null;
  @property({ attribute: false }) context: EditorContext | null = null;
  @state() private onlyChanges = true;
  private groups: readonly VersionGroup[] = [];

  protected override willUpdate(changed: PropertyValues): void {
    if (!['left', 'right', 'context'].some((key) => changed.has(key))) return;
    const { left, right, context } = this;
    this.groups = left === null || right === null || context === null ? [] : versionGroups(left, right, context);
  }

  protected override render(): TemplateResult {
    const { left, right, context } = this;
    return html`<h2>${VERSIONS.title}</h2>
      ${left === null || right === null || context === null ? html`<p role="status">${VERSIONS.loading}</p>` : this.compared(left, right, context)}`;
  }

  private compared(left: BookFormula, right: BookFormula, context: EditorContext): TemplateResult {
    const count = differences(this.groups);
    return html`<div class="which">
        ${this.choice(VERSIONS.left, left, context, (version) => new VersionsWantedEvent(version, right.version))}
        ${this.choice(VERSIONS.right, right, context, (version) => new VersionsWantedEvent(left.version, version))}
        <button type="button" class="plain" aria-pressed=${this.onlyChanges} @click=${() => (this.onlyChanges = !this.onlyChanges)}>
          ${VERSIONS.onlyChanges}
        </button>
      </div>
      <p role="status">${count === 0 ? VERSIONS.same : VERSIONS.count(count)}</p>
      ${count === 0 && this.onlyChanges ? nothing : this.table(left, right)}`;
  }

  private choice(
    label: string,
    { version, newestVersion, history }: BookFormula,
    { house }: EditorContext,
    wanted: (version: number) => VersionsWantedEvent,
  ): TemplateResult {
    return html`<label
      >${label}
      <select @change=${(event: Event) => this.dispatchEvent(wanted(Number((event.target as HTMLSelectElement).value)))}>
        ${[...history].reverse().map(({ version: kept, atMs }) => {
          const when =
            kept === newestVersion
              ? VERSIONS.newest
              : atMs === null
                ? null
                : `${zonedDate(atMs, house.zone)} ${clockText(atMs, house.zone)}`;
          return html`<option value=${kept} .selected=${kept === version}>${VERSIONS.versionAt(kept, when)}</option>`;
        })}
      </select>
    </label>`;
  }

  private table(left: BookFormula, right: BookFormula): TemplateResult {
    const groups = this.groups
      .map(({ title, rows }) => ({ title, rows: this.onlyChanges ? rows.filter(({ change }) => change !== 'same') : rows }))
      .filter(({ rows }) => rows.length > 0);
    return html`<table>
      <thead>
        <tr>
          <th scope="col">${VERSIONS.what}</th>
          <th scope="col">${VERSIONS.versionAt(left.version, null)}</th>
          <th scope="col">${VERSIONS.versionAt(right.version, null)}</th>
          <th scope="col" class="change">${VERSIONS.change}</th>
        </tr>
      </thead>
      ${groups.map(
        ({ title, rows }) =>
          html`<tbody>
            <tr>
              <th scope="rowgroup" colspan="4">${title}</th>
            </tr>
            ${rows.map(comparedRow)}
          </tbody>`,
      )}
    </table>`;
  }
}

function comparedRow({ what, change, left, right, note }: VersionRow): TemplateResult {
  return html`<tr class="${change} ${change === 'same' ? '' : 'differs'}">
    <th scope="row">${what}</th>
    <td class="left">${left}</td>
    <td>${right}</td>
    <td class="change">
      ${
        change === 'same'
          ? html`<span class="same-word">${CHANGES.same}</span>`
          : html`<span class="mark" aria-hidden="true">${MARKS[change]}</span>${CHANGES[change]}`
      }
      ${note === '' ? nothing : html`<span class="note">${note}</span>`}
    </td>
  </tr>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'version-compare': VersionCompare;
  }
}
