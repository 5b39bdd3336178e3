import type { Formula, YeastForm } from '../../../shared/documents/formula.ts';

/** What the page around the forms says. */
export const FORMULAS = {
  title: 'Rezeptbuch',
  book: 'Buch',
  loading: 'Das Buch wird geholt…',
  loadingFormula: 'Das Rezept wird geholt…',
  noLinkMore:
    'Zu sehen ist der letzte Stand. Was geschrieben wird, bleibt auf diesem Gerät, bis es bei bestehender Verbindung gespeichert ist.',
  failedTitle: 'Das Buch ist nicht zu erreichen',
  failedMore: 'Der Server der Backstube antwortet nicht. Was hier geschrieben wurde, bleibt auf diesem Gerät.',
  tryAgain: 'Erneut versuchen',
  missingTitle: 'Dieses Rezept gibt es nicht',
  missingMore: 'Vielleicht steht es auf dem Server einer anderen Backstube, oder die Adresse ist abgeschnitten.',
  chooseTitle: 'Kein Rezept ist offen',
  chooseMore: 'Im Buch eines auswählen oder dort ein neues beginnen.',
  begun: 'Auf diesem Gerät begonnen, noch nicht gespeichert',
  tooManyBegun: 'Nicht geöffnet: auf diesem Gerät sind zu viele Rezepte begonnen. Erst einige speichern oder verwerfen.',
  emptyTitle: 'Noch keine Backstube',
  emptyMore: 'Rezepte werden für eine Backstube geschrieben. Sie kommt mit der Backstubendatei, mit der der Server gestartet wird.',
  untitled: { dough: 'Neuer Teig', prep: 'Neue Füllung, Auflage oder neues Quellstück', ferment: 'Neuer Sauerteig' } satisfies Record<
    Formula['kind'],
    string
  >,
  copyOf: (name: string): string => `${name}, Kopie`,
  version: (version: number): string => `Fassung ${version}`,
  notSavedYet: 'noch nicht gespeichert',
  sections: 'Teile des Rezepts',
  archived: 'Dieses Rezept ist weggelegt. Es lässt sich ändern, aber kein Tag wird damit geplant.',
  bringBack: 'Zurückholen',
  oldVersion: (version: number, newest: number): string => `Fassung ${version}. Es gilt Fassung ${newest}.`,
  toNewest: 'Die geltende öffnen',
  beginFromOld: (version: number): string => `Von Fassung ${version} aus ändern`,
  name: 'Name',
  letters: 'Buchstaben der Marken',
  lettersHint: 'ein großer und vielleicht ein kleiner: C, Ch',
  kind: 'Es ergibt',
  kinds: { dough: 'einen Teig', prep: 'eine Füllung, Auflage, ein Quellstück', ferment: 'einen lebenden Sauerteig' } satisfies Record<
    Formula['kind'],
    string
  >,
  doughC: 'Teigtemperatur',
  handlingLoss: 'Verlust beim Aufarbeiten',
  selfHeat: 'Erwärmt sich im Stück',
  seedKept: 'Bleibt als Anstellgut',
  note: 'Notiz',
  sidePreps: 'Daneben gemacht',
  takesBack: 'Nimmt zurück',
  addProduct: 'Gebäck hinzufügen',
  newProduct: 'Neues Gebäck',
  productsNone: 'Noch kein Gebäck aus diesem Rezept.',
  productsOfDough: 'Gebäcke werden aus Teigen gemacht. Was dieses Rezept ergibt, nehmen andere Rezepte.',
  refused: 'Nicht geschehen:',
  forbidden: 'Dieses Gerät darf das Buch nicht ändern.',
  planned: 'Steht auf der Tagesliste.',
  notPlanned: 'Nicht auf der Liste: Der Server war nicht zu erreichen.',
} as const;

export const SECTION_NAMES = {
  parts: 'Rezept',
  method: 'Ablauf',
  products: 'Gebäcke',
  size: 'Wie viel',
  versions: 'Fassungen',
} as const;

