import { css } from 'lit';

/** The plan of a date: its button, the bar while it is sought. */
export const planPanelStyles = css`
  .ask {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2) var(--space-4);
  }
  .ask p {
    flex: 1 1 300px;
  }
  button.big {
    min-height: 56px;
    padding-inline: var(--space-5);
    font-size: var(--type-button);
  }
  .card {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-2);
  }
  .bar {
    height: 18px;
    border: var(--hairline) solid var(--ink);
    background: var(--field);
  }
  .done {
    height: 100%;
    background: var(--block);
  }
  .found {
    display: flex;
    flex-wrap: wrap;
    align-items: flex-start;
    gap: var(--space-5) var(--space-6);
  }
  plan-compare {
    flex: 0 1 auto;
    min-width: 0;
    max-width: 100%;
  }
  .beside {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    flex: 1 1 460px;
    gap: var(--space-4);
    min-width: 0;
  }
  @media (max-width: 600px) {
    .beside {
      flex-basis: 100%;
    }
  }
  .warnings {
    display: grid;
    gap: var(--space-2);
  }
`;
