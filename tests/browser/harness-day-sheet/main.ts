// First, as in the pages: before any schema is made.
import '../../../display/parts/no-eval.ts';
import '../../../display/day/day-sheet.ts';
import '../../../display/day/station-list.ts';
import '../../../display/day/try-panel.ts';
import type { PinPlace } from '../../../display/day/sheet-events.ts';
import { showLook } from '../../../display/parts/look.ts';
import type { TryResult } from '../../../shared/plan/try/try-result.ts';
import type { SheetScene } from './sheet-stage.ts';

/** What the sheet said. */
export interface Said {
  readonly type: string;
  readonly place?: PinPlace;
  readonly startMs?: number;
  readonly pinId?: string | null;
  readonly orderId?: string | null;
  readonly sheets?: number;
}

/** What a test may do: show a day, and hear what the sheet says. */
export interface SheetHarness {
  show(scene: SheetScene, result: TryResult | null): Promise<void>;
  readonly said: Said[];
}

declare global {
  interface Window {
    sheetHarness: SheetHarness;
  }
}

const stage = document.querySelector<HTMLElement>('#stage');
if (stage === null) throw new Error('there is no stage');
const here = stage;
showLook(new URLSearchParams(location.search).get('look') === 'night' ? 'night' : 'day');

const said: Said[] = [];
here.addEventListener('pin-wanted', (event) => said.push({ type: event.type, place: event.place, startMs: event.startMs }));
here.addEventListener('pin-lifted', (event) => said.push({ type: event.type, pinId: event.pinId, orderId: event.orderId }));
here.addEventListener('try-wanted', (event) => said.push({ type: event.type }));
here.addEventListener('first-wanted', (event) => said.push({ type: event.type, orderId: event.orderId }));

const frame = (): Promise<number> => new Promise((resolve) => requestAnimationFrame(resolve));

window.sheetHarness = {
  said,
  show: async ({ state, proposal, cleanings, nowMs }, result) => {
    await document.fonts.load("700 40px 'Atkinson Hyperlegible Next Variable'");
    const sheet = Object.assign(document.createElement('day-sheet'), { state, proposal, cleanings, nowMs });
    const print = (elements: readonly HTMLElement[]): Promise<void> => {
      said.push({ type: 'print', sheets: elements.length });
      return Promise.resolve();
    };
    const list = Object.assign(document.createElement('station-list'), { state, proposal, cleanings, nowMs, print });
    const tried = Object.assign(document.createElement('try-panel'), { state, result });
    here.replaceChildren(sheet, list, tried);
    // Its size is known once it has been laid out.
    await frame();
    await frame();
    await sheet.updateComplete;
  },
};
