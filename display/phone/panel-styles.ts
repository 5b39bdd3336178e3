import { css } from 'lit';

/** Panels that stand in place of a card's buttons. */
export const panelStyles = css`
  :host {
    display: grid;
    gap: 16px;
    padding: 12px 16px;
  }
  h2 {
    font-size: 22px;
    line-height: 1.2;
    font-weight: var(--weight-strong);
    overflow-wrap: anywhere;
  }
  h3 {
    margin: 0 0 4px;
    font-size: 17px;
    font-weight: var(--weight-word);
    color: var(--ink-soft);
    overflow-wrap: anywhere;
  }
  .two {
    display: grid;
    grid-template-columns: repeat(2, minmax(0, 1fr));
    gap: 16px;
  }
  .note {
    font-size: 17px;
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
