import type { BookEntry } from '../../../shared/book/book-api.ts';
import type { Change, FormulaFact, ProductFact } from '../../../shared/book/formula-diff.ts';
import type { RecipeFault } from '../../../shared/book/recipe-documents.ts';
import type { Unread } from '../../../shared/book/recipe-import.ts';
import type { Ingredient } from '../../../shared/documents/formula.ts';
import type { Step } from '../../../shared/documents/method.ts';

/** Die Liste aller Rezepte. */
export const BOOK = {
  title: 'Rezepte',
  search: 'Im Rezeptbuch suchen',
  searchHint: 'Name, Kürzel, Zutat, Produkt',
  clear: 'Suche leeren',
  kinds: 'Anzeigen',
  allKinds: 'alle',
  kindsMany: { dough: 'Teige', prep: 'Vorarbeiten', ferment: 'Ansätze' } satisfies Record<BookEntry['kind'], string>,
  kind: { dough: 'Teig', prep: 'Vorarbeit', ferment: 'Ansatz' } satisfies Record<BookEntry['kind'], string>,
  newOf: { dough: 'Neuer Teig', prep: 'Neue Vorarbeit: Füllung, Auflage, Quellstück', ferment: 'Neuer Ansatz' } satisfies Record<
    BookEntry['kind'],
    string
  >,
  newOne: 'Neu:',
  inOut: 'Ein- und Ausgabe…',
  archived: 'Abgelegt',
  archivedCount: (count: number): string => `Abgelegt (${count})`,
  duplicate: 'Verdoppeln',
  archive: 'Ablegen',
  bringBack: 'Zurückholen',
  version: (version: number): string => `Fassung ${version}`,
  water: (pct: string): string => `${pct} % Wasser`,
  loading: 'Das Rezeptbuch wird geöffnet…',
  emptyTitle: 'Noch nichts im Rezeptbuch',
  emptyMore: 'Das erste Rezept schreiben oder ein Rezeptbuch aus einer Datei holen.',
  noneArchived: 'Nichts ist abgelegt.',
  noneOfKind: 'Davon gibt es noch keine.',
  noneFound: (text: string): string => `Nichts gefunden zu „${text}“.`,
  foundAway: (count: number): string => `${count} gefunden unter dem, was abgelegt ist`,
  foundInForce: (count: number): string => `${count} gefunden im Rezeptbuch`,
  count: (shown: number, of: number): string => (shown === of ? `${of} insgesamt` : `${shown} von ${of}`),
} as const;

