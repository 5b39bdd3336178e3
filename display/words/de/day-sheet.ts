import type { Standing } from '../../day/sheet-bar.ts';

/** What the day sheet says. */
export const SHEET_WORDS = {
  title: 'Der Tag auf einer Zeitachse',
  grouping: 'In Zeilen',
  byDough: 'Nach Teig',
  byResource: 'Nach Maschine und Händen',
  zoom: 'Ausschnitt',
  zooms: { fit: 'Ganzer Tag', fourHours: '4 Stunden', hour: '1 Stunde' },
  toNow: 'Zu JETZT',
  now: 'JETZT',
  orders: 'Bestellungen',
  legend: 'Was die Formen bedeuten',
  emptyTitle: 'An diesem Tag ist noch nichts',
  emptyMore: 'Bestellungen, Teige und Geplantes stehen hier.',
  noPlan: 'Es gilt kein Plan: Was kommt, ist aus den Zielzeiten der Verfahren gerechnet.',
  tried: 'Dieser Tag ist nur probiert. Noch ist nichts davon übernommen.',
  keysHint: 'Pfeiltasten gehen von Schritt zu Schritt und von Zeile zu Zeile. Eingabe öffnet einen Schritt.',
  clashesTitle: 'Was nicht zusammengeht',
  close: 'Schließen',
  bench: 'Tisch',
  standings: { done: 'fertig', begun: 'läuft', planned: 'geplant', proposed: 'vorgeschlagen' } satisfies Record<Standing, string>,
  legends: {
    hands: 'Handarbeit',
    judged: 'endet mit Prüfung',
    rest: 'ruht',
    bake: 'im Ofen',
    slack: 'darf bis hier warten',
    was: 'stand vorher hier',
    pin: 'festgelegt',
    closed: 'niemand da, außer Betrieb',
    clash: 'Konflikt',
    order: 'Bestellung fällig',
    late: 'Bestellung zu spät',
  },
  with: 'Womit',
  check: 'Prüfen',
  caution: 'Achtung',
  mayWait: 'Darf warten',
  mayWaitOpen: 'beliebig: das Verfahren setzt kein Ende',
  noMore: 'gar nicht',
  moved: 'Verschoben',
  pieces: 'Stück',
  pinTitle: 'Wann es beginnt',
  startsAt: 'Beginn um',
  fix: 'Festlegen',
  letMove: 'Wieder freigeben',
  notAClock: 'Hier gehört eine Uhrzeit hin, etwa 04:30.',
  isBegun: 'Es hat begonnen und bleibt, wo es ist.',
  isDone: 'Es ist fertig.',
  restFollows: 'Eine Ruhe folgt dem Schritt davor. Legen Sie den Schritt fest, der sie beendet.',
  firstTitle: 'Bestellungen aus diesem Teig',
  first: 'Diese Bestellung zuerst',
  isFirst: 'kommt vor allen anderen',
  noOrders: 'Keine Bestellung verlangt danach.',
  inTime: 'nach Plan rechtzeitig',
  nobodyThere: 'niemand da',
  outOfUse: 'außer Betrieb',
  rooms: {
    mixer: () => 'ein Teig zur Zeit',
    station: (hands: number) => (hands === 1 ? '1 Paar Hände' : `${hands} Paar Hände`),
    deck: (slots: number) => (slots === 1 ? '1 Platz' : `${slots} Plätze`),
    bench: (room: number) => (room === 1 ? 'Raum für 1 Teig' : `Raum für ${room} Teige`),
    restPlace: (room: number | null) => (room === null ? 'zum Ruhen' : `zum Ruhen, ${room} Plätze`),
  },
} as const;

/** "10 Stück". */
export function piecesWords(pieces: number): string {
  return `${pieces} Stück`;
}

/** A stretch of time with its length: "04:10–04:40, 30 min". */
export function stretchWords(from: string, to: string, length: string): string {
  return `${from}–${to}, ${length}`;
}

/** "bis 04:40, noch 30 min". */
export function tillWords(clock: string, length: string): string {
  return `bis ${clock}, noch ${length}`;
}

/** "war 04:10, jetzt 25 min später". */
export function movedWords(from: string, length: string, isLater: boolean): string {
  return `war ${from}, jetzt ${length} ${isLater ? 'später' : 'früher'}`;
}

/** "festgelegt auf 04:30". */
export function fixedWords(clock: string): string {
  return `festgelegt auf ${clock}`;
}

/** More is wanted of a thing than there is. */
export function busyWords(name: string, wanted: number, room: number, stretch: string, tags: string): string {
  return `${name}: ${wanted} gebraucht, ${room} da, ${stretch} (${tags})`;
}

/** Who works at a place that is called the same. */
export function handsAtWords(station: string): string {
  return `${station}, Hände`;
}

