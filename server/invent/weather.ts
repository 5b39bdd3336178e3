import type { Chance } from './chance.ts';
import { yearShare } from './calendar.ts';

/** How warm it is in and around the house on one day, in °C. */
export interface Weather {
  readonly roomC: number;
  readonly flourC: number;
  readonly tapC: number;
  readonly levainC: number;
  readonly shelfC: number;
  readonly coldC: number;
}

/** Warm in late July, cold in late January, and every day a little otherwise. A bakehouse is never as cold as the street. */
export function weatherOn(date: string, chance: Chance): Weather {
  const summer = 0.5 - 0.5 * Math.cos(2 * Math.PI * (yearShare(date) - 0.07));
  const roomC = chance.near(19.5 + 8 * summer, 1);
  return {
    roomC: toTenth(roomC),
    flourC: toTenth(roomC - chance.between(0.2, 1.5)),
    tapC: toTenth(chance.near(8.5 + 10 * summer, 0.5)),
    levainC: toTenth(chance.near(25.5 + summer, 0.6)),
    shelfC: toTenth(chance.near(27.4 + 1.5 * summer, 0.5)),
    coldC: toTenth(chance.near(3.6 + 0.8 * summer, 0.4)),
  };
}

export function toTenth(value: number): number {
  return Math.round(value * 10) / 10;
}
