import type { WallLookChoice } from '../../wall/wall-look.ts';
import type { Gap } from '../../wall-setup/ring-geometry.ts';

/** What the wall's setup page says. */
export const SETUP = {
  title: 'Diese Wand einrichten',
  lead: 'Gilt für diesen Bildschirm. Nach fünf Minuten ohne Berührung geht es von selbst zurück zur Wand.',
  toWall: 'Zurück zur Wand',
  pressing: 'In der Backstube:',

  screen: 'Der Bildschirm',
  diagonal: 'Diagonale',
  inch: 'Zoll',
  barLead: 'Ein Lineal an den Balken halten: er muss 100 mm lang sein. Zu kurz: −. Zu lang: +.',
  barLess: 'kleinere Diagonale, längerer Balken',
  barMore: 'größere Diagonale, kürzerer Balken',

  reading: 'Lesen von weitem',
  metres: 'Entferntester Tisch',
  metre: 'm',
  metresLess: 'näher',
  metresMore: 'weiter weg',
  textSize: 'Größe der Schrift',
  ordinary: '20 Bogenminuten: das Übliche',
  tired: '26 Bogenminuten: für müde Augen',
  own: 'eine andere Größe',
  ownSize: 'Bogenminuten',
  arcmin: '′',
  ownLess: 'kleinere Schrift',
  ownMore: 'größere Schrift',
  samples: 'So groß schreibt die Wand:',
  sampleNear: 'Landbrot · Fensterprobe hält',

  rings: 'Wer liest diese Wand?',
  ringsLead:
    'Ringe, so hoch wie die Großbuchstaben der Wand. Vom entferntesten Tisch aus sagen, wohin jede Lücke zeigt. Wer diese Lücken von dort erkennt, liest die Wand.',
  ringsHow: 'Jemand am Bildschirm tippt, was gerufen wird, oder nimmt die Pfeiltasten.',
  ringsAgain: 'Neue Ringe',

  look: 'Hell oder dunkel',
  nightFrom: 'Dunkel von',
  nightTo: 'bis',
  nightMore: 'Nach der Uhr der Backstube.',

  whatIsShown: 'Was sie zeigt',
  station: 'Teige von',
  allStations: 'allen Posten',
  stationMore: 'Die Wand eines Postens zählt weiter, was an den anderen verspätet ist oder verloren geht.',
  language: 'Sprache',

  second: 'Eine zweite Wand an diesem Rechner',
  secondMore: 'Zwei Bildschirme eines Rechners teilen sich die Einstellungen. Diese Adresse nennt alle selbst:',
} as const;

/** The looks of a wall. */
export const WALL_LOOKS: Readonly<Record<WallLookChoice, string>> = {
  day: 'hell',
  night: 'dunkel',
  browser: 'wie der Browser es will',
  hours: 'nachts dunkel, nach der Uhr',
};

/** Where a ring's gap points. */
export const GAPS: Readonly<Record<Gap, string>> = { up: 'oben', right: 'rechts', down: 'unten', left: 'links' };

/** What the bar is, for those who do not see it. */
export function barWords(inch: string): string {
  return `Ein Balken von 100 mm auf einem Bildschirm von ${inch} Zoll`;
}

/** How many px make a millimetre, and why. */
export function densityWords(inch: string, widthPx: number, heightPx: number, pxPerMm: string, ratio: string): string {
  return `${inch} Zoll mit ${widthPx} × ${heightPx} px sind ${pxPerMm} px je Millimeter (Pixelverhältnis ${ratio}).`;
}

/** How high capitals are. */
export function sizeWords(millimetres: string, px: number): string {
  return `Großbuchstaben ${millimetres} mm hoch, ${px} px`;
}

/** From where a size is read. */
export function sampleWords(metres: string, arcmin: string): string {
  return `aus ${metres} m, ${arcmin}′`;
}

/** Which ring is asked for. */
export function ringWords(number: number, of: number): string {
  return `Ring ${number} von ${of}: die Lücke zeigt nach`;
}

/** How it went, and what follows. */
export function scoreWords(right: number, of: number, passed: boolean): string {
  return passed
    ? `${right} von ${of} richtig: wer dort stand, liest die Wand.`
    : `${right} von ${of} richtig: das reicht nicht. Größere Schrift, größerer Bildschirm, oder näher aufhängen.`;
}
