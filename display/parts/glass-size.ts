/** What a browser says of the screen and of its own window, in its own units. */
export interface GlassReading {
  readonly screenWidth: number;
  readonly screenHeight: number;
  readonly outerWidth: number;
  readonly innerWidth: number;
  readonly innerHeight: number;
}

/** A size in CSS px. */
export interface SizePx {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** The steps in which browsers zoom. */
const ZOOMS = [0.25, 0.33, 0.5, 0.67, 0.75, 0.8, 0.9, 1, 1.1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4, 5] as const;

/**
 * The whole glass in the CSS px of the page, whatever the page's zoom and however much of the glass it fills. Browsers
 * whose screen size does not follow the zoom give it away by their window, which does not either.
 */
export function glassPx(reading: GlassReading): SizePx {
  const zoom = zoomOf(reading);
  return {
    widthPx: Math.max(reading.innerWidth, Math.round(reading.screenWidth / zoom)),
    heightPx: Math.max(reading.innerHeight, Math.round(reading.screenHeight / zoom)),
  };
}

/** The zoom step nearest to what the window's frame and inside say; 1 where they say nothing. */
function zoomOf({ outerWidth, innerWidth }: GlassReading): number {
  if (outerWidth <= 0 || innerWidth <= 0) return 1;
  const ratio = outerWidth / innerWidth;
  return ZOOMS.reduce((nearest, zoom) => (Math.abs(zoom - ratio) < Math.abs(nearest - ratio) ? zoom : nearest));
}

/** The glass that this page is on, in its CSS px. */
export function glassHere(): SizePx {
  return glassPx({
    screenWidth: screen.width,
    screenHeight: screen.height,
    outerWidth: window.outerWidth,
    innerWidth: window.innerWidth,
    innerHeight: window.innerHeight,
  });
}
