import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));

/** Builds the phone's harness page as the pages themselves are built. Returns the folder and the page's path in it. */
export async function buildPhoneHarness(): Promise<{ readonly folder: string; readonly page: string }> {
  const folder = `${ROOT}/.build/harness-phone`;
  await build({
    configFile: false,
    root: ROOT,
    base: '/',
    publicDir: false,
    cacheDir: `${ROOT}/.build/vite-harness-phone`,
    logLevel: 'warn',
    build: {
      outDir: folder,
      emptyOutDir: true,
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      target: ['chrome111', 'safari16'],
      minify: false,
      reportCompressedSize: false,
      rolldownOptions: { input: `${ROOT}/tests/browser/harness-phone/index.html` },
    },
  });
  return { folder, page: '/tests/browser/harness-phone/index.html' };
}
