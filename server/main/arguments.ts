import { parseArgs } from 'node:util';
import { accepted, refused, type Result } from '../../shared/result.ts';

/** Where the server listens unless told otherwise. */
export const DEFAULT_PORT = 8420;
/** Where it speaks TLS unless told otherwise. */
export const DEFAULT_TLS_PORT = 8443;
const MAX_PACE = 3600;
/** RFC 1123 section 2.1, in lower case. */
const HOST_NAME = /^(?=.{1,253}$)[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?(?:\.[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?)*$/;

/** What the command line asks for. */
export interface ServeArguments {
  readonly bakehouse: string | null;
  readonly data: string | null;
  readonly backups: string | null;
  readonly port: number;
  /** Only for this machine, and not for the local network. */
  readonly isHereOnly: boolean;
  /** Speaks TLS as well, with certificates of the bakehouse's own authority. */
  readonly tls: boolean;
  readonly tlsPort: number;
  /** A new code for the console is wanted, though some phone manages the kitchen. */
  readonly isClaimedAnew: boolean;
  /** Names by which the house's own network knows this machine, beside its host name. */
  readonly names: readonly string[];
  readonly pace: number;
  readonly help: boolean;
}

export const HELP = `npm start -- [options]
  --bakehouse FILE  bring in a bakehouse file and its day (without it, an empty data folder gets the demo house)
  --data DIR        where the house's data are kept (default: ovenward in your data folder)
  --backups DIR     where a backup is kept every hour, a stick for instance (default: backups in the data folder)
  --port N          port to listen on (default ${DEFAULT_PORT})
  --here            answer this machine only, not the local network
  --name NAME       one more name by which your network knows this machine, ovens.example for instance; once for each
  --tls             speak TLS too, with certificates of this bakehouse’s own (the first start makes its authority)
  --tls-port N      port for TLS (default ${DEFAULT_TLS_PORT})
  --claim           show a new code that lets a phone manage the kitchen: where every one that did is lost
  --pace N          run the house N times faster, 1 to ${MAX_PACE}; for trying out, never for a real day
  --help            this text`;

const OPTIONS = {
  bakehouse: { type: 'string' },
  data: { type: 'string' },
  backups: { type: 'string' },
  port: { type: 'string' },
  here: { type: 'boolean' },
  name: { type: 'string', multiple: true },
  claim: { type: 'boolean' },
  tls: { type: 'boolean' },
  'tls-port': { type: 'string' },
  pace: { type: 'string' },
  help: { type: 'boolean' },
} as const;

/** Reads the command line; a fault is one sentence that names the option. */
export function readArguments(args: readonly string[]): Result<ServeArguments, string> {
  const { values, tokens } = parseArgs({ args: [...args], options: OPTIONS, strict: false, allowPositionals: true, tokens: true });
  for (const token of tokens) {
    const fault = faultOf(token);
    if (fault !== null) return refused(fault);
  }
  const { bakehouse, data, backups, here, claim, tls, help } = values;
  const names = (values.name ?? []).filter((name) => typeof name === 'string').map((name) => name.toLowerCase());
  for (const name of names) if (!HOST_NAME.test(name)) return refused(`--name takes a host name such as ovens.example, not "${name}".`);
  const port = typeof values.port === 'string' ? wholeNumber(values.port) : DEFAULT_PORT;
  if (port === null || port > 65_535) return refused(`--port takes a number from 0 to 65535, not "${values.port}".`);
  const tlsText = values['tls-port'];
  const tlsPort = typeof tlsText === 'string' ? wholeNumber(tlsText) : DEFAULT_TLS_PORT;
  if (tlsPort === null || tlsPort > 65_535) return refused(`--tls-port takes a number from 0 to 65535, not "${String(tlsText)}".`);
  const pace = typeof values.pace === 'string' ? Number(values.pace) : 1;
  if (!(pace >= 1 && pace <= MAX_PACE)) return refused(`--pace takes a number from 1 to ${MAX_PACE}, not "${values.pace}".`);
  return accepted({
    bakehouse: typeof bakehouse === 'string' ? bakehouse : null,
    data: typeof data === 'string' ? data : null,
    backups: typeof backups === 'string' ? backups : null,
    port,
    isHereOnly: here === true,
    isClaimedAnew: claim === true,
    names,
    tls: tls === true,
    tlsPort,
    pace,
    help: help === true,
  });
}

type Token = NonNullable<ReturnType<typeof parseArgs>['tokens']>[number];

/** What is wrong with one word of the command line, or null. */
function faultOf(token: Token): string | null {
  if (token.kind === 'positional') return `"${token.value}" is not an option; files and folders come after --bakehouse and --data.`;
  if (token.kind === 'option-terminator') return null;
  if (!Object.hasOwn(OPTIONS, token.name)) return `There is no option ${token.rawName}.`;
  const takesValue = OPTIONS[token.name as keyof typeof OPTIONS].type === 'string';
  const isNextOption = token.inlineValue !== true && token.value?.startsWith('--') === true;
  if (takesValue && (isNextOption || (token.value ?? '') === '')) return `${token.rawName} needs a value after it.`;
  return !takesValue && token.value !== undefined ? `${token.rawName} takes no value.` : null;
}

function wholeNumber(text: string): number | null {
  return /^\d{1,5}$/.test(text) ? Number(text) : null;
}
