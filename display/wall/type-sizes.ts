import type { SizePx } from '../parts/glass-size.ts';

/** The screen and how far away it is read. */
export interface Screen {
  readonly diagonalInch: number;
  /** What the page fills of it, in its CSS px. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** The whole glass, where the page does not fill it. */
  readonly glass?: SizePx;
  /** To the farthest bench. */
  readonly distanceM: number;
  /** Height of a capital letter in minutes of arc at that distance. */
  readonly arcmin: number;
  /** How much wider than ours the font is that the page really has; as wide where nothing is said. */
  readonly fontStretch?: number;
}

/** Capital height ÷ font size of Atkinson Hyperlegible Next. */
export const CAPITAL_RATIO = 0.668;
/** ISO 9241-3 (from memory): at least 16 minutes of arc, 20 to 22 preferred. */
export const LEAST_ARCMIN = 16;
/** Nearer text is made to be read from here. */
export const NEAR_M = 3;

const MM_PER_INCH = 25.4;

/** Font sizes in px: glance and second are read at the far distance, near at 3 m or closer. */
export interface TypeSizes {
  readonly glancePx: number;
  /** The verb beside the tag: smaller than the tag, never below the second. */
  readonly verbPx: number;
  readonly secondPx: number;
  readonly nearPx: number;
  /** How much wider than ours the font is that these sizes are drawn in, 1 or more. */
  readonly stretch: number;
}

/** The sizes by which widths are reckoned: those drawn, stretched as the font is that is there. */
export function widthSizes({ glancePx, verbPx, secondPx, nearPx, stretch }: TypeSizes): TypeSizes {
  return {
    glancePx: glancePx * stretch,
    verbPx: verbPx * stretch,
    secondPx: secondPx * stretch,
    nearPx: nearPx * stretch,
    stretch: 1,
  };
}

/** How many CSS px make one millimetre of the screen. */
export function pxPerMm(screen: Screen): number {
  const { widthPx, heightPx } = screen.glass ?? screen;
  return Math.hypot(widthPx, heightPx) / (screen.diagonalInch * MM_PER_INCH);
}

/** The font size whose capitals are `arcmin` minutes of arc high from `distanceM` metres: 2·D·tan(arcmin/2) ÷ capital ratio. */
export function fontSizePx(screen: Screen, arcmin: number, distanceM: number): number {
  const capitalMm = 2 * distanceM * 1000 * Math.tan(((arcmin / 60) * Math.PI) / 180 / 2);
  return (capitalMm * pxPerMm(screen)) / CAPITAL_RATIO;
}

/** Minutes of arc that the capitals of a font size have from a distance. */
export function arcminOf(screen: Screen, sizePx: number, distanceM: number): number {
  const capitalMm = (sizePx * CAPITAL_RATIO) / pxPerMm(screen);
  return (2 * Math.atan(capitalMm / (2 * distanceM * 1000)) * 180 * 60) / Math.PI;
}

/**
 * The sizes for a screen, with the glance size given up towards the least by `share`, 0 (as wanted) to 1 (the least).
 * To a tenth of a pixel, upwards: as lengths are written.
 */
export function typeSizes(screen: Screen, share: number, verbShare: number): TypeSizes {
  const secondPx = toTenth(fontSizePx(screen, LEAST_ARCMIN, screen.distanceM));
  const wantedPx = Math.max(secondPx, fontSizePx(screen, screen.arcmin, screen.distanceM));
  const glancePx = toTenth(wantedPx + (secondPx - wantedPx) * share);
  return {
    glancePx,
    verbPx: Math.max(secondPx, toTenth(glancePx * verbShare)),
    secondPx,
    nearPx: toTenth(fontSizePx(screen, LEAST_ARCMIN, Math.min(NEAR_M, screen.distanceM))),
    stretch: Math.max(1, screen.fontStretch ?? 1),
  };
}

function toTenth(length: number): number {
  return Math.ceil(length * 10 - 1e-9) / 10;
}
