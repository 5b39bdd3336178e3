import '../../../display/parts/no-eval.ts';
import type { FloorView } from '../../../display/link/floor-link.ts';
import { showLook, type Look } from '../../../display/parts/look.ts';
import type { ClockSource } from '../../../display/parts/ticking-clock.ts';
import { languageOfPage } from '../../../display/words/page-language.ts';
import type { LookNowEvent } from '../../../display/wall/look-now.ts';
import type { WallSettings } from '../../../display/wall/wall-settings.ts';
import '../../../display/wall/wall-page.ts';
import '../../../display/wall-setup/setup-page.ts';
import type { SettingsChangedEvent } from '../../../display/wall-setup/setup-events.ts';
import type { Gap } from '../../../display/wall-setup/ring-geometry.ts';

/** What a test puts on the page: the view a link would give, a clock that it moves by hand, and the settings. */
export interface StagedSetup {
  readonly view: FloorView;
  readonly nowMs: number;
  readonly settings: WallSettings;
  readonly gaps: readonly Gap[];
  readonly browserLook: Look;
}

/** What the test calls in the page. */
export interface SetupHarness {
  showSetup(staged: StagedSetup): Promise<void>;
  showWall(staged: StagedSetup): Promise<void>;
  /** Moves the page's clock and has it drawn again, as its own timer would. */
  goTo(nowMs: number): Promise<void>;
  /** What the page said since it was shown, in order: the settings at each change, and the names of other events. */
  readonly said: (WallSettings | string)[];
}

declare global {
  interface Window {
    setupHarness: SetupHarness;
  }
}

let clockMs = 0;
const clockSource = (pace: number): ClockSource => ({ nowMs: () => clockMs, pace: () => pace });

async function put(page: HTMLElement & { readonly updateComplete: Promise<boolean> }): Promise<void> {
  await document.fonts.load("700 40px 'Atkinson Hyperlegible Next Variable'");
  document.querySelector('setup-page, wall-page')?.remove();
  window.setupHarness.said.length = 0;
  page.addEventListener('look-now', (event: LookNowEvent) => {
    showLook(event.look);
    window.setupHarness.said.push(event.look);
  });
  document.body.append(page);
  await page.updateComplete;
  await document.fonts.ready;
}

window.setupHarness = {
  said: [],
  async showSetup({ view, nowMs, settings, gaps, browserLook }) {
    const page = document.createElement('setup-page');
    clockMs = nowMs;
    Object.assign(page, { view, settings, gaps, browserLook, language: languageOfPage(), clockSource: clockSource(view.pace) });
    page.wallUrl = 'http://localhost:8420/wall';
    page.addEventListener('settings-changed', (event: SettingsChangedEvent) => {
      page.settings = event.settings;
      window.setupHarness.said.push(event.settings);
    });
    for (const name of ['left-alone', 'rings-again', 'language-chosen'])
      page.addEventListener(name, () => window.setupHarness.said.push(name));
    await put(page);
  },
  async showWall({ view, nowMs, settings, browserLook }) {
    const page = document.createElement('wall-page');
    clockMs = nowMs;
    const { viewing, look, stationId } = settings;
    Object.assign(page, { view, viewing, look, stationId, browserLook, sound: 'on', clockSource: clockSource(view.pace) });
    await put(page);
  },
  async goTo(nowMs) {
    clockMs = nowMs;
    const page = document.querySelector<HTMLElementTagNameMap['setup-page' | 'wall-page']>('setup-page, wall-page');
    page?.requestUpdate();
    await page?.updateComplete;
  },
};
