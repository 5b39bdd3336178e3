import { css } from 'lit';

/** A page of one column: a heading, what is said, what is wrong. Each page says how wide it is and how far its parts are apart. */
export const columnStyles = css`
  main {
    display: grid;
    margin: 0 auto;
    font-size: var(--type-text);
  }
  h1 {
    font-size: var(--type-figure);
    line-height: 1.1;
  }
  .soft {
    color: var(--ink-soft);
  }
  .fault {
    padding-inline-start: 10px;
    border-inline-start: 5px solid var(--lost);
    font-weight: var(--weight-word);
  }
`;
