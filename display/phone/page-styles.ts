import { css } from 'lit';

/** The phone's page: a header, what scrolls, and what stays in reach of the thumb below it. */
export const pageStyles = css`
  :host {
    display: grid;
    grid-template-rows: auto minmax(0, 1fr) auto;
    height: 100vh;
    height: 100dvh;
    max-width: 640px;
    margin-inline: auto;
    overflow: hidden;
  }
  main {
    position: relative;
    min-height: 0;
    overflow: hidden auto;
    overscroll-behavior: contain;
  }
  footer {
    display: flex;
    flex-direction: column;
    min-height: 0;
    max-height: 80dvh;
  }
  /* A long panel scrolls; the way back stays below it. */
  .actions {
    min-height: 0;
    overflow: hidden auto;
    overscroll-behavior: contain;
    border-top: var(--hairline) solid var(--ink);
  }
  .still {
    display: grid;
    gap: var(--space-2);
    align-content: center;
    height: 100%;
    padding: var(--space-5);
    text-align: center;
    font-size: var(--type-text);
    color: var(--ink-soft);
  }
  .still h1 {
    font-size: var(--type-step);
    font-weight: var(--weight-strong);
    color: var(--ink);
  }
`;