/** The tables of parts. */
export const PARTS = {
  part: 'Stufe',
  partName: (name: string): string => `Name der Stufe ${name}`,
  roles: { preferment: 'Vorteig', soaker: 'Quell- oder Brühstück', dough: 'Teig' },
  ingredient: 'Zutat',
  ofFlour: '% vom Mehl',
  gramsOf: (name: string, part: string): string => `Gewicht von ${name} in ${part}`,
  percentOf: (name: string, part: string): string => `Prozent von ${name} in ${part}`,
  total: 'Zusammen',
  totalOf: (part: string): string => `Gewicht von ${part} zusammen`,
  totalHint: 'Ein anderes Gewicht hier rechnet die Zeilen um, die Prozente bleiben.',
  take: (name: string): string => `${name} herausnehmen`,
  arrange: 'Ordnen',
  up: (name: string): string => `${name}: eine Zeile hinauf`,
  down: (name: string): string => `${name}: eine Zeile hinunter`,
  partUp: (name: string): string => `${name}: eine Stufe früher`,
  partDown: (name: string): string => `${name}: eine Stufe später`,
  removePart: (name: string): string => `Stufe ${name} herausnehmen`,
  addTo: (part: string): string => `Zu ${part} hinzufügen`,
  addHint: 'Zutat, Stufe oder Rezept',
  add: 'Dazu',
  make: (name: string): string => `Neue Zutat „${name}“…`,
  seed: 'Anstellgut aus dem Topf',
  build: (seed: string, flour: string, water: string): string => `Anstellgut : Mehl : Wasser = ${seed} : ${flour} : ${water}`,
  writeAs: 'schreiben als',
  same: (weight: string, form: string): string => `= ${weight} ${form}`,
  customaryYeast: 'nach üblichem Verhältnis (gängige Praxis); die Packung geht vor',
  unknown: (id: string): string => `${id} (nicht im Buch)`,
  fromPart: 'Stufe oben',
  ferment: 'Sauerteig',
  prep: 'daneben gemacht',
  before: 'Vorher ansetzen',
  beforeHint: 'Übliche Anfänge (gängige Praxis), zum Anpassen. Mehl und Wasser eines Vorteigs gehen vom Teig selbst ab.',
  levainHint: 'Ein Sauerteig ist ein Rezept für sich, damit mehrere Teige aus einem Topf nehmen können.',
  takeFerment: (name: string): string => `${name} nehmen`,
  newFerment: 'Neuen Sauerteig schreiben',
  ingredientNew: 'Eine neue Zutat',
  ingredientSave: 'Ins Buch legen',
  ingredientEdit: (name: string): string => `${name} ändern`,
  cancel: 'Lassen',
  notPercent: 'zwischen 0 und 100; andere Mehle nehmen den Rest',
} as const;

export const TEMPLATE_NAMES = {
  poolish: 'Poolish',
  biga: 'Biga',
  sponge: 'Vorteig',
  fermentedDough: 'Pâte fermentée',
  oldDough: 'Alter Teig',
  soaker: 'Quellstück',
  scald: 'Brühstück',
} as const;

export const YEAST_FORM_NAMES: Readonly<Record<YeastForm, string>> = { fresh: 'frisch', dry: 'trocken', instant: 'Instant' };

/** Figures of the whole formula. */
export const TOTALS = {
  title: 'Das ganze Rezept',
  hydration: 'Wasser',
  salt: 'Salz',
  yeast: 'Hefe',
  prefermented: 'Mehl im Vorteig',
  sum: 'Alles',
  doughYield: 'Teigausbeute',
  weight: 'Gewicht',
  flour: 'Mehl insgesamt',
  byIngredient: 'Nach Zutaten',
  ofAllFlour: '% vom ganzen Mehl',
  remarks: 'Noch einmal hinsehen',
  allergens: 'Allergene',
  cannot: 'Es lässt sich noch nicht zusammenrechnen.',
  noFlour: 'kein Mehl: keine Prozente',
  strip: 'Das Rezept auf einen Blick',
} as const;

/** The bar at the foot. */
export const SAVE = {
  changed: 'Hier geändert, noch nicht gespeichert',
  isNew: 'Neu, noch nicht gespeichert',
  save: 'Speichern',
  saveAs: (version: number): string => `Fassung ${version} speichern`,
  putBack: 'Wie vorher',
  discard: 'Verwerfen',
  saving: 'Wird gespeichert…',
  saved: (version: number): string => `Gespeichert als Fassung ${version}.`,
  unsent: 'Nicht gespeichert: Der Server war nicht zu erreichen. Es bleibt auf diesem Gerät.',
  faulty: (count: number): string =>
    count === 1 ? 'So noch nicht möglich. Eines ist zu richten:' : `So noch nicht möglich. ${count} Dinge sind zu richten:`,
  overtaken: 'Inzwischen hat jemand anders dieses Rezept gespeichert.',
  look: 'Beide ansehen',
  takeNewer: 'Das neue nehmen, mit meinen Änderungen',
  asTheirs: 'Das neue nehmen, wie es ist',
  fault: (thing: string, fault: string): string => `${thing}: ${fault}`,
  mine: 'Das eigene',
  theirs: 'Das andere',
} as const;

/** What a new formula begins with. */
export const STARTING_NAMES = { dough: 'Teig', ferment: 'Sauerteig', prep: 'Füllung' };
