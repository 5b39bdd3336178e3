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
    padding-inline: 24px;
  }
  main {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    align-content: start;
    gap: 16px;
    padding-block: 4px 24px;
  }
  footer {
    position: sticky;
    bottom: 0;
    z-index: 1;
  }
  .note,
  .hint {
    font-size: 17px;
    color: var(--ink-soft);
  }
  .desk {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(340px, 420px);
    align-items: start;
    gap: 24px;
  }
  aside {
    position: sticky;
    top: 16px;
    max-height: calc(100vh - 110px);
    overflow: hidden auto;
    padding: 4px;
    scrollbar-gutter: stable;
  }
  .still {
    display: grid;
    gap: 8px;
    padding: 96px 24px;
    text-align: center;
    font-size: 18px;
    color: var(--ink-soft);
  }
  .still h2 {
    font-size: 26px;
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
      padding-inline: 12px;
    }
  }
`;
