import { html, type TemplateResult } from 'lit';
import type { Look } from '../../../../display/parts/look.ts';
import type { Scenes } from '../scene.ts';
import { section, shelf, specimen } from '../specimen.ts';

/** Whole pages, each in a frame as large as its screen, since they measure the window that they are in. */
export function screensSection({ walls, phones, cards, kitchen, weighs }: Scenes, look: Look): TemplateResult {
  return section('screens', 'Whole screens', [
    shelf(
      'The wall: 43 inch, read from 5 m',
      Object.keys(walls).map((name) => frame('wall', name, look, 1920, 1080)),
    ),
    shelf('The phone', [
      ...Object.keys(phones).map((name) => frame('phone', name, look, 390, 844)),
      ...Object.keys(cards).map((name) => frame('card', name, look, 390, 844)),
    ]),
    shelf(
      'The screen of a station',
      [...(kitchen.view.state?.kitchen?.document.stations ?? []).map(({ id }) => id), 'none'].map((id) =>
        frame('station', id, look, 900, 1200),
      ),
    ),
    shelf('The weigh-out', [
      ...Object.keys(weighs).map((name) => frame('weigh', name, look, 390, 844)),
      frame('weigh', 'half in', look, 1280, 800),
    ]),
    shelf('The wall being set up', [frame('setup', 'late and being lost', look, 1920, 1500)]),
    shelf('The formula book and a day without their server', [
      frame('formulas', 'no server', look, 1200, 700),
      frame('day', 'no server', look, 1200, 900),
    ]),
    shelf('The kitchen, at a desk; the way in', [frame('kitchen', 'kitchen', look, 1200, 1500), frame('start', 'start', look, 640, 900)]),
  ]);
}

function frame(kind: string, name: string, look: Look, width: number, height: number): TemplateResult {
  const address = `?${new URLSearchParams({ screen: kind, scene: name, look }).toString()}`;
  return specimen(`${kind}, ${name}`, '', html`<iframe title="${kind}, ${name}" src=${address} width=${width} height=${height}></iframe>`);
}
