import { css } from 'lit';
import { unseenStyles } from '../parts/unseen-styles.ts';

/** What every part of the kitchen page is drawn with. */
export const deskStyles = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  h1,
  h2,
  h3,
  p,
  ul,
  fieldset {
    margin: 0;
    padding: 0;
    border: none;
  }
  ul {
    list-style: none;
  }
  :focus-visible {
    outline: var(--focus);
    outline-offset: 2px;
  }
  .unseen {
    margin: 0;
  }
  ${unseenStyles}
`;

/** Plain buttons, and the filled one for what matters most. */
export const plainButtonStyles = css`
  button.plain {
    appearance: none;
    min-height: var(--target-desk);
    padding: 6px 14px;
    border: var(--hairline) solid var(--ink);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    font: inherit;
    font-size: var(--type-text);
    font-weight: var(--weight-word);
    line-height: 1.2;
    cursor: pointer;
  }
  button.plain.filled {
    background: var(--ink);
    color: var(--paper);
  }
  button.plain:hover {
    border-color: var(--call);
  }
  button.plain[aria-pressed='true'] {
    background: var(--chosen);
    outline: 2px solid var(--ink);
    outline-offset: -6px;
  }
  button.plain[aria-pressed='true']:focus-visible {
    outline: var(--focus);
    outline-offset: 2px;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2);
  }
`;
