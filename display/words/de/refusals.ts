import type { Refusal } from '../../../shared/floor/refusals.ts';
import { unreachable } from '../../../shared/result.ts';
import type { RefusalFacts } from '../en/refusals.ts';
import { ALLERGENS, BLOCKED_WHY, listWords, PUT_BACK } from './floor.ts';

/** A refusal as the baker reads it: what it was about, and why nothing came of it. */
export function refusalWords(refusal: Refusal, facts: RefusalFacts): string {
  const about = aboutWords(refusal, facts);
  return about === '' ? reasonWords(refusal, facts) : `${about}: ${reasonWords(refusal, facts)}`;
}

/** The reason alone, where it stands beside the dough that it is about. It begins with a capital after a colon too, as sentences do in German. */
export function reasonWords(refusal: Refusal, facts: RefusalFacts): string {
  return capital(whyWords(refusal, facts));
}

function aboutWords(refusal: Refusal, facts: RefusalFacts): string {
  const tag = 'tag' in refusal ? refusal.tag : undefined;
  const step = facts.step(tag, 'stepId' in refusal ? refusal.stepId : undefined);
  return [tag, step].filter((part) => part !== undefined && part !== null).join(' ');
}

function whyWords(refusal: Refusal, facts: RefusalFacts): string {
  switch (refusal.code) {
    case 'workpieceUnknown':
      return 'Dieser Teig ist nicht in Arbeit.';
    case 'workpieceFinished':
      return `Seit ${facts.clock(refusal.atMs)} nicht mehr in Arbeit.`;
    case 'stepUnknown':
      return 'Diesen Schritt gibt es in seinem Ablauf nicht.';
    case 'stepAlreadyDone':
      return `${refusal.skipped ? 'Ausgelassen' : 'Fertig'} um ${facts.clock(refusal.atMs)}${whoWords(refusal, facts)}.`;
    case 'stepAlreadyStarted':
      return `Begonnen um ${facts.clock(refusal.atMs)}${whoWords(refusal, facts)}.`;
    case 'stepNotReached':
      return `Noch nicht: zuerst kommt ${facts.step(refusal.tag, refusal.currentStepId) ?? 'ein anderer Schritt'}.`;
    case 'mixerBusy':
      return `${facts.mixer(refusal.mixerId)} hat ${refusal.busyWithTag} drin.`;
    case 'mixerUnknown':
      return `Kneter ${refusal.mixerId} gibt es hier nicht.`;
    case 'slotTaken':
      return `${facts.slot(refusal.slotId)} hat ${refusal.takenByTag} drin. ${freeWords(refusal.freeSlotIds.map((slotId) => facts.slot(slotId)))}`;
    case 'slotUnknown':
      return `Herdplatz ${refusal.slotId} gibt es hier nicht.`;
    case 'noFreeSlot':
      return `Kein Platz: ${listWords(refusal.deckIds.map((deckId) => facts.deck(deckId)))} belegt mit ${listWords(refusal.takenByTags)}.`;
    case 'resourceBlocked':
      return `${facts.resource(refusal.resource)} ${BLOCKED_WHY[refusal.why]}${refusal.untilMs === undefined ? '' : ` bis ${facts.clock(refusal.untilMs)}`}.`;
    case 'changeOverNeeded':
      return `Allergene in ${facts.mixer(refusal.mixerId)} möglich: ${listWords(refusal.allergens.map((allergen) => ALLERGENS[allergen]))}. Zuerst reinigen, ${refusal.cleanMin} min.`;
    case 'vesselsShort':
      return `${facts.vessel(refusal.vesselId)}: ${refusal.needed} nötig, ${refusal.free} frei${refusal.freeMs === undefined ? '' : `, genug um ${facts.clock(refusal.freeMs)}`}.`;
    case 'nothingToDraw':
      return `${facts.formula(refusal.formulaId)} steht nicht bereit; nötig sind ${facts.weight(refusal.neededG)}.`;
    case 'notEnoughToDraw':
      return `${facts.formula(refusal.formulaId)}: ${facts.weight(refusal.neededG)} nötig, ${facts.weight(refusal.hasG)} vorhanden.`;
    case 'notCooled':
      return `${refusal.fromTag} ist noch heiß: abgekühlt bis ${facts.clock(refusal.cooledMs)}.`;
    case 'lastOfFerment':
      return `${facts.weight(refusal.neededG)} gingen ans Anstellgut in ${refusal.fromTag}: vorhanden sind ${facts.weight(refusal.hasG)}, ${facts.weight(refusal.seedG)} bleiben zum Auffrischen zurück.`;
    case 'moreThanThere':
      return `${facts.weight(refusal.neededG)} ist mehr, als ${refusal.fromTag} hat (${facts.weight(refusal.hasG)}).`;
    case 'wrongSource':
      return `${refusal.fromTag} gehört hier nicht hinein.`;
    case 'putBackNotTaken':
      return `${PUT_BACK[refusal.kind]}: nimmt das Rezept nicht zurück.`;
    case 'putBackTooOld':
      return `Der Rest von ${refusal.fromTag} ist ${hoursWords(refusal.ageMin)} alt; höchstens ${hoursWords(refusal.mostMin)}.`;
    case 'putBackOverCap':
      return `Zurück dürfen höchstens ${facts.weight(refusal.capG)}, ${facts.weight(refusal.alreadyG)} sind schon drin.`;
    case 'pastMixing':
      return 'Schon aus dem Kessel: einkneten geht nicht mehr.';
    case 'morePiecesThanThere':
      return `${refusal.wanted} Stück sind mehr, als da sind (${refusal.has}).`;
    case 'noPieces':
      return 'Davon ist noch nichts gezählt.';
    case 'notJoinable':
      return `Geht nicht mit ${refusal.otherTag} zusammen: nur Teige eines Rezepts, die beim selben Schritt stehen, gehen zusammen.`;
    case 'notUnderWay':
      return 'Das hat niemand begonnen.';
    case 'alreadyThere':
      return alreadyThereWords(refusal, facts);
    case 'stationNeeded':
      return 'Dieses Handy hat keinen festen Posten: zuerst angeben, an welchem Posten es ist.';
    case 'stationUnknown':
      return `Posten ${refusal.stationId} gibt es hier nicht.`;
    case 'placeUnknown':
      return `Ruheplatz ${refusal.placeId} gibt es hier nicht.`;
    case 'notInOven':
      return 'Es liegt in keinem Ofen.';
    case 'noSuchSlot':
      return 'Diesen Platz gibt es hier nicht.';
    case 'noTestPiece':
      return 'Dort liegt kein Probestück.';
    case 'programmeMissing':
      return `${refusal.placeId} hat in der Backstube kein Programm.`;
    case 'deckUnknown':
      return `Herd ${refusal.deckId} gibt es hier nicht.`;
    case 'resourceUnknown':
      return `${refusal.resource.id} gibt es hier nicht.`;
    case 'notBlocked':
      return `${facts.resource(refusal.resource)} ist nicht gesperrt.`;
    case 'ingredientUnknown':
      return `Zutat ${facts.ingredient(refusal.ingredientId)} steht nicht in den Büchern.`;
    case 'timeOutOfOrder':
      return `Muss zwischen ${facts.clock(refusal.earliestMs)} und ${facts.clock(refusal.latestMs)} liegen.`;
    case 'nothingChanges':
      return 'Das ist schon so.';
    case 'tagOfOther':
      return `${refusal.wantedTag} ist das Kürzel eines anderen Teigs.`;
    case 'notAFerment':
      return 'Ist kein Ansatz, der immer wieder aufgefrischt wird.';
    case 'dayNotOpen':
      return `Der Tag ${refusal.serviceDate} ist nicht offen.`;
    case 'documentChanged':
      return 'Inzwischen hat es jemand anders geändert: noch einmal ansehen.';
    case 'documentFaulty':
      return `${refusal.faults.map(({ path, message, facts: said }) => `${path}: ${(said === undefined ? undefined : facts.fault?.(said)) ?? message}`).join('; ')}.`;
    case 'noFreeBowl':
      return `Für ${facts.mixer(refusal.mixerId)} ist kein Kessel frei: belegt mit ${listWords(refusal.takenByTags)}.`;
    case 'cutsTooHeavy':
      return `Die Teilung braucht ${facts.weight(refusal.neededG)}, da sind ${facts.weight(refusal.hasG)}.`;
    case 'productUnknown':
      return `${facts.product(refusal.productId)} wird hier nicht hergestellt.`;
    case 'nothingCalls':
      return 'Im Moment ruft nichts.';
    case 'alreadyHeard':
      return `Schon gehört um ${facts.clock(refusal.atMs)}.`;
    case 'nothingAsked':
      return 'Der Backverlauf verlangt dort nichts.';
    case 'promptAnswered':
      return 'Das hat schon jemand getan.';
    case 'notHeld':
      return 'Der Ruf ist nicht angehalten.';
    case 'soundTestWaits':
      return `Eine Tonprobe ist seit ${facts.clock(refusal.atMs)} verlangt; sie kommt, sobald es geht.`;
    case 'beingLost':
      return `${refusal.tag} geht gerade verloren: nichts anderes darf jetzt tönen.`;
    case 'noSoundTest':
      return 'Keine Tonprobe wartet auf eine Antwort.';
    case 'soundTestAnswered':
      return `Um ${facts.clock(refusal.atMs)} schon beantwortet: ${refusal.heard ? 'gehört' : 'nicht gehört'}.`;
    case 'lineUnknown':
      return 'Diese Zeile gibt es in der Einwaage nicht mehr: noch einmal ansehen.';
    case 'notWeighed':
      return 'Das ist nicht in der Schüssel.';
    case 'alreadyMixed':
      return 'Schon geknetet.';
    case 'wildReading':
      return `${facts.reading(refusal.celsius)} sind weit von den erwarteten ${facts.reading(refusal.expectedC)}: noch einmal messen.`;
    case 'pastHoldingLimit':
      return `über der Frist seit ${facts.clock(refusal.limitMs)} (${refusal.clause}): wegwerfen, oder wer verantwortlich ist entscheidet. Die Regel der örtlichen Behörde geht vor.`;
    case 'outsideMixer':
      return `Nicht in dem, was ${facts.mixer(refusal.mixerId)} knetet: ${facts.load(refusal.leastG)} bis ${facts.load(refusal.mostG)}.`;
    case 'nothingToUndo':
      return 'Nichts zurückzunehmen: das geht nur mit dem Letzten, was von diesem Handy kam.';
    case 'workRestsOnIt':
      return 'Lässt sich nicht zurücknehmen: spätere Arbeit baut darauf auf.';
    case 'dayAlreadyOpen':
      return `Der Tag ${refusal.serviceDate} ist schon offen.`;
    case 'documentMissing':
      return `${DOCUMENTS[refusal.kind]} ${refusal.id} fehlt.`;
    case 'orderUnknown':
      return 'Die Bestellung gibt es nicht mehr.';
    case 'tooManyOrders':
      return `Ein Tag hat höchstens ${refusal.most} Bestellungen.`;
    case 'pinUnknown':
      return 'Sie ist schon wieder frei.';
    case 'callOutdated':
      return 'Dieser Ruf gilt nicht mehr.';
    case 'forbidden':
      return 'Dieses Handy darf das nicht.';
    case 'notKept':
      return refusal.cause === 'diskFull'
        ? 'Der Speicher des Servers ist voll, nichts wird aufgeschrieben. Dieses Handy behält die Eingabe und sendet sie noch einmal.'
        : 'Der Server konnte es nicht aufschreiben. Dieses Handy behält die Eingabe und sendet sie noch einmal.';
    default:
      return unreachable(refusal);
  }
}

