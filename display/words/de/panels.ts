import type { Despite } from '../../../shared/floor/events.ts';
import type { Correction } from '../../../shared/floor/state.ts';

/** What the panels behind a dough's card say. */
export const PANELS = {
  more: 'Mehr…',
  moreTitle: (tag: string): string => `${tag}: mehr`,
  // Where it really is.
  where: 'Ist schon bei…',
  whereTitle: (tag: string): string => `${tag} ist schon bei…`,
  notSoFar: 'Noch nicht so weit: zurück auf…',
  sinceTitle: (tag: string, step: string): string => `${tag} ${step}: wie lange schon?`,
  since: (minutes: number): string => (minutes === 0 ? 'gerade eben' : `${minutes} min`),
  // Work under way.
  howFar: 'Wie weit…',
  howFarTitle: (tag: string, step: string): string => `${tag} ${step}: Stück fertig`,
  sayDone: (count: number, of: number): string => `${count} von ${of} fertig`,
  goOn: (count: number): string => (count === 1 ? 'Dieses 1 geht weiter' : `Diese ${count} gehen weiter`),
  goOnMore: 'als eigener Einschuss',
  onItToo: 'Bin auch dran',
  handOver: 'Übergeben…',
  handOverTitle: (tag: string): string => `${tag} übergeben an`,
  // Counting at the divide.
  count: 'Zählen…',
  countTitle: (tag: string): string => `${tag}: was es wirklich wurde`,
  countWeight: (needed: string, has: string): string => `braucht ${needed} von ${has}`,
  countDone: (tag: string, done: string): string => `${tag} ${done}, wie gezählt`,
  // What goes in.
  inputs: 'Was hineinkommt…',
  inputsTitle: (tag: string): string => `Was in ${tag} kommt`,
  heldBack: (weight: string): string => `Zurückbehaltenes Wasser, ${weight}: wie viel kam hinein?`,
  heldShares: [
    { share: 1, text: 'alles' },
    { share: 0.75, text: '¾' },
    { share: 0.5, text: '½' },
    { share: 0.25, text: '¼' },
    { share: 0, text: 'nichts' },
  ],
  noSource: 'davon steht nichts da',
  inputsDone: (tag: string, done: string): string => `${tag} ${done}, wie hier`,
  takes: 'Braucht',
  extra: 'Mehr entnehmen…',
  extraTitle: (tag: string): string => `Mehr in ${tag}, über das Rezept hinaus`,
  extraDo: (weight: string, from: string): string => `${weight} aus ${from}`,
  // Pots.
  pot: 'Im Ansatz',
  seedKept: (weight: string): string => `${weight} bleiben als Anstellgut`,
  ripe: (from: string, to: string): string => `reif ${from}–${to}`,
  feedPlanned: (clock: string, weight: string): string => `wieder auffrischen ${clock}, auf ${weight}`,
  feed: 'Mengen…',
  feedTitle: (tag: string): string => `${tag}: was in den Ansatz kommt`,
  feedSeed: 'Anstellgut im Ansatz',
  feedFlour: 'Mehl',
  feedWater: 'Wasser',
  feedMakes: (weight: string): string => `ergibt ${weight}`,
  feedDone: (tag: string): string => `${tag} AUFGEFRISCHT, wie hier`,
  planFeed: 'Auffrischen planen…',
  planFeedTitle: (tag: string): string => `Wann ${tag} auffrischen?`,
  planFeedUpTo: 'Auf',
  today: 'heute',
  tonight: 'heute Abend',
  tomorrow: 'morgen',
  // Corrections.
  putRight: 'Berichtigen…',
  putRightTitle: (tag: string): string => `${tag}: was gesagt wurde`,
  times: 'Zeiten',
  began: (step: string): string => `${step} begonnen`,
  ended: (step: string): string => `${step} fertig`,
  pieces: 'Stück',
  tag: 'Kürzel',
  setCount: (count: number): string => `Es sind ${count}`,
  setTag: (tag: string): string => `Es ist ${tag}`,
  countReasons: ['Verzählt', 'Ausschuss', 'Runtergefallen', 'Entnommen'],
  history: 'Bisher',
  notTapped: 'nicht getippt',
  skipped: 'ausgelassen',
  corrections: 'Schon berichtigt',
  noHistory: 'Noch nichts.',
  // Elsewhere, loads, tubs.
  move: 'Umstellen…',
  moveTitle: (tag: string): string => `Wo steht ${tag} jetzt?`,
  loads: 'Einschüsse…',
  loadsTitle: (tag: string): string => `${tag} geht weiter in Einschüssen zu`,
  join: 'In eine Wanne…',
  joinTitle: (tag: string): string => `In einer Wanne mit ${tag}`,
  joinDo: (tags: string): string => `${tags} zusammen`,
  // Less and gone.
  putBack: 'Teig zurückgeben…',
  putBackTitle: 'Was in welchen Teig zurückgeht',
  putBackPair: (from: string, to: string): string => `${from} in ${to}`,
  putBackDo: (weight: string): string => `${weight} zurückgeben`,
  loss: 'Verlust angeben…',
  lossTitle: (tag: string): string => `Was von ${tag} weg ist`,
  lossDo: (weight: string): string => `${weight} weg`,
  weight: 'Gewicht',
  decideHolding: 'Über der Frist: entscheiden…',
  discard: 'Wegwerfen…',
  discardTitle: (tag: string): string => `${tag} wegwerfen: warum?`,
  discardReasons: ['Übergare', 'Verbrannt', 'Runtergefallen', 'Über der Frist'],
  discardDo: (tag: string): string => `${tag} ganz wegwerfen`,
  discardMore: 'Steht dann nicht mehr auf den Listen; der Grund bleibt in den Aufzeichnungen.',
  // The way is blocked.
  inTheWay: 'Im Weg',
  // The end of the day.
  dayEnd: 'Tagesende…',
  dayEndTitle: (day: string): string => `${day} beenden`,
  dayEndNone: 'Es ist nichts mehr in Arbeit.',
  dayEndCarries: 'Geht in den nächsten Tag über',
  dayEndDo: (day: string): string => `${day} jetzt beenden`,
  dayEndMore: 'Das lässt sich nicht zurücknehmen. Was in Arbeit ist, bleibt stehen, mit seinem Wochentag.',
  noDay: 'Es ist kein Tag offen.',
  // The stepper.
  less: (label: string, by: number): string => `${label}: ${by} weniger`,
  moreBy: (label: string, by: number): string => `${label}: ${by} mehr`,
} as const;

