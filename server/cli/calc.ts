import { readOnce, type Input } from './read-input.ts';
import { calculate } from '../../shared/calc/calculate.ts';
import { refused, type Result } from '../../shared/result.ts';
import type { CalcFault } from '../../shared/trade/calc-part.ts';

/** Exit code of input that is not right, as shells use it. */
const BAD_INPUT = 2;

export interface CalcStreams {
  readonly input: Input;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/**
 * One of the trade's sums, `calc NAME`: one JSON object from the input, one JSON object out, exit code 0. Bad input: exit code
 * 2, nothing out, and the fault as one JSON object on the other stream.
 */
export async function main(args: readonly string[], { input, out, err }: CalcStreams = ofProcess()): Promise<number> {
  const result = await calculated(args, input);
  if (result.ok) {
    out(`${JSON.stringify(result.value)}\n`);
    return 0;
  }
  const { code, field, message } = result.fault;
  err(`${JSON.stringify({ error: { code, field, message } })}\n`);
  return BAD_INPUT;
}

async function calculated(args: readonly string[], input: Input): Promise<Result<object, CalcFault>> {
  const [name = '', ...more] = args;
  // An unknown name is refused before anybody is waited for.
  const named = calculate(name, undefined);
  if (!named.ok && named.fault.code === 'nameUnknown') return named;
  if (more.length > 0) return refused({ code: 'nameUnknown', field: 'name', message: 'one name at a time' });
  const text = await readOnce(input);
  if (text === null) return refused({ code: 'outOfRange', field: 'body', message: 'the input is too long, or not UTF-8' });
  const body = parsed(text);
  return body.ok ? calculate(name, body.value) : body;
}

function parsed(text: string): Result<unknown, CalcFault> {
  try {
    const value: unknown = JSON.parse(text);
    return { ok: true, value };
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return refused({ code: 'notJson', field: 'body', message: error.message });
  }
}

function ofProcess(): CalcStreams {
  return {
    input: process.stdin,
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
  };
}
