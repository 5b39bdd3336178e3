import { css } from 'lit';

/** The sheet around its rows: choices above, the axis, NOW, and what is open below. */
export const daySheetStyles = css`
  :host {
    display: block;
    min-width: 0;
    color: var(--ink);
    font-size: var(--type-text);
    font-variant-numeric: tabular-nums;
  }
  section {
    display: flex;
    flex-direction: column;
    gap: var(--space-3);
  }
  h2 {
    font-size: var(--type-title);
    font-weight: var(--weight-strong);
  }
  .note {
    color: var(--ink-soft);
  }
  .tried {
    align-self: start;
    padding: 4px 10px;
    border: var(--hairline) dashed var(--ink);
    border-radius: var(--radius);
    font-weight: var(--weight-word);
  }
  .controls {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2) var(--space-5);
  }
  .group {
    display: flex;
    flex-wrap: wrap;
    gap: 0;
    border: none;
  }
  .group legend {
    float: left;
    display: flex;
    align-items: center;
    min-height: var(--target-desk);
    padding-inline-end: var(--space-2);
    color: var(--ink-soft);
  }
  .group button.plain {
    margin-inline-start: -2px;
    border-radius: 0;
  }
  .group legend + button.plain {
    margin-inline-start: 0;
    border-start-start-radius: var(--radius);
    border-end-start-radius: var(--radius);
  }
  .group button.plain:last-child {
    border-start-end-radius: var(--radius);
    border-end-end-radius: var(--radius);
  }
  .scroller {
    max-height: 78vh;
    max-height: 78dvh;
    overflow: auto;
    scrollbar-gutter: stable;
    overscroll-behavior-inline: contain;
    border: var(--rule) solid var(--ink);
    background: var(--floor);
  }
  .paper {
    position: relative;
    min-height: 100%;
  }
  .axis {
    position: sticky;
    top: 0;
    z-index: 5;
    height: 58px;
    border-bottom: var(--rule) solid var(--ink);
    background: var(--paper);
    font-size: var(--type-small);
    line-height: 1;
  }
  .corner {
    position: sticky;
    left: 0;
    z-index: 2;
    height: 100%;
    border-inline-end: var(--rule) solid var(--ink);
    background: var(--paper);
  }
  .times {
    position: absolute;
    inset-block: 0;
  }
  .times span {
    position: absolute;
    white-space: nowrap;
  }
  .clock {
    bottom: 8px;
  }
  .times .day {
    top: 8px;
    font-weight: var(--weight-strong);
  }
  .times .now-flag {
    top: 2px;
    padding: 5px 8px;
    background: var(--ink);
    color: var(--paper);
    font-weight: var(--weight-strong);
  }
  .lines {
    position: absolute;
    inset-block: 58px 0;
    pointer-events: none;
  }
  .lines i {
    position: absolute;
    inset-block: 0;
    width: 1px;
    background: var(--line);
  }
  .lines i.wanted {
    width: 0;
    border-inline-start: 2px dotted var(--ink-soft);
    background: none;
  }
  .now {
    position: absolute;
    inset-block: 34px 0;
    z-index: 2;
    width: var(--rule);
    background: var(--line-strong);
    pointer-events: none;
  }
  ol.rows {
    position: relative;
    margin: 0;
    padding: 0;
    list-style: none;
  }
  day-sheet-details {
    position: sticky;
    bottom: 0;
    z-index: 6;
    max-height: 46vh;
    max-height: 46dvh;
    border: var(--rule) solid var(--ink);
  }
  .empty {
    display: grid;
    gap: var(--space-2);
    padding: 72px 24px;
    border: var(--rule) solid var(--ink);
    background: var(--floor);
    color: var(--ink-soft);
    text-align: center;
  }
  .empty h3 {
    color: var(--ink);
    font-size: var(--type-step);
    font-weight: var(--weight-strong);
  }
  @media (max-width: 700px) {
    .controls,
    .group {
      gap: var(--space-2) 0;
    }
    .group {
      width: 100%;
    }
    .group legend {
      float: none;
      min-height: 0;
    }
    .group button.plain {
      flex: 1 1 auto;
      padding-inline: var(--space-2);
    }
    .controls > button.plain {
      margin-inline-end: var(--space-2);
    }
    day-sheet-details {
      max-height: 60vh;
      max-height: 60dvh;
    }
  }
`;
