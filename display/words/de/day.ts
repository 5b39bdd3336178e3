import type { OrderForm } from '../../../shared/documents/order.ts';
import type { MovedStep } from '../../../shared/floor/events.ts';
import type { OrderField } from '../../../shared/plan/orders/order-columns.ts';
import type { LineFault } from '../../../shared/plan/orders/read-orders.ts';

/** Was die Seite eines Tages um ihre Teile herum sagt. */
export const DAY = {
  title: 'Der Tag',
  date: 'Datum',
  today: 'Heute',
  tomorrow: 'Morgen',
  dayBefore: 'Der Tag davor',
  dayAfter: 'Der Tag danach',
  sections: 'Teile des Tages',
  loading: 'Verbindung zur Backstube…',
  loadingBook: 'Das Rezeptbuch wird geholt…',
  emptyTitle: 'Noch keine Backstube',
  emptyMore: 'Ein Tag wird für eine Backstube geplant. Sie kommt mit der Betriebsdatei, mit der der Server gestartet wird.',
  failedTitle: 'Das Rezeptbuch ist nicht zu erreichen',
  failedMore: 'Ohne es weiß niemand, was sich bestellen lässt. Darunter steht der letzte Stand.',
  tryAgain: 'Erneut versuchen',
  noLinkMore: 'Zu sehen ist der letzte Stand. Bestellt und geplant wird erst wieder, wenn die Verbindung steht.',
  closed: 'Dieser Tag ist vorbei: dafür wird nichts mehr bestellt.',
  refused: 'Nicht geschehen:',
  forbidden: 'Dieses Gerät darf den Tag nicht planen.',
  unsent: 'Nicht geschehen: der Server war nicht zu erreichen. Noch einmal versuchen; nichts geschieht doppelt.',
  held: (ruleSet: string): string =>
    `Füllungen und Bereitgehaltenes sind geplant. Die Werte zum Warm- und Kalthalten und Abkühlen sind die von: ${ruleSet}. Örtliche Vorschriften und der Rat zugelassener Fachleute gehen vor. Der Plan kühlt nichts: messen.`,
} as const;

export const DAY_SECTIONS = {
  orders: 'Bestellungen',
  plan: 'Plan',
  stations: 'Nach Posten',
  try: 'Tag durchspielen',
} as const;

/** Spalten der Bestellungen: auf der Seite, und als Überschriften dessen, was eingefügt wird. */
export const ORDER_COLUMNS: Readonly<Record<OrderField, string>> = {
  product: 'Produkt',
  pieces: 'Stück',
  readyAt: 'Fertig bis',
  form: 'Kalt oder heiß',
  freshMin: 'Frisch',
  loadingMin: 'Verladen',
  label: 'Für wen',
  weight: 'Wichtigkeit',
  date: 'Datum',
};

export const ORDER_FORMS: Readonly<Record<OrderForm, string>> = { cooled: 'kalt', hot: 'heiß' };

/** Bestellungen des Tages, und eine davon, wie sie getippt wird. */
export const ORDERS = {
  none: 'Für diesen Tag ist nichts bestellt.',
  noneMore: 'Eine Bestellung tippen, welche aus einer Tabelle einfügen oder die Dauerbestellungen übernehmen.',
  table: 'Bestellungen des Tages',
  sum: (orders: number, pieces: number): string => `${orders === 1 ? '1 Bestellung' : `${orders} Bestellungen`}, ${pieces} Stück`,
  named: (pieces: number, product: string, clock: string): string => `${pieces} ${product}, ${clock}`,
  actions: 'Ändern oder zurückziehen',
  plan: 'Nach Plan',
  onTime: 'rechtzeitig',
  late: (min: number): string => `${min} min zu spät`,
  short: (pieces: number): string => `${pieces} zu wenig`,
  notPlanned: 'noch nicht geplant',
  fromStanding: 'Dauerbestellung',
  change: 'Ändern',
  changeOne: (order: string): string => `Bestellung ändern: ${order}`,
  withdraw: 'Zurückziehen',
  withdrawOne: (order: string): string => `Bestellung zurückziehen: ${order}`,
  withdrawn: (order: string): string => `Zurückgezogen: ${order}.`,
  putBack: 'Wieder aufnehmen',
  placed: (orders: number): string => (orders === 1 ? 'Eine Bestellung ist aufgenommen.' : `${orders} Bestellungen sind aufgenommen.`),
  changed: 'Geändert.',
  // Das Formular.
  add: 'Bestellung tippen',
  more: 'Mehr dazu',
  take: 'Bestellung aufnehmen',
  keep: 'Änderung behalten',
  cancel: 'Lassen',
  readyHint: 'nach den Uhren des Hauses: 6:30',
  freshHint: 'höchstens so lange aus dem Ofen',
  loadingHint: 'bevor sie gebraucht wird',
  labelHint: 'der Laden, der Marktstand; nie der Name eines Menschen',
  weightHint: '1 wie üblich; eine Minute Verspätung zählt so viele Male',
  needProduct: 'ein Produkt des Buches wählen',
  needClock: 'eine Uhrzeit, etwa 6:30',
} as const;

