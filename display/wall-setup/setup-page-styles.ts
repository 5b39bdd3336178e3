import { css } from 'lit';

/** The setup page: one column of sections on a small screen, several beside one another on a large one. */
export const setupPageStyles = css`
  :host {
    display: block;
    min-height: 100vh;
    min-height: 100dvh;
    background: var(--paper);
    color: var(--ink);
    font-size: var(--type-text);
    line-height: 1.35;
  }
  header,
  main {
    max-width: 1500px;
    margin-inline: auto;
    padding: var(--space-5);
  }
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: flex-start;
    justify-content: space-between;
    gap: var(--space-3) var(--space-5);
    padding-bottom: 0;
  }
  h1 {
    margin-bottom: var(--space-1);
    font-size: calc(var(--type-title) * 1.5);
    font-weight: var(--weight-strong);
    line-height: 1.15;
  }
  .back {
    display: inline-flex;
    align-items: center;
    gap: var(--space-2);
    min-height: var(--target-desk);
    padding: var(--space-2) var(--space-4);
    border: var(--hairline) solid var(--ink);
    border-radius: var(--radius);
    background: var(--ink);
    color: var(--paper);
    font-weight: var(--weight-word);
    text-decoration: none;
  }
  .alert {
    flex-basis: 100%;
  }
  .pressing {
    padding: var(--space-2) var(--space-4);
    border-inline-start: calc(var(--rule) * 2) solid var(--ink);
    font-weight: var(--weight-word);
  }
  main {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 19rem), 1fr));
    gap: var(--space-6) var(--space-7);
  }
  .wide {
    grid-column: 1 / -1;
  }
  .address {
    overflow-wrap: anywhere;
    color: var(--ink);
    font-weight: var(--weight-word);
  }
  @media (max-width: 600px) {
    header,
    main {
      padding-inline: var(--space-3);
    }
  }
`;
