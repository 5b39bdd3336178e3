import { css } from 'lit';

/** What the views of a weigh-out share: a title, notes below it, cautions, and numbers to be read at arm's length. */
export const weighStyles = css`
  :host {
    display: block;
    padding: var(--space-3) var(--space-4) var(--space-5);
  }
  h2 {
    font-size: var(--type-step);
    font-weight: var(--weight-strong);
    line-height: 1.15;
    overflow-wrap: anywhere;
    hyphens: auto;
  }
  .place {
    font-size: var(--type-small);
    color: var(--ink-soft);
    overflow-wrap: anywhere;
  }
  .huge {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 var(--space-2);
    font-size: var(--type-weight);
    font-weight: var(--weight-strong);
    line-height: 1.05;
    font-variant-numeric: tabular-nums;
  }
  @media (max-height: 719px) {
    :host {
      padding-top: var(--space-2);
    }
    .huge {
      font-size: var(--type-weight-narrow);
    }
  }
  .huge small {
    font-size: 0.45em;
    font-weight: var(--weight-word);
  }
  .note {
    font-size: var(--type-text);
    overflow-wrap: anywhere;
  }
  .soft {
    color: var(--ink-soft);
  }
  .strong {
    font-weight: var(--weight-strong);
  }
  .caution {
    margin-top: var(--space-4);
    padding-inline-start: var(--space-3);
    border-inline-start: var(--rule) solid var(--line-strong);
    font-size: var(--type-small);
    color: var(--ink-soft);
    overflow-wrap: anywhere;
  }
  .mark {
    display: inline-flex;
    align-items: center;
    gap: var(--space-2);
  }
`;
