import { css } from 'lit';
import { unseenStyles } from '../parts/unseen-styles.ts';

/** What every part of the setup page is drawn with. */
export const setupStyles = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  h1,
  h2,
  p,
  fieldset {
    min-width: 0;
    margin: 0;
    padding: 0;
    border: none;
  }
  label,
  legend {
    padding: 0;
    font-weight: var(--weight-word);
  }
  button {
    min-width: var(--target-desk);
    min-height: var(--target-desk);
    padding: var(--space-2) var(--space-4);
    border: var(--hairline) solid var(--ink);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    font: inherit;
    font-weight: var(--weight-word);
    cursor: pointer;
  }
  button:hover {
    background: var(--pressed);
  }
  input[type='text'],
  input[type='time'],
  select {
    min-width: 0;
    max-width: 100%;
    min-height: var(--target-desk);
    padding: var(--space-1) var(--space-3);
    border: var(--hairline) solid var(--ink);
    border-radius: var(--radius);
    background: var(--field);
    color: var(--ink);
    font: inherit;
  }
  .soft {
    color: var(--ink-soft);
  }
  :focus-visible {
    outline: var(--focus);
    outline-offset: var(--focus-gap);
  }
  ${unseenStyles}
`;
