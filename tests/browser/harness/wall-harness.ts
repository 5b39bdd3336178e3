import '../../../display/parts/no-eval.ts';
import type { FloorView } from '../../../display/link/floor-link.ts';
import { textWidthPx } from '../../../display/parts/text-width.ts';
import type { Viewing } from '../../../display/wall/settings.ts';
import '../../../display/wall/wall-page.ts';
import type { SoundReadiness } from '../../../shared/wire/up.ts';

/** What a test puts on the wall: the view a link would give, and a clock that stands still. */
export interface Staged {
  readonly view: FloorView;
  readonly nowMs: number;
  readonly viewing: Viewing;
  readonly sound: SoundReadiness;
}

/** What the test calls in the page. */
export interface WallHarness {
  show(staged: Staged): Promise<void>;
  textWidthPx(text: string, sizePx: number): number;
}

declare global {
  interface Window {
    wallHarness: WallHarness;
  }
}

window.wallHarness = {
  async show({ view, nowMs, viewing, sound }) {
    // Where a test withholds the font, the wall has to do without it.
    await document.fonts.load("700 40px 'Atkinson Hyperlegible Next Variable'").catch(() => []);
    document.querySelector('wall-page')?.remove();
    const page = document.createElement('wall-page');
    page.viewing = viewing;
    page.clockSource = { nowMs: () => nowMs, pace: () => view.pace };
    page.sound = sound;
    page.view = view;
    document.body.append(page);
    await page.updateComplete;
    await document.fonts.ready;
  },
  textWidthPx,
};
