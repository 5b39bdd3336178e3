import { svg, html, type TemplateResult } from 'lit';
import { unreachable } from '../../shared/result.ts';
import type { HeldVessels } from './places-model.ts';

/** So many are drawn; more are told by the number beside them. */
const MOST_DRAWN = 6;

/** Vessels as they stand on their shelf, in outline: as many as there are, up to six. Says nothing to a screen reader. */
export function vesselMarks({ kind, count }: HeldVessels): TemplateResult {
  const drawn = Math.min(count, MOST_DRAWN);
  return html`<svg class="vessels" viewBox=${`0 0 ${drawn * 30} 24`} aria-hidden="true" focusable="false">
    ${Array.from({ length: drawn }, (_, index) => svg`<g transform=${`translate(${index * 30 + 2} 2)`}><path d=${outline(kind)} /></g>`)}
  </svg>`;
}

/** The outline of one vessel in a box of 26 by 22. */
function outline(kind: HeldVessels['kind']): string {
  switch (kind) {
    case 'tub':
      return 'M0 2 H26 M2 2 L5 22 H21 L24 2';
    case 'tin':
      return 'M1 8 H25 L22 22 H4 Z';
    case 'banneton':
      return 'M0 9 C1 19 6 22 13 22 C20 22 25 19 26 9 Z M3 14 H23 M6 18 H20';
    case 'board':
      return 'M0 18 H26 V22 H0 Z';
    case 'tray':
      return 'M0 16 V22 H26 V16';
    case 'rack':
      return 'M2 0 V22 M24 0 V22 M2 6 H24 M2 12 H24 M2 18 H24';
    default:
      return unreachable(kind);
  }
}

/** A dough that lies in nothing that anybody named. */
export function lumpMark(): TemplateResult {
  return html`<svg class="vessels unsaid" viewBox="0 0 30 24" aria-hidden="true" focusable="false">
    <path d="M2 22 C1 13 7 8 15 8 C23 8 29 13 28 22 Z" />
  </svg>`;
}

/** A mixing bowl on its foot. */
export function bowlMark(): TemplateResult {
  return html`<svg class="vessels" viewBox="0 0 34 24" aria-hidden="true" focusable="false">
    <path d="M2 4 H32 C32 15 26 20 17 20 C8 20 2 15 2 4 Z M11 23 H23" />
  </svg>`;
}
