import { css } from 'lit';

/** For words that only a screen reader is to say. */
export const unseenStyles = css`
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
`;
