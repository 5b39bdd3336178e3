import type { BookFaultFacts } from '../../../shared/documents/book-fault-facts.ts';
import { unreachable } from '../../../shared/result.ts';
import { decimalComma } from '../decimal-comma.ts';

type FactsOf<Code extends BookFaultFacts['code']> = Extract<BookFaultFacts, { readonly code: Code }>;

const KIND_NAMES: Readonly<Record<FactsOf<'notAPrep'>['kind'], string>> = {
  dough: 'ein Teig',
  prep: 'eine Vorarbeit',
  ferment: 'ein Ansatz',
};

const CLAIM_NAMES: Readonly<Record<FactsOf<'claimUnknown'>['kind'], string>> = {
  mixer: 'Kneter',
  bowl: 'Kessel',
  restPlace: 'Ruheplatz',
  vessel: 'Behälter',
  deck: 'Herd',
  bench: 'Tisch',
  hands: 'Posten',
};

const PUT_BACK_NAMES: Readonly<Record<FactsOf<'takesBackTwice'>['what'], string>> = {
  scrap: 'Restteig',
  trim: 'Abschnitte',
  oldDough: 'Altteig',
  oldBread: 'Altbrot',
};

/** What cannot be in the formula book, for the one who writes in it. */
export function bookFaultWords(facts: BookFaultFacts): string {
  switch (facts.code) {
    case 'ingredientUnknown':
      return `die Zutat „${facts.id}“ gibt es nicht`;
    case 'formulaUnknown':
      return `das Rezept „${facts.id}“ gibt es nicht`;
    case 'productUnknown':
      return `das Produkt „${facts.id}“ gibt es nicht`;
    case 'placeUnknown':
      return `den Ruheplatz „${facts.id}“ gibt es nicht`;
    case 'claimUnknown':
      return `${CLAIM_NAMES[facts.kind]} „${facts.id}“: gibt es nicht`;
    case 'slotUnknown':
      return `den Platz „${facts.id}“ gibt es in keinem Ofen`;
    case 'secondSpeedMissing':
      return `zweiter Gang, und ${facts.mixers.join(', ')} hat nur einen`;
    case 'stepUnknown':
      return `den Schritt „${facts.id}“ gibt es nicht`;
    case 'takenIsDough':
      return `„${facts.id}“ ist ein Teig; nur ein Ansatz oder eine Vorarbeit kann hinein`;
    case 'madeOfItself':
      return `„${facts.id}“ wird selbst mit „${facts.into}“ gemacht`;
    case 'notAPrep':
      return `„${facts.id}“ ist ${KIND_NAMES[facts.kind]}, keine Vorarbeit`;
    case 'notAdded':
      return `der Schritt „${facts.step}“ nimmt „${facts.id}“ nicht unter seinen Zugaben auf`;
    case 'lettersTaken':
      return `„${facts.letters}“ gehört schon dem Rezept „${facts.by}“`;
    case 'partUnknown':
      return `„${facts.name}“ ist kein Teil, der vor diesem steht`;
    case 'partTakenTwice':
      return `„${facts.name}“ ist schon verwendet`;
    case 'partIdle':
      return `„${facts.name}“ kommt nirgends hinein`;
    case 'seedOutsideFerment':
      return 'nur ein Ansatz wird mit seinem Anstellgut gemacht';
    case 'seedTwice':
      return 'das Anstellgut kommt nur einmal hinein';
    case 'seedNotKept':
      return 'er wird mit seinem Anstellgut gemacht: angeben, wie viel im Topf bleibt';
    case 'keepsSeed':
      return `nur ein Ansatz behält Anstellgut zurück, und das hier ist ${KIND_NAMES[facts.kind]}`;
    case 'keepingOfPreps':
      return `nur eine Vorarbeit oder ein Gebäck sagt, wie es aufbewahrt wird, und das hier ist ${KIND_NAMES[facts.kind]}`;
    case 'noWeight':
      return 'nichts darin wiegt etwas';
    case 'noFlour':
      return 'in einen Teig gehört Mehl';
    case 'takesBackTwice':
      return `${PUT_BACK_NAMES[facts.what]} hat zwei Regeln`;
    case 'vesselsUnnamed':
      return 'welche Behälter es sein sollen, den besten zuerst';
    case 'stepNotBefore':
      return `„${facts.id}“ ist kein Schritt, der vor diesem steht`;
    case 'untilBefore':
      return `„${facts.id}“ ist vorbei, bevor dieser Schritt beginnt`;
    case 'lagOrder':
      return `spätestens (${number(facts.latestMin)} min) liegt vor frühestens (${number(facts.earliestMin)} min)`;
    case 'yieldOfOther':
      return 'nur eine Füllung oder Zutat verliert durch ihre Ausbeute; der Backverlust steht beim Produkt';
    case 'ripeningOrder':
      return 'die niedrigste Temperatur liegt unter der besten, die beste unter der höchsten und mindestens auf halbem Weg zu ihr';
    case 'bakeLast':
      return 'mit dem Backen kann es nicht enden: jemand muss es herausnehmen';
    case 'amountUnwritten':
      return `die Teile von „${facts.formula}“ sagen nicht, wie viel „${facts.id}“ hineinkommt`;
    case 'addedTooMuch':
      return `die Schritte geben ${number(facts.addedG)} g „${facts.id}“ zu, in den Teilen stehen ${number(facts.hasG)} g`;
    case 'stepOfMethod':
      return `„${facts.id}“ ist schon ein Schritt des Rezepts „${facts.formula}“`;
    case 'stepOfProduct':
      return `„${facts.id}“ ist schon ein Schritt des Produkts „${facts.product}“`;
    case 'waitsForLater':
      return `sie wartet auf „${facts.step}“, und das kommt nicht vor „${facts.joins}“`;
    case 'readyAfterWithin':
      return `${number(facts.readyMin)} min vorher fertig und höchstens ${number(facts.withinMin)} min vorher begonnen: beides geht nicht`;
    case 'stepNeeded':
      return `den Schritt „${facts.id}“ braucht noch: ${facts.by.join(', ')}`;
    case 'lineNeeded':
      return `wie viel „${facts.id}“ hineinkommt, braucht noch: ${facts.by.join(', ')}`;
    case 'kindNeeded':
      return `als ${KIND_NAMES[facts.kind]} kann es nicht mehr hinein in: ${facts.by.join(', ')}`;
    case 'flourNeeded':
      return `ohne dieses Mehl haben keines mehr: ${facts.by.join(', ')}`;
    case 'formsOfYeastOnly':
      return 'nur Hefe ist frisch, trocken oder instant';
    case 'productOfOther':
      return `„${facts.id}“ wird aus dem Rezept „${facts.formula}“ gemacht, nicht aus „${facts.wanted}“`;
    case 'cutsMissing':
      return 'ein Teig braucht mindestens ein Produkt';
    case 'divideNotLast':
      return `das Rezept „${facts.formula}“ muss mit dem Teilen enden, bevor es mehrere Produkte haben kann`;
    case 'divideTwice':
      return `das Rezept „${facts.formula}“ darf nur einmal teilen, am Ende seines Wegs, bevor es mehrere Produkte haben kann`;
    case 'atLeast':
      return `mindestens ${number(facts.least)}`;
    case 'atMost':
      return `höchstens ${number(facts.most)}`;
    case 'textNeeded':
      return 'hier muss etwas stehen';
    case 'textTooLong':
      return `höchstens ${facts.most} Zeichen`;
    case 'numberNeeded':
      return 'hier muss eine Zahl stehen';
    case 'wholeNeeded':
      return 'nur ganze Zahlen';
    case 'oneNeeded':
      return 'mindestens eines davon';
    case 'tooMany':
      return `höchstens ${facts.most} davon`;
    case 'choiceNeeded':
      return 'eines der angebotenen';
    case 'keyForm':
      return 'Kleinbuchstaben, Ziffern und Bindestriche, am Anfang ein Buchstabe, höchstens 40';
    case 'lettersForm':
      return 'ein Großbuchstabe und höchstens ein kleiner dahinter';
    case 'weightNeeded':
      return 'mehr als nichts';
    case 'earliestAfterTarget':
      return `frühestens (${number(facts.earliestMin)} min) liegt nach dem Soll (${number(facts.targetMin)} min)`;
    case 'latestBeforeTarget':
      return `spätestens (${number(facts.latestMin)} min) liegt vor dem Soll (${number(facts.targetMin)} min)`;
    case 'lostBeforeLate':
      return `verloren (${number(facts.lostMin)} min) kommt vor zu spät (${number(facts.lateMin)} min)`;
    case 'checkNeeded':
      return 'ein Schritt nach Augenmaß braucht die Probe, die ihn beendet';
    case 'phasesNeeded':
      return 'ein Backen braucht seine Phasen';
    case 'phasesDiffer':
      return `die Phasen dauern ${number(facts.sumMin)} min, das Soll sagt ${number(facts.targetMin)} min`;
    case 'phasesOfOther':
      return 'nur ein Backen hat Phasen';
    case 'additionOfOne':
      return 'eine Zugabe ist eine Zutat oder ein Rezept, eines von beiden';
    case 'additionInOneWay':
      return 'eine Zugabe ist in Prozent oder in Gramm je Stück, nicht beides';
    case 'heldBackFormula':
      return 'nur eine Zutat lässt sich zurückhalten';
    default:
      return unreachable(facts);
  }
}

function number(value: number): string {
  return decimalComma(value);
}
