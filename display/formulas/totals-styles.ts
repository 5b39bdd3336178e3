import { css } from 'lit';

/** The figures of a formula: what they are at the left, how much at the right, on thin lines. */
export const totalsStyles = css`
  :host {
    display: block;
    font-size: var(--type-text);
  }
  h2 {
    padding-bottom: 6px;
    border-bottom: var(--hairline) solid var(--ink);
    font-size: var(--type-title);
    font-weight: var(--weight-strong);
  }
  h3 {
    margin-top: var(--space-4);
    padding-bottom: 2px;
    font-size: var(--type-text);
    font-weight: var(--weight-word);
  }
  dl {
    margin: 0;
  }
  dl div {
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    gap: var(--space-3);
    padding-block: 4px;
    border-bottom: 1px solid var(--line);
  }
  dt {
    color: var(--ink-soft);
  }
  dd {
    margin: 0;
    font-weight: var(--weight-strong);
    font-variant-numeric: tabular-nums;
    white-space: nowrap;
  }
  dl div:first-child dd {
    font-size: var(--type-figure);
    line-height: 1.1;
  }
  .unit {
    font-weight: var(--weight-text);
  }
  .soft {
    padding-block: var(--space-2);
    color: var(--ink-soft);
  }
  .remarks li {
    margin-top: var(--space-1);
    padding-inline-start: 10px;
    border-inline-start: 5px solid var(--late);
    box-shadow: -1px 0 0 var(--late-outline);
    line-height: 1.3;
  }
  table {
    width: 100%;
    border-collapse: collapse;
  }
  td {
    padding: 3px 0;
    border-bottom: 1px solid var(--line);
    line-height: 1.25;
    overflow-wrap: anywhere;
  }
  td.figure {
    padding-inline-start: 10px;
    text-align: end;
    font-variant-numeric: tabular-nums;
    white-space: nowrap;
  }
`;
