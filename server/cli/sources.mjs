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
 * The files under `folders` (with everything below them) and the single files `files`, sorted by path; those that are not there are
 * left out.
 *
 * @param {string} root
 * @param {{ folders: readonly { path: string, endings?: readonly string[] }[], files: readonly string[] }} what
 * @returns {SourceFile[]}
 */
export function listSources(root, { folders, files }) {
  /** @type {string[]} */
  const paths = [...files];
  for (const folder of folders) {
    collect(root, folder.path, (name) => folder.endings?.some((ending) => name.endsWith(ending)) ?? true, paths);
  }
  paths.sort();
  return paths.flatMap((path) => {
    const stat = statSync(join(root, path), { throwIfNoEntry: false });
    return stat === undefined ? [] : [{ path, size: stat.size, mtimeMs: stat.mtimeMs }];
  });
}

/**
 * @param {string} root
 * @param {string} folder
 * @param {(name: string) => boolean} isSource
 * @param {string[]} paths where the paths found are added
 */
function collect(root, folder, isSource, paths) {
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
    if (isHidden(entry.name)) continue;
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) collect(root, path, isSource, paths);
    else if (isSource(entry.name)) paths.push(path);
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