/** Nobody is there, or it is out of use, and work is planned all the same. */
export function awayWords(name: string, why: string, stretch: string, tags: readonly string[]): string {
  return `${name}: ${why} ${stretch}, doch ${tags.join(', ')} ${tags.length > 1 ? 'sind' : 'ist'} dann geplant`;
}

/** A dough waits longer than it bears. */
export function waitsWords(tag: string, verb: string, length: string): string {
  return `${tag} ${verb}: beginnt ${length} später, als der Teig verträgt`;
}

/** A step is not where it was fixed. */
export function pinMissedWords(tag: string, verb: string, fixed: string, stands: string): string {
  return `${tag} ${verb}: festgelegt auf ${fixed}, steht aber auf ${stands}`;
}

/** Short, beside the sign in a row. */
export function clashAtWords(clock: string): string {
  return `Konflikt ${clock}`;
}

/** "3 Bestellungen, 1 zu spät". */
export function ordersAtWords(count: number, late: number): string {
  const orders = count === 1 ? '1 Bestellung' : `${count} Bestellungen`;
  return late === 0 ? orders : `${orders}, ${late} zu spät`;
}

/** "12 × Landbrot". */
export function orderWords(pieces: number, name: string): string {
  return `${pieces} × ${name}`;
}

export function lateByWords(length: string): string {
  return `${length} zu spät`;
}

export function shortOfWords(pieces: number): string {
  return `${pieces} Stück zu wenig`;
}

/** "1 h 20 min". */
export function lengthWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  return whole % 60 === 0 ? `${whole / 60} h` : `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')}`;
}

/** A row's heading, for a screen reader: what it is and how much is in it. */
export function rowWords(head: string, count: number): string {
  return `${head}, ${count === 1 ? '1 Schritt' : `${count} Schritte`}`;
}

/** One station's hands, on the screen and on paper. */
export const STATION_LIST = {
  title: 'Nach Posten',
  choose: 'Posten',
  all: 'Alle Posten',
  print: 'Diese Liste drucken',
  printAll: 'Alle drucken, ein Posten je Seite',
  calendar: 'Für die Kalender der Leute (iCalendar)',
  clock: 'Uhr',
  tag: 'Marke',
  what: 'Schritt',
  pieces: 'Stück',
  length: 'Dauer',
  check: 'Worauf achten',
  none: 'Hier werden an diesem Tag keine Hände gebraucht.',
  asOf: (clock: string): string => `Stand ${clock}`,
  fixed: 'festgelegt',
} as const;

/** Playing the day many times. */
export const TRY = {
  title: 'Den Tag durchspielen',
  lead: 'Spielt diesen Tag viele Male durch, jedes Mal mit Teigen, Händen und Öfen etwas schneller oder langsamer, um zu sehen, welche Bestellungen halten.',
  start: 'Diesen Tag durchspielen',
  again: 'Noch einmal durchspielen',
  running: (done: number, of: number): string => `${done} von ${of} Tagen gespielt`,
  runs: (runs: number): string => `${runs} Mal gespielt.`,
  orders: 'Wie oft jede Bestellung zu spät ist',
  order: 'Bestellung',
  wanted: 'Fällig',
  late: 'Zu spät',
  typical: 'Hälfte der späten Tage',
  nineInTen: 'Neun von zehn Tagen',
  lateOf: (percent: string, times: number, runs: number): string => `${percent} %, ${times} von ${runs}`,
  never: 'nie',
  inTime: 'rechtzeitig',
  upTo: (length: string): string => `bis ${length}`,
  holds: 'Was den Tag aufhält',
  holdsMore: 'Anteil an aller Verspätung, der vom Warten darauf kam.',
  holdsNothing: 'Keine Bestellung war zu spät, weil Maschine, Hände oder Raum fehlten.',
  share: (percent: string): string => `${percent} %`,
  doughItself: 'die Teige selbst',
  spoils: (percent: string): string => `An ${percent} % der Tage wartete ein Teig länger, als er verträgt.`,
  spoilsNever: 'An keinem Tag wartete ein Teig länger, als er verträgt.',
  assumed: 'Was angenommen wurde',
  spread: (kind: string, percent: string): string => `${kind}: in der Regel ${percent} % schneller oder langsamer`,
  kinds: { hands: 'Handarbeit', judged: 'Schritte, die mit einer Prüfung enden', rest: 'Ruhezeiten', bake: 'Backzeiten' },
  learned: (steps: number): string => `aus ${steps} Schritten dieses Hauses gelernt`,
  average: (percent: string): string => `im Mittel ${percent} % der geplanten Länge`,
  customary: 'üblich, hier noch nicht gelernt',
  failed: 'Er ließ sich nicht durchspielen:',
  noOrders: 'Dieser Tag hat keine Bestellungen, die zu spät sein könnten.',
  caution:
    'Es ist so gut wie seine Annahmen. Es sagt nichts von dem, was niemand vorhersieht: eine Maschine, die ausfällt, jemand, der krank wird.',
} as const;
