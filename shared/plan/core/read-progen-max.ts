import { accepted, type Result } from '../../result.ts';
import { faultAt, MOST_ACTIVITIES, MOST_AMOUNT, MOST_RESOURCES, type InstanceFault } from './instance-text.ts';
import type { Arc, Instance } from './instance.ts';

type Read<Value> = Result<Value, InstanceFault>;

/** The words of a line that has some, and the line's number, counted from 1. */
interface Words {
  readonly line: number;
  readonly words: readonly string[];
}

interface Counts {
  /** The first and the last included. */
  readonly activities: number;
  readonly resources: number;
}

/**
 * Reads an instance with minimum and maximum lags as ProGen/max writes it (`.SCH`; Kolisch, Schwindt and Sprecher 1999): counts; of
 * each activity its successors and lags; of each its duration and demands; capacities. Only single-mode instances of renewable
 * resources are taken. The line that is at fault is named.
 */
export function readProgenMax(text: string): Read<Instance> {
  const lines = text
    .split(/\r?\n/u)
    .map((line, index) => ({
      line: index + 1,
      words: line
        .trim()
        .split(/\s+/u)
        .filter((word) => word !== ''),
    }))
    .filter(({ words }) => words.length > 0);
  const counts = readCounts(lines[0]);
  if (!counts.ok) return counts;
  const { activities, resources } = counts.value;
  const wanted = 2 * activities + 2;
  if (lines.length !== wanted) {
    const end = lines[Math.min(lines.length, wanted + 1) - 1]?.line ?? 1;
    return faultAt(end, `${wanted} lines are needed for so many activities, not ${lines.length}`);
  }
  const arcs = readLags(lines.slice(1, 1 + activities), activities);
  if (!arcs.ok) return arcs;
  const rows = readRows(lines.slice(1 + activities, 1 + 2 * activities), resources);
  if (!rows.ok) return rows;
  const capacities = amountsOf(lines[wanted - 1], resources, 'capacities');
  if (!capacities.ok) return capacities;
  const durations = Int32Array.from(rows.value, ([duration]) => duration ?? 0);
  const demands = Array.from({ length: resources }, (_, resource) => Int32Array.from(rows.value, (row) => row[1 + resource] ?? 0));
  return accepted({ durations, demands, capacities: Int32Array.from(capacities.value), arcs: arcs.value });
}

/** Between the first and the last, so many activities; renewable resources; then the counts of other kinds, if they are given. */
function readCounts(first: Words | undefined): Read<Counts> {
  if (first === undefined) return faultAt(1, 'there is nothing in it');
  const numbers = first.words.map(wholeNumber);
  const [between, resources, ...others] = numbers;
  if (between === undefined || between === null || between < 0 || between + 2 > MOST_ACTIVITIES) {
    return faultAt(first.line, `the number of activities has to be from 0 to ${MOST_ACTIVITIES - 2}`);
  }
  if (resources === undefined || resources === null || resources < 0 || resources > MOST_RESOURCES) {
    return faultAt(first.line, `the number of resources has to be from 0 to ${MOST_RESOURCES}`);
  }
  if (others.some((other) => other !== 0)) return faultAt(first.line, 'only renewable resources can be planned');
  return accepted({ activities: between + 2, resources });
}

function readLags(lines: readonly Words[], activities: number): Read<readonly Arc[]> {
  const arcs: Arc[] = [];
  for (const [from, { line, words }] of lines.entries()) {
    const [id, modes, count, ...rest] = words;
    if (wholeNumber(id) !== from) return faultAt(line, `activity ${from} is expected here`);
    if (wholeNumber(modes) !== 1) return faultAt(line, 'only activities with one mode can be planned');
    const successors = wholeNumber(count);
    if (successors === null || rest.length !== 2 * successors)
      return faultAt(line, 'as many successors and as many lags are needed as are counted');
    for (let index = 0; index < successors; index += 1) {
      const to = wholeNumber(rest[index]);
      const lag = lagOf(rest[successors + index]);
      if (to === null || to < 0 || to >= activities) return faultAt(line, `there is no activity ${rest[index] ?? ''}`);
      if (lag === null) return faultAt(line, `a lag is a whole number in brackets, not ${rest[successors + index] ?? ''}`);
      arcs.push({ from, to, lag });
    }
  }
  return accepted(arcs);
}

/** Of each activity the duration and its demands. */
function readRows(lines: readonly Words[], resources: number): Read<readonly (readonly number[])[]> {
  const rows: (readonly number[])[] = [];
  for (const [activity, { line, words }] of lines.entries()) {
    const [id, mode, ...rest] = words;
    if (wholeNumber(id) !== activity) return faultAt(line, `activity ${activity} is expected here`);
    if (wholeNumber(mode) !== 1) return faultAt(line, 'only activities with one mode can be planned');
    const amounts = amountsOf({ line, words: rest }, 1 + resources, 'a duration and demands');
    if (!amounts.ok) return amounts;
    if ((activity === 0 || activity === lines.length - 1) && amounts.value[0] !== 0) {
      return faultAt(line, 'the first and the last activity take no time');
    }
    rows.push(amounts.value);
  }
  return accepted(rows);
}

function amountsOf(row: Words | undefined, count: number, what: string): Read<readonly number[]> {
  const { line, words } = row ?? { line: 1, words: [] };
  const numbers = words.map(wholeNumber);
  if (numbers.length !== count) return faultAt(line, `${what}: ${count} numbers are needed, not ${numbers.length}`);
  const amounts: number[] = [];
  for (const number of numbers) {
    if (number === null || number < 0 || number > MOST_AMOUNT)
      return faultAt(line, `${what}: whole numbers from 0 to ${MOST_AMOUNT} are needed`);
    amounts.push(number);
  }
  return accepted(amounts);
}

function wholeNumber(word: string | undefined): number | null {
  return word !== undefined && /^-?\d{1,9}$/u.test(word) ? Number(word) : null;
}

function lagOf(word: string | undefined): number | null {
  return wholeNumber(/^\[(-?\d{1,7})\]$/u.exec(word ?? '')?.[1]);
}
