import type { RuleSet } from '../trade/holding-rules.ts';
import { controlAtC, type Control, type HoldingSpell } from '../trade/holding-time.ts';
import type { KeptCourse } from './kept-courses.ts';
import { airNow, airOf, READING_STANDS_MS } from './place-air.ts';
import type { FloorState, PlaceAir, TemperatureReading } from './state.ts';

const MINUTE_MS = 60_000;

/** Where kept food stood, as a rule set sees it. Instants are those of the floor; `toMs` null for where it stands now. */
interface Span {
  readonly fromMs: number;
  readonly toMs: number | null;
  readonly control: Control;
  readonly warmestC: number | null;
}

/** Kept food as a rule set counts it: spells in minutes from the beginning of its course. */
export interface Spells {
  readonly spells: readonly HoldingSpell[];
  /** When its cooling was over, as somebody read it or as it came into the cold where the rule has no figures; null while it cools. */
  readonly cooledMs: number | null;
}

/**
 * What has kept the food, from when its time counts. A place keeps it where its air is cold or hot enough: its door's opening warms the air and
 * not the food, and is left out. What was read of the food counts against it: found too warm in a cold place, it has been out since it was last known
 * to be cold there, until it is read cold again. A cold reading on the bench is no control: nothing keeps it so.
 */
export function spellsOf(state: FloorState, rules: RuleSet, course: KeptCourse): Spells {
  const placed = placedSpans(state, rules, course);
  if (!course.isHot) return { spells: inMinutes(readSpans(rules, placed, course.readings), course.fromMs), cooledMs: course.fromMs };
  const firstColdMs = course.readings.find(({ atMs, celsius }) => atMs >= course.fromMs && celsius <= rules.cold.mostC)?.atMs ?? null;
  const cooledMs = rules.cooling === null ? coldFromMs(placed) : firstColdMs;
  // Without figures what it reads on its way down, in the first cold, is no fault of its keeping.
  const heldToIt = course.readings.filter(({ atMs }) => firstColdMs !== null && atMs >= firstColdMs);
  const known = rules.cooling === null ? heldToIt : course.readings.filter(({ atMs }) => cooledMs !== null && atMs >= cooledMs);
  const after = cooledMs === null ? [] : from(placed, cooledMs);
  const cooling: Span = { fromMs: course.fromMs, toMs: cooledMs, control: 'cooling', warmestC: null };
  const spans = cooledMs === course.fromMs ? after : [cooling, ...readSpans(rules, after, known)];
  return { spells: inMinutes(spans, course.fromMs), cooledMs };
}

function inMinutes(spans: readonly Span[], originMs: number): readonly HoldingSpell[] {
  const minuteOf = (atMs: number): number => (atMs - originMs) / MINUTE_MS;
  return spans.map(({ fromMs, toMs, control, warmestC }) => ({
    fromMin: minuteOf(fromMs),
    toMin: toMs === null ? null : minuteOf(toMs),
    control,
    warmestC,
  }));
}

/** Where it stood, by the air of the places alone. */
function placedSpans(state: FloorState, rules: RuleSet, { stays, fromMs, toMs }: KeptCourse): readonly Span[] {
  const shut = withDoorsShut(state);
  const first = stays.findLastIndex(({ sinceMs }) => sinceMs <= fromMs);
  const since = [{ placeId: stays[first]?.placeId ?? null, sinceMs: fromMs }, ...stays.slice(first + 1)];
  return since.flatMap(({ placeId, sinceMs }, index) => {
    const untilMs = Math.min(since[index + 1]?.sinceMs ?? Number.POSITIVE_INFINITY, toMs ?? Number.POSITIVE_INFINITY);
    return untilMs <= sinceMs ? [] : airSpans(shut, rules, placeId, sinceMs, untilMs);
  });
}

function airSpans(state: FloorState, rules: RuleSet, placeId: string | null, fromMs: number, untilMs: number): readonly Span[] {
  const air = state.placeAir[placeId ?? ''];
  const forgotten = (air?.readings ?? []).map(({ atMs }) => atMs + READING_STANDS_MS).filter((atMs) => atMs > fromMs && atMs < untilMs);
  const pieces = airOf(state, placeId, fromMs, untilMs);
  const instants = [...new Set([fromMs, ...pieces.map(({ sinceMs }) => sinceMs), ...forgotten])].sort((a, b) => a - b);
  return instants.map((sinceMs, index): Span => {
    const ambientC = pieces.findLast((piece) => piece.sinceMs <= sinceMs)?.ambientC ?? null;
    const readC = placeId === null ? null : (airNow(state, placeId, sinceMs)?.read?.celsius ?? null);
    const toMs = instants[index + 1] ?? (Number.isFinite(untilMs) ? untilMs : null);
    // Where the kitchen knows no such place, nothing is known to keep it.
    return { fromMs: sinceMs, toMs, control: ambientC === null ? 'none' : controlAtC(rules, ambientC), warmestC: readC };
  });
}

