import { css } from 'lit';

/** The page of a day: its sections under one another on a phone, orders and what brings them side by side at a desk. */
export const dayPageStyles = css`
  :host {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: auto auto 1fr;
    min-height: 100vh;
    min-height: 100dvh;
    font-size: var(--type-text);
  }
  header,
  nav,
  main {
    padding-inline: var(--space-5);
  }
  nav {
    display: flex;
    gap: var(--space-5);
    overflow-x: auto;
    border-bottom: 1px solid var(--ink-soft);
  }
  nav button {
    appearance: none;
    flex: none;
    min-height: var(--target-desk);
    padding: 4px 2px;
    border: none;
    border-bottom: var(--rule) solid transparent;
    background: none;
    color: var(--ink);
    font: inherit;
    font-size: var(--type-button);
    cursor: pointer;
  }
  nav button:focus-visible {
    outline-offset: -4px;
  }
  nav button[aria-current='page'] {
    border-bottom-color: var(--ink);
    font-weight: var(--weight-strong);
  }
  main {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    align-content: start;
    gap: var(--space-4);
    padding-block: var(--space-4) var(--space-6);
  }
  .columns {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(340px, 480px);
    align-items: start;
    gap: var(--space-6);
  }
  .columns > .said {
    grid-column: 1 / -1;
  }
  .columns[hidden],
  order-paste[hidden] {
    display: none;
  }
  .aside {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-6);
  }
  .said {
    padding: 10px 14px;
    border: var(--hairline) solid var(--ink);
    font-weight: var(--weight-word);
  }
  .still {
    display: grid;
    justify-items: center;
    gap: var(--space-3);
    padding: 96px 24px;
    text-align: center;
    color: var(--ink-soft);
  }
  .still.brief {
    padding: var(--space-4);
    border: var(--hairline) dashed var(--ink);
  }
  .still h2 {
    font-size: var(--type-step);
    font-weight: var(--weight-strong);
    color: var(--ink);
  }
  @media (max-width: 1320px) {
    .columns {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  @media (max-width: 600px) {
    header,
    nav,
    main {
      padding-inline: var(--space-3);
    }
    /* All of them are seen, or nobody would look for the last. */
    nav {
      flex-wrap: wrap;
      gap: 0 var(--space-4);
    }
  }
  @media print {
    header,
    nav,
    .said {
      display: none;
    }
  }
`;
