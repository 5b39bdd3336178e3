import { readdir, readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { performance } from 'node:perf_hooks';
import type { Writable } from 'node:stream';
import { parseArgs } from 'node:util';
import type { InstanceFault } from '../../shared/plan/core/instance-text.ts';
import type { Budget, Instance } from '../../shared/plan/core/instance.ts';
import { readProgenMax } from '../../shared/plan/core/read-progen-max.ts';
import { readPsplib } from '../../shared/plan/core/read-psplib.ts';
import { solveInstance } from '../../shared/plan/core/solve.ts';
import { accepted, refused, type Result } from '../../shared/result.ts';

const USAGE = 'Usage: plan-bench --dir DIR --schedules N --seed S';
/** Exit code of a command line that cannot be understood, as shells use it. */
const BAD_USAGE = 2;
/** Exit code where some file could not be read or planned. */
const BAD_FILE = 1;

const OPTIONS = { dir: { type: 'string' }, schedules: { type: 'string' }, seed: { type: 'string' } } as const;

type Reader = (text: string) => Result<Instance, InstanceFault>;

/** What reads which file, by its ending in small letters. */
const READERS: ReadonlyMap<string, Reader> = new Map<string, Reader>([
  ['.sm', readPsplib],
  ['.sch', readProgenMax],
]);

interface Options {
  readonly dir: string;
  readonly budget: Budget;
}

interface InstanceFile {
  readonly name: string;
  readonly read: Reader;
}

/** Where the lines go, and the clock by which `ms` is told. */
export interface PlanBenchStreams {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Whether anybody still takes what goes out; `head` has gone once it has its lines. */
  readonly isRead: () => boolean;
  readonly nowMs: () => number;
}

/**
 * `plan-bench --dir DIR --schedules N --seed S`: plans every `.sm` and `.SCH` file of the folder with at most N schedules each, in
 * the order of their names, and prints one JSON object a line. What is wrong goes to the other stream: arguments with exit code 2
 * before anything is planned, a file by its name with exit code 1 after all others. Where nobody reads on it ends, quietly.
 */
export async function main(args: readonly string[], streams: PlanBenchStreams = ofProcess()): Promise<number> {
  const work = await readWork(args);
  if (!work.ok) {
    streams.err(`${work.fault}. ${USAGE}\n`);
    return BAD_USAGE;
  }
  let exitCode = 0;
  for (const file of work.value.files) {
    if (!streams.isRead()) break;
    const line = await planned(file, work.value, streams.nowMs);
    if (line.ok) {
      streams.out(`${line.value}\n`);
      continue;
    }
    streams.err(`${file.name}: ${line.fault}\n`);
    exitCode = BAD_FILE;
  }
  return exitCode;
}

async function planned({ name, read }: InstanceFile, { dir, budget }: Options, nowMs: () => number): Promise<Result<string, string>> {
  const text = await attempted(() => readFile(join(dir, name), 'utf8'));
  if (!text.ok) return text;
  const instance = read(text.value);
  if (!instance.ok) return refused(`line ${instance.fault.line}: ${instance.fault.message}`);
  const startMs = nowMs();
  const outcome = await attempted(() => solveInstance(instance.value, budget));
  if (!outcome.ok) return outcome;
  const ms = Number((nowMs() - startMs).toFixed(3));
  const { makespan, starts, schedules } = outcome.value;
  return accepted(JSON.stringify({ instance: name.slice(0, -extname(name).length), makespan, starts: [...(starts ?? [])], schedules, ms }));
}

async function readWork(args: readonly string[]): Promise<Result<Options & { readonly files: readonly InstanceFile[] }, string>> {
  const options = readOptions(args);
  if (!options.ok) return options;
  const files = await filesIn(options.value.dir);
  return files.ok ? accepted({ ...options.value, files: files.value }) : files;
}

async function filesIn(dir: string): Promise<Result<readonly InstanceFile[], string>> {
  const names = await attempted(() => readdir(dir));
  if (!names.ok) return refused(`--dir cannot be read: ${names.fault}`);
  const files = names.value.sort().flatMap((name) => {
    const read = READERS.get(extname(name).toLowerCase());
    return read === undefined ? [] : [{ name, read }];
  });
  return files.length === 0 ? refused(`--dir has no .sm or .SCH file in it: ${dir}`) : accepted(files);
}

/** The value, or what the system or the planner says why there is none. Bugs go on being thrown. */
async function attempted<Value>(work: () => Value | Promise<Value>): Promise<Result<Value, string>> {
  try {
    return accepted(await work());
  } catch (error) {
    if (error instanceof RangeError || (error instanceof Error && 'syscall' in error)) return refused(error.message);
    throw error;
  }
}

function readOptions(args: readonly string[]): Result<Options, string> {
  const values = readValues(args);
  if (!values.ok) return values;
  const { dir, schedules = '', seed = '' } = values.value;
  if (dir === undefined || dir === '') return refused('--dir has to name a folder');
  if (!(isWhole(schedules) && Number(schedules) >= 1)) return refused('--schedules takes a whole number from 1');
  if (!isWhole(seed)) return refused('--seed takes a whole number');
  return accepted({ dir, budget: { schedules: Number(schedules), seed: Number(seed) } });
}

function readValues(
  args: readonly string[],
): Result<{ readonly dir?: string; readonly schedules?: string; readonly seed?: string }, string> {
  try {
    return accepted({ ...parseArgs({ args: withValuesJoined(args), options: OPTIONS }).values });
  } catch (error) {
    if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS')) return refused(error.message);
    throw error;
  }
}

/** `--seed -1` as `--seed=-1`: a number below nothing is no option. */
function withValuesJoined(args: readonly string[]): string[] {
  const joined: string[] = [];
  for (let index = 0; index < args.length; index += 1) {
    const arg = args[index] ?? '';
    const takesNext = Object.keys(OPTIONS).some((name) => arg === `--${name}`) && index + 1 < args.length;
    if (takesNext) index += 1;
    joined.push(takesNext ? `${arg}=${args[index] ?? ''}` : arg);
  }
  return joined;
}

function isWhole(text: string): boolean {
  return /^-?\d+$/u.test(text) && Number.isSafeInteger(Number(text));
}

function ofProcess(): PlanBenchStreams {
  return { ...streamsTo(process.stdout, process.stderr), nowMs: () => performance.now() };
}

/** The two streams, for as long as somebody is at the other end of the first. Any other fault of it is thrown. */
export function streamsTo(out: Writable, err: Writable): Omit<PlanBenchStreams, 'nowMs'> {
  let isRead = true;
  out.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    isRead = false;
  });
  return { out: (text) => void out.write(text), err: (text) => void err.write(text), isRead: () => isRead };
}
