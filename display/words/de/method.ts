import type { Claim, Step, Verb } from '../../../shared/documents/method.ts';
import type { VerbGroup } from '../en/method.ts';
import { decimalComma } from '../decimal-comma.ts';

/** What the editor of a method says. */
export const METHOD = {
  title: 'Arbeitsschritte',
  empty: 'Noch kein Schritt. Unten den ersten anfügen, oder gleich eine Folge.',
  steps: (count: number): string => (count === 1 ? '1 Schritt' : `${count} Schritte`),
  hands: (length: string): string => `Handarbeit ${length}`,
  lengthOf: (length: string): string => `${length} im Ganzen`,
  perPiece: 'dazu etwas für jedes Stück',
  stepNumber: (number: number): string => `Schritt ${number}`,
  faulty: 'in diesem Schritt stimmt etwas nicht',
  earlier: 'Früher',
  later: 'Später',
  duplicate: 'Verdoppeln',
  remove: 'Schritt entfernen',
  addAfter: 'Danach anfügen',
  key: (key: string): string => `Schlüssel des Schritts: ${key}`,
  add: 'Anfügen',
  addTitle: 'Schritte anfügen',
  what: 'Was getan wird',
  where: 'Wo in der Reihenfolge',
  first: 'am Anfang',
  after: (number: number, verb: string): string => `nach ${number}, ${verb}`,
  addStep: 'Schritt anfügen',
  runs: 'Eine Folge auf einmal',
  runNote:
    'Zeiten, Kontrollen und Hinweise angefügter Schritte sind übliche Praxis, um damit anzufangen. An Mehl, Kneter und Raum anpassen; der Teig entscheidet.',
  runMixing: 'Kneten: zugeben, 1. Gang, stehen, 2. Gang, auskippen',
  runFolds: 'Falten, mit Ruhe davor und danach',
  runTurns: 'Touren: ausrollen, Tour, kühlen',
  folds: 'Mal falten',
  turns: 'Touren',
  restMin: 'Ruhe dazwischen',
  chillMin: 'Kühlen dazwischen',
  addRun: 'Folge anfügen',
  time: 'Zeit',
  look: 'Worauf zu achten ist',
  whereWith: 'Wo und womit',
  goesIn: 'Was hineinkommt',
  baking: 'Backen',
  more: 'Reihenfolge und Reife',
  targetOfHands: 'Dauer der Arbeit',
  cautionHint: 'Was alle hier wissen müssen. Örtliche Vorschriften und die Regeln des Betriebs gehen vor.',
  coreHint: 'Örtliches Lebensmittelrecht und der Rat zugelassener Fachleute gehen dieser Zahl vor.',
  checkNeededHint: 'Damit endet ein Schritt, der nach Augenmaß geht.',
  minutesShort: (text: string): string => `${decimalComma(text)} min`,
  hoursShort: (hours: number, minutes: string): string => (minutes === '' ? `${hours} h` : `${hours} h ${minutes}`),
  perPieceShort: (text: string): string => `+ ${decimalComma(text)} min je Stück`,
  none: 'ohne',
  anyPlace: 'wo er gerade ist',
  removeShort: 'Entfernen',
  fromLength: (text: string): string => `ab ${text}`,
  toLength: (text: string): string => `bis ${text}`,
  remove1: (name: string): string => `${name} entfernen`,
  asFormula: 'wie im Rezept',
  claim: 'Was er so lange belegt',
  addClaim: 'Etwas belegen',
  claimKind: 'Art',
  claimIds: 'Welche gehen, die beste zuerst',
  claimAny: 'irgendeine davon',
  claimCount: 'Wie viele',
  claimBy: 'Gezählt',
  claimFixed: 'so viele im Ganzen',
  claimByPieces: 'nach Stück',
  claimPer: 'Stück je Behälter',
  claimUntil: 'Zurück bei',
  claimUntilUsual: 'wie üblich',
  claimUntilHint: 'Dielen und Gärkörbe beim Einschießen, Kästen und Bleche beim Stürzen, sonst am Ende.',
  addition: 'Was hier hineinkommt',
  addAddition: 'Zugabe anfügen',
  additionWhat: 'Was',
  additionHow: 'Wie viel',
  additionPct: 'Prozent vom Mehl',
  additionPiece: 'Je Stück, obendrauf',
  heldBack: 'zuerst zurückgehalten, nach Bedarf des Teigs',
  ingredients: 'Zutaten',
  formulas: 'Andere Rezepte',
  phase: (number: number): string => `Phase ${number}`,
  addPhase: 'Phase anfügen',
  phases: 'Backprogramm',
  phasesSum: (minutes: string): string => `zusammen ${decimalComma(minutes)} min`,
  phaseMinutes: 'Minuten',
  phaseC: 'Ofen',
  phaseSteam: 'Schwaden',
  phaseVent: 'Zug',
  vent: { open: 'auf', closed: 'zu' },
  phaseTurn: 'Drehen',
  phaseNote: 'Notiz',
  steam: { in: 'Schwaden geben', out: 'Schwaden ablassen' },
  link: 'Folgt auf',
  addLink: 'An einen früheren Schritt binden',
  linkStep: 'Schritt',
  linkFrom: 'Gezählt von',
  linkFroms: { start: 'seinem Anfang', end: 'seinem Ende' },
  linkEarliest: 'Nicht vor',
  linkTarget: 'Gewünscht nach',
  linkLatest: 'Nicht nach',
  linkNote: 'Ohne Bindung folgt ein Schritt auf den vor ihm.',
} as const;

