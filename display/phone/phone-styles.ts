import { css } from 'lit';

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
    outline: 4px solid var(--call);
    outline-offset: 2px;
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
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
    border-radius: 10px;
    background: var(--paper);
    color: var(--ink);
    font: inherit;
    font-size: 20px;
    font-weight: var(--weight-word);
    line-height: 1.12;
    text-align: center;
    overflow-wrap: break-word;
    touch-action: manipulation;
    -webkit-tap-highlight-color: transparent;
    user-select: none;
    -webkit-user-select: none;
    cursor: pointer;
  }
  button.big {
    min-height: 126px;
    font-size: 34px;
    font-weight: var(--weight-strong);
  }
  button.middling {
    min-height: 94px;
  }
  button.bar {
    min-height: 72px;
    border-width: 2px;
  }
  button.filled {
    background: var(--ink);
    color: var(--paper);
  }
  button small {
    font-size: 18px;
    font-weight: var(--weight-text);
  }
  button[data-pressed] {
    background: var(--pressed);
    color: var(--ink);
    border-color: var(--call);
  }
  button:disabled {
    border-color: var(--line);
    color: var(--ink-soft);
    cursor: default;
  }
`;
