import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';

/**
 * Where the house's data go when nobody says: `ovenward` in the user's data folder (XDG Base Directory Specification:
 * $XDG_DATA_HOME, or ~/.local/share where that is not set or not absolute).
 */
export function defaultDataFolder(environment: Readonly<Record<string, string | undefined>>, home: string = homedir()): string {
  const base = environment['XDG_DATA_HOME'];
  return join(base !== undefined && isAbsolute(base) ? base : join(home, '.local', 'share'), 'ovenward');
}
