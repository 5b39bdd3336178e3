import { createHash } from 'node:crypto';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/**
 * One source file as the staleness check sees it.
 *
 * @typedef {{ path: string, size: number, mtimeMs: number }} SourceFile
 */

/**
 * What a build was made from: one digest over names, sizes and times of all its sources, one over the names alone.
 *
 * @typedef {{ sources: string, names: string }} BuildStamp
 */

/** Editors' drafts and hidden files are no sources. */
function isHidden(/** @type {string} */ name) {
  return name.startsWith('.') || name.endsWith('~') || name === 'node_modules';
}

/**
 * A folder with everything below it: only the files with one of the endings, if some are named, and without the folders in `except`.
 *
 * @typedef {{ path: string, endings?: readonly string[], except?: readonly string[] }} SourceFolder
 */

/**
 * The files under `folders` and the single files `files`, sorted by path; those that are not there are left out.
 *
 * @param {string} root
 * @param {{ folders: readonly SourceFolder[], files: readonly string[] }} what
 * @returns {SourceFile[]}
 */
export function listSources(root, { folders, files }) {
  /** @type {string[]} */
  const paths = [...files];
  for (const folder of folders) collect(root, folder.path, folder, paths);
  paths.sort();
  return paths.flatMap((path) => {
    const stat = statSync(join(root, path), { throwIfNoEntry: false });
    return stat === undefined ? [] : [{ path, size: stat.size, mtimeMs: stat.mtimeMs }];
  });
}

/**
 * @param {string} root
 * @param {string} path
 * @param {SourceFolder} folder
 * @param {string[]} paths where the paths found are added
 */
function collect(root, path, folder, paths) {
  for (const entry of readdirSync(join(root, path), { withFileTypes: true })) {
    const found = `${path}/${entry.name}`;
    if (isHidden(entry.name) || folder.except?.includes(found) === true) continue;
    if (entry.isDirectory()) collect(root, found, folder, paths);
    else if (folder.endings?.some((ending) => entry.name.endsWith(ending)) ?? true) paths.push(found);
  }
}

/**
 * The stamp of a list of sources. Any difference counts, not only a newer time: a file may be deleted, or an older one put back.
 *
 * @param {readonly SourceFile[]} sources
 * @returns {BuildStamp}
 */
export function stampOf(sources) {
  return {
    sources: digest(sources.map((file) => `${file.path}\0${file.size}\0${file.mtimeMs}`)),
    names: digest(sources.map((file) => file.path)),
  };
}

/**
 * What has to be done for a build made from `built` to fit the sources `now`: nothing, a build on top of the last one, or a build
 * from an empty folder, because the last one may hold output of files that are gone.
 *
 * @param {Partial<BuildStamp> | undefined} built the stamp of the last finished build, if there is one
 * @param {BuildStamp} now
 * @returns {'fresh' | 'stale' | 'wipe'}
 */
export function judgeBuild(built, now) {
  if (built?.names !== now.names) return 'wipe';
  return built.sources === now.sources ? 'fresh' : 'stale';
}

function digest(/** @type {readonly string[]} */ lines) {
  return createHash('sha256').update(lines.join('\n')).digest('hex');
}
