import type { WallLookChoice } from '../../wall/wall-look.ts';
import type { Gap } from '../../wall-setup/ring-geometry.ts';

/** What the wall's setup page says. */
export const SETUP = {
  title: 'Régler cet écran mural',
  lead: 'Gardé sur cet écran. Après cinq minutes sans toucher, il revient seul à l’affichage.',
  toWall: 'Retour à l’écran mural',
  pressing: 'Au fournil\u00a0:',

  screen: 'L’écran',
  diagonal: 'Diagonale',
  inch: 'pouces',
  barLead: 'Poser une règle sur la barre\u00a0: elle doit mesurer 100\u00a0mm. Trop courte\u00a0: −. Trop longue\u00a0: +.',
  barLess: 'diagonale plus petite, barre plus longue',
  barMore: 'diagonale plus grande, barre plus courte',

  reading: 'Lire de loin',
  metres: 'Tour le plus éloigné',
  metre: 'm',
  metresLess: 'plus près',
  metresMore: 'plus loin',
  textSize: 'Taille du texte',
  ordinary: '20\u00a0minutes d’arc\u00a0: l’ordinaire',
  tired: '26\u00a0minutes d’arc\u00a0: pour des yeux fatigués',
  own: 'une autre taille',
  ownSize: 'Minutes d’arc',
  arcmin: '′',
  ownLess: 'texte plus petit',
  ownMore: 'texte plus grand',
  samples: 'Voici la taille d’écriture de l’écran mural\u00a0:',
  sampleNear: 'Campagne · le voile tient',

  rings: 'Qui lit cet écran\u00a0?',
  ringsLead:
    'Des anneaux hauts comme les capitales de l’écran mural. Depuis le tour le plus éloigné, dire où pointe chaque ouverture. Qui les distingue de là lit l’écran.',
  ringsHow: 'Quelqu’un à l’écran touche ce qui est annoncé, ou se sert des flèches du clavier.',
  ringsAgain: 'Nouveaux anneaux',

  look: 'Clair ou sombre',
  nightFrom: 'Sombre de',
  nightTo: 'à',
  nightMore: 'À l’heure du fournil.',

  whatIsShown: 'Ce qu’il montre',
  station: 'Pâtes de',
  allStations: 'tous les postes',
  stationMore: 'L’écran d’un poste compte toujours ce qui est en retard ou se perd aux autres.',
  language: 'Langue',

  second: 'Un second écran sur cette machine',
  secondMore: 'Deux écrans d’une même machine gardent les mêmes réglages. Cette adresse les dit tous elle-même\u00a0:',
} as const;

/** The looks of a wall. */
export const WALL_LOOKS: Readonly<Record<WallLookChoice, string>> = {
  day: 'clair',
  night: 'sombre',
  browser: 'comme le navigateur le demande',
  hours: 'sombre la nuit, selon l’heure',
};

/** Where a ring's gap points. */
export const GAPS: Readonly<Record<Gap, string>> = { up: 'le haut', right: 'la droite', down: 'le bas', left: 'la gauche' };

/** What the bar is, for those who do not see it. */
export function barWords(inch: string): string {
  return `Une barre de 100\u00a0mm sur un écran de ${inch}\u00a0pouces`;
}

/** How many px make a millimetre, and why. */
export function densityWords(inch: string, widthPx: number, heightPx: number, pxPerMm: string, ratio: string): string {
  return `${inch}\u00a0pouces pour ${widthPx} × ${heightPx}\u00a0px font ${pxPerMm}\u00a0px par millimètre (rapport de pixels ${ratio}).`;
}

/** How high capitals are. */
export function sizeWords(millimetres: string, px: number): string {
  return `Capitales de ${millimetres}\u00a0mm, ${px}\u00a0px`;
}

/** From where a size is read. */
export function sampleWords(metres: string, arcmin: string): string {
  return `de ${metres}\u00a0m, ${arcmin}′`;
}

/** Which ring is asked for. */
export function ringWords(number: number, of: number): string {
  return `Anneau ${number} sur ${of}\u00a0: l’ouverture pointe vers`;
}

/** How it went, and what follows. */
export function scoreWords(right: number, of: number, passed: boolean): string {
  return passed
    ? `${right} sur ${of} justes\u00a0: qui se tenait là lit l’écran.`
    : `${right} sur ${of} justes\u00a0: pas assez. Prendre un texte plus grand, un écran plus grand, ou l’accrocher plus près.`;
}
