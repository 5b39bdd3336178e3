import type { Row } from '../../shared/floor/board.ts';
import { clockText } from '../parts/clock-text.ts';
import { movedText } from '../parts/moved-text.ts';
import { ripeRange } from '../parts/ripe-range.ts';
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
  const clocks = between === null || stock !== null ? null : ripeRange(between, zone);
  const range = clocks === null ? null : RIPENING.ripeBetween(...clocks);
  if (Math.abs(byMin) < LEAST_MOVED_MIN) return range === null ? [] : [range];
  // Where a plan has it end elsewhere, when it is ripe is what it says beside its countdown.
  const moved = isDueByIt ? movedText(byMin) : RIPENING.ripe(clockText(ripeMs, zone));
  const whys = warmth.map((text) => RIPENING.why(moved, text));
  return [...(range === null || !isDueByIt ? [] : whys.map((text) => `${text} · ${range}`)), ...whys, moved];
}

/** "dough read 22 °C 03:40", in fewer words "dough 22 °C"; "dough about 22 °C" where that is only reckoned. */
function warmthTexts({ doughC, read }: NonNullable<Row['ripening']>, zone: string, unit: 'C' | 'F'): readonly string[] {
  if (read === null || Math.abs(read.celsius - doughC) >= AS_READ_K) return [RIPENING.about(temperatureText(doughC, unit))];
  const reading = temperatureText(read.celsius, unit);
  return [RIPENING.read(reading, clockText(read.atMs, zone)), RIPENING.dough(reading)];
}
