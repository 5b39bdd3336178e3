import { accepted, type Result } from '../../result.ts';
import { faultAt, MOST_ACTIVITIES, MOST_AMOUNT, MOST_RESOURCES, wholeNumbers, type InstanceFault } from './instance-text.ts';
import type { Arc, Instance } from './instance.ts';

type Read<Value> = Result<Value, InstanceFault>;

/** The lines of the text, and where each part begins: the index of the line after its heading. */
interface Parts {
  readonly lines: readonly string[];
  readonly precedence: number;
  readonly requests: number;
  readonly availabilities: number;
}

interface Counts {
  readonly activities: number;
  readonly resources: number;
}

/**
 * Reads a single-mode instance of the project scheduling library PSPLIB (`.sm`; Kolisch and Sprecher 1996): counts, precedence
 * relations, durations and requests, availabilities. Jobs are numbered from 1 in the text and from 0 in the instance.
 */
export function readPsplib(text: string): Read<Instance> {
  const parts = partsOf(text);
  if (!parts.ok) return parts;
  const counts = readCounts(parts.value);
  if (!counts.ok) return counts;
  const successors = readSuccessors(parts.value, counts.value);
  if (!successors.ok) return successors;
  const requests = readRequests(parts.value, counts.value);
  if (!requests.ok) return requests;
  const capacities = readCapacities(parts.value, counts.value);
  if (!capacities.ok) return capacities;
  const { durations, demands } = requests.value;
  const arcs: Arc[] = successors.value.map(({ from, to }) => ({ from, to, lag: durations[from] ?? 0 }));
  return accepted({ durations, demands, capacities: capacities.value, arcs });
}

function partsOf(text: string): Read<Parts> {
  const lines = text.split(/\r?\n/u);
  const after = (heading: string): number => lines.findIndex((line) => line.trim().toUpperCase().startsWith(heading)) + 1;
  const [precedence, requests] = [after('PRECEDENCE RELATIONS'), after('REQUESTS/DURATIONS')];
  const availabilities = after('RESOURCEAVAILABILITIES');
  if (precedence === 0) return faultAt(lines.length, 'there is no heading "PRECEDENCE RELATIONS:"');
  if (requests === 0) return faultAt(lines.length, 'there is no heading "REQUESTS/DURATIONS:"');
  if (availabilities === 0) return faultAt(lines.length, 'there is no heading "RESOURCEAVAILABILITIES:"');
  return accepted({ lines, precedence, requests, availabilities });
}

function readCounts({ lines }: Parts): Read<Counts> {
  const activities = countAfter(lines, /^\s*jobs\b[^:]*:\s*(\d+)\s*$/u, 'jobs');
  if (!activities.ok) return activities;
  if (activities.value.count < 2 || activities.value.count > MOST_ACTIVITIES) {
    return faultAt(activities.value.line, `the number of jobs has to be from 2 to ${MOST_ACTIVITIES}`);
  }
  const resources = countAfter(lines, /^\s*-?\s*renewable\s*:\s*(\d+)/u, 'renewable resources');
  if (!resources.ok) return resources;
  if (resources.value.count > MOST_RESOURCES) return faultAt(resources.value.line, `more than ${MOST_RESOURCES} renewable resources`);
  const other = lines.findIndex((line) => /^\s*-?\s*(nonrenewable|doubly constrained)\s*:\s*[1-9]/u.test(line));
  if (other >= 0) return faultAt(other + 1, 'only renewable resources can be planned');
  return accepted({ activities: activities.value.count, resources: resources.value.count });
}

function countAfter(lines: readonly string[], pattern: RegExp, what: string): Read<{ readonly count: number; readonly line: number }> {
  for (const [index, line] of lines.entries()) {
    const found = pattern.exec(line)?.[1];
    if (found !== undefined) return accepted({ count: Number(found), line: index + 1 });
  }
  return faultAt(1, `the number of ${what} is not given`);
}

function readSuccessors(parts: Parts, { activities }: Counts): Read<readonly Pick<Arc, 'from' | 'to'>[]> {
  const rows = rowsFrom(parts, parts.precedence + 1, activities);
  if (!rows.ok) return rows;
  const arcs: Pick<Arc, 'from' | 'to'>[] = [];
  for (const [from, { line, numbers }] of rows.value.entries()) {
    const [job, modes, count, ...successors] = numbers;
    if (job !== from + 1) return faultAt(line, `job ${from + 1} is expected here`);
    if (modes !== 1) return faultAt(line, `job ${job} has to have one mode`);
    if (count !== successors.length) return faultAt(line, `job ${job} has to name as many successors as it counts`);
    for (const successor of successors) {
      if (successor < 1 || successor > activities) return faultAt(line, `there is no job ${successor}`);
      if (successor === job) return faultAt(line, `job ${job} cannot follow itself`);
      arcs.push({ from, to: successor - 1 });
    }
  }
  return accepted(arcs);
}

function readRequests(
  parts: Parts,
  { activities, resources }: Counts,
): Read<{ readonly durations: Int32Array; readonly demands: readonly Int32Array[] }> {
  // After the heading stand the names of the columns and a rule.
  const rows = rowsFrom(parts, parts.requests + 2, activities);
  if (!rows.ok) return rows;
  const durations = new Int32Array(activities);
  const demands = Array.from({ length: resources }, () => new Int32Array(activities));
  for (const [activity, { line, numbers }] of rows.value.entries()) {
    const [job, mode, duration = -1, ...requests] = numbers;
    if (job !== activity + 1) return faultAt(line, `job ${activity + 1} is expected here`);
    if (mode !== 1) return faultAt(line, `job ${job} has to have one mode`);
    if (requests.length !== resources) return faultAt(line, `job ${job} needs a duration and ${resources} requests`);
    const wrong = [duration, ...requests].find((amount) => amount < 0 || amount > MOST_AMOUNT);
    if (wrong !== undefined) return faultAt(line, `${wrong} is not from 0 to ${MOST_AMOUNT}`);
    if (duration > 0 && (activity === 0 || activity === activities - 1)) return faultAt(line, `job ${job} has to take no time`);
    durations[activity] = duration;
    for (const [resource, request] of requests.entries()) demands[resource]?.fill(request, activity, activity + 1);
  }
  return accepted({ durations, demands });
}

function readCapacities(parts: Parts, { resources }: Counts): Read<Int32Array> {
  const index = parts.availabilities + 1;
  const numbers = wholeNumbers(parts.lines[index] ?? '');
  if (numbers?.length !== resources) return faultAt(index + 1, `${resources} availabilities are expected here`);
  const wrong = numbers.find((amount) => amount < 0 || amount > MOST_AMOUNT);
  if (wrong !== undefined) return faultAt(index + 1, `${wrong} is not from 0 to ${MOST_AMOUNT}`);
  return accepted(Int32Array.from(numbers));
}

interface Row {
  readonly line: number;
  readonly numbers: readonly number[];
}

function rowsFrom({ lines }: Parts, first: number, count: number): Read<readonly Row[]> {
  const rows: Row[] = [];
  for (let index = first; index < first + count; index += 1) {
    const numbers = wholeNumbers(lines[index] ?? '');
    if (numbers === null || numbers.length === 0) return faultAt(index + 1, 'whole numbers are expected here');
    rows.push({ line: index + 1, numbers });
  }
  return accepted(rows);
}
