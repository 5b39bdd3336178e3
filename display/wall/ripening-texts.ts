import type { Row } from '../../shared/floor/board.ts';
import { clockText } from '../parts/clock-text.ts';
import { movedText } from '../parts/moved-text.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { RIPENING } from '../words/wall.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 24 * 60 * MINUTE_MS;
/** What moves a rest by less is not worth a look. */
const LEAST_MOVED_MIN = 2;
/** A dough that has drifted by less than this since it was read is as it was read, in kelvin: a probe is good to half of one. */
const AS_READ_K = 0.5;

/**
 * How a rest follows the warmth of its dough, for its row's second line: by how far it is due later or earlier, how warm the dough is, and
 * from when to when it may be ripe. The same in fewer and fewer words, the fullest first; empty where there is nothing to say.
 */
export function ripeningTexts({ ripening, dueMs, startedMs, stock }: Row, zone: string, unit: 'C' | 'F'): readonly string[] {
  if (ripening === null) return [];
  const { byMin, ripeMs, between, isDueByIt } = ripening;
  const warmth = warmthTexts(ripening, zone, unit);
  // So far out that a clock time would mislead: only why is said.
  if (ripeMs - (startedMs ?? dueMs) > DAY_MS) return warmth;
  const range = between === null || stock !== null || between.toMs - between.fromMs > DAY_MS / 2 ? null : rangeText(between, zone);
  const isMoved = Math.abs(byMin) >= LEAST_MOVED_MIN;
  // Where a plan has it end elsewhere, when it is ripe is what it says beside its countdown.
  const moved = isDueByIt ? (isMoved ? movedText(byMin) : null) : isMoved ? RIPENING.ripe(clockText(ripeMs, zone)) : null;
  if (moved === null) return range === null ? [] : [range];
  const whys = warmth.map((text) => RIPENING.why(moved, text));
  return [...(range === null || !isDueByIt ? [] : whys.map((text) => `${text} · ${range}`)), ...whys, moved];
}

/** "dough read 22 °C 03:40", in fewer words "dough 22 °C"; "dough about 22 °C" where that is only reckoned. */
function warmthTexts({ doughC, read }: NonNullable<Row['ripening']>, zone: string, unit: 'C' | 'F'): readonly string[] {
  if (read === null || Math.abs(read.celsius - doughC) >= AS_READ_K) return [RIPENING.about(temperatureText(doughC, unit))];
  const reading = temperatureText(read.celsius, unit);
  return [RIPENING.read(reading, clockText(read.atMs, zone)), RIPENING.dough(reading)];
}

function rangeText({ fromMs, toMs }: { readonly fromMs: number; readonly toMs: number }, zone: string): string | null {
  const [from, to] = [clockText(fromMs, zone), clockText(toMs, zone)];
  return from === to ? null : RIPENING.ripeBetween(from, to);
}
