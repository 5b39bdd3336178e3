import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { textWidthPx } from './text-width.ts';

/** Size at which the font is measured: large, so that rounding counts for little. */
const SIZE_PX = 100;
/** Words and figures as the pages write them: what is measured of the font that is there. */
const SAMPLES: readonly string[] = [
  '0123456789',
  '00:00',
  '+12:34',
  '112 min',
  'C12b·2',
  'Ch1 M2 R3 O4',
  'DIVIDE TURN OUT',
  'PART-BAKE',
  'KNETEN EINSCHIESSEN',
  'ENFOURNER TOURER',
  'abcdefghijklmnopqrstuvwxyz',
  'ABCDEFGHIJKLMNOPQRSTUVWXYZ',
  'written with a loaf of rye',
  'wird gewirkt, steht warm',
  'prêt à cuire, à façonner',
  '235 °C · 06:10',
];

/**
 * How much wider than our own the font is that the page really has, 1 where it is ours or narrower. Ours may be late,
 * or never come: then the browser's own stands in, and what is reckoned by our font's table would not fit. Measured when
 * the page begins and whenever a font has come; asks for an update when it changes.
 */
export class FontStretch implements ReactiveController {
  private readonly host: ReactiveControllerHost;
  private measured = 1;
  private readonly measureAgain = (): void => {
    const before = this.measured;
    this.measured = measuredStretch();
    if (this.measured !== before) this.host.requestUpdate();
  };

  constructor(host: ReactiveControllerHost) {
    this.host = host;
    host.addController(this);
  }

  /** 1 or more. */
  get value(): number {
    return this.measured;
  }

  hostConnected(): void {
    this.measureAgain();
    document.fonts.addEventListener('loadingdone', this.measureAgain);
  }

  hostDisconnected(): void {
    document.fonts.removeEventListener('loadingdone', this.measureAgain);
  }
}

/** Writes the samples where nobody sees them, reads their widths in one go, and takes the worst. To a hundredth, upwards. */
function measuredStretch(): number {
  const box = document.createElement('div');
  box.setAttribute('aria-hidden', 'true');
  const { style } = box;
  for (const [name, value] of BOX_STYLE) style.setProperty(name, value);
  const spans = SAMPLES.map((sample) => {
    const span = document.createElement('span');
    span.textContent = sample;
    box.append(span, document.createElement('br'));
    return { span, saidPx: textWidthPx(sample, SIZE_PX) };
  });
  document.body.append(box);
  const worst = spans.reduce((most, { span, saidPx }) => Math.max(most, span.getBoundingClientRect().width / saidPx), 1);
  box.remove();
  return Math.ceil(worst * 100) / 100;
}

const BOX_STYLE: readonly (readonly [string, string])[] = [
  ['position', 'absolute'],
  ['visibility', 'hidden'],
  ['white-space', 'pre'],
  ['font-size', `${SIZE_PX}px`],
  ['font-weight', '700'],
];
