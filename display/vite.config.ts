import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const display = fileURLToPath(new URL('.', import.meta.url));

/** The pages by the address at which the server shows them: `/`, `/wall`, `/wall/setup`, `/phone`, `/station`, `/kitchen`. */
const pages = {
  start: `${display}index.html`,
  wall: `${display}wall/index.html`,
  wallSetup: `${display}wall-setup/index.html`,
  phone: `${display}phone/index.html`,
  station: `${display}station/index.html`,
  kitchen: `${display}kitchen/index.html`,
};

export default defineConfig({
  root: display,
  base: '/',
  publicDir: false,
  cacheDir: '../.build/vite',
  clearScreen: false,
  logLevel: 'warn',
  build: {
    outDir: '../.build/pages',
    emptyOutDir: true,
    assetsDir: 'assets',
    // Everything stands in a file of its own: the pages' content security policy allows neither inline scripts nor data: addresses.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // Decorators are lowered by `experimentalDecorators` of display/tsconfig.json; no browser in this list runs raw ones.
    target: ['chrome111', 'safari16'],
    sourcemap: true,
    reportCompressedSize: false,
    rolldownOptions: { input: pages },
  },
});
