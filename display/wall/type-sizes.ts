/** The screen and how far away it is read. */
export interface Screen {
  readonly diagonalInch: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** To the farthest bench. */
  readonly distanceM: number;
  /** Height of a capital letter in minutes of arc at that distance. */
  readonly arcmin: number;
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
}

/** How many px of the screen make one millimetre. */
export function pxPerMm(screen: Screen): number {
  return Math.hypot(screen.widthPx, screen.heightPx) / (screen.diagonalInch * MM_PER_INCH);
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

/** The sizes for a screen, with the glance size given up towards the least by `share`, 0 (as wanted) to 1 (the least). */
export function typeSizes(screen: Screen, share: number, verbShare: number): TypeSizes {
  const secondPx = fontSizePx(screen, LEAST_ARCMIN, screen.distanceM);
  const wantedPx = Math.max(secondPx, fontSizePx(screen, screen.arcmin, screen.distanceM));
  const glancePx = wantedPx + (secondPx - wantedPx) * share;
  return {
    glancePx,
    verbPx: Math.max(secondPx, glancePx * verbShare),
    secondPx,
    nearPx: fontSizePx(screen, LEAST_ARCMIN, Math.min(NEAR_M, screen.distanceM)),
  };
}