/** Labels of a step's fields. */
export const STEP_LABELS = {
  verb: 'Was getan wird',
  kind: 'Wie er endet',
  station: 'Posten',
  earliest: 'Nicht vor',
  target: 'Gewünscht nach',
  latest: 'Nicht nach',
  minutesPerPiece: 'Dazu je Stück',
  late: 'Verspätet nach',
  lost: 'Geht verloren nach',
  beginsByItself: 'Beginnt von selbst, wenn der Schritt davor fertig ist',
  check: 'Kontrolle',
  caution: 'Vorsicht',
  place: 'Steht in',
  leaveOut: 'Darf entfallen, mit den Worten',
  coreC: 'Kerntemperatur, wenn fertig',
  yieldPct: 'Bleibt übrig',
  ripening: 'Reift',
  referenceC: 'Zeiten gelten bei',
  rate: 'Schneller oder langsamer je Grad',
  q10: 'Um so viel mal je zehn Kelvin',
  minC: 'Wächst nicht unter',
  optC: 'Wächst am besten bei',
  maxC: 'Wächst nicht über',
} as const;

/** How a step ends, each with what it means. */
export const STEP_KINDS: Readonly<Record<Step['kind'], string>> = {
  hands: 'von Hand: wer arbeitet, sagt fertig',
  timed: 'nach Zeit: der nächste Schritt beendet ihn',
  judged: 'nach Kontrolle: die Zeit ist ein Anhalt',
  bake: 'im Ofen: Herausholen beendet ihn',
};

/** The same in one word, for lists. */
export const KIND_MARKS: Readonly<Record<Step['kind'], string>> = { hands: 'Hand', timed: 'Zeit', judged: 'Kontrolle', bake: 'Ofen' };

export const VERB_GROUPS: Readonly<Record<VerbGroup, string>> = {
  mixing: 'Einwiegen und Kneten',
  rests: 'Ruhen und Gare',
  makeUp: 'Aufarbeiten',
  finishing: 'Vor und nach dem Backen',
  oven: 'Ofen',
  beside: 'Nebenher und danach',
};

export const CLAIM_KINDS: Readonly<Record<Claim['kind'], string>> = {
  mixer: 'Kneter',
  bowl: 'Kessel',
  restPlace: 'Ruheplatz',
  vessel: 'Wannen, Kästen, Dielen …',
  deck: 'Herd',
  bench: 'Tisch',
  hands: 'Hände',
};

export const RIPENING_MODELS: Readonly<Record<NonNullable<Step['ripening']>['model'], string>> = {
  perKelvin: 'um einen Anteil je Grad',
  q10: 'um einen Faktor je zehn Kelvin',
  cardinal: 'zwischen drei Temperaturen',
  levain: 'wie ein Sauerteig',
};