/** Bestellungen, die eingefügt oder aus einer Datei gelesen werden. */
export const READING = {
  title: 'Einfügen oder Datei lesen',
  more: 'Aus einer Tabelle kopiert, oder CSV mit Kommas oder Strichpunkten. Spalten in dieser Reihenfolge, oder mit diesen Überschriften in beliebiger:',
  box: 'Bestellungen, je Zeile eine',
  file: 'Datei wählen',
  tooLarge: (kibibytes: number): string => `Diese Datei ist zu groß: höchstens ${kibibytes} KiB.`,
  notReadable: 'Diese Datei ließ sich nicht lesen.',
  read: (orders: number): string => (orders === 1 ? '1 Bestellung ist gelesen.' : `${orders} Bestellungen sind gelesen.`),
  alsoDates: (dates: string): string => `Einige sind für andere Tage: ${dates}.`,
  unread: (headings: string): string => `Nicht gelesen, weil niemand es braucht: ${headings}.`,
  known: (orders: number): string =>
    orders === 1
      ? 'Eine davon steht schon genau so da: noch einmal aufgenommen, wird sie doppelt gemacht.'
      : `${orders} davon stehen schon genau so da: noch einmal aufgenommen, werden sie doppelt gemacht.`,
  faults: (lines: number): string =>
    lines === 1 ? 'Eine Zeile stimmt noch nicht. Sie bleibt hier:' : `${lines} Zeilen stimmen noch nicht. Sie bleiben hier:`,
  at: (line: number, column: number | null): string => (column === null ? `Zeile ${line}` : `Zeile ${line}, Spalte ${column}`),
  moreFaults: (faults: number): string => `und ${faults} weitere`,
  take: (orders: number): string => (orders === 1 ? '1 Bestellung aufnehmen' : `${orders} Bestellungen aufnehmen`),
  clear: 'Feld leeren',
} as const;

/** Ein Fehler in einem Text mit Bestellungen. `text` ist, was dort steht, `field` die Überschrift der Spalte. */
export function orderFaultWords(code: LineFault['code'], text: string, field: string, near: string | null): string {
  const said = text === '' ? '' : `„${text}“`;
  switch (code) {
    case 'quote':
      return 'die Anführungszeichen enden nicht mit der Zelle';
    case 'columnMissing':
      return `die Spalte „${field}“ fehlt`;
    case 'columnTwice':
      return `die Spalte „${field}“ steht zweimal da`;
    case 'extraCell':
      return `${said} steht hinter der letzten Spalte`;
    case 'missing':
      return `„${field}“ fehlt`;
    case 'productUnknown':
      return near === null ? `${said} ist kein Produkt des Buches` : `${said} ist kein Produkt des Buches; „${near}“?`;
    case 'productTwice':
      return `mehrere Produkte heißen ${said}: den Schlüssel schreiben`;
    case 'notPieces':
      return `${said} ist keine Stückzahl`;
    case 'notClockTime':
      return `${said} ist keine Uhrzeit, etwa 6:30`;
    case 'notForm':
      return `${said} ist weder kalt noch heiß`;
    case 'notMinutes':
      return `${said} ist keine Dauer, etwa 90 oder 1:30`;
    case 'notWeight':
      return `${said} liegt nicht zwischen 1 und 9`;
    case 'labelTooLong':
      return 'zu lang: höchstens 60 Zeichen';
    case 'notDate':
      return `${said} ist kein Datum, etwa 7.3.2026`;
    case 'dateOver':
      return `${said} ist vorbei`;
    case 'tooMany':
      return `ein Tag fasst höchstens ${text} Bestellungen`;
  }
}

