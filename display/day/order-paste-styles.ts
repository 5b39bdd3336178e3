import { css } from 'lit';

/** The box for orders that are pasted, and what was read of it. */
export const orderPasteStyles = css`
  .columns {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1);
  }
  .columns span {
    padding: 1px 8px;
    border: 1px solid var(--ink-soft);
    border-radius: var(--radius);
    font-size: var(--type-small);
  }
  label {
    font-weight: var(--weight-word);
  }
  textarea {
    width: 100%;
    min-height: 170px;
    padding: 8px 10px;
    border: var(--hairline) solid var(--ink);
    border-radius: var(--radius);
    background: var(--field);
    color: var(--ink);
    font: inherit;
    font-size: var(--type-text);
    line-height: 1.4;
    tab-size: 12;
    resize: vertical;
  }
  .file {
    display: grid;
    gap: var(--space-1);
    width: 100%;
  }
  input[type='file'] {
    width: 100%;
    min-width: 0;
    min-height: var(--target-desk);
    color: var(--ink);
    font: inherit;
    font-size: var(--type-text);
  }
  ::file-selector-button {
    min-height: 36px;
    margin-inline-end: var(--space-3);
    padding: 4px 12px;
    border: var(--hairline) solid var(--ink);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    font: inherit;
  }
  .read {
    display: grid;
    gap: var(--space-2);
  }
  .faults {
    display: grid;
    gap: var(--space-2);
    max-height: 320px;
    overflow: auto;
  }
  .place {
    min-height: 24px;
    padding: 2px 0;
    border: none;
    background: none;
    color: var(--ink);
    font: inherit;
    font-weight: var(--weight-strong);
    text-decoration: underline;
    cursor: pointer;
  }
`;
