import { css } from 'lit';
import { unseenStyles } from '../parts/unseen-styles.ts';

/** What every part of the phone is drawn with. */
export const baseStyles = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  :host([hidden]) {
    display: none;
  }
  h1,
  h2,
  p,
  ul,
  ol,
  dl,
  dd {
    margin: 0;
    padding: 0;
  }
  ul,
  ol {
    list-style: none;
  }
  :focus-visible {
    outline: var(--focus);
    outline-offset: 2px;
  }
  ${unseenStyles}
`;

/**
 * Buttons for a floury thumb: a big one for what is done, middling ones for the rest. The pressed look is an attribute set
 * at pointer-down, since `:active` waits on a touch screen until the browser knows that it is no scroll.
 */
export const buttonStyles = css`
  button {
    appearance: none;
    display: flex;
    flex-direction: column;
    align-items: center;
    justify-content: center;
    gap: 2px;
    min-width: 0;
    margin: 0;
    padding: 8px 10px;
    border: 3px solid var(--ink);
    border-radius: var(--radius-button);
    background: var(--paper);
    color: var(--ink);
    font: inherit;
    font-size: var(--type-button);
    font-weight: var(--weight-word);
    line-height: 1.12;
    text-align: center;
    overflow-wrap: anywhere;
    hyphens: auto;
    touch-action: manipulation;
    -webkit-tap-highlight-color: transparent;
    user-select: none;
    -webkit-user-select: none;
    cursor: pointer;
  }
  button.big {
    min-height: var(--target-big);
    font-size: var(--type-verb);
    font-weight: var(--weight-strong);
  }
  button.middling {
    min-height: var(--target);
  }
  button.bar {
    min-height: var(--target);
    border-width: 2px;
  }
  button.filled {
    background: var(--ink);
    color: var(--paper);
  }
  button icon-mark {
    font-size: var(--type-title);
  }
  .with-icon {
    display: inline-flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: center;
    gap: 0 var(--space-2);
    min-width: 0;
    max-width: 100%;
  }
  button small {
    font-size: var(--type-text);
    font-weight: var(--weight-text);
  }
  button[data-pressed] {
    background: var(--pressed);
    color: var(--ink);
    border-color: var(--call);
  }
  button:disabled {
    border-color: var(--line);
    background: var(--paper);
    color: var(--ink-soft);
    cursor: default;
  }
`;

/** Buttons side by side, all of one width, and numbers that stand large on them. */
export const buttonRowStyles = css`
  .row {
    display: grid;
    grid-auto-flow: column;
    grid-auto-columns: minmax(0, 1fr);
    gap: var(--space-4);
  }
  .row > button {
    padding-inline: var(--space-1);
  }
  /* Three side by side on a narrow phone: German and French words are longer. */
  @media (max-width: 375px) {
    .row:has(> :nth-child(3)) > button {
      padding-inline: 2px;
      border-width: 2px;
      font-size: var(--type-small);
    }
  }
  .number {
    font-size: var(--type-figure);
    font-weight: var(--weight-strong);
  }
`;