/** Bestellungen, die jede Woche kommen. */
export const STANDING = {
  title: 'Dauerbestellungen',
  none: 'Noch keine Dauerbestellung.',
  more: 'Sie kommen jede Woche an ihren Tagen und werden von jemandem für ein Datum übernommen.',
  weekdays: 'Am',
  daily: 'täglich',
  add: 'Dauerbestellung hinzufügen',
  take: 'Dauerbestellung behalten',
  takeOver: (orders: number, date: string): string =>
    orders === 1 ? `1 Bestellung für ${date} übernehmen` : `${orders} Bestellungen für ${date} übernehmen`,
  allTaken: (date: string): string => `Alles Dauernde für ${date} ist übernommen.`,
  tooLate: (date: string): string => `Was für ${date} noch ansteht, dessen Zeit ist vorbei.`,
  noneOn: (date: string): string => `Für ${date} steht keine an.`,
  change: 'Ändern',
  changeOne: (order: string): string => `Dauerbestellung ändern: ${order}`,
  remove: 'Wegnehmen',
  removeOne: (order: string): string => `Dauerbestellung wegnehmen: ${order}`,
  needDays: 'mindestens einen Tag wählen',
  overtaken: 'Jemand anders hat die Dauerbestellungen inzwischen geändert: noch einmal ansehen.',
  kept: 'Die Dauerbestellungen sind gespeichert.',
} as const;

/** Ein Plan, der gesucht, verglichen, behalten wird. */
export const PLANNING = {
  plan: 'Den Tag planen',
  again: 'So planen',
  more: 'Aus diesen Bestellungen werden Teige, und wann jeder Schritt beginnt. Nichts ändert sich, bevor es behalten wird.',
  noOrders: 'Für diesen Tag ist nichts bestellt, also ist nichts zu planen.',
  running: 'Der Tag wird geplant',
  stop: 'Anhalten',
  progress: (done: string, all: string): string => `${done} von ${all} Wegen versucht`,
  bestSoFar: (onTime: number, orders: number): string => `bisher am besten: ${onTime} von ${orders} Bestellungen rechtzeitig`,
  nothingYet: 'noch kein Tag gefunden',
  failedTitle: 'Dieser Tag lässt sich nicht planen',
  // Verglichen.
  compare: 'Vorschläge im Vergleich',
  inForce: 'gilt',
  proposal: (letter: string): string => `Vorschlag ${letter}`,
  show: 'Zeigen',
  showOne: (name: string): string => `Auf dem Tagesblatt zeigen: ${name}`,
  keep: 'Behalten',
  keepOne: (name: string): string => `Behalten: ${name}`,
  drop: 'Verwerfen',
  dropOne: (name: string): string => `Verwerfen: ${name}`,
  outdated: 'Bestellungen oder Backstube haben sich geändert: neu planen.',
  asOrdered: 'wie bestellt',
  kept: 'Behalten. Die Backstube folgt diesem Plan.',
  unknown: '–',
  // Versuchsweise.
  tryTitle: 'Anders versuchen',
  tryMore: 'Im Vorschlag versucht; die Bestellung ändert sich erst, wenn er behalten wird.',
  order: 'Bestellung',
  laterMin: 'Minuten später',
  fewerTo: 'Stück',
  tryLater: 'Später fertig',
  tryFewer: 'Weniger Stück',
  tryLeaveOut: 'Weglassen',
  tryFirst: 'Vor allen anderen',
  changes: 'Zu versuchen',
  later: (order: string, min: number): string => `${order}: ${lengthWords(min)} später`,
  fewer: (order: string, pieces: number): string => `${order}: nur ${pieces} Stück`,
  leftOut: (order: string): string => `${order}: weggelassen`,
  first: (order: string): string => `${order}: vor allen anderen`,
  pinned: (step: string, clock: string): string => `${step}: um ${clock}`,
  takeBack: (change: string): string => `Doch nicht: ${change}`,
  // Warum er nicht aufgeht.
  whyTitle: 'Warum er nicht aufgeht',
  whyMore: 'Durch erneutes Planen gefunden; jeder Knopf plant den Tag mit dieser Änderung.',
  try: 'Versuchen',
  // Was der Plan von sich aus sagt.
  movedTitle: (clock: string): string => `Verschoben um ${clock}`,
  nothingMoved: 'Nichts hat sich verschoben.',
  notBegun: 'seine Zeit kam, und niemand hat ihn begonnen',
  goesWith: (step: string): string => `geht mit ${step}`,
  warningsTitle: 'Vorausgesehen',
  noWarnings: 'Weder Verspätung noch Verderb ist abzusehen.',
  offersTitle: 'Bessere Wege im Angebot',
  offer: (clock: string): string => `Gefunden um ${clock}`,
  offerGain: (before: string, after: string): string => `rechtzeitig: ${before} → ${after}`,
  offerLate: (before: number, after: number): string => `Verspätung zusammen: ${before} → ${after} min`,
  offerMoves: (steps: number): string => (steps === 1 ? '1 Schritt verschiebt sich' : `${steps} Schritte verschieben sich`),
  noPlan: 'Die Backstube folgt noch keinem Plan.',
  madeAt: (clock: string): string => `Der geltende Plan ist von ${clock}.`,
  replanning: 'Wird neu geplant…',
  replanFailed: 'Das letzte Umplanen ergab nichts:',
  statusFailed: 'Der Planer ist nicht zu erreichen.',
  movedMore: (steps: number): string => `und ${steps} weitere`,
} as const;