/** Usual checks, where a step is judged. Common practice. */
export const USUAL_CHECKS: Partial<Readonly<Record<Verb, string>>> = {
  ripen: 'Aufgegangen und gewölbt, riecht nach Joghurt, ein Löffel voll schwimmt.',
  firstSpeed: 'Kein trockenes Mehl mehr am Boden; eine raue Masse.',
  secondSpeed: 'Der Kessel ist sauber; der Teig zieht ein dünnes Fenster, ohne zu reißen.',
  temper: 'Nicht mehr kalt, gibt dem Finger nach.',
  cook: 'Gebunden, schmeckt nicht mehr nach rohem Mehl oder roher Stärke.',
};

/** What stands beside a judged step that has no usual check. */
export const CHECK_BY_HAND = 'Richtig für Auge und Hand.';

/** Usual cautions. They replace no local code and nobody's training. */
export const USUAL_CAUTIONS: Partial<Readonly<Record<Verb, string>>> = {
  weigh: 'Mehl tief und langsam schütten: Mehlstaub schadet der Lunge und kann brennen. Maske tragen.',
  feed: 'Mehl tief und langsam schütten: Mehlstaub schadet der Lunge und kann brennen. Maske tragen.',
  add: 'Kneter steht, solange etwas hineinkommt; Schutzgitter zu, bevor er wieder läuft.',
  firstSpeed: 'Schutzgitter zu, bevor der Kneter läuft; Hände und Werkzeug bleiben aus dem Kessel.',
  secondSpeed: 'Schutzgitter zu, bevor der Kneter läuft; Hände und Werkzeug bleiben aus dem Kessel.',
  turnOut: 'Kneter aus und Werkzeug in Ruhe, bevor eine Hand in den Kessel geht.',
  divide: 'Abstecher und Messer: von der Hand weg schneiden.',
  scale: 'Abstecher und Messer: von der Hand weg schneiden.',
  sheet: 'Schutzgitter der Ausrollmaschine zu; Finger weg von den Walzen.',
  fill: 'Füllung mit Ei, Milch oder Fleisch bleibt kalt, bis sie gebraucht wird; notieren, wie lange sie draußen war. Örtliches Lebensmittelrecht geht vor.',
  top: 'Belag mit Ei, Käse oder Fleisch bleibt kalt, bis er gebraucht wird; notieren, wie lange er draußen war. Örtliches Lebensmittelrecht geht vor.',
  wash: 'Rohes Ei: Hände und Pinsel waschen, bevor etwas anderes angefasst wird. Örtliches Lebensmittelrecht geht vor.',
  dust: 'Tief und sparsam stäuben: Mehlstaub schadet der Lunge und kann brennen.',
  score: 'Blanke Klinge: sagen, wo sie liegt, und die Hülle wieder darauf.',
  load: 'Heißer Ofen, heißer Schwaden: trockene Handschuhe, beim Öffnen zur Seite treten.',
  takeOut: 'Heißer Ofen, heißer Schwaden: trockene Handschuhe, beim Öffnen zur Seite treten.',
  depan: 'Heiße Kästen: Handschuhe, und ein freier Weg zum Stikken.',
  slice: 'Blanke Klinge: Finger hinter den Schutz. Vor dem Reinigen ausschalten und Stecker ziehen.',
  cook: 'Kocht und klebt: lange Ärmel, vom Körper weg rühren. Kerntemperatur nach dem Regelwerk des Betriebs; örtliches Lebensmittelrecht geht vor.',
  chill:
    'Was Ei, Milch oder Fleisch enthält, wird so schnell wie möglich gekühlt, nach dem Regelwerk des Betriebs. Örtliches Lebensmittelrecht geht vor.',
  clean: 'Stecker ziehen oder Hauptschalter abschließen, bevor eine Hand hineingeht.',
};

/** Side preps. */
export const PREPS = {
  title: 'Nebenher gemacht',
  note: 'Füllungen, Beläge, Quell- und Brühstücke, Streichen: in den Ruhezeiten gemacht, bei einem Schritt dazugegeben.',
  empty: 'Nebenher wird nichts gemacht.',
  add: 'Etwas nebenher machen',
  noPreps: 'Noch keine Füllung, kein Belag, kein Quellstück im Rezeptbuch: zuerst als eigenes Rezept schreiben.',
  formula: 'Was gemacht wird',
  joins: 'Kommt hinein bei',
  readyMin: 'Davor fertig um',
  notBefore: 'Nicht begonnen vor',
  withinMin: 'Nicht früher begonnen als',
  withinHint: 'In letzter Minute: höchstens so lange, bevor es hineinkommt.',
  whenever: 'wann immer Zeit ist',
} as const;

