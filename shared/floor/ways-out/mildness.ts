import { decksFor } from '../slots.ts';
import type { WayOut } from '../ways-out.ts';
import { refusedStep, type Asked } from './asked.ts';

/** Decks so close in heat that a bake hardly differs, and so far apart that it is another bake. Common practice, not measured. */
const NEAR_C = 10;
const FAR_C = 30;

/** Orders ways out by what they do to the dough, the mildest first: those that lose it last, then by kind, then by time and heat. */
export function byMildness(asked: Asked): (a: WayOut, b: WayOut) => number {
  const rank = (way: WayOut): number => rankOf(asked, way) + (isLosing(way) ? 100 : 0);
  return (a, b) => rank(a) - rank(b) || a.effect.delayMin - b.effect.delayMin || heatGap(asked, a) - heatGap(asked, b);
}

/** Whether the dough is past its latest before anything is done. Not so in the cold, which slows it. */
function isLosing(way: WayOut): boolean {
  return way.kind !== 'chill' && way.effect.delayMin > 0 && (way.effect.overLatestMin ?? 0) > 0;
}

function rankOf(asked: Asked, way: WayOut): number {
  switch (way.kind) {
    case 'otherSource':
      return 0;
    case 'otherMixer':
      return 1;
    case 'otherSlot': {
      const gapC = heatGap(asked, way);
      return gapC <= NEAR_C ? 2 : gapC <= FAR_C ? 5 : 9;
    }
    case 'wait':
    case 'clean':
      return 3;
    case 'part':
      return 4;
    case 'chill':
      return 6;
    case 'leaveOut':
      return 7;
    case 'goOn':
      return 8;
  }
}

/** How far the deck that a way leads to is from the heat of the decks that the method wants. */
function heatGap(asked: Asked, way: WayOut): number {
  const { state } = asked;
  const kitchen = state.kitchen?.document;
  if (way.kind !== 'otherSlot' || way.effect.placeC === null || kitchen === undefined) return 0;
  const { placeC } = way.effect;
  const gaps = decksFor(kitchen, refusedStep(asked)).map((deck) => Math.abs((state.deckC[deck.id] ?? deck.temperatureC) - placeC));
  return gaps.length === 0 ? 0 : Math.min(...gaps);
}
