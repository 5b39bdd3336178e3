import { css } from 'lit';

/** Shelves, decks and mixers in outline, with the doughs standing on them. */
export const placesStyles = css`
  :host {
    display: grid;
    gap: var(--space-5);
    padding: var(--space-4) var(--space-4) var(--space-5);
  }
  h1 {
    font-size: var(--type-figure);
    font-weight: var(--weight-strong);
    line-height: 1.1;
  }
  /* It takes the focus for those who listen; nothing can be done on it, so that a ring would only mislead. */
  h1:focus-visible {
    outline: none;
  }
  h2 {
    margin-bottom: var(--space-2);
    font-size: var(--type-small);
    font-weight: var(--weight-word);
    color: var(--ink-soft);
  }
  h3 {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 var(--space-3);
    font-size: var(--type-button);
    font-weight: var(--weight-strong);
    overflow-wrap: anywhere;
  }
  h3 span,
  .empty,
  .more {
    font-size: var(--type-small);
    font-weight: var(--weight-text);
    color: var(--ink-soft);
  }
  h3 .count {
    margin-inline-start: auto;
  }
  section > div + div {
    margin-top: 20px;
  }
  /* What stands on a shelf: the board runs through under each row of it. */
  .stands {
    display: grid;
    grid-template-columns: repeat(2, minmax(0, 1fr));
    row-gap: var(--space-4);
    padding-top: var(--space-2);
  }
  .shelf {
    margin-inline: -4px;
    border-inline: 6px solid var(--block);
  }
  .stands li,
  .shelf .empty {
    border-bottom: 6px solid var(--block);
  }
  .stands li {
    display: flex;
    padding-inline: var(--space-2);
  }
  .shelf .empty {
    padding: var(--space-4) var(--space-3) var(--space-2);
  }
  button {
    flex: 1 1 auto;
    align-items: stretch;
    gap: var(--space-1);
    padding: 8px 10px 4px;
    border-width: 2px;
    border-bottom: none;
    border-radius: 8px 8px 0 0;
    text-align: start;
  }
  button[aria-current] {
    border-width: 5px;
    border-bottom: none;
    background: var(--chosen);
  }
  .slot button {
    border-bottom: var(--hairline) solid var(--ink);
    border-radius: var(--radius-button);
    padding-bottom: var(--space-2);
  }
  .slot button[aria-current] {
    border-bottom-width: 5px;
  }
  .name {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 var(--space-2);
    font-size: var(--type-title);
    font-weight: var(--weight-strong);
    line-height: 1.1;
  }
  role-mark {
    font-size: var(--type-title);
  }
  .comes {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0 var(--space-2);
    font-size: var(--type-text);
    overflow-wrap: anywhere;
  }
  .comes strong {
    white-space: nowrap;
  }
  .held {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 0 var(--space-2);
    margin-top: auto;
    font-size: var(--type-small);
    font-weight: var(--weight-text);
    color: var(--ink-soft);
    overflow-wrap: anywhere;
  }
  .vessels {
    flex: 0 0 auto;
    height: 28px;
    max-width: 100%;
    fill: none;
    stroke: var(--ink);
    stroke-width: 2;
    stroke-linejoin: round;
  }
  .unsaid {
    stroke-dasharray: 4 3;
  }
  .deck {
    border: 3px solid var(--block);
    padding: 8px 10px 10px;
  }
  .deck + .deck {
    border-top: none;
  }
  .slots {
    display: grid;
    grid-template-columns: repeat(2, minmax(0, 1fr));
    gap: var(--space-4);
    padding-top: var(--space-2);
  }
  .slot {
    display: flex;
    flex-direction: column;
  }
  .free {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    align-content: center;
    min-height: var(--target);
    padding: var(--space-1) var(--space-2);
    overflow-wrap: anywhere;
    border: var(--hairline) dashed var(--rest);
    border-radius: var(--radius-button);
    font-size: var(--type-small);
    color: var(--ink-soft);
    text-align: center;
  }
`;