export const DESPITE: Readonly<Record<Despite, string>> = {
  changeOver: 'Kneter dazwischen nicht gereinigt',
  lastOfFerment: 'letzter Rest vom Ansatz',
  vesselsShort: 'zu wenig Behälter',
  withoutSource: 'ohne Ansatz entnommen',
  notCooled: 'vor der Zeit für das Abkühlen genommen',
  wildReading: 'Messwert weit vom Erwarteten',
};

export const CORRECTED: Readonly<Record<Correction['what'], string>> = {
  start: 'begonnen',
  end: 'fertig',
  count: 'Stück',
  tag: 'Kürzel',
  where: 'wo es ist',
};

/** How a step is told from the others of its verb: "falten 2". */
export function nthWords(verb: string, nth: number | null): string {
  return nth === null ? verb : `${verb} ${nth}`;
}

export function shortWords(pieces: number): string {
  return pieces === 1 ? '1 fehlt' : `${pieces} fehlen`;
}

export function joinsWords(tag: string, clock: string | null): string {
  return clock === null ? `kommt in ${tag}` : `kommt in ${tag} ${clock}`;
}

export function notBeforeWords(clock: string): string {
  return `nicht vor ${clock}`;
}

/** "1 500 g Levain aus L1, bereit seit 04:20". */
export function takeWords(weight: string, name: string, from: string | null, ripe: string | null): string {
  const what = `${weight} ${name}`;
  if (from === null) return `${what}: ${PANELS.noSource}`;
  return `${what} aus ${from}${ripe === null ? ', noch nicht bereit' : `, ${ripe}`}`;
}

export function ripeSinceWords(clock: string, isSince: boolean): string {
  return isSince ? `bereit seit ${clock}` : `bereit ${clock}`;
}
