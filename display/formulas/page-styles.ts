import { css } from 'lit';

/** The book's list beside the open formula where there is much room; else one or the other. */
export const formulasPageStyles = css`
  :host {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: auto 1fr auto;
    min-height: 100vh;
    min-height: 100dvh;
  }
  header,
  main {
    padding-inline: var(--space-5);
  }
  main {
    display: grid;
    grid-template-columns: minmax(300px, 380px) minmax(0, 1fr);
    align-items: start;
    gap: var(--space-6);
    padding-block: var(--space-1) var(--space-5);
  }
  footer {
    position: sticky;
    bottom: 0;
    z-index: 1;
  }
  .said {
    margin-bottom: var(--space-3);
    padding: 10px 14px;
    border: var(--hairline) solid var(--ink);
    font-size: var(--type-text);
    font-weight: var(--weight-word);
  }
  .still {
    display: grid;
    justify-items: center;
    gap: var(--space-2);
    padding: 64px 24px;
    text-align: center;
    font-size: var(--type-text);
    color: var(--ink-soft);
  }
  .still h2 {
    font-size: var(--type-step);
    font-weight: var(--weight-strong);
    color: var(--ink);
  }
  dialog {
    width: min(720px, 94vw);
    max-height: 90vh;
    overflow: auto;
    border: var(--rule) solid var(--ink);
    background: var(--paper);
    color: var(--ink);
  }
  dialog .buttons {
    justify-content: flex-end;
    padding-top: var(--space-4);
  }
  totals-strip {
    display: none;
  }
  @media (max-width: 1500px) {
    main {
      grid-template-columns: minmax(0, 1fr);
    }
    /* What was begun is not to be looked for below a long list. */
    main:not(.open) .desk {
      order: -1;
    }
    main:not(.open) .desk > .still:not(.begun),
    main.open book-list {
      display: none;
    }
  }
  @media (max-width: 900px) {
    totals-strip {
      display: block;
    }
  }
  @media (max-width: 600px) {
    header,
    main {
      padding-inline: var(--space-3);
    }
  }
`;