/** What goes back in. */
export const TAKES_BACK = {
  title: 'Kommt wieder hinein',
  note: 'Teigreste, Schnittreste, Altteig und Altbrot, die dieser Teig aufnehmen darf, und wie viel davon.',
  empty: 'Nichts kommt wieder hinein.',
  add: 'Etwas wieder hineingeben',
  what: 'Was',
  capPct: 'Höchstens, vom Mehl',
  age: 'Nicht älter als',
  hours: 'h',
  caution: 'Was wieder hineinkommt, bringt seine Allergene mit. Örtliche Vorschriften gehen vor.',
} as const;

/** A product. */
export const PRODUCT = {
  name: 'Name',
  pieceG: 'Teigeinlage',
  bakedG: 'Gebacken, etwa',
  bakeLoss: 'Ausbackverlust',
  weights: 'Gewicht',
  weightsNote:
    'Jedes der beiden Gewichte kann getippt werden; das andere folgt aus dem Ausbackverlust. Eigene Brote nachwiegen, bevor ein Gewicht angegeben wird: örtliches Recht geht vor.',
  piecesPerSlot: 'Stück je Platz im Herd',
  oven: 'Im Ofen, und danach',
  deckRoom: 'Stück je Platz, wo ein Herd mehr oder weniger fasst',
  deckRoomAsUsual: (pieces: number | null): string => (pieces === null ? 'nicht angegeben' : `${pieces} wie sonst`),
  prefersSlots: 'Plätze, an denen es am besten bäckt',
  prefersHint: 'Der beste zuerst, in der Reihenfolge, in der sie angekreuzt werden.',
  prefersOrder: (slots: readonly string[]): string => `Zuerst: ${slots.join('; dann ')}.`,
  keeps: 'Hält sich nach dem Backen',
  keepsHint: 'Stunden oder Minuten: 36 h, 1 h 30, 90 min. Leer: bis es gebraucht wird, am selben Tag.',
  keepsNote:
    'Wie lange es gut genug für den Verkauf ist, damit es früher gebacken werden darf. Wie lange es aufbewahrt werden darf, sagen örtliche Vorschriften und eigene fachkundige Beratung.',
  lengthNeeded: 'hier gehört eine Dauer hin, etwa 36 h oder 90 min, höchstens eine Woche',
  loads: 'In Schüssen aufgearbeitet',
  loadsOn: 'Geht in Schüssen weiter, jeder für sich',
  loadsAfter: 'nach',
  loadsPieces: 'Stück je Schuss',
  caution: 'Vorsicht',
  toppings: 'Obendrauf, je Stück',
  noToppings: 'Nichts kommt obendrauf.',
  addTopping: 'Belag anfügen',
  topping: 'Was',
  toppingStep: 'Kommt darauf bei',
  toppingG: 'Je Stück',
  toppingNew: (name: string): string => `${name}, als neuer Schritt`,
  toppingNote: 'Zusätzlich zum Gewicht des Teigs.',
  way: 'Vom Teilen an',
} as const;

/** An ingredient. */
export const INGREDIENT = {
  title: 'Zutat',
  newTitle: 'Neue Zutat',
  name: 'Name',
  kind: 'Zählt als',
  waterPct: 'Wasser darin',
  waterHint: 'Vom Gewicht; zählt zur Teigausbeute, wie bei Milch, Ei oder Butter.',
  yeastForm: 'Form',
  yeastForms: { fresh: 'frisch', dry: 'Trockenhefe', instant: 'Instanthefe' },
  unsaid: 'nicht gesagt',
  allergens: 'Allergene',
  allergenNote:
    'Wie auf der Zutat gedruckt; hier wird nichts errechnet. Örtliche Vorschriften und der Rat zugelassener Fachleute gehen vor.',
  cereals: 'Glutenhaltiges Getreide',
  nuts: 'Schalenfrüchte',
  others: 'Weitere',
  noneChosen: 'keine gewählt',
} as const;
