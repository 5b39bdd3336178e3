import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));

/** Builds a harness page, by its path in the project, as the pages themselves are built. Returns the folder and the page's path in it. */
export async function buildHarness(name: string, page: string): Promise<{ readonly folder: string; readonly page: string }> {
  const folder = `${ROOT}/.build/${name}`;
  // As with the pages: NODE_ENV chooses between the packages' development and production forms.
  const before = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  try {
    await buildInto(folder, name, page);
  } finally {
    if (before === undefined) delete process.env['NODE_ENV'];
    else process.env['NODE_ENV'] = before;
  }
  return { folder, page: `/${page}` };
}

async function buildInto(folder: string, name: string, page: string): Promise<void> {
  await build({
    configFile: false,
    root: ROOT,
    base: '/',
    publicDir: false,
    cacheDir: `${ROOT}/.build/vite-${name}`,
    logLevel: 'warn',
    build: {
      outDir: folder,
      emptyOutDir: true,
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      target: ['chrome111', 'safari16'],
      minify: false,
      reportCompressedSize: false,
      // What a page loads later makes shared chunks; `no-eval` has to stay before every schema all the same.
      rolldownOptions: { input: `${ROOT}/${page}`, output: { strictExecutionOrder: true } },
    },
  });
}
