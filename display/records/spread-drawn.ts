import { css, nothing, svg, html, type TemplateResult } from 'lit';
import type { Spread, Trend } from '../../shared/records/lessons-answer.ts';

/** Of the drawings, in CSS px. */
const WIDTH = 180;
const HEIGHT = 28;
const MARGIN = 8;
/** Of the small line of a trend. */
const TREND_WIDTH = 44;
const TREND_HEIGHT = 20;
/** A trend of so much of the median in 30 days is drawn at its steepest. */
const STEEPEST_SHARE = 0.25;

/** What the drawings of spreads and trends are drawn with. */
export const drawnStyles = css`
  svg.spread,
  svg.trend {
    display: block;
    overflow: visible;
  }
  svg .most,
  svg .way {
    stroke: var(--ink);
    stroke-width: 2;
  }
  svg .half {
    fill: var(--rest);
    stroke: var(--ink);
    stroke-width: 2;
  }
  svg .middle {
    stroke: var(--ink);
    stroke-width: 4;
  }
  svg .assumed {
    fill: var(--call);
    stroke: none;
  }
  svg .assumed-line {
    stroke: var(--call);
    stroke-width: 2;
    stroke-dasharray: 3 2;
  }
`;

/**
 * A spread drawn: a line over eight of ten, a box over the middle half, a thick line at the median, and a wedge where the assumed value
 * is. What it shows stands beside it in words.
 */
export function spreadDrawn({ tenth, nineTenths, quarter, threeQuarters, median }: Spread, assumed: number | null): TemplateResult {
  const values = [tenth, nineTenths, ...(assumed === null ? [] : [assumed])];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  // Where nothing is spread, it stands in the middle.
  const span = most - least;
  const x = (value: number): number => (span === 0 ? WIDTH / 2 : MARGIN + ((value - least) / span) * (WIDTH - 2 * MARGIN));
  const y = HEIGHT / 2 + 3;
  const at = assumed === null ? 0 : x(assumed);
  return html`<svg class="spread" width=${WIDTH} height=${HEIGHT} viewBox="0 0 ${WIDTH} ${HEIGHT}" aria-hidden="true">
    ${svg`<line class="most" x1=${x(tenth)} x2=${x(nineTenths)} y1=${y} y2=${y}></line>
      <rect class="half" x=${x(quarter)} y=${y - 7} width=${Math.max(1, x(threeQuarters) - x(quarter))} height="14"></rect>
      <line class="middle" x1=${x(median)} x2=${x(median)} y1=${y - 9} y2=${y + 9}></line>`}
    ${
      assumed === null
        ? nothing
        : svg`<line class="assumed-line" x1=${at} x2=${at} y1="7" y2=${HEIGHT}></line>
      <path class="assumed" d="M${at - 5} 0h10l-5 8z"></path>`
    }
  </svg>`;
}

/** A trend as a small line: level, up or down, the steeper the more of the median it is. */
export function trendDrawn({ perMonth, low, high }: Trend, median: number): TemplateResult {
  const isSeen = low > 0 || high < 0;
  const share = isSeen ? perMonth / Math.max(Math.abs(median), 1e-9) / STEEPEST_SHARE : 0;
  const rise = Math.max(-1, Math.min(1, share)) * (TREND_HEIGHT / 2 - 2);
  const middle = TREND_HEIGHT / 2;
  return html`<svg
    class="trend"
    width=${TREND_WIDTH}
    height=${TREND_HEIGHT}
    viewBox="0 0 ${TREND_WIDTH} ${TREND_HEIGHT}"
    aria-hidden="true"
  >
    ${svg`<line class="way" x1="2" x2=${TREND_WIDTH - 2} y1=${middle + rise} y2=${middle - rise}></line>`}
  </svg>`;
}
