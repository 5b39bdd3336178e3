import { css } from 'lit';

/** What every view of the records is drawn with, on the screen and on paper. */
export const recordsStyles = css`
  :host {
    display: block;
    font-size: var(--type-text);
  }
  section {
    display: grid;
    gap: var(--space-2);
    margin-block: var(--space-5) 0;
  }
  h2 {
    font-size: var(--type-step);
  }
  h3 {
    font-size: var(--type-button);
  }
  .top {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: var(--space-2) var(--space-4);
  }
  .top h2 {
    font-size: var(--type-verb);
    line-height: 1.1;
    overflow-wrap: anywhere;
  }
  dt {
    font-size: var(--type-small);
    font-weight: var(--weight-word);
    color: var(--ink-soft);
  }
  dd {
    margin: 0;
    overflow-wrap: anywhere;
  }
  .soft {
    color: var(--ink-soft);
  }
  .fault {
    font-weight: var(--weight-word);
  }
  .wide {
    overflow-x: auto;
  }
  table {
    border-collapse: collapse;
    font-variant-numeric: tabular-nums;
  }
  caption {
    padding-bottom: var(--space-1);
    text-align: start;
    font-weight: var(--weight-word);
  }
  th,
  td {
    padding: 4px var(--space-3) 4px 0;
    border-bottom: var(--hairline) solid var(--line);
    text-align: start;
    vertical-align: top;
  }
  th {
    font-size: var(--type-small);
    font-weight: var(--weight-word);
    color: var(--ink-soft);
  }
  tbody th {
    font-size: inherit;
    color: inherit;
  }
  td.sentences {
    min-width: 16rem;
  }
  td.figure,
  th.figure {
    text-align: end;
    white-space: nowrap;
  }
  a {
    color: var(--ink);
  }
  form {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: var(--space-2) var(--space-3);
  }
  label {
    display: grid;
    gap: 2px;
    font-size: var(--type-small);
    font-weight: var(--weight-word);
  }
  input,
  select {
    box-sizing: border-box;
    min-height: var(--target-desk);
    max-width: 100%;
    padding: 6px 10px;
    border: var(--hairline) solid var(--ink);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    font: inherit;
    font-size: var(--type-text);
    font-weight: var(--weight-text);
  }
  /* A date's field is made of parts, of which one has the keyboard: the field itself is not :focus-visible then. */
  input[type='date']:focus-within {
    outline: var(--focus);
    outline-offset: 2px;
  }
  @media print {
    .screen-only {
      display: none;
    }
    :host {
      --type-small: 8.5pt;
      --type-text: 9.5pt;
      --type-button: 10.5pt;
      --type-step: 12pt;
      --type-verb: 18pt;
    }
    /* A grid may part a heading from what stands under it. */
    section {
      display: block;
      margin-block-start: var(--space-4);
    }
    th {
      font-size: inherit;
    }
    th,
    td {
      padding: 2px var(--space-2) 2px 0;
    }
    td.sentences {
      min-width: 9rem;
    }
    thead {
      display: table-header-group;
    }
    tr,
    figure {
      break-inside: avoid;
    }
    h2,
    h3 {
      break-after: avoid;
    }
    a {
      text-decoration: none;
    }
    .wide {
      overflow: visible;
    }
  }
`;
