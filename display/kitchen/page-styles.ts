import { css } from 'lit';

/** The page around plan and panel: side by side at a desk, one under the other on a phone. */
export const pageStyles = css`
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
  /* It takes the keyboard when a button goes away under it; nothing can be done on it, so that a ring would only mislead. */
  main:focus-visible {
    outline: none;
  }
  main {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    align-content: start;
    gap: var(--space-4);
    padding-block: var(--space-1) var(--space-5);
  }
  footer {
    position: sticky;
    bottom: 0;
    z-index: 1;
  }
  .note,
  .hint {
    font-size: var(--type-text);
    color: var(--ink-soft);
  }
  .desk {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(340px, 420px);
    align-items: start;
    gap: var(--space-5);
  }
  aside {
    position: sticky;
    top: 16px;
    max-height: calc(100vh - 110px);
    overflow: hidden auto;
    padding: var(--space-1);
    scrollbar-gutter: stable;
  }
  .still {
    display: grid;
    gap: var(--space-2);
    padding: 96px 24px;
    text-align: center;
    font-size: var(--type-text);
    color: var(--ink-soft);
  }
  .still h2 {
    font-size: var(--type-step);
    font-weight: var(--weight-strong);
    color: var(--ink);
  }
  @media (max-width: 1000px) {
    .desk {
      grid-template-columns: minmax(0, 1fr);
    }
    aside {
      position: static;
      max-height: none;
      overflow: visible;
      padding: 0;
    }
  }
  @media (max-width: 600px) {
    header,
    main {
      padding-inline: var(--space-3);
    }
  }
`;
