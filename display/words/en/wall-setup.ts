import type { WallLookChoice } from '../../wall/wall-look.ts';
import type { Gap } from '../../wall-setup/ring-geometry.ts';

/** What the wall's setup page says. */
export const SETUP = {
  title: 'Set up this wall',
  lead: 'Kept on this screen. It goes back to the wall by itself after five minutes without a touch.',
  toWall: 'Back to the wall',
  pressing: 'On the floor:',

  screen: 'The screen',
  diagonal: 'Diagonal',
  inch: 'inch',
  barLead: 'Hold a ruler to the bar: it must measure 100 mm. Too short: −. Too long: +.',
  barLess: 'smaller diagonal, longer bar',
  barMore: 'larger diagonal, shorter bar',

  reading: 'Reading from afar',
  metres: 'Farthest bench',
  metre: 'm',
  metresLess: 'nearer',
  metresMore: 'farther',
  textSize: 'Size of the text',
  ordinary: '20 minutes of arc: the usual',
  tired: '26 minutes of arc: for tired eyes',
  own: 'another size',
  ownSize: 'Minutes of arc',
  arcmin: '′',
  ownLess: 'smaller text',
  ownMore: 'larger text',
  samples: 'This is how large the wall writes:',
  sampleNear: 'Country · passes the window',

  rings: 'Who reads this wall?',
  ringsLead:
    'Rings as high as the wall’s capitals. Stand at the farthest bench and say where each gap points. Who can tell these gaps from there reads the wall.',
  ringsHow: 'Somebody at the screen taps what is called out, or uses the arrow keys.',
  ringsAgain: 'New rings',

  look: 'Light or dark',
  nightFrom: 'Dark from',
  nightTo: 'until',
  nightMore: 'By the house’s clock.',

  whatIsShown: 'What it shows',
  station: 'Doughs of',
  allStations: 'all stations',
  stationMore: 'A wall of one station still counts what is late or being lost at the others.',
  language: 'Language',

  second: 'A second wall on this machine',
  secondMore: 'Two screens of one machine keep the same settings. This address says them all by itself:',
} as const;

/** The looks of a wall. */
export const WALL_LOOKS: Readonly<Record<WallLookChoice, string>> = {
  day: 'light',
  night: 'dark',
  browser: 'as the browser asks',
  hours: 'dark at night, by the clock',
};

/** Where a ring's gap points. */
export const GAPS: Readonly<Record<Gap, string>> = { up: 'up', right: 'right', down: 'down', left: 'left' };

/** What the bar is, for those who do not see it. */
export function barWords(inch: string): string {
  return `A bar of 100 mm on a screen of ${inch} inch`;
}

/** How many px make a millimetre, and why. */
export function densityWords(inch: string, widthPx: number, heightPx: number, pxPerMm: string, ratio: string): string {
  return `${inch} inch across ${widthPx} × ${heightPx} px make ${pxPerMm} px a millimetre (pixel ratio ${ratio}).`;
}

/** How high capitals are. */
export function sizeWords(millimetres: string, px: number): string {
  return `Capitals ${millimetres} mm high, ${px} px`;
}

/** From where a size is read. */
export function sampleWords(metres: string, arcmin: string): string {
  return `from ${metres} m, ${arcmin}′`;
}

/** Which ring is asked for. */
export function ringWords(number: number, of: number): string {
  return `Ring ${number} of ${of}: the gap points`;
}

/** How it went, and what follows. */
export function scoreWords(right: number, of: number, passed: boolean): string {
  return passed
    ? `${right} of ${of} right: whoever stood there reads the wall.`
    : `${right} of ${of} right: not enough. Take larger text, a larger screen, or hang it nearer.`;
}
