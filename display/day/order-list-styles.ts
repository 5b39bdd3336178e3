import { css } from 'lit';

/** Orders in rows; where there is no room for columns, each row is a card with its own headings. */
export const orderListStyles = css`
  .card {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-3);
  }
  .empty {
    display: grid;
    gap: var(--space-2);
    padding: var(--space-6) var(--space-4);
    border-block: var(--hairline) solid var(--line-strong);
    text-align: center;
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-2) var(--space-4);
  }
  .wide {
    overflow-x: auto;
    margin: -4px;
    padding: 4px;
  }
  .clock {
    font-size: var(--type-title);
    font-weight: var(--weight-strong);
    white-space: nowrap;
  }
  td.number {
    font-size: var(--type-title);
    font-weight: var(--weight-strong);
  }
  th.name {
    border-bottom: 1px solid var(--line);
    font-size: var(--type-text);
    vertical-align: middle;
  }
  .tag {
    padding: 1px 6px;
    border: 1px solid var(--ink-soft);
    border-radius: var(--radius);
    font-size: var(--type-small);
    font-weight: var(--weight-text);
    color: var(--ink-soft);
    white-space: nowrap;
  }
  .own-heading {
    display: none;
  }
  .standing {
    white-space: nowrap;
  }
  .actions .buttons {
    flex-wrap: nowrap;
    justify-content: flex-end;
  }
  button.small {
    padding: 4px 11px;
    font-weight: var(--weight-text);
  }
  td.form {
    padding-inline: 0;
  }
  @media (max-width: 760px) {
    table,
    tbody {
      display: block;
    }
    thead {
      position: absolute;
      clip-path: inset(50%);
      width: 1px;
      height: 1px;
      overflow: hidden;
    }
    tr {
      display: grid;
      grid-template-columns: auto auto minmax(0, 1fr);
      align-items: baseline;
      gap: 0 var(--space-3);
      padding-block: var(--space-3);
      border-bottom: 1px solid var(--line);
    }
    td,
    th.name {
      padding: 0;
      border: none;
    }
    td:not(.clock, .number) {
      grid-column: 1 / -1;
    }
    td.unsaid {
      display: none;
    }
    .own-heading {
      display: inline;
      color: var(--ink-soft);
    }
    .actions .buttons {
      justify-content: flex-start;
      padding-top: var(--space-2);
    }
  }
`;
