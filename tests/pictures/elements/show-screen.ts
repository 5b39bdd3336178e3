import '../../../display/day/day-page.ts';
import { PlanStore } from '../../../display/day/plan-store.ts';
import { BookStore } from '../../../display/formulas/book-store.ts';
import '../../../display/formulas/formulas-page.ts';
import '../../../display/index/start-page.ts';
import '../../../display/kitchen/kitchen-page.ts';
import '../../../display/phone/phone-page.ts';
import '../../../display/station/station-page.ts';
import '../../../display/wall-setup/setup-page.ts';
import '../../../display/wall/wall-page.ts';
import '../../../display/weigh/weigh-page.ts';
import { DEFAULT_VIEWING } from '../../../display/wall/settings.ts';
import { assert } from '../../../shared/result.ts';
import { made } from './made.ts';
import type { Scene, Scenes } from './scene.ts';

/** Where the rings of the line on the setup page are open. */
const GAPS = ['right', 'up', 'left', 'down', 'up'] as const;

/** Shows one whole page as it is told a scene, its clock standing still. */
export function showScreen(scenes: Scenes, kind: string, name: string): void {
  document.title = `${kind}, ${name}`;
  document.body.append(screenOf(scenes, kind, name));
}

function screenOf(scenes: Scenes, kind: string, name: string): HTMLElement {
  switch (kind) {
    case 'wall': {
      const scene = found(scenes.walls, name);
      return made('wall-page', {
        viewing: DEFAULT_VIEWING,
        clockSource: clockOf(scene),
        sound: scene.sound ?? 'on',
        stationId: scene.stationId ?? null,
        view: scene.view,
      });
    }
    case 'setup': {
      const scene = found(scenes.walls, name);
      return made('setup-page', { clockSource: clockOf(scene), view: scene.view, gaps: GAPS });
    }
    case 'phone': {
      const scene = found(scenes.phones, name);
      return made('phone-page', { clock: clockOf(scene), view: scene.view });
    }
    case 'card': {
      const scene = found(scenes.cards, name);
      return made('phone-page', { clock: clockOf(scene), view: scene.view, screen: { kind: 'card', workpieceId: scene.workpieceId } });
    }
    case 'station': {
      const scene = found(scenes.phones, 'in touch');
      return made('station-page', { clock: clockOf(scene), view: scene.view, stationId: name === 'none' ? null : name });
    }
    case 'weigh': {
      const scene = found(scenes.weighs, name);
      return made('weigh-page', { clock: clockOf(scene), view: scene.view, pieceId: scene.workpieceId });
    }
    case 'formulas': {
      const scene = scenes.kitchen;
      // No server stands behind a picture: the page says that the book is not here, and offers to try again.
      const store = new BookStore(() => Promise.reject(new TypeError('no server')));
      const shelf = { read: () => null, write: () => undefined };
      return made('formulas-page', { clock: clockOf(scene), view: scene.view, tools: { store, shelf, freshId: () => 'none' } });
    }
    case 'day': {
      const scene = scenes.kitchen;
      const silent: typeof fetch = () => Promise.reject(new TypeError('no server'));
      const tools = {
        book: new BookStore(silent),
        plan: new PlanStore(silent),
        freshId: () => 'none',
        wait: () => Promise.resolve(),
        goTo: () => undefined,
      };
      return made('day-page', { clock: clockOf(scene), view: scene.view, tools });
    }
    case 'start':
      return made('start-page', { address: 'http://192.168.1.20:4810/' });
    default: {
      const scene = scenes.kitchen;
      return made('kitchen-page', { clock: clockOf(scene), view: scene.view });
    }
  }
}

function found<Kind extends Scene>(scenes: Readonly<Record<string, Kind>>, name: string): Kind {
  const scene = scenes[name];
  assert(scene !== undefined, `there is no scene "${name}"`);
  return scene;
}

function clockOf({ nowMs, view }: Scene): { nowMs(): number; pace(): number; monotonicMs(): number } {
  return { nowMs: () => nowMs, pace: () => view.pace, monotonicMs: () => performance.now() };
}
