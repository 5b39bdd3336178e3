import type { Plugin } from 'vite';

const LANGUAGES = ['en', 'de', 'fr'] as const;
/** Marks a module of a page as that of one language: `wall-row.ts?speaks=de`. */
const MARK = /\?speaks=(\w+)$/;
/** A page's first module, as its HTML names it. */
const FIRST = '?loads-language';
/** What asks for words in every language: `words/day.ts`, and never `words/de/day.ts`. */
const ASKS_FOR_WORDS = /\/words\/[^/]+\.ts$/;

/** The language whose files alone a chunk belongs to, if it does. */
export function languageOf(moduleIds: readonly string[]): string | null {
  for (const id of moduleIds) {
    const [, language] = MARK.exec(id) ?? [];
    if (language !== undefined) return language;
  }
  return null;
}

/**
 * Every page is built once for each language, and what its HTML names only loads the one that it is to speak: words are a fifth of a
 * page, and a phone on a weak link needs one language of them. Modules under `folder` are told apart by a mark on their address; what asks
 * for the words of all languages gets those of its own three times, and picks them as it would. No top-level `await`: some browsers start
 * modules that share one too early.
 */
export function oneLanguage(folder: string): Plugin {
  return {
    name: 'one-language',
    enforce: 'pre',
    async resolveId(source, importer) {
      if (importer === undefined) return null;
      if (importer.endsWith('.html') && source.endsWith('main.ts')) {
        const first = await this.resolve(source, importer, { skipSelf: true });
        return first === null ? null : `${first.id}${FIRST}`;
      }
      if (!source.startsWith('.')) return null;
      const [, asked] = MARK.exec(source) ?? [];
      const [, speaks] = MARK.exec(importer) ?? [];
      const language = asked ?? speaks;
      if (language === undefined) return null;
      const from = pathOf(importer);
      const spoken = ASKS_FOR_WORDS.test(from) ? source.replace(/^\.\/(?:en|de|fr)\//, `./${language}/`) : source;
      const found = await this.resolve(pathOf(spoken), from, { skipSelf: true });
      return found === null || !found.id.startsWith(folder) || !found.id.endsWith('.ts') ? found : `${found.id}?speaks=${language}`;
    },
    async load(id) {
      if (id.endsWith(FIRST)) return loaderOf(pathOf(id), folder, await this.fs.readFile(pathOf(id), { encoding: 'utf8' }));
      return MARK.test(id) ? await this.fs.readFile(pathOf(id), { encoding: 'utf8' }) : null;
    },
  };
}

/** What a page has to load before all else, or zod asks whether it may make code of text, which the page's policy forbids. */
const BEFORE_ALL = 'parts/no-eval.ts';

function loaderOf(path: string, folder: string, source: string): string {
  const first = source.includes(BEFORE_ALL) ? `import '${folder}${BEFORE_ALL}';\n` : '';
  const name = path.slice(path.lastIndexOf('/') + 1);
  const pages = LANGUAGES.map((language) => `${language}: () => import('./${name}?speaks=${language}')`);
  return `${first}import { languageOfPage } from '${folder}words/page-language.ts';\nvoid { ${pages.join(', ')} }[languageOfPage()]();\n`;
}

function pathOf(id: string): string {
  return id.replace(/\?.*$/s, '');
}