/** Zeilen des Vergleichs, nach den Namen der Werte. */
export const FIGURES = {
  ordersOnTime: 'Bestellungen rechtzeitig',
  latestMin: 'Späteste Bestellung',
  spoilMin: 'Wartet zu lange',
  pinsBroken: 'Festes nicht gehalten',
  ripenessMin: 'Neben der Reife',
  staleMin: 'Älter als gewünscht',
  beginsMs: 'Beginnt',
  endsMs: 'Endet',
  handsMin: 'Handarbeit',
  movedMin: 'Verschoben',
  batches: 'Teige',
  changes: 'Anders versucht',
} as const;

export function ofAllWords(some: number, all: number): string {
  return `${some} von ${all}`;
}

/** Eine Dauer, auf einen Blick zu lesen: „45 min“, „3 h 10“. */
export function lengthWords(min: number): string {
  const whole = Math.round(min);
  if (whole < 60) return `${whole} min`;
  const rest = whole % 60;
  return rest === 0 ? `${Math.floor(whole / 60)} h` : `${Math.floor(whole / 60)} h ${String(rest).padStart(2, '0')}`;
}

export function inWords(length: string): string {
  return `in ${length}`;
}

/** Ein Teig, bevor er seine Marke hat: das Rezept, und der wievielte. */
export function batchWords(formula: string, number: string): string {
  return `${formula} ${number}`;
}

/** Ein Schritt eines Teiges in einer Zeile: „C1 falten“. */
export function stepWords(tag: string, verb: string): string {
  return `${tag} ${verb}`;
}

/** Warnungen eines Plans. `step` ist Marke und Verb, `order` Stück, Produkt und Zeit. */
export const WARNINGS = {
  spoils: (step: string, clock: string, length: string): string => `${step}: ab ${clock} zu lange, um ${length}`,
  late: (order: string, clock: string, length: string): string => `${order}: fertig um ${clock}, ${length} zu spät`,
  short: (order: string, pieces: number): string => `${order}: ${pieces} Stück zu wenig`,
  pinBroken: (step: string, clock: string): string => `${step}: kann nicht wie festgesetzt beginnen; ${clock}`,
  firstBroken: (order: string): string => `${order}: kann nicht vor allen anderen kommen`,
} as const;

/** Warum sich ein Schritt verschoben hat. `thing` ist ein Gerät, ein Schritt, eine Bestellung, wo eines bekannt ist. */
export function movedWhyWords(what: NonNullable<MovedStep['because']>['what'], thing: string | null): string {
  switch (what) {
    case 'resource':
      return thing === null ? 'was er braucht, ist belegt' : `${thing} ist belegt`;
    case 'dough':
      return thing === null ? 'der eigene Teig' : `wartet auf ${thing}`;
    case 'order':
      return 'die Bestellung';
    case 'pin':
      return 'etwas Festgesetztes';
    case 'search':
      return 'ein besserer Weg fand sich';
  }
}

/** Was an einem geplanten Tag nicht stimmt. */
export const TROUBLES = {
  late: (order: string, length: string): string => `${order}: ${length} zu spät`,
  spoils: (step: string, length: string): string => `${step}: wartet ${length} zu lange`,
  pinBroken: (step: string, clock: string): string => `${step}: kann nicht wie festgesetzt beginnen; ${clock}`,
} as const;

