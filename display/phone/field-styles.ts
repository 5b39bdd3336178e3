import { css } from 'lit';

/** Fields to type into; 18 px, below which phones zoom the page in. */
export const fieldStyles = css`
  label,
  .label {
    font-size: var(--type-small);
    font-weight: var(--weight-word);
    color: var(--ink-soft);
  }
  input:not([type='radio']) {
    width: 100%;
    min-height: 56px;
    padding: var(--space-2) var(--space-3);
    border: var(--hairline) solid var(--ink);
    border-radius: var(--radius-button);
    background: var(--paper);
    color: var(--ink);
    font: inherit;
    font-size: var(--type-button);
  }
`;
