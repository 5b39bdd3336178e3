import { parseArgs } from 'node:util';
import { accepted, refused, type Result } from '../../shared/result.ts';

/** Where the server listens unless told otherwise. */
export const DEFAULT_PORT = 8420;
const MAX_PACE = 3600;

/** What the command line asks for. */
export interface ServeArguments {
  readonly bakehouse: string | null;
  readonly data: string | null;
  readonly port: number;
  readonly lan: boolean;
  readonly pace: number;
  readonly help: boolean;
}

export const HELP = `npm start -- [options]
  --bakehouse FILE  bring in a bakehouse file and its day (without it, an empty data folder gets the demo house)
  --data DIR        where the house's data are kept (default: ovenward in your data folder)
  --port N          port to listen on (default ${DEFAULT_PORT})
  --lan             open to the local network, not only to this machine
  --pace N          run the house N times faster, 1 to ${MAX_PACE}; for trying out, never for a real day
  --help            this text`;

/** Reads the command line; a fault is one sentence that names the option. */
export function readArguments(args: readonly string[]): Result<ServeArguments, string> {
  let values;
  try {
    ({ values } = parseArgs({
      args: [...args],
      strict: true,
      allowPositionals: false,
      options: {
        bakehouse: { type: 'string' },
        data: { type: 'string' },
        port: { type: 'string' },
        lan: { type: 'boolean' },
        pace: { type: 'string' },
        help: { type: 'boolean' },
      },
    }));
  } catch (error) {
    return refused(error instanceof Error ? error.message : String(error));
  }
  const port = values.port === undefined ? DEFAULT_PORT : wholeNumber(values.port);
  if (port === null || port > 65_535) return refused(`--port takes a number from 0 to 65535, not "${values.port}"`);
  const pace = values.pace === undefined ? 1 : Number(values.pace);
  if (!(pace >= 1 && pace <= MAX_PACE)) return refused(`--pace takes a number from 1 to ${MAX_PACE}, not "${values.pace}"`);
  if (values.bakehouse === '') return refused('--bakehouse takes the name of a file');
  if (values.data === '') return refused('--data takes the name of a folder');
  return accepted({
    bakehouse: values.bakehouse ?? null,
    data: values.data ?? null,
    port,
    lan: values.lan ?? false,
    pace,
    help: values.help ?? false,
  });
}

function wholeNumber(text: string): number | null {
  return /^\d{1,5}$/.test(text) ? Number(text) : null;
}
