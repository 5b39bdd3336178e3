import { css } from 'lit';

/** The open formula: its sections beside its figures where there is room, under one another where there is none. */
export const formulaDeskStyles = css`
  :host {
    display: block;
    font-size: var(--type-text);
  }
  .title {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 var(--space-3);
  }
  /* Where the book's list is beside it, its own buttons do. */
  .title .buttons {
    margin-inline-start: auto;
  }
  @media (min-width: 1501px) {
    .title .buttons {
      display: none;
    }
  }
  h2 {
    font-size: var(--type-figure);
    font-weight: var(--weight-strong);
    line-height: 1.15;
    overflow-wrap: anywhere;
  }
  h3 {
    font-size: var(--type-title);
  }
  .soft {
    color: var(--ink-soft);
  }
  nav {
    display: flex;
    gap: var(--space-4);
    overflow-x: auto;
    margin-block: var(--space-2) var(--space-4);
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
    cursor: pointer;
  }
  nav button:focus-visible {
    outline-offset: -4px;
  }
  nav button[aria-current='page'] {
    border-bottom-color: var(--ink);
    font-weight: var(--weight-strong);
  }
  nav button[hidden] {
    display: none;
  }
  .columns {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(280px, 340px);
    align-items: start;
    gap: var(--space-5);
  }
  aside {
    position: sticky;
    top: var(--space-3);
  }
  .stack {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-5);
  }
  .banner {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2) var(--space-3);
    margin-block: var(--space-2);
    padding: 10px 14px;
    border: var(--hairline) dashed var(--ink);
  }
  @media (max-width: 900px) {
    .columns {
      grid-template-columns: minmax(0, 1fr);
    }
    aside {
      position: static;
    }
  }
`;
