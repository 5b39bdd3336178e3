import { css } from 'lit';

/** How the table of a part is drawn: names at the left, figures under one another at the right. */
export const partStyles = css`
  :host {
    display: block;
    container-type: inline-size;
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2);
    padding-bottom: var(--space-1);
    border-bottom: var(--hairline) solid var(--ink);
  }
  .head .name {
    flex: 1 1 180px;
    font-size: var(--type-title);
    font-weight: var(--weight-strong);
  }
  .role {
    min-height: 36px;
    padding: 4px 6px;
    border: none;
    background: none;
    color: var(--ink-soft);
    font: inherit;
    font-size: var(--type-small);
  }
  table {
    width: 100%;
    border-collapse: collapse;
    font-size: var(--type-text);
  }
  th {
    padding: 6px 0 2px;
    font-size: var(--type-small);
    font-weight: var(--weight-text);
    color: var(--ink-soft);
    text-align: start;
  }
  th.figure {
    padding-inline-end: 10px;
    text-align: end;
  }
  td {
    padding: 0;
    border-bottom: 1px solid var(--line);
    vertical-align: middle;
  }
  tr.told td {
    border-bottom: none;
  }
  td.grams {
    width: 112px;
  }
  td.percent {
    width: 92px;
  }
  td.acts {
    width: 40px;
    text-align: end;
    white-space: nowrap;
  }
  .arranging td.acts {
    width: 152px;
  }
  .what {
    padding-block: 6px;
    line-height: 1.25;
    overflow-wrap: anywhere;
  }
  .soft {
    font-size: var(--type-small);
    color: var(--ink-soft);
  }
  input {
    min-width: 0;
    width: 100%;
    min-height: 40px;
    padding: 4px 10px;
    border: 1px solid transparent;
    border-radius: var(--radius);
    background: transparent;
    color: var(--ink);
    font: inherit;
  }
  td input {
    text-align: end;
    font-variant-numeric: tabular-nums;
    background: var(--field);
    border-color: var(--line);
  }
  .name:hover,
  td input:hover {
    border-color: var(--ink);
  }
  input:focus-visible {
    outline-offset: -2px;
  }
  input[aria-invalid='true'] {
    border: 3px dashed var(--ink);
  }
  .fixed {
    display: block;
    padding-inline: 11px;
    text-align: end;
    font-variant-numeric: tabular-nums;
  }
  button.mark {
    appearance: none;
    width: 36px;
    height: 40px;
    padding: 0;
    border: none;
    border-radius: var(--radius);
    background: none;
    color: var(--ink-soft);
    font: inherit;
    font-size: var(--type-button);
    line-height: 1;
    cursor: pointer;
  }
  button.mark:hover {
    background: var(--pressed);
    color: var(--ink);
  }
  button.mark:disabled {
    visibility: hidden;
  }
  button.word {
    appearance: none;
    min-height: 32px;
    padding: 2px 6px;
    border: none;
    border-bottom: 1px solid var(--ink-soft);
    background: none;
    color: var(--ink);
    font: inherit;
    font-size: var(--type-small);
    cursor: pointer;
  }
  button.word[aria-pressed='true'] {
    background: var(--chosen);
  }
  .fault {
    margin-block: 2px 6px;
    padding-inline-start: 10px;
    border-inline-start: 5px solid var(--lost);
    font-weight: var(--weight-word);
    overflow-wrap: anywhere;
  }
  tfoot td {
    border-bottom: none;
    border-top: var(--hairline) solid var(--ink);
    padding-top: 4px;
    font-weight: var(--weight-word);
  }
  tfoot input {
    font-weight: var(--weight-word);
  }
  .add {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2);
    padding-top: var(--space-2);
  }
  .add input {
    flex: 1 1 200px;
    border: 1px dashed var(--ink-soft);
  }
  .yeast {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 var(--space-2);
  }
  @container (max-width: 460px) {
    td.grams {
      width: 92px;
    }
    td.percent {
      width: 76px;
    }
    input {
      padding-inline: 6px;
    }
    .fixed,
    th.figure {
      padding-inline-end: 7px;
    }
    .arranging .percent {
      display: none;
    }
  }
`;
