import { fittingText, textWidthPx } from '../parts/text-width.ts';
import { verbRoomPx, whatPx, type LeftColumns } from './left-columns.ts';
import type { RowModel } from './row-model.ts';
import { widthSizes, type TypeSizes } from './type-sizes.ts';

/** How verb and countdown of a row stand beside one another. */
export interface MainLine {
  readonly verb: string;
  /** Written in the second size rather than the verb's. */
  readonly isVerbSmall: boolean;
  /** Written in the second size rather than the glance size. */
  readonly isCountdownSmall: boolean;
}

/**
 * Both in their own sizes where they fit; else the verb smaller, then the countdown too, at last the verb shortened: of
 * work that runs and is not soon due. A countdown wider than its column is always smaller. Several doughs on one line
 * have their verb with their tags, so that only the countdown is decided here.
 */
export function mainLine(model: RowModel, columns: LeftColumns, linePx: number, sizes: TypeSizes): MainLine {
  const wide = widthSizes(sizes);
  const fullPx = textWidthPx(model.countdown, wide.glancePx);
  const isWide = fullPx > columns.countdownPx + 1;
  if (model.tags.length > 1) return { verb: model.verb, isVerbSmall: false, isCountdownSmall: isWide };
  const smallPx = textWidthPx(model.countdown, wide.secondPx);
  const tries = [
    { isVerbSmall: false, isCountdownSmall: isWide },
    { isVerbSmall: true, isCountdownSmall: isWide },
    { isVerbSmall: true, isCountdownSmall: true },
  ];
  const found = tries.find(({ isVerbSmall, isCountdownSmall }) => {
    const verbPx = textWidthPx(model.verb, isVerbSmall ? wide.secondPx : wide.verbPx);
    return verbPx <= verbRoomPx(columns, linePx, isCountdownSmall ? smallPx : fullPx);
  });
  if (found !== undefined) return { verb: model.verb, ...found };
  const roomPx = Math.max(whatPx(columns, linePx, false), verbRoomPx(columns, linePx, smallPx));
  return { verb: fittingText(model.verb, wide.secondPx, roomPx), isVerbSmall: true, isCountdownSmall: true };
}
