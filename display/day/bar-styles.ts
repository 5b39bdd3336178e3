import { css } from 'lit';

/**
 * How steps look, in rows and in the legend. What is done tells by its shape: hands a full block, a check a block with a
 * slanted end, a rest a light pill, a bake stripes between two rails. How far it is tells by its frame: over thin,
 * under way framed twice, planned bare, proposed between dashed lines.
 */
export const barStyles = css`
  .fill {
    position: absolute;
    inset: 0;
    pointer-events: none;
  }
  .hands .fill,
  .judged .fill {
    background: var(--block);
    border-radius: 2px;
  }
  .judged .fill {
    clip-path: polygon(0 0, 100% 0, calc(100% - min(9px, 60%)) 100%, 0 100%);
  }
  .rest .fill {
    background: var(--rest);
    border-radius: 14px;
  }
  .bake .fill {
    border-block: 4px solid var(--ink);
    background: repeating-linear-gradient(90deg, var(--ink) 0 2px, var(--rest) 2px 7px);
  }
  .done .fill {
    inset-block: auto 2px;
    height: 8px;
    border-block-width: 2px;
    clip-path: none;
  }
  .begun .fill {
    box-shadow:
      0 0 0 2px var(--paper),
      0 0 0 5px var(--ink);
  }
  /* A slanted end would cut a shadow off. */
  .begun.judged::after {
    content: '';
    position: absolute;
    inset: -5px;
    border: 3px solid var(--ink);
    border-radius: 3px;
    pointer-events: none;
  }
  .proposed::before {
    content: '';
    position: absolute;
    inset: -4px -1px;
    border-block: 2px dashed var(--ink);
    pointer-events: none;
  }
  .slack {
    position: absolute;
    height: 7px;
    border: solid var(--ink-soft);
    border-width: 0 2px 2px 0;
    pointer-events: none;
  }
  .was {
    position: absolute;
    border: 2px dotted var(--ink-soft);
    border-radius: 4px;
    pointer-events: none;
  }
  .pin {
    position: absolute;
    width: 3px;
    background: var(--call);
    pointer-events: none;
  }
  .pin::before {
    content: '';
    position: absolute;
    top: -1px;
    left: -5px;
    width: 13px;
    height: 13px;
    border-radius: 50%;
    background: var(--call);
    box-shadow: 0 0 0 2px var(--paper);
  }
  .closed {
    position: absolute;
    background: repeating-linear-gradient(-45deg, var(--rest) 0 2px, transparent 2px 9px);
    pointer-events: none;
  }
  .wrong {
    position: absolute;
    border: 3px dashed var(--lost);
    border-radius: var(--radius);
    pointer-events: none;
  }
`;
