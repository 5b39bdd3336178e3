import type { CallLevel } from '../floor/events.ts';
import type { AlarmHealth, CallsAnswer, Offender } from './calls-answer.ts';

const MINUTE_MS = 60_000;
/** Calls are counted in windows of ten minutes, as alarm systems are (EEMUA 191, ISA-18.2; both from memory, as all figures of theirs here). */
export const WINDOW_MS = 10 * MINUTE_MS;
/** More calls than these in a window are a flood. */
export const FLOOD_CALLS = 10;
/** Raised again within so long, a call chatters. */
export const REPEAT_MS = 60_000;
/**
 * A call that is out for longer than this stands. The standards say 24 h, three shifts of a plant that never stops; a dough has less: an
 * hour, an eighth of a shift of 8 h (our choice).
 */
export const STANDING_MS = 60 * MINUTE_MS;
/** Who taps nothing for longer than this is not at work (our choice). */
export const MOST_PAUSE_MS = 60 * MINUTE_MS;
/** Steps that are told as the ones that call most. */
export const OFFENDERS = 10;

/** What is customary: a call every ten minutes is bearable, no window above ten, hardly ever a flood, nothing chatters, 80 : 15 : 5. */
export const CUSTOMARY = {
  mean: 1,
  peak: 10,
  floodShare: 0.01,
  repeats: 0,
  standing: 0,
  shares: { call: 0.8, late: 0.15, lost: 0.05 },
} as const;

/** A call as it was raised, and what became of it. Instants of house time. */
export interface Called {
  readonly piece: number;
  readonly step: string;
  readonly level: CallLevel;
  readonly dueMs: number;
  readonly raisedMs: number;
  readonly heardMs: number | null;
  readonly endedMs: number | null;
  readonly became: 'done' | 'stronger' | 'undone' | null;
  readonly formula: string;
  /** The document that its step is of. */
  readonly subject: Offender['subject'];
  /** It ended with its step being done by a tap that nobody had begun it before. */
  readonly isDoneAtOnce: boolean;
  readonly pieces: number | null;
}

/** A call that was set aside for a while. */
export interface Held {
  readonly piece: number;
  readonly step: string;
  readonly fromMs: number;
  readonly toMs: number;
}

/** How long after it was due a step was done that nobody had said to have begun. */
export interface DoneLate {
  readonly afterDueMin: number;
  readonly pieces: number | null;
}

/** What is reckoned by others: quantiles, and what a step does and would better be written as. */
export interface HealthAids {
  /** A quantile of values in any order. */
  readonly quantile: (values: readonly number[], share: number) => number;
  readonly about: (offender: Pick<Offender, 'subject' | 'step'>, done: readonly DoneLate[]) => Pick<Offender, 'verb' | 'nth' | 'advice'>;
}

/**
 * The windows in which the house worked: from one tap to the next where no more than an hour lies between them. So the mean is over hours
 * with people in them; a night that dough spends in the cold does not make the house look calm.
 */
export function workedWindows(tapsMs: readonly number[]): ReadonlySet<number> {
  const windows = new Set<number>();
  let beforeMs = Number.NEGATIVE_INFINITY;
  for (const tapMs of [...tapsMs].sort((a, b) => a - b)) {
    const fromMs = tapMs - beforeMs <= MOST_PAUSE_MS ? beforeMs : tapMs;
    for (let window = Math.floor(fromMs / WINDOW_MS); window <= Math.floor(tapMs / WINDOW_MS); window += 1) windows.add(window);
    beforeMs = tapMs;
  }
  return windows;
}

/** How the calls of a period were, by the measures of alarm management. A stronger level is a call of its own. */
export function alarmHealth(
  calls: readonly Called[],
  holds: readonly Held[],
  worked: ReadonlySet<number>,
  toMs: number,
  aids: HealthAids,
): AlarmHealth {
  const raised = [...calls].sort((a, b) => a.raisedMs - b.raisedMs);
  const episodes = episodesOf(raised, new Set(holds.map(({ piece, step, fromMs }) => `${piece} ${step} ${fromMs}`)));
  const heard = episodes.flatMap(({ firstMs, heardMs }) => (heardMs === null ? [] : (heardMs - firstMs) / MINUTE_MS));
  const done = episodes.flatMap(({ firstMs, doneMs }) => (doneMs === null ? [] : (doneMs - firstMs) / MINUTE_MS));
  const neverHeard = episodes.filter(({ heardMs, isUndone }) => heardMs === null && !isUndone);
  return {
    calls: raised.length,
    windows: windowsOf(raised, worked),
    levels: {
      call: raised.filter(({ level }) => level === 'call').length,
      late: raised.filter(({ level }) => level === 'late').length,
      lost: raised.filter(({ level }) => level === 'lost').length,
    },
    heard: timesOf(heard, aids.quantile),
    done: timesOf(done, aids.quantile),
    neverHeard: neverHeard.length,
    neverAnswered: neverHeard.filter(({ doneMs, isShelved }) => doneMs === null && !isShelved).length,
    undone: raised.filter(({ became }) => became === 'undone').length,
    repeats: repeatsOf(raised),
    standing: episodes.filter(({ firstMs, endedMs }) => (endedMs ?? toMs) - firstMs > STANDING_MS).length,
    shelved: { times: holds.length, minutes: holds.reduce((sum, { fromMs, toMs: untilMs }) => sum + (untilMs - fromMs) / MINUTE_MS, 0) },
    offenders: offendersOf(raised, episodes, aids),
  };
}

