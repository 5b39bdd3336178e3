import { css } from 'lit';

/** The page of a weigh-out: as the phone's, and with the list beside the line where there is room for both. */
export const weighPageStyles = css`
  .title {
    display: flex;
    align-items: baseline;
    gap: var(--space-3);
    padding: var(--space-2) var(--space-4);
    border-bottom: 1px solid var(--line);
  }
  h1 {
    flex: 1 1 auto;
    min-width: 0;
    font-size: var(--type-title);
    font-weight: var(--weight-strong);
    line-height: 1.15;
    overflow-wrap: anywhere;
  }
  .title span {
    flex: none;
    font-size: var(--type-text);
    font-variant-numeric: tabular-nums;
  }
  phone-header a {
    display: inline-flex;
    align-items: center;
    flex: 0 1 auto;
    min-height: 52px;
    padding: var(--space-1) var(--space-3);
    border-radius: var(--radius-button);
    color: var(--ink);
    font-size: var(--type-small);
    text-align: end;
    text-underline-offset: 4px;
  }
  .still-to-mix {
    padding: var(--space-3) var(--space-4) 0;
    font-size: var(--type-text);
  }
  .beside {
    display: none;
  }
  bottom-bar[hidden] {
    display: none;
  }
  @media (min-width: 900px) {
    :host([has-piece]) {
      grid-template:
        'header header' auto
        'list view' minmax(0, 1fr)
        'list foot' auto
        / minmax(0, 1fr) minmax(0, 1fr);
      max-width: 1280px;
    }
    :host([has-piece]) header {
      grid-area: header;
    }
    :host([has-piece]) main {
      grid-area: view;
    }
    :host([has-piece]) footer {
      grid-area: foot;
    }
    .beside {
      grid-area: list;
      display: flex;
      flex-direction: column;
      min-height: 0;
      border-inline-end: var(--hairline) solid var(--ink);
    }
    .beside .lines {
      flex: 1 1 auto;
      min-height: 0;
      overflow: hidden auto;
      overscroll-behavior: contain;
    }
    .beside list-actions {
      border-top: var(--hairline) solid var(--ink);
    }
  }
`;
