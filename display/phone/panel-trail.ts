import type { Panel } from './phone-events.ts';

/** The panels that lead to the one that is open, the outermost first; empty while the card's own buttons stand. */
export type PanelTrail = readonly Panel[];

/** The panel that is open. */
export function openPanel(trail: PanelTrail): Panel {
  return trail.at(-1) ?? 'actions';
}

/** With one more panel opened; one that is on the way already is gone back to, so that no way leads in a circle. */
export function withPanel(trail: PanelTrail, panel: Panel): PanelTrail {
  if (panel === 'actions') return [];
  const at = trail.indexOf(panel);
  return at === -1 ? [...trail, panel] : trail.slice(0, at + 1);
}

/** One step back towards the card. */
export function withoutPanel(trail: PanelTrail): PanelTrail {
  return trail.slice(0, -1);
}