/** The calls of one step of one dough, each stronger than the one before, from the first until it was over. */
interface Episode {
  readonly last: Called;
  readonly firstMs: number;
  readonly heardMs: number | null;
  readonly endedMs: number | null;
  readonly doneMs: number | null;
  readonly isShelved: boolean;
  readonly isUndone: boolean;
}

function episodesOf(raised: readonly Called[], shelved: ReadonlySet<string>): readonly Episode[] {
  const open = new Map<string, Episode>();
  const episodes: Episode[] = [];
  for (const call of raised) {
    const key = `${call.piece} ${call.step}`;
    const before = open.get(key);
    open.delete(key);
    const isShelved = call.endedMs !== null && shelved.has(`${key} ${call.endedMs}`);
    const episode: Episode = {
      last: call,
      firstMs: before?.firstMs ?? call.raisedMs,
      heardMs: before?.heardMs ?? call.heardMs,
      endedMs: call.endedMs,
      doneMs: call.became === 'done' && !isShelved ? call.endedMs : null,
      isShelved,
      isUndone: call.became === 'undone',
    };
    if (call.became === 'stronger') open.set(key, episode);
    else episodes.push(episode);
  }
  // What became stronger after the period is not over in it.
  return [...episodes, ...open.values()];
}

function windowsOf(raised: readonly Called[], worked: ReadonlySet<number>): AlarmHealth['windows'] {
  const counts = new Map<number, number>();
  for (const { raisedMs } of raised) {
    const window = Math.floor(raisedMs / WINDOW_MS);
    counts.set(window, (counts.get(window) ?? 0) + 1);
  }
  const calling = [...counts].sort(([a], [b]) => a - b).map(([window, count]) => ({ fromMs: window * WINDOW_MS, calls: count }));
  const all = new Set([...worked, ...counts.keys()]).size;
  const peak = calling.reduce<(typeof calling)[number] | null>((most, one) => (most === null || one.calls > most.calls ? one : most), null);
  return {
    worked: all,
    mean: all === 0 ? null : raised.length / all,
    peak,
    inFlood: calling.filter((window) => window.calls > FLOOD_CALLS).length,
    calling,
  };
}

/** The same call at the same level, raised again within a minute of the time before. */
function repeatsOf(raised: readonly Called[]): number {
  const lastMs = new Map<string, number>();
  let repeats = 0;
  for (const { piece, step, level, raisedMs } of raised) {
    const key = `${piece} ${step} ${level}`;
    const beforeMs = lastMs.get(key);
    if (beforeMs !== undefined && raisedMs - beforeMs <= REPEAT_MS) repeats += 1;
    lastMs.set(key, raisedMs);
  }
  return repeats;
}

function timesOf(minutes: readonly number[], quantile: HealthAids['quantile']): AlarmHealth['heard'] {
  const isNone = minutes.length === 0;
  return { n: minutes.length, medianMin: isNone ? null : quantile(minutes, 0.5), ninetiethMin: isNone ? null : quantile(minutes, 0.9) };
}

function offendersOf(raised: readonly Called[], episodes: readonly Episode[], { quantile, about }: HealthAids): Offender[] {
  const byStep = new Map<string, Called[]>();
  for (const call of raised) byStep.set(stepKey(call), [...(byStep.get(stepKey(call)) ?? []), call]);
  const most = [...byStep].sort(([a, one], [b, other]) => other.length - one.length || (a < b ? -1 : 1)).slice(0, OFFENDERS);
  return most.flatMap(([key, calls]) => {
    const [first] = calls;
    if (first === undefined) return [];
    const over = episodes.filter(({ last, doneMs }) => doneMs !== null && stepKey(last) === key);
    const lateMin = over.map(({ last, doneMs }) => ((doneMs ?? 0) - last.dueMs) / MINUTE_MS);
    const atOnce = over.flatMap(({ last }, index) => (last.isDoneAtOnce ? { afterDueMin: lateMin[index] ?? 0, pieces: last.pieces } : []));
    const { formula, subject, step } = first;
    return {
      formula,
      subject,
      step,
      calls: calls.length,
      late: calls.filter(({ level }) => level === 'late').length,
      lost: calls.filter(({ level }) => level === 'lost').length,
      share: calls.length / raised.length,
      lateMin: lateMin.length === 0 ? null : quantile(lateMin, 0.5),
      ...about({ subject, step }, atOnce),
    };
  });
}

function stepKey({ subject, step }: Called): string {
  return `${subject.kind}\n${subject.id}\n${step}`;
}

/** The calls of each date: how many, the most in one window, and the windows in which the house worked. Dates with neither are left out. */
export function callsByDate(
  dates: readonly { readonly date: string; readonly fromMs: number }[],
  { calling }: AlarmHealth['windows'],
  worked: ReadonlySet<number>,
): CallsAnswer['days'] {
  const counts = new Map([...worked].map((window) => [window * WINDOW_MS, 0]));
  for (const { fromMs, calls } of calling) counts.set(fromMs, calls);
  const windows = [...counts].sort(([a], [b]) => a - b);
  let next = 0;
  return dates.flatMap(({ date }, index) => {
    const endMs = dates[index + 1]?.fromMs ?? Number.POSITIVE_INFINITY;
    const own: number[] = [];
    for (let window = windows[next]; window !== undefined && window[0] < endMs; window = windows[next]) {
      own.push(window[1]);
      next += 1;
    }
    if (own.length === 0) return [];
    return { date, calls: own.reduce((sum, calls) => sum + calls, 0), peak: Math.max(...own), worked: own.length };
  });
}
