import { css } from 'lit';

/** What the forms of a method, a product and an ingredient are drawn with. */
export const formStyles = css`
  h3 {
    font-size: var(--type-button);
    font-weight: var(--weight-strong);
    line-height: 1.2;
  }
  h4 {
    margin: 0;
    font-size: var(--type-text);
    font-weight: var(--weight-strong);
  }
  .fields {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 190px), 1fr));
    align-items: start;
    gap: var(--space-3) var(--space-4);
  }
  .fields.numbers {
    grid-template-columns: repeat(auto-fit, minmax(min(45%, 175px), 1fr));
    align-items: end;
  }
  .group {
    display: grid;
    gap: var(--space-3);
  }
  .lines {
    display: grid;
    gap: var(--space-3);
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    align-items: flex-end;
    gap: var(--space-3) var(--space-4);
    padding: 0 0 var(--space-3);
    border-block-end: 1px solid var(--line);
  }
  .line > * {
    flex: 1 1 100%;
  }
  .line > .fields {
    flex: 1 1 320px;
  }
  .line > .buttons {
    flex: none;
  }
  .soft {
    font-size: var(--type-text);
    color: var(--ink-soft);
  }
  .caution {
    padding-inline-start: 10px;
    border-inline-start: 5px solid var(--ink);
    font-size: var(--type-text);
  }
  .fault {
    padding-inline-start: 10px;
    border-inline-start: 5px solid var(--lost);
    font-size: var(--type-text);
    font-weight: var(--weight-word);
    overflow-wrap: anywhere;
  }
`;
