import { css } from 'lit';

/** Panels that stand in place of a card's buttons. */
export const panelStyles = css`
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
  h3 {
    margin: 0 0 var(--space-1);
    font-size: var(--type-small);
    font-weight: var(--weight-word);
    color: var(--ink-soft);
    overflow-wrap: anywhere;
  }
  .two {
    display: grid;
    grid-template-columns: repeat(2, minmax(0, 1fr));
    gap: var(--space-4);
  }
  .note {
    font-size: var(--type-small);
    color: var(--ink-soft);
  }
  button[aria-pressed='true'] {
    background: var(--ink);
    color: var(--paper);
  }
  button:disabled[aria-pressed] {
    background: var(--paper);
  }
`;
