import { css, html, LitElement, unsafeCSS, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import uPlot from 'uplot';
import plotStyles from 'uplot/dist/uPlot.min.css?inline';
import { FLOOD_CALLS } from '../../shared/records/alarm-health.ts';

const HEIGHT_PX = 240;
const WINDOW_S = 600;
const LEAST_WIDTH_PX = 280;

/** A window of ten minutes with how many calls there were in it. */
export interface CallingWindow {
  readonly fromMs: number;
  readonly calls: number;
}

/** Calls in ten minutes over a period, as bars on the house's clock. A picture alone: the table beside it says the same. */
@customElement('calls-chart')
export class CallsChart extends LitElement {
  static override styles = [
    unsafeCSS(plotStyles),
    css`
      :host {
        /* As wide as there is room, not as the canvas was before the room shrank. */
        display: block;
        overflow: hidden;
        color: var(--ink);
        background: var(--floor);
      }
      .uplot {
        font-family: inherit;
      }
    `,
  ];

  @property({ attribute: false }) windows: readonly CallingWindow[] = [];
  @property() zone = 'UTC';
  private plot: uPlot | null = null;
  private readonly watcher = new ResizeObserver(() => this.fit());
  /** Day and night have colours of their own, and a canvas does not follow them by itself. */
  private readonly looks = new MutationObserver(() => this.draw());

  override connectedCallback(): void {
    super.connectedCallback();
    this.watcher.observe(this);
    this.looks.observe(document.documentElement, { attributes: true });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.watcher.disconnect();
    this.looks.disconnect();
    this.plot?.destroy();
    this.plot = null;
  }

  protected override render(): TemplateResult {
    return html`<div aria-hidden="true"></div>`;
  }

  protected override updated(_changed: PropertyValues<this>): void {
    this.draw();
  }

  private draw(): void {
    this.plot?.destroy();
    const box = this.renderRoot.querySelector('div');
    if (box === null) return;
    const look = getComputedStyle(this);
    const colour = (name: string): string => look.getPropertyValue(name).trim();
    const { zone } = this;
    const axis: uPlot.Axis = {
      stroke: colour('--ink'),
      font: `${colour('--type-small')} ${colour('--font')}`,
      grid: { stroke: colour('--line'), width: 1 },
      ticks: { stroke: colour('--line'), width: 1 },
    };
    const bars = uPlot.paths.bars?.({ size: [1, 12, 2] });
    this.plot = new uPlot(
      {
        width: this.width(),
        height: HEIGHT_PX,
        legend: { show: false },
        cursor: { show: false },
        tzDate: (seconds) => uPlot.tzDate(new Date(seconds * 1000), zone),
        scales: { y: { range: (_plot, _least, most) => [0, Math.max(FLOOD_CALLS + 2, most + 1)] } },
        axes: [
          { ...axis, values: DAYS_AND_HOURS },
          { ...axis, incrs: WHOLE_STEPS },
        ],
        series: [
          {},
          {
            stroke: colour('--ink'),
            fill: colour('--call'),
            width: 0,
            ...(bars === undefined ? {} : { paths: bars }),
            points: { show: false },
          },
          // Above it, calls are a flood.
          { stroke: colour('--ink'), width: 2, dash: [6, 4], points: { show: false } },
        ],
      },
      this.points(),
      box,
    );
  }

  /** Windows without a call stand between those with one, so that bars are as wide as ten minutes are. */
  private points(): uPlot.AlignedData {
    const counts = new Map(this.windows.map(({ fromMs, calls }) => [fromMs / 1000, calls]));
    const times = new Set<number>();
    for (const at of counts.keys()) for (const near of [at - WINDOW_S, at, at + WINDOW_S]) times.add(near);
    const sorted = [...times].sort((a, b) => a - b);
    return [sorted, sorted.map((at) => counts.get(at) ?? 0), sorted.map(() => FLOOD_CALLS)];
  }

  private fit(): void {
    this.plot?.setSize({ width: this.width(), height: HEIGHT_PX });
  }

  private width(): number {
    return Math.max(LEAST_WIDTH_PX, Math.floor(this.clientWidth));
  }
}

/** Calls are counted: no halves on their axis. */
const WHOLE_STEPS = [1, 2, 5, 10, 20, 50, 100];

/** Dates and clock times as ISO 8601 writes them, whatever the language: the library's own are American. */
const DAYS_AND_HOURS: uPlot.Axis.Values = [
  [86_400 * 28, '{YYYY}-{MM}', null, null, null, null, null, null, 1],
  [86_400, '{MM}-{DD}', '\n{YYYY}', null, null, null, null, null, 1],
  [60, '{HH}:{mm}', '\n{MM}-{DD}', null, '\n{MM}-{DD}', null, null, null, 1],
];

declare global {
  interface HTMLElementTagNameMap {
    'calls-chart': CallsChart;
  }
}
