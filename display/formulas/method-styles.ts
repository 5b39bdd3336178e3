import { css } from 'lit';

/** The list of a method's steps, each with its length to scale. */
export const methodStyles = css`
  :host {
    display: grid;
    gap: var(--space-4);
    container-type: inline-size;
  }
  .sums {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1) var(--space-4);
    font-size: var(--type-text);
    font-variant-numeric: tabular-nums;
    color: var(--ink-soft);
  }
  ol.steps {
    margin: 0;
    padding: 0;
    list-style: none;
    border-block-end: 1px solid var(--line);
  }
  .steps > li {
    border-block-start: 1px solid var(--line);
  }
  button.row {
    appearance: none;
    display: grid;
    grid-template-columns: 30px minmax(0, 3fr) minmax(150px, 1fr) minmax(0, 3fr);
    align-items: center;
    gap: 2px var(--space-3);
    width: 100%;
    min-height: 56px;
    padding: 6px var(--space-2);
    border: none;
    background: none;
    color: var(--ink);
    font: inherit;
    font-size: var(--type-text);
    font-weight: var(--weight-text);
    line-height: 1.2;
    text-align: start;
    cursor: pointer;
  }
  button.row:hover {
    background: var(--floor);
  }
  button.row[aria-expanded='true'] {
    background: var(--chosen);
  }
  button.row:focus-visible {
    outline-offset: -4px;
  }
  .number {
    color: var(--ink-soft);
    font-variant-numeric: tabular-nums;
    text-align: end;
  }
  .row[aria-expanded='true'] .number {
    color: var(--ink);
  }
  .what,
  .long {
    display: grid;
    gap: 2px;
    min-width: 0;
  }
  .verb,
  .minutes {
    font-weight: var(--weight-strong);
  }
  .more,
  .range {
    font-size: var(--type-small);
    overflow-wrap: anywhere;
  }
  .long {
    font-variant-numeric: tabular-nums;
    text-align: end;
  }
  .wrong {
    display: inline-block;
    min-width: 22px;
    padding-inline: 6px;
    border: var(--hairline) solid var(--lost);
    border-radius: var(--radius);
    text-align: center;
  }
  .track {
    position: relative;
    align-self: stretch;
    min-height: 14px;
    border-inline: 1px solid var(--line);
  }
  .bar {
    position: absolute;
    inset-block: 25%;
    min-width: 3px;
    background: var(--rest);
  }
  .bar.hands,
  .bar.judged {
    background: var(--block);
  }
  .bar.judged,
  .bar.bake {
    border-radius: var(--radius);
  }
  .bar.bake {
    background: var(--paper);
    border: var(--rule) solid var(--block);
  }
  .open {
    display: grid;
    gap: var(--space-4);
    padding: var(--space-4);
    border: var(--hairline) solid var(--ink);
    border-block-start: none;
    background: var(--paper);
  }
  .open .buttons {
    padding-block-start: var(--space-2);
  }
  @container (max-width: 700px) {
    button.row {
      grid-template-columns: 26px minmax(0, 1fr) auto;
    }
    .track {
      grid-column: 2 / -1;
      height: 14px;
    }
    .bar {
      inset-block: 1px;
    }
    .open {
      padding: var(--space-3);
    }
  }
`;