/** Wie viel gemacht wird, und in wie vielen Teigen. */
export const SIZE = {
  title: 'Menge',
  by: 'Bestimmt durch',
  modes: { dough: 'Teigmenge', flour: 'Mehlmenge', pieces: 'Stückzahl' },
  doughWeight: 'Teig insgesamt',
  flourWeight: 'Mehl insgesamt',
  pieces: 'Stück',
  dough: 'Teigeinlage',
  baked: 'Gebacken, etwa',
  handling: (pct: string): string => `${pct} % Verarbeitungsverlust sind eingerechnet.`,
  bakeLoss: (pct: string): string => `${pct} % Backverlust`,
  mixer: 'Kneter',
  anyMixer: 'der erste, der es fasst',
  mixerLoad: (name: string, least: string, most: string): string => `${name}, ${least} bis ${most}`,
  none: 'Wie viel? Ein Gewicht oder eine Stückzahl angeben.',
  noFlour: 'In diesem Rezept ist kein Mehl. Die Menge nach dem eigenen Gewicht bestimmen.',
  tooMuch: 'Das sind mehr als hundert Teige oder ein Teig über zehn Tonnen.',
  belowLeast: (dough: string, mixer: string, least: string): string =>
    `${dough} sind weniger, als ${mixer} gut knetet: mindestens ${least}.`,
  betweenLoads: (mixer: string, from: string, to: string): string =>
    `Mit ${mixer} geht das nicht: bis ${from} reichen weniger Teige, ab ${to} reicht es für einen mehr.`,
  piecesUneven: (mixer: string): string =>
    `Ganze Stücke lassen sich nicht gleichmäßig auf Teige verteilen, die ${mixer} fasst. Eine Stückzahl ändern oder einen anderen Kneter nehmen.`,
  oneBatch: (dough: string): string => `Ein Teig von ${dough}`,
  batches: (count: number, each: string): string => `${count} Teige von je ${each}`,
  inMixer: (mixer: string): string => `in ${mixer}`,
  inAll: (dough: string): string => `${dough} insgesamt`,
  batchOf: (index: number, count: number): string => `Teig ${index} von ${count}`,
  showBatch: 'Teig anzeigen',
  print: 'Drucken',
  csv: 'CSV herunterladen',
  plan: 'Auf die Liste eines Tages',
  planDay: 'Für den Tag',
  planAt: 'Erster um',
  planBefore: 'am Vorabend',
  planEvery: 'Nächster nach',
  minutes: 'min',
  planDo: (count: number): string => (count === 1 ? 'Auf die Liste setzen' : `Alle ${count} auf die Liste setzen`),
  cutInto: 'Alles aufgeteilt in',
  planNoProduct: 'Ein Teig kommt mit dem auf die Liste, wozu er aufgeteilt wird: zuerst ein Produkt schreiben.',
  planUnsaved: 'Zuerst das Rezept speichern: die Liste nimmt es so, wie es im Rezeptbuch steht.',
  planNoDay: 'Angeben, für welchen Tag und wann.',
  /** So heißt eine Datei mit einem Wiegezettel, vor dem Schlüssel des Rezepts. */
  fileName: 'wiegezettel',
  notANumber: 'eine Zahl fehlt',
} as const;

/** Der gedruckte Wiegezettel. */
export const SHEET = {
  title: 'Wiegezettel',
  ingredient: 'Zutat',
  weight: 'Gewicht',
  percent: '% vom Mehl',
  lot: 'Chargennummer',
  done: 'Drin',
  part: { preferment: 'Vorteig', soaker: 'Quellstück', dough: 'Teig' },
  total: 'zusammen',
  seed: 'was zurückbehalten wurde',
  ofFormula: (name: string): string => `${name} (aus dem Ansatz oder der Vorarbeit)`,
  ofPart: (name: string): string => `${name}, von oben`,
  heldBack: (weight: string, verb: string): string => `davon ${weight} zurückhalten, für: ${verb}`,
  later: (weight: string, verb: string): string => `davon ${weight} später: ${verb}`,
  allLater: (verb: string): string => `nicht am Anfang: ${verb}`,
  onTop: 'Dazu, je Stück',
  onTopLine: (pieces: number, each: string, product: string, verb: string): string => `${pieces} × ${each}, ${product}: ${verb}`,
  cut: 'Aufteilung',
  cutLine: (pieces: number, product: string, each: string): string => `${pieces} × ${product}, je ${each} Teig`,
  version: (version: number): string => `Fassung ${version}`,
  unsaved: 'nicht gespeichert',
  date: 'Datum',
  tag: 'Kürzel',
  temperatures: { flour: 'Mehl', room: 'Raum', water: 'Wasser', dough: 'Teig' },
  wanted: (temperature: string): string => `Soll ${temperature}`,
  allergens: 'Allergene',
  /** Spaltenköpfe der Datei: eine Reihe je Zeile, Gewichte in Gramm. */
  columns: {
    formula: 'Rezept',
    version: 'Fassung',
    batch: 'Teig',
    part: 'Teil',
    ingredient: 'Zutat',
    grams: 'Gramm',
    division: 'Teilung der Waage in Gramm',
    percent: 'Prozent vom Mehl des Teils',
    note: 'Bemerkung',
    lot: 'Chargennummer',
  },
} as const;

