import { css } from 'lit';

/** What the parts of a day have in common: headings, notes, and tables that become lists where there is no room. */
export const dayPanelStyles = css`
  :host {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-4);
    font-size: var(--type-text);
    overflow-wrap: anywhere;
  }
  h2 {
    font-size: var(--type-title);
    font-weight: var(--weight-strong);
    line-height: 1.2;
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: var(--space-1) var(--space-4);
  }
  .soft {
    color: var(--ink-soft);
  }
  .small {
    font-size: var(--type-small);
  }
  .strong {
    font-weight: var(--weight-strong);
  }
  .card {
    padding: var(--space-4);
    border: var(--hairline) solid var(--line-strong);
    border-radius: var(--radius);
  }
  .told {
    padding: 10px 14px;
    border: var(--hairline) solid var(--ink);
    font-weight: var(--weight-word);
  }
  .fault {
    padding-inline-start: 10px;
    border-inline-start: 5px solid var(--lost);
  }
  .late {
    padding-inline-start: 10px;
    border-inline-start: 5px solid var(--late);
    box-shadow: inset 1px 0 0 var(--late-outline);
  }
  .caution {
    padding-inline-start: 10px;
    border-inline-start: 5px solid var(--ink);
  }
  table {
    width: 100%;
    border-collapse: collapse;
    font-variant-numeric: tabular-nums;
  }
  th {
    padding: var(--space-1) var(--space-2);
    border-bottom: var(--hairline) solid var(--line-strong);
    font-size: var(--type-small);
    font-weight: var(--weight-word);
    text-align: start;
    vertical-align: bottom;
  }
  td {
    padding: var(--space-1) var(--space-2);
    border-bottom: 1px solid var(--line);
    vertical-align: middle;
  }
  .number {
    text-align: end;
  }
  button.plain:disabled {
    border-style: dashed;
    background: var(--paper);
    color: var(--ink-soft);
    cursor: default;
  }
`;
