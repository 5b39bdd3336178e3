import { css } from 'lit';

/** The plan: walls in ink, things as they look from above, ovens from in front. */
export const planStyles = css`
  :host {
    display: grid;
    gap: 0;
    border: 6px solid var(--ink);
    background: var(--floor);
    container-type: inline-size;
  }
  .rooms {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
  }
  .zone {
    display: grid;
    align-content: start;
    gap: var(--space-3);
    min-width: 0;
    padding: var(--space-4);
    border-bottom: var(--rule) solid var(--ink);
  }
  .zone:last-child {
    border-bottom: none;
  }
  @container (min-width: 900px) {
    .rooms {
      grid-template-columns: minmax(0, 5fr) minmax(0, 6fr);
      grid-template-areas: 'mixers ovens' 'places vessels' 'stations tasks';
    }
    .mixers {
      grid-area: mixers;
    }
    .places {
      grid-area: places;
    }
    .ovens {
      grid-area: ovens;
    }
    .vessels {
      grid-area: vessels;
    }
    .stations {
      grid-area: stations;
    }
    .tasks {
      grid-area: tasks;
    }
    .stations {
      border-bottom: none;
    }
    .mixers,
    .places,
    .stations {
      border-inline-end: var(--rule) solid var(--ink);
    }
  }
  h2 {
    font-size: var(--type-title);
    font-weight: var(--weight-strong);
  }
  .things {
    display: flex;
    flex-wrap: wrap;
    align-items: flex-start;
    gap: var(--space-4);
  }
  .things:empty {
    display: none;
  }
  .thing {
    appearance: none;
    display: flex;
    flex-direction: column;
    align-items: flex-start;
    gap: var(--space-1);
    min-width: 0;
    min-height: var(--target-desk);
    margin: 0;
    padding: 8px 10px;
    border: var(--hairline) solid var(--ink);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    font: inherit;
    font-size: var(--type-text);
    line-height: 1.2;
    text-align: start;
    overflow-wrap: anywhere;
    cursor: pointer;
  }
  .thing:hover {
    border-color: var(--call);
  }
  .thing[aria-pressed='true'] {
    background: var(--chosen);
    border-color: var(--ink);
    box-shadow: 0 0 0 3px var(--ink);
  }
  .thing:focus-visible {
    outline: var(--focus);
    outline-offset: 4px;
  }
  .name {
    font-size: var(--type-button);
    font-weight: var(--weight-strong);
  }
  .soft {
    color: var(--ink-soft);
  }
  .figure {
    font-size: var(--type-button);
    font-weight: var(--weight-strong);
    white-space: nowrap;
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 2px 12px;
    width: 100%;
  }
  .tag {
    display: inline-block;
    padding: 1px 8px;
    border-radius: var(--radius);
    background: var(--ink);
    color: var(--paper);
    font-weight: var(--weight-strong);
  }
  .tags,
  .counts {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: var(--space-1) var(--space-3);
  }
  .mark {
    padding: 0 var(--space-2);
    border: var(--hairline) dashed var(--ink);
    border-radius: var(--radius);
    font-weight: var(--weight-word);
  }
  .mark.wrong {
    border: none;
    background: var(--late);
    color: var(--on-role);
    font-weight: var(--weight-strong);
  }
  .blocked {
    padding: 2px 8px;
    border: var(--hairline) solid var(--ink);
    background: var(--late);
    color: var(--on-role);
    font-weight: var(--weight-word);
  }
  .fault {
    padding-inline-start: 10px;
    border-inline-start: 5px solid var(--lost);
    font-size: var(--type-text);
    font-weight: var(--weight-word);
    overflow-wrap: anywhere;
  }
  .add {
    justify-self: start;
    appearance: none;
    min-height: var(--target-desk);
    padding: 6px 12px;
    border: var(--hairline) dashed var(--ink);
    border-radius: var(--radius);
    background: transparent;
    color: var(--ink);
    font: inherit;
    font-size: var(--type-text);
    text-align: start;
    cursor: pointer;
  }
  .add:hover {
    background: var(--chosen);
  }

  .machine {
    display: flex;
    flex-wrap: wrap;
    gap: 10px;
  }
  .mixer {
    align-items: center;
    flex: 0 0 160px;
    text-align: center;
  }
  .round {
    display: grid;
    place-content: center;
    gap: 2px;
    width: 108px;
    height: 108px;
    border: 5px solid var(--ink);
    border-radius: 50%;
    background: var(--field);
  }
  .round.full {
    background: var(--rest);
  }
  .bowls {
    display: flex;
    flex-direction: column;
    align-items: flex-start;
    gap: var(--space-2);
    flex: 1 1 130px;
    min-width: 0;
    max-width: 190px;
  }
  .bowl {
    flex-direction: row;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 2px 8px;
    border-radius: 22px;
    padding-inline: var(--space-4);
  }

  .place {
    flex: 1 1 200px;
    max-width: 340px;
    border-bottom-width: 8px;
  }
  .place.cold-room,
  .place.retarder,
  .place.freezer {
    border-width: 6px;
    border-style: double;
  }
  .cells {
    display: flex;
    flex-wrap: wrap;
    gap: 3px;
  }
  .cell {
    width: 16px;
    height: 12px;
    border: var(--hairline) solid var(--ink);
    background: var(--field);
  }
  .cell.full {
    background: var(--ink);
  }

  .stack {
    flex: 1 1 220px;
    max-width: 360px;
  }
  .bar {
    display: flex;
    width: 100%;
    height: 18px;
    border: var(--hairline) solid var(--ink);
    background: var(--field);
  }
  .part.full {
    background: var(--block);
  }
  .part.back {
    background: repeating-linear-gradient(45deg, var(--ink) 0 3px, var(--field) 3px 8px);
  }

  .oven {
    display: grid;
    align-content: start;
    gap: 0;
    flex: 1 1 330px;
    max-width: 560px;
    min-width: 0;
    padding: 10px;
    border: var(--rule) solid var(--ink);
    background: var(--rest);
  }
  .oven > .fault {
    padding: 4px 10px;
    background: var(--paper);
  }
  .oven-name {
    justify-self: start;
    margin-bottom: 10px;
  }
  .oven > .add {
    margin-top: 10px;
    background: var(--paper);
  }
  .deck {
    display: grid;
    grid-template-columns: minmax(104px, 2fr) minmax(0, 5fr) 44px;
    gap: var(--space-2);
    padding: var(--space-2);
    border: var(--hairline) solid var(--ink);
    background: var(--paper);
  }
  .deck + .deck {
    border-top-width: 0;
  }
  .deck > .fault {
    grid-column: 1 / -1;
  }
  .slots {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(68px, 1fr));
    gap: 6px;
    min-width: 0;
  }
  .slot {
    min-height: 64px;
    padding-inline: var(--space-2);
    background: var(--field);
  }
  .slot.full {
    background: var(--rest);
  }
  .thing[aria-pressed='true'] .soft,
  .slot.full .soft,
  .round.full .soft {
    color: var(--ink);
  }
  .add.tiny {
    width: 44px;
    padding: 0;
    align-self: center;
    text-align: center;
    font-size: var(--type-title);
  }

  .task {
    flex: 1 1 180px;
    max-width: 340px;
  }
  .station {
    flex: 1 1 130px;
    max-width: 240px;
    border-radius: 14px;
  }
`;