/** Zwei Fassungen nebeneinander. */
export const VERSIONS = {
  title: 'Fassungen',
  left: 'Vorher',
  right: 'Nachher',
  versionAt: (version: number, when: string | null): string => `Fassung ${version}${when === null ? '' : `, ${when}`}`,
  newest: 'gültig',
  onlyChanges: 'Nur Unterschiede',
  same: 'Beide sagen dasselbe.',
  loading: 'Die Fassungen werden geholt…',
  formula: 'Rezept',
  method: 'Herstellung',
  product: (name: string): string => `Produkt ${name}`,
  what: 'Was',
  change: 'Unterschied',
  differs: (fields: string): string => `anders: ${fields}`,
  none: 'ohne',
  minutes: (minutes: string): string => `${minutes} min`,
  count: (count: number): string => (count === 1 ? '1 Unterschied' : `${count} Unterschiede`),
} as const;

/** Das Rezeptbuch als Datei, und Rezepte von anderswo. */
export const IN_OUT = {
  title: 'Ein- und Ausgabe',
  outTitle: 'Das ganze Rezeptbuch als Datei',
  outMore: 'Alle gültigen Rezepte, alle Produkte, alle Zutaten, als JSON.',
  download: 'Rezeptbuch herunterladen',
  inTitle: 'Aus einer Datei',
  inMore: 'Ein Rezeptbuch dieses Programms oder ein Rezept als JSON-LD mit dem offenen Vokabular von schema.org.',
  pick: 'Datei auswählen',
  pasteTitle: 'Oder eingefügt',
  paste: 'JSON oder eine ganze Seite, in der ein Rezept steht',
  read: 'Lesen',
  reading: 'Wird gelesen…',
  sending: 'Das Rezeptbuch wird übernommen…',
  tooLarge: (mebibytes: string): string => `Die Datei ist größer als ${mebibytes} MB.`,
  notReadable: 'Die Datei lässt sich nicht lesen.',
  bookTitle: 'Das ist ein Rezeptbuch',
  bookHolds: (formulas: number, products: number, ingredients: number): string =>
    `${formulas} Rezepte, ${products} Produkte, ${ingredients} Zutaten.`,
  bookNote: 'Was neu oder anders ist, wird die nächste Fassung. Was dieser Betrieb sonst hat, bleibt. Es kommt alles herein oder nichts.',
  bringIn: 'Übernehmen',
  done: 'Es ist im Rezeptbuch.',
  counts: (added: number, changed: number, same: number): string => `${added} neu, ${changed} geändert, ${same} wie zuvor.`,
  faulty: 'Nichts wurde übernommen. In der Datei zuerst berichtigen:',
  moreFaults: (count: number): string => `und ${count} weitere`,
  failed: 'Der Server hat nicht geantwortet. Nichts wurde übernommen; noch einmal versuchen, wenn die Verbindung wieder da ist.',
  refused: 'Der Server hat es nicht genommen:',
  recipeTitle: (name: string): string => `Rezept: ${name}`,
  whichRecipe: 'Welches davon',
  linesRead: (count: number, weight: string): string => `${count === 1 ? '1 Zeile' : `${count} Zeilen`} gelesen, zusammen ${weight}`,
  stepsRead: (count: number): string => (count === 1 ? '1 Schritt gelesen' : `${count} Schritte gelesen`),
  takes: (time: string): string => `Nach eigener Angabe dauert es insgesamt ${time}.`,
  productRead: (pieces: string): string => `Ein Produkt mit Stücken von ${pieces} kommt mit.`,
  newTitle: 'Neu im Rezeptbuch: nachsehen, ob die Arten stimmen',
  unreadTitle: 'Nicht gelesen: bleibt zu tun',
  allRead: 'Alles wurde gelesen.',
  caution:
    'Allergene werden aus einem Rezept nicht gelesen. Sie bei jeder Zutat so eintragen, wie sie dort gedruckt stehen, bevor jemand danach backt; örtliches Recht und der Rat zugelassener Fachleute gehen vor.',
  open: 'Als Entwurf öffnen',
  hours: (hours: number, minutes: number): string =>
    hours === 0 ? `${minutes} min` : minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`,
} as const;

/** Arten von Zutaten. */
export const KIND_NAMES: Readonly<Record<Ingredient['kind'], string>> = {
  flour: 'Mehl',
  water: 'Wasser',
  salt: 'Salz',
  yeast: 'Hefe',
  fat: 'Fett',
  sugar: 'Zucker',
  egg: 'Ei',
  dairy: 'Milch und Milchprodukte',
  seed: 'Saaten',
  other: 'anderes',
};

/** Was zwischen zwei Fassungen aus etwas geworden ist. */
export const CHANGES: Readonly<Record<Change, string>> = {
  same: 'gleich',
  changed: 'geändert',
  moved: 'verschoben',
  added: 'neu',
  removed: 'weg',
};

/** Warum etwas in einem Rezept nicht gelesen wurde. */
export const UNREAD_WHY: Readonly<Record<Unread['why'], string>> = {
  noWeight: 'kein Gewicht',
  range: 'ein Bereich, kein Gewicht',
  unclearNumber: 'die Zahl liest sich je nach Land anders',
  noName: 'ein Gewicht ohne Namen',
  noStep: 'darin ist kein Arbeitsschritt',
  noTime: 'keine Zeit; der Schritt ist da',
  noPieces: 'keine Stückzahl',
  noDuration: 'keine Dauer',
  cutShort: 'zu lang; der Schritt hat den Anfang',
  tooMany: 'mehr, als ein Rezept fasst',
};

export const RECIPE_FAULTS: Readonly<Record<RecipeFault['code'], string>> = {
  notJson: 'Darin ist kein lesbares JSON.',
  noRecipe: 'Darin ist weder ein Rezept noch ein Rezeptbuch dieses Programms.',
  noIngredients: 'Keine Zeile des Rezepts nennt ein Gewicht. Das Rezept von Hand schreiben.',
};

export const FORMULA_FACTS: Readonly<Record<FormulaFact, string>> = {
  name: 'Name',
  letters: 'Kürzel',
  kind: 'Art',
  doughC: 'Teigtemperatur',
  seedG: 'Zurückbehalten',
  handlingLossPct: 'Verarbeitungsverlust',
  selfHeatKPerH: 'Erwärmt sich im Stück',
  takesBack: 'Nimmt zurück',
  keeping: 'Muss gekühlt oder heiß bleiben',
  sidePreps: 'Vorarbeiten',
  note: 'Bemerkung',
};

export const PRODUCT_FACTS: Readonly<Record<ProductFact, string>> = {
  name: 'Name',
  pieceG: 'Teigeinlage',
  bakeLossPct: 'Backverlust',
  piecesPerSlot: 'Stück je Stellplatz',
  deckRoom: 'Stück je Stellplatz nach Herd',
  prefersSlots: 'Liebste Stellplätze',
  keepsMin: 'Hält',
  loads: 'Einschüsse',
  keeping: 'Muss gekühlt oder heiß bleiben',
  sidePreps: 'Vorarbeiten',
  caution: 'Vorsicht',
};

/** Felder eines Schritts, wie die Liste der Unterschiede sie nennt. */
export const STEP_FIELDS: Readonly<Record<Exclude<keyof Step, 'id'>, string>> = {
  verb: 'was getan wird',
  kind: 'Art des Schritts',
  station: 'Posten',
  minutes: 'Zeit',
  minutesPerPiece: 'Zeit je Stück',
  toleranceMin: 'Spielraum',
  beginsByItself: 'wie er beginnt',
  after: 'worauf er folgt',
  check: 'Prüfung',
  caution: 'Vorsicht',
  claims: 'was er braucht',
  place: 'Platz',
  additions: 'was hineinkommt',
  leaveOut: 'Auslassen',
  bake: 'Backen',
  coreC: 'Kerntemperatur',
  ripening: 'Reife',
  yieldPct: 'Ausbeute',
};
