import { css } from 'lit';
import { unseenStyles } from '../parts/unseen-styles.ts';

/** The wall around its rows and decks: band, header, NOW, notices, and what stands in corners. */
export const wallPageStyles = css`
  :host,
  * {
    box-sizing: border-box;
  }
  :host {
    position: relative;
    display: block;
    height: 100vh;
    height: 100dvh;
    overflow: hidden;
    background: var(--paper);
    color: var(--ink);
  }
  main {
    position: relative;
    display: flex;
    flex-direction: column;
    height: 100%;
  }
  .band {
    display: flex;
    align-items: center;
    justify-content: center;
    height: var(--band);
    flex: none;
    background: repeating-linear-gradient(-45deg, var(--ink) 0 22px, var(--block) 22px 44px);
    font-size: var(--near);
    font-weight: var(--weight-strong);
    line-height: 1;
  }
  .band span {
    padding: 0.14em 0.8em;
    background: var(--paper);
    color: var(--ink);
  }
  .floor {
    position: relative;
    display: flex;
    flex-direction: column;
    flex: 1;
    min-height: 0;
  }
  section.lines {
    display: grid;
    place-content: center;
  }
  section.lines > wall-notice {
    height: auto;
  }
  .alone {
    align-items: center;
    justify-content: center;
    text-align: center;
  }
  wall-header {
    width: var(--left);
    flex: none;
  }
  wall-axis {
    position: absolute;
    inset: 0 0 0 var(--left);
  }
  .now {
    position: absolute;
    inset-block: 0;
    left: calc(var(--left) - var(--now) / 2);
    width: var(--now);
    background: var(--line-strong);
  }
  .floor.wide wall-header {
    width: auto;
    padding-right: calc(var(--near) + 2 * var(--gap));
  }
  .lines {
    position: relative;
    flex: 1;
    min-height: 0;
  }
  .lines > * {
    height: 100%;
  }
  .lines > phones-panel {
    position: absolute;
    right: 0;
    bottom: 0;
    max-width: calc(100% - var(--left) - var(--now));
    height: auto;
    padding: calc(var(--near) * 0.25) var(--gap);
    background: var(--paper);
    font-size: var(--near);
  }
  wall-joining {
    position: absolute;
    right: var(--gap);
    bottom: var(--gap);
    max-width: calc(100% - var(--left, 0px) - var(--now, 0px) - var(--gap));
    font-size: var(--near);
  }
  wall-elsewhere {
    flex: none;
    height: var(--elsewhere);
    border-top: var(--hairline) solid var(--rest);
  }
  .set-up {
    position: absolute;
    top: 0;
    right: 0;
    display: flex;
    align-items: flex-start;
    justify-content: flex-end;
    width: max(48px, calc(var(--near) * 1.4));
    height: max(48px, calc(var(--near) * 1.4));
    padding: calc(var(--near) * 0.2);
    color: var(--ink-soft);
    font-size: calc(var(--near) * 0.5);
  }
  .set-up:focus-visible {
    outline: var(--focus);
    outline-offset: -6px;
  }
  wall-ovens {
    flex: none;
  }
  ${unseenStyles}
`;
