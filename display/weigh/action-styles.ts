import { css } from 'lit';

/** What stands in the lower half of the screen, in reach of the thumb. */
export const actionStyles = css`
  :host {
    display: grid;
    gap: var(--space-4);
    padding: var(--space-3) var(--space-4);
  }
  h2 {
    font-size: var(--type-title);
    line-height: 1.2;
    font-weight: var(--weight-strong);
    overflow-wrap: anywhere;
  }
  .note {
    font-size: var(--type-text);
    overflow-wrap: anywhere;
  }
  .soft {
    font-size: var(--type-small);
    color: var(--ink-soft);
  }
  /* Up to four of them side by side on a narrow phone. */
  .row > button {
    padding-inline: 2px;
    border-width: 2px;
    font-size: var(--type-small);
  }
  button[aria-pressed='true'] {
    background: var(--ink);
    color: var(--paper);
  }
`;
