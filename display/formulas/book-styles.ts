import { css } from 'lit';

/** Rows of the book: letters, name, what it is. */
export const bookStyles = css`
  :host {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: auto minmax(0, 1fr);
    gap: var(--space-3);
    min-height: 0;
  }
  .head {
    display: grid;
    gap: var(--space-2);
  }
  h2 {
    font-size: var(--type-title);
    font-weight: var(--weight-strong);
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-2);
  }
  .word {
    align-self: center;
    font-size: var(--type-text);
    font-weight: var(--weight-word);
  }
  .search {
    display: grid;
    gap: var(--space-1);
  }
  label,
  legend {
    padding: 0;
    font-size: var(--type-text);
    font-weight: var(--weight-word);
  }
  .hint,
  .count {
    font-size: var(--type-small);
    color: var(--ink-soft);
  }
  input[type='search'] {
    width: 100%;
    min-width: 0;
    min-height: var(--target-desk);
    padding: 6px 10px;
    border: var(--hairline) solid var(--ink);
    border-radius: var(--radius);
    background: var(--field);
    color: var(--ink);
    font: inherit;
    font-size: var(--type-text);
  }
  [role='listbox'] {
    min-height: 120px;
    overflow: hidden auto;
    border-top: var(--hairline) solid var(--line-strong);
    overscroll-behavior: contain;
  }
  [role='option'] {
    display: grid;
    grid-template-columns: 46px minmax(0, 1fr);
    gap: 0 var(--space-3);
    padding: var(--space-2) var(--space-2);
    border-bottom: 1px solid var(--line);
    cursor: pointer;
  }
  [role='option']:hover {
    background: var(--pressed);
  }
  [role='option'][aria-selected='true'] {
    background: var(--chosen);
    box-shadow: inset 6px 0 0 var(--ink);
    padding-inline-start: 14px;
  }
  [role='listbox']:focus-visible {
    outline: none;
  }
  [role='listbox']:focus-visible .active {
    outline: var(--focus);
    outline-offset: -5px;
  }
  .letters {
    align-self: start;
    padding: 2px 0;
    border: var(--hairline) solid var(--ink);
    border-radius: var(--radius);
    font-size: var(--type-button);
    font-weight: var(--weight-strong);
    line-height: 1.25;
    text-align: center;
  }
  .name {
    font-size: var(--type-text);
    font-weight: var(--weight-word);
    line-height: 1.25;
    overflow-wrap: anywhere;
  }
  .facts {
    grid-column: 2;
    font-size: var(--type-small);
    line-height: 1.3;
    color: var(--ink-soft);
    font-variant-numeric: tabular-nums;
    overflow-wrap: anywhere;
  }
  .still {
    display: grid;
    justify-items: start;
    align-content: start;
    gap: var(--space-3);
    padding: var(--space-5) var(--space-2);
    border-top: var(--hairline) solid var(--line-strong);
    font-size: var(--type-text);
    color: var(--ink-soft);
    overflow-wrap: anywhere;
  }
  .still strong {
    font-size: var(--type-title);
    color: var(--ink);
  }
  button:disabled {
    border-style: dashed;
    color: var(--ink-soft);
    cursor: default;
  }
  button.small {
    padding: 4px 11px;
    font-weight: var(--weight-text);
  }
`;
