import type { Browser, BrowserContext, Page } from 'playwright-core';
import type { FloorView } from '../../../display/link/floor-link.ts';
import type { Viewing } from '../../../display/wall/settings.ts';
import type { Language } from '../../../display/words/page-language.ts';
import type { SoundReadiness } from '../../../shared/wire/up.ts';
import type { Floor } from '../../domain/support/floor.ts';
import { buildHarness } from './build-harness.ts';
import { serveFolder } from './serve-folder.ts';
import { viewOf } from './staged-wall.ts';
import type { Size } from './wall-faults.ts';

/** Which font the page gets: ours, or whatever the browser has. */
export type FontChoice = 'ours' | 'fallback';

/** How a page of the harness is opened. */
export interface Opening {
  readonly language: Language;
  readonly font: FontChoice;
  /** Screen px for one CSS px. */
  readonly density: number;
}

/** The wall's harness, built and served, with a page for each way of opening it. */
export class WallStage {
  /** What the pages complained of. */
  readonly complaints: string[] = [];
  private readonly contexts: BrowserContext[] = [];
  private readonly pages = new Map<string, Page>();
  private readonly browser: Browser;
  private readonly url: string;
  private readonly served: { close(): Promise<void> };

  private constructor(browser: Browser, url: string, served: { close(): Promise<void> }) {
    this.browser = browser;
    this.url = url;
    this.served = served;
  }

  static async build(browser: Browser, name = 'harness'): Promise<WallStage> {
    const built = await buildHarness(name, 'tests/browser/harness/wall.html');
    const served = await serveFolder(built.folder);
    return new WallStage(browser, `${served.origin}${built.page}`, served);
  }

  async close(): Promise<void> {
    for (const context of this.contexts) await context.close();
    await this.served.close();
  }

  /** The page that was opened so, at a size. */
  async page(opening: Opening, size: Size): Promise<Page> {
    const { language, font, density } = opening;
    const key = `${language} ${font} ${density}`;
    const page = this.pages.get(key) ?? (await this.open(opening));
    this.pages.set(key, page);
    await page.setViewportSize(size);
    return page;
  }

  private async open({ language, font, density }: Opening): Promise<Page> {
    const context = await this.browser.newContext({ deviceScaleFactor: density });
    this.contexts.push(context);
    const page = await context.newPage();
    page.on('pageerror', (error) => this.complaints.push(error.message));
    page.on('console', (message) => {
      const isWithheld = font === 'fallback' && message.text().includes('404');
      if ((message.type() === 'error' || message.type() === 'warning') && !isWithheld) this.complaints.push(message.text());
    });
    if (font === 'fallback') await page.route('**/*.woff2', (route) => route.fulfill({ status: 404 }));
    await page.goto(`${this.url}?language=${language}`);
    return page;
  }
}

/** Puts a floor on a page's wall. */
export async function stageWall(
  page: Page,
  floor: Pick<Floor, 'nowMs'> & { readonly state: FloorView['state'] },
  viewing: Viewing,
  more: Partial<FloorView> = {},
  sound: SoundReadiness = 'on',
): Promise<void> {
  const staged = { view: viewOf(floor.state, more), nowMs: floor.nowMs, viewing, sound };
  await page.evaluate((given) => window.wallHarness.show(given), staged);
}

/** How many doughs are open on a floor. */
export function openDoughs({ state }: Pick<Floor, 'state'>): number {
  return Object.values(state.workpieces).filter((workpiece) => workpiece.finishedMs === null).length;
}
