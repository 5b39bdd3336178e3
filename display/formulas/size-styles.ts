import { css } from 'lit';

/** What a size is said with, and what comes of it. */
export const sizeStyles = css`
  :host {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-4);
    font-size: var(--type-text);
  }
  h2,
  h3 {
    font-size: var(--type-title);
    font-weight: var(--weight-strong);
  }
  .said {
    display: grid;
    gap: var(--space-3);
    justify-items: start;
  }
  .product {
    display: grid;
    grid-template-columns: repeat(3, minmax(0, 190px));
    gap: var(--space-1) var(--space-4);
    width: 100%;
    padding-top: var(--space-2);
    border-top: 1px solid var(--line);
  }
  legend {
    float: left;
    grid-column: 1 / -1;
    padding: 0;
    font-size: var(--type-button);
    font-weight: var(--weight-strong);
    overflow-wrap: anywhere;
  }
  .hint {
    grid-column: 1 / -1;
    font-size: var(--type-small);
    color: var(--ink-soft);
  }
  .outcome {
    padding: var(--space-2) var(--space-3);
    border-inline-start: 6px solid var(--ink);
    background: var(--floor);
    font-size: var(--type-button);
    font-weight: var(--weight-word);
    overflow-wrap: anywhere;
  }
  .outcome.fault {
    border-inline-start: 6px double var(--ink);
    font-size: var(--type-text);
    font-weight: var(--weight-text);
  }
  .which {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2);
    font-weight: var(--weight-word);
  }
  select,
  input {
    min-height: var(--target-desk);
    min-width: 0;
    padding: 6px 10px;
    border: var(--hairline) solid var(--ink);
    border-radius: var(--radius);
    background: var(--field);
    color: var(--ink);
    font: inherit;
    font-size: var(--type-text);
  }
  @media (max-width: 600px) {
    .product {
      grid-template-columns: repeat(2, minmax(0, 1fr));
    }
  }
`;
