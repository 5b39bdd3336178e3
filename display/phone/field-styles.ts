import { css } from 'lit';

/** Fields to type into; 18 px, below which phones zoom the page in. */
export const fieldStyles = css`
  label,
  .label {
    font-size: 17px;
    font-weight: var(--weight-word);
    color: var(--ink-soft);
  }
  input:not([type='radio']) {
    width: 100%;
    min-height: 56px;
    padding: 8px 12px;
    border: 2px solid var(--ink);
    border-radius: 8px;
    background: var(--paper);
    color: var(--ink);
    font: inherit;
    font-size: 20px;
  }
`;
