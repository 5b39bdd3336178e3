import type { Screen } from '../wall/type-sizes.ts';
import { CAPITAL_RATIO, fontSizePx } from '../wall/type-sizes.ts';

/** Where a ring's gap may point: four of the eight of the standard, the ones that are easily called out. */
export const GAPS = ['up', 'right', 'down', 'left'] as const;
export type Gap = (typeof GAPS)[number];

/** ISO 8596 (from memory): the ring's stroke and its gap are a fifth of its diameter. The unit of the path is the stroke. */
export const RING_UNITS = 5;

const DEGREES: Readonly<Record<Gap, number>> = { right: 0, down: 90, left: 180, up: 270 };

/** How far a ring whose gap points right is turned, clockwise, in degrees. */
export function degreesOf(gap: Gap): number {
  return DEGREES[gap];
}

/** The ring round 0 0 with its gap to the right: edges of the gap are parallel, its width is the stroke's. */
export function ringPath(): string {
  const outer = RING_UNITS / 2;
  const inner = outer - 1;
  const outerX = Math.sqrt(outer ** 2 - 0.25).toFixed(4);
  const innerX = Math.sqrt(inner ** 2 - 0.25).toFixed(4);
  return `M${outerX} 0.5A${outer} ${outer} 0 1 1 ${outerX} -0.5H${innerX}A${inner} ${inner} 0 1 0 ${innerX} 0.5Z`;
}

/** The diameter, in px, of rings as high as capitals of so many minutes of arc from the screen's far distance. */
export function ringDiameterPx(screen: Screen, arcmin: number): number {
  return fontSizePx(screen, arcmin, screen.distanceM) * CAPITAL_RATIO;
}
