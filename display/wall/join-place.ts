import type { Row } from '../../shared/floor/board.ts';
import type { FloorView } from '../link/floor-link.ts';
import { joinAddressOf } from '../parts/join-address.ts';
import { textWidthPx } from '../parts/text-width.ts';
import type { Arrangement } from './arrangement.ts';
import type { WallPlan } from './governor.ts';
import { pxPerMm, widthSizes, type Screen } from './type-sizes.ts';

/** A phone reads a code from about ten times its width (common practice): from a metre at the least. */
const LEAST_MM = 100;
/** Larger would say more than it is worth beside doughs. */
const MOST_MM = 150;
/** Where there is nothing else to say: from two metres. */
const EMPTY_MM = 200;
/** And never so large that the words above it find no room. */
const EMPTY_SHARE = 0.3;
/** Air above and below the code, and on either side of the words, as a share of the near size. */
const AIR = 0.5;
/** Lines of near text beside the code: what it is, and the address in its three parts. */
const LINES = 4;
const LINE_HEIGHT = 1.2;

/**
 * How wide the code for phones may be, in px, where the wall is calm, phones can come, and room is left below the rows;
 * null otherwise: what calls is not to be looked for beside a picture.
 */
export function joinCodePx(view: FloorView, rows: readonly Row[], { plan }: Arrangement, axisPx: number, screen: Screen): number | null {
  if (view.connection.phase !== 'live' || rows.some((row) => row.role !== 'running')) return null;
  const join = joinAddressOf(view.addresses);
  if (!plan.showsAxis || join === null || !join.isReachable) return null;
  const { nearPx } = widthSizes(plan.sizes);
  const wordsPx = Math.max(...join.parts.map((part) => textWidthPx(part, nearPx)));
  const heightPx = freePx(plan, screen) - 2 * AIR * plan.sizes.nearPx;
  const roomPx = Math.min(heightPx, axisPx - wordsPx - 4 * AIR * nearPx, MOST_MM * pxPerMm(screen));
  const neededPx = Math.max(LEAST_MM * pxPerMm(screen), LINES * LINE_HEIGHT * plan.sizes.nearPx);
  return roomPx < neededPx ? null : Math.floor(roomPx);
}

/** How wide the code is on a wall of an empty kitchen, in px. */
export function emptyCodePx(screen: Screen): number {
  return Math.floor(Math.min(EMPTY_MM * pxPerMm(screen), EMPTY_SHARE * screen.heightPx));
}

/** What the rows leave of their room. */
function freePx(plan: WallPlan, screen: Screen): number {
  const { rows, rowPx, groupPx, decks } = plan;
  const lines = rows.groups.length + (rows.more === null ? 0 : 1);
  const decksPx = decks.reduce((sum, deck) => sum + deck.heightPx, 0);
  const usedPx = plan.bandPx + plan.headerPx + rows.full.length * rowPx + lines * groupPx;
  return screen.heightPx - usedPx - plan.elsewherePx - decksPx - plan.hiddenDecksPx - plan.blockedMixersPx;
}
