import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The repository's root folder. */
export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const NOT_OURS = new Set(['.git', '.build', 'node_modules']);

/** The paths of the files that belong to the project: what git tracks or would track; where there is no git, all but what is built. */
export function projectFiles(): readonly string[] {
  if (!existsSync(join(ROOT, '.git'))) return walk('');
  const args = ['ls-files', '-z', '--cached', '--others', '--exclude-standard'];
  const paths = execFileSync('git', args, { cwd: ROOT, encoding: 'utf8' }).split('\0');
  return paths.filter((path) => path !== '' && statSync(join(ROOT, path), { throwIfNoEntry: false })?.isFile() === true);
}

function walk(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (NOT_OURS.has(entry.name)) return [];
    return entry.isDirectory() ? walk(path) : [path];
  });
}
