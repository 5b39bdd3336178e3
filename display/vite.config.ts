import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';
import { languageOf, oneLanguage } from './one-language.ts';

const display = fileURLToPath(new URL('.', import.meta.url));

/** The pages by the address at which the server shows them: `/`, `/wall`, `/wall/setup`, `/phone`, `/station`, `/kitchen`, `/formulas`, `/weigh`, `/day`, `/join`, `/devices`, `/trust`, `/records`. */
const pages = {
  start: `${display}index.html`,
  wall: `${display}wall/index.html`,
  wallSetup: `${display}wall-setup/index.html`,
  phone: `${display}phone/index.html`,
  station: `${display}station/index.html`,
  kitchen: `${display}kitchen/index.html`,
  formulas: `${display}formulas/index.html`,
  weigh: `${display}weigh/index.html`,
  day: `${display}day/index.html`,
  join: `${display}join/index.html`,
  devices: `${display}devices/index.html`,
  trust: `${display}trust/index.html`,
};

/**
 * Read at a desk, and built apart: what a page shares with one more page stands in more files, and every phone would pay for the records.
 * `vite build --mode records`, after the others.
 */
const RECORDS = { records: `${display}records/index.html` };

/** zod's writers of JSON Schema, which every schema brings along. */
const DESCRIBERS = /\/zod\/v4\/core\/(?:json-schema-processors|to-json-schema)\.js$/;

/** Pages hold messages against schemas and never describe them: 5 kB of every page, gzipped, that nothing asks for. */
const withoutDescribers: Plugin = {
  name: 'without-describers',
  enforce: 'pre',
  transform(code, id) {
    if (!DESCRIBERS.test(id)) return null;
    // What says how long a text may be stands before the first of them, and is asked for.
    const kept = code.slice(0, Math.max(0, code.search(/^export const \w+Processor = /m)));
    const rest = code.slice(kept.length);
    const names = [...rest.matchAll(/^export (?:const|function) (\w+)/gm), ...rest.matchAll(/^export \{ \w+ as (\w+) \}/gm)];
    if (names.length === 0) throw new Error(`${id} exports nothing that this build knows: see withoutDescribers in display/vite.config.ts`);
    const left = "() => () => { throw new Error('pages describe no schemas'); }";
    return { code: `${kept}\nconst left = ${left};\nexport { ${names.map(([, name]) => `left as ${name}`).join(', ')} };\n`, map: null };
  },
};

export default defineConfig(({ mode }) => ({
  plugins: [oneLanguage(display), withoutDescribers],
  root: display,
  base: '/',
  publicDir: false,
  cacheDir: '../.build/vite',
  clearScreen: false,
  logLevel: 'warn',
  build: {
    outDir: '../.build/pages',
    emptyOutDir: mode !== 'records',
    assetsDir: 'assets',
    // Everything stands in a file of its own: the pages' content security policy allows neither inline scripts nor data: addresses.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // Decorators are lowered by `experimentalDecorators` of display/tsconfig.json; no browser in this list runs raw ones.
    target: ['chrome111', 'safari16'],
    sourcemap: true,
    reportCompressedSize: false,
    rolldownOptions: {
      input: mode === 'records' ? RECORDS : pages,
      output: {
        // What speaks one language stands in its folder, so that one can see what a page of that language loads.
        chunkFileNames: ({ moduleIds }) => {
          const language = languageOf(moduleIds);
          return language === null ? 'assets/[name]-[hash].js' : `assets/${language}/[name]-[hash].js`;
        },
      },
    },
  },
}));
