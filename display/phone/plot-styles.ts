import { css } from 'lit';

/**
 * What the pictures of a card have in common: a plot with its scale at the left and the share at the right, lines that a card may stretch,
 * readings as dots, and one even axis of time below.
 */
export const plotStyles = css`
  :host {
    display: block;
    font-size: var(--type-small);
    color: var(--ink-soft);
  }
  .plot {
    position: relative;
    height: var(--target-big);
    margin-block: calc(var(--space-5) + var(--space-1)) var(--space-1);
    margin-inline-start: 3.6em;
    border-block: 1px solid var(--line);
  }
  svg {
    display: block;
    width: 100%;
    height: 100%;
    overflow: visible;
  }
  svg * {
    fill: none;
    vector-effect: non-scaling-stroke;
  }
  .foreseen {
    stroke-dasharray: 7 5;
  }
  .now {
    stroke: var(--ink);
    stroke-width: 2;
  }
  .dot {
    position: absolute;
    width: 12px;
    height: 12px;
    border: 3px solid var(--ink-soft);
    border-radius: 50%;
    background: var(--paper);
    transform: translate(-50%, -50%);
  }
  .scale {
    position: absolute;
    inset-inline-end: calc(100% + var(--space-1));
    white-space: nowrap;
    transform: translateY(-50%);
  }
  .share {
    position: absolute;
    inset-block-end: 100%;
    inset-inline-end: 0;
    font-weight: var(--weight-word);
    color: var(--ink);
  }
  .axis {
    position: relative;
    height: 1.3em;
    margin-inline-start: 3.6em;
  }
  .axis span {
    position: absolute;
    transform: translateX(-50%);
    white-space: nowrap;
  }
  .axis .first {
    inset-inline-start: 0;
    transform: none;
  }
  .axis .last {
    inset-inline: auto 0;
    transform: none;
  }
  .axis .strong {
    font-weight: var(--weight-word);
    color: var(--ink);
  }
`;
