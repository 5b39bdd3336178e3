import { css } from 'lit';

/** A section of the setup page with its heading, and what stands in it. */
export const sectionStyles = css`
  h2 {
    font-size: var(--type-title);
    font-weight: var(--weight-strong);
    line-height: 1.2;
  }
  section {
    display: grid;
    gap: var(--space-4);
    align-content: start;
    min-width: 0;
    padding-top: var(--space-4);
    border-top: var(--hairline) solid var(--line-strong);
  }
  .beside {
    display: grid;
    grid-template-columns: minmax(0, 26rem) minmax(0, 1fr);
    gap: var(--space-5) var(--space-7);
  }
  @media (max-width: 900px) {
    .beside {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  .stack {
    display: grid;
    gap: var(--space-4);
    align-content: start;
    min-width: 0;
  }
  .field {
    display: grid;
    gap: var(--space-1);
    justify-items: start;
  }
  .hours {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-3) var(--space-5);
  }
`;