const SHUT = new WeakMap<FloorState['placeAir'], Readonly<Record<string, PlaceAir>>>();

function withDoorsShut(state: FloorState): FloorState {
  const known = SHUT.get(state.placeAir);
  const placeAir = known ?? Object.fromEntries(Object.entries(state.placeAir).map(([id, air]) => [id, { ...air, openings: [] }]));
  SHUT.set(state.placeAir, placeAir);
  return { ...state, placeAir };
}

function coldFromMs(spans: readonly Span[]): number | null {
  return spans.find(({ control }) => control === 'cold')?.fromMs ?? null;
}

function from(spans: readonly Span[], fromMs: number): readonly Span[] {
  return spans.filter(({ toMs }) => toMs === null || toMs > fromMs).map((span) => ({ ...span, fromMs: Math.max(span.fromMs, fromMs) }));
}

/** With what was read of the food: each cold stretch in which it was found too warm is cut where it was known to be cold. */
function readSpans(rules: RuleSet, spans: readonly Span[], readings: readonly TemperatureReading[]): readonly Span[] {
  return joined(spans).flatMap((span) => {
    const within = readings.filter(({ atMs }) => atMs >= span.fromMs && (span.toMs === null || atMs < span.toMs));
    if (span.control === 'cold') return coldSpans(rules, span, within);
    const warmest = within.reduce((most, { celsius }) => Math.max(most, celsius), Number.NEGATIVE_INFINITY);
    // The air that was read says how warm it can have become; what was read of the food says more only where it is warmer.
    return [{ ...span, warmestC: span.warmestC === null ? null : Math.max(span.warmestC, warmest) }];
  });
}

/** Neighbours under the same control in air of which the same is known are one. */
function joined(spans: readonly Span[]): readonly Span[] {
  const found: Span[] = [];
  for (const span of spans) {
    const last = found.at(-1);
    const isSame = last !== undefined && last.control === span.control && (span.control === 'cold' || last.warmestC === span.warmestC);
    if (isSame) found[found.length - 1] = { ...last, toMs: span.toMs };
    else found.push(span);
  }
  return found;
}

interface Warm {
  readonly fromMs: number;
  readonly warmestC: number;
}

function coldSpans(rules: RuleSet, span: Span, readings: readonly TemperatureReading[]): readonly Span[] {
  const cut: Span[] = [];
  let coldMs = span.fromMs;
  let warm: Warm | null = null;
  for (const { atMs, celsius } of readings) {
    const isCold = celsius <= rules.cold.mostC;
    if (isCold) {
      if (warm !== null) cut.push({ fromMs: warm.fromMs, toMs: atMs, control: 'none', warmestC: warm.warmestC });
      warm = null;
      coldMs = atMs;
    } else warm = warmer(warm, coldMs, celsius);
  }
  if (warm !== null) cut.push({ fromMs: warm.fromMs, toMs: span.toMs, control: 'none', warmestC: warm.warmestC });
  return filledUp(span, cut);
}

function warmer(warm: Warm | null, fromMs: number, celsius: number): Warm {
  return warm === null ? { fromMs, warmestC: celsius } : { fromMs: warm.fromMs, warmestC: Math.max(warm.warmestC, celsius) };
}

/** A cold stretch with its warm parts, and what is left of it in between. */
function filledUp(span: Span, warm: readonly Span[]): readonly Span[] {
  const spans: Span[] = [];
  let atMs = span.fromMs;
  for (const part of warm) {
    if (part.fromMs > atMs) spans.push({ ...span, fromMs: atMs, toMs: part.fromMs });
    spans.push(part);
    if (part.toMs === null) return spans;
    atMs = part.toMs;
  }
  if (span.toMs === null || span.toMs > atMs) spans.push({ ...span, fromMs: atMs });
  return spans;
}
