import { css } from 'lit';

/**
 * The station's screen: what is most pressing with its buttons, then the rest, each in its place whatever they say. One
 * above the other on an upright phone, side by side on a tablet, the buttons at the right on a phone that lies.
 *
 * It is read from 1 to 1.5 m: what the phone's own parts say is drawn larger by `--scale`. At 6 CSS px to the millimetre, as
 * phones and tablets have it by common practice, a tag of 42 px is 16 arc minutes high at 1 m and one of 63 px at 1.5 m
 * (capital height 0.668 of the font size): an upright phone's is 44 px, a large tablet's 64 px.
 */
export const pageStyles = css`
  :host {
    --scale: 1.1;
    --acts-scale: 1;
    --list-scale: 1.1;
    /* One row of the list, more where the phone is higher. */
    --list: clamp(97px, 40dvh - 240px, 300px);
    display: grid;
    grid-template-rows: auto minmax(0, 1fr);
    height: 100vh;
    height: 100dvh;
    overflow: hidden;
  }
  .work {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: minmax(0, 1fr) auto var(--list) auto;
    grid-template-areas: 'card' 'acts' 'list' 'foot';
    min-height: 0;
  }
  .work.alone,
  .work.panelled {
    grid-template-rows: minmax(120px, 1fr) auto 0 auto;
  }
  .card,
  .list,
  .acts,
  .choice,
  .rows,
  .machines {
    min-width: 0;
    min-height: 0;
    overflow: hidden auto;
    overscroll-behavior: contain;
  }
  .card {
    grid-area: card;
  }
  .acts {
    grid-area: acts;
    max-height: 68dvh;
    border-block: var(--hairline) solid var(--ink);
  }
  .list {
    grid-area: list;
  }
  .rows,
  .machines {
    overflow: visible;
  }
  .panelled > .list,
  .alone > .list,
  h2 {
    display: none;
  }
  .foot {
    grid-area: foot;
    min-width: 0;
  }
  dough-card {
    zoom: var(--scale);
  }
  .acts > * {
    zoom: var(--acts-scale);
  }
  phone-list {
    min-height: 0;
    padding-bottom: 0;
    zoom: var(--list-scale);
  }
  h2 {
    padding: var(--space-3) var(--space-4) var(--space-1);
    color: var(--ink-soft);
    font-size: var(--type-text);
    font-weight: var(--weight-word);
  }
  .still {
    display: grid;
    gap: var(--space-2);
    align-content: center;
    padding: var(--space-5);
    color: var(--ink-soft);
    font-size: var(--type-title);
    text-align: center;
  }
  .still h1 {
    color: var(--ink);
    font-size: var(--type-verb);
    font-weight: var(--weight-strong);
  }
  .note {
    padding: var(--space-3) var(--space-4);
    color: var(--ink-soft);
    font-size: var(--type-small);
  }

  /* A phone that lies. */
  @media (min-width: 600px) and (max-height: 559px) {
    :host {
      --scale: 1;
      --list-scale: 1;
      --list: 86px;
    }
    .top {
      --bar: 48px;
      display: flex;
      flex-wrap: wrap;
    }
    .top > header {
      flex: 1 1 auto;
    }
    .top > elsewhere-line {
      flex: 1 1 auto;
    }
    .top > sound-strip {
      flex-basis: 100%;
    }
    .work {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
      grid-template-rows: minmax(0, 1fr) var(--list) auto;
      grid-template-areas: 'card acts' 'list acts' 'foot acts';
    }
    .work.alone,
    .work.panelled {
      grid-template-rows: minmax(0, 1fr) 0 auto;
    }
    .acts {
      max-height: none;
      border-block: none;
      border-inline-start: var(--hairline) solid var(--ink);
    }
    .list {
      border-block-start: var(--hairline) solid var(--ink);
    }
  }

  /* A tablet that stands. */
  @media (min-width: 700px) and (max-width: 899px) and (min-height: 800px) {
    :host {
      --scale: 1.6;
      --acts-scale: 1.25;
      --list-scale: 1.5;
    }
  }

  /* A tablet that lies. */
  @media (min-width: 900px) and (min-height: 560px) {
    :host {
      --scale: 1.4;
      --acts-scale: 1.25;
      --list-scale: 1.2;
    }
    .work,
    .work.panelled {
      grid-template-columns: minmax(0, 3fr) minmax(0, 2fr);
      grid-template-rows: minmax(0, 1fr) auto auto;
      grid-template-areas: 'card list' 'acts list' 'acts foot';
    }
    .work.alone {
      grid-template-columns: minmax(0, 1fr);
      grid-template-areas: 'card' 'acts' 'foot';
    }
    .list,
    .work.panelled > .list {
      display: flex;
      flex-direction: column;
      overflow: hidden;
    }
    .work.alone > .list {
      display: none;
    }
    .rows {
      flex: 1 1 0;
      min-height: 130px;
      overflow: hidden auto;
    }
    .machines {
      flex: 0 1 auto;
      max-height: 64%;
      overflow: hidden auto;
    }
    .rows + .machines {
      border-block-start: var(--hairline) solid var(--ink);
    }
    h2 {
      display: block;
    }
    .acts {
      border-block-end: none;
    }
    .list,
    .foot {
      border-inline-start: var(--hairline) solid var(--ink);
    }
  }

  /* Its list is narrow: a countdown stands beside its verb, not below it. */
  @media (min-width: 900px) and (max-width: 1099px) and (min-height: 560px) {
    :host {
      --scale: 1.25;
      --acts-scale: 1.1;
      --list-scale: 1;
    }
  }

  @media (min-width: 1200px) and (min-height: 700px) {
    :host {
      --scale: 1.6;
      --list-scale: 1.4;
    }
  }
`;