/** Was ihn aufhält. `at` und `by` sind Schritte, `thing` ein Kneter, ein Herd, ein Posten. */
export const CAUSES = {
  busy: (at: string, thing: string, by: string, clock: string): string => `${at}: wartet bis ${clock}, denn ${thing} ist mit ${by} belegt.`,
  atWork: (at: string, station: string, by: string, clock: string): string =>
    `${at}: wartet bis ${clock}, denn ${station} hat mit ${by} zu tun.`,
  nobody: (at: string, station: string, clock: string): string => `${at}: wartet bis ${clock}, denn ${station} ist vorher nicht besetzt.`,
  closed: (at: string, thing: string, clock: string): string => `${at}: wartet bis ${clock}, denn ${thing} ist vorher nicht zu haben.`,
  tooShort: (at: string, clock: string): string => `Nur die Zeit fehlt: ${at} beginnt um ${clock}, und von da an dauert es zu lange.`,
  pinned: (at: string, clock: string): string => `${at} ist auf ${clock} festgesetzt.`,
  begun: (at: string): string => `${at} läuft schon und dauert, so lange es dauert.`,
} as const;

/** Änderungen, die versucht wurden, und was dabei herauskam. */
export const REMEDIES = {
  fits: '– dann geht es auf',
  /** Was daraus wurde, nach dem, was geändert wird. */
  inTime: '– dann rechtzeitig',
  lateStill: (length: string, before: string): string => `– dann ${length} zu spät statt ${before}`,
  inAll: (length: string, before: string): string => `alle Bestellungen zusammen ${length} zu spät statt ${before}`,
  noneSpoils: '– dann wartet nichts zu lange',
  spoilsStill: (length: string): string => `– dann zusammen noch ${length} zu lange`,
  asPinned: '– dann beginnt es wie festgesetzt',
  offPin: (length: string): string => `– dann ${length} neben der festgesetzten Zeit`,
  openEarlier: (station: string, length: string): string => `${station} ${length} früher besetzen`,
  openLonger: (station: string, length: string): string => `${station} ${length} länger besetzen`,
  allEarlier: (length: string): string => `Alle ${length} früher`,
  allLonger: (length: string): string => `Alle ${length} länger`,
  oneMoreHand: (station: string): string => `Ein Paar Hände mehr: ${station}`,
  oneMoreHandFor: (station: string, from: string, to: string): string => `Ein Paar Hände mehr: ${station}, ${from} bis ${to}`,
  moreVessels: (vessel: string, count: number): string => `${count} mehr: ${vessel}`,
  beginEarlier: (step: string, length: string, clock: string): string => `${step}: ${length} früher, um ${clock}`,
  beginLater: (step: string, length: string, clock: string): string => `${step}: ${length} später, um ${clock}`,
  inKitchen: 'Zeiten und Hände stehen unter Backstube',
  none: 'Nichts von dem, was versucht wurde, lässt ihn aufgehen.',
  also: 'Aus demselben Grund:',
} as const;

/** Warum sich ein Tag gar nicht planen lässt. `batch` ist, worum es geht, wo es um eines geht. */
export const PLAN_FAULTS = {
  documentMissing: (batch: string, missing: string): string => `${batch}: im Buch fehlt ${missing}`,
  noMixer: (batch: string, weight: string): string => `${batch}: kein Kneter nimmt ${weight}`,
  noDeck: (batch: string, needed: number, most: number): string =>
    `${batch}: braucht ${needed} Plätze auf einmal, kein Herd hat mehr als ${most}`,
  noDeckForPieces: (batch: string, pieces: number, most: number): string =>
    `${batch}: ${pieces} Stück gehen auf einmal in den Ofen, kein Herd nimmt mehr als ${most}`,
  tooMany: (batch: string, batches: number): string => `${batch}: ${batches} Teige sind mehr, als ein Tag haben kann`,
  tooFewVessels: (batch: string, needed: number, most: number): string =>
    `${batch}: braucht ${needed} Behälter auf einmal, es gibt ${most}`,
  tooFewHands: (batch: string, needed: number, most: number): string => `${batch}: braucht ${needed} Hände auf einmal, es gibt ${most}`,
  orderUnknown: 'Eine Bestellung, die anders versucht werden sollte, ist nicht mehr da.',
  noKitchen: 'Es gibt noch keine Backstube.',
  nothingPlanned: 'Es gibt keinen Plan, der sich durchspielen ließe.',
  givenUp: 'Es wurde aufgegeben, bevor es fertig war.',
  crashed: 'Der Planer ist ausgefallen. Es steht im Protokoll des Servers; noch einmal versuchen.',
} as const;