const DOCUMENTS: Readonly<Record<Extract<Refusal, { code: 'documentMissing' }>['kind'], string>> = {
  formula: 'Rezept',
  product: 'Ware',
  ingredient: 'Zutat',
};

/** Stations stand for people; where a device has none, its own name must do. */
function whoWords(
  refusal: { readonly stationId?: string | undefined; readonly deviceId?: string | undefined },
  facts: RefusalFacts,
): string {
  const station = refusal.stationId === undefined ? null : facts.station(refusal.stationId);
  if (station !== null) return ` (${station})`;
  if (refusal.deviceId === undefined) return '';
  if (facts.isThisDevice(refusal.deviceId)) return ' (dieses Handy)';
  return ` (${facts.device(refusal.deviceId) ?? 'anderes Gerät'})`;
}

function freeWords(slots: readonly string[]): string {
  return slots.length === 0 ? 'Von den anderen ist keiner frei.' : `Frei: ${listWords(slots)}.`;
}

function alreadyThereWords(
  refusal: { readonly stationId?: string | undefined; readonly placeId?: string | undefined },
  facts: RefusalFacts,
): string {
  if (refusal.stationId !== undefined) return `${facts.station(refusal.stationId) ?? refusal.stationId} hat es schon.`;
  return refusal.placeId === undefined ? 'Ist schon da.' : `Steht schon dort: ${facts.place(refusal.placeId)}.`;
}

/** An age: minutes up to three hours, hours beyond. */
function hoursWords(minutes: number): string {
  return minutes <= 180 ? `${Math.round(minutes)} min` : `${Math.round(minutes / 60)} h`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
