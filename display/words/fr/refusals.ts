import type { Refusal } from '../../../shared/floor/refusals.ts';
import { unreachable } from '../../../shared/result.ts';
import type { RefusalFacts } from '../en/refusals.ts';
import { ALLERGENS, BLOCKED_WHY, listWords, PUT_BACK } from './floor.ts';

/** A refusal as the baker reads it: what it was about, and why nothing came of it. */
export function refusalWords(refusal: Refusal, facts: RefusalFacts): string {
  const about = aboutWords(refusal, facts);
  return about === '' ? capital(whyWords(refusal, facts)) : `${about}\u00a0: ${whyWords(refusal, facts)}`;
}

/** The reason alone, where it stands beside the dough that it is about. */
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
      return 'cette pâte n’est pas en cours.';
    case 'workpieceFinished':
      return `plus en cours depuis ${facts.clock(refusal.atMs)}.`;
    case 'stepUnknown':
      return 'sa méthode n’a pas cette étape.';
    case 'stepAlreadyDone':
      return `déjà ${refusal.skipped ? 'sauté' : 'fait'} à ${facts.clock(refusal.atMs)}${whoWords(refusal, facts)}.`;
    case 'stepAlreadyStarted':
      return `déjà commencé à ${facts.clock(refusal.atMs)}${whoWords(refusal, facts)}.`;
    case 'stepNotReached':
      return `pas encore\u00a0: d’abord ${facts.step(refusal.tag, refusal.currentStepId) ?? 'une autre étape'}.`;
    case 'mixerBusy':
      return `${facts.mixer(refusal.mixerId)} a déjà ${refusal.busyWithTag} dedans.`;
    case 'mixerUnknown':
      return `aucun pétrin ${refusal.mixerId} ici.`;
    case 'slotTaken':
      return `${facts.slot(refusal.slotId)} a déjà ${refusal.takenByTag}. ${freeWords(refusal.freeSlotIds.map((slotId) => facts.slot(slotId)))}`;
    case 'slotUnknown':
      return `aucune place ${refusal.slotId} ici.`;
    case 'noFreeSlot':
      return `plus de place\u00a0: ${listWords(refusal.takenByTags)} dans ${listWords(refusal.deckIds.map((deckId) => facts.deck(deckId)))}.`;
    case 'resourceBlocked':
      return `${facts.resource(refusal.resource)} ${BLOCKED_WHY[refusal.why]}${refusal.untilMs === undefined ? '' : ` jusqu’à ${facts.clock(refusal.untilMs)}`}.`;
    case 'changeOverNeeded':
      return `allergènes possibles dans ${facts.mixer(refusal.mixerId)} (${listWords(refusal.allergens.map((allergen) => ALLERGENS[allergen]))})\u00a0: nettoyer d’abord, ${refusal.cleanMin} min.`;
    case 'vesselsShort':
      return `il faut ${refusal.needed} × ${facts.vessel(refusal.vesselId)}, ${refusal.free} ${refusal.free < 2 ? 'libre' : 'libres'}${refusal.freeMs === undefined ? '' : `, assez à ${facts.clock(refusal.freeMs)}`}.`;
    case 'nothingToDraw':
      return `rien de prêt\u00a0: ${facts.formula(refusal.formulaId)}\u202f; il en faut ${facts.weight(refusal.neededG)}.`;
    case 'notEnoughToDraw':
      return `il faut ${facts.weight(refusal.neededG)} (${facts.formula(refusal.formulaId)}), il y a ${facts.weight(refusal.hasG)}.`;
    case 'notCooled':
      return `${refusal.fromTag} est encore chaud\u00a0: refroidi vers ${facts.clock(refusal.cooledMs)}.`;
    case 'lastOfFerment':
      return `prendre ${facts.weight(refusal.neededG)} entame le chef (${refusal.fromTag})\u00a0: il y a ${facts.weight(refusal.hasG)}, dont ${facts.weight(refusal.seedG)} à garder pour le prochain rafraîchi.`;
    case 'moreThanThere':
      return `${facts.weight(refusal.neededG)}, c’est plus que ce qu’a ${refusal.fromTag} (${facts.weight(refusal.hasG)}).`;
    case 'wrongSource':
      return `${refusal.fromTag} n’est pas ce qui va ici.`;
    case 'putBackNotTaken':
      return `sa recette ne reprend pas cela\u00a0: ${PUT_BACK[refusal.kind]}.`;
    case 'putBackTooOld':
      return `le reste (${refusal.fromTag}) a ${hoursWords(refusal.ageMin)}\u202f; au plus ${hoursWords(refusal.mostMin)}.`;
    case 'putBackOverCap':
      return `reprend au plus ${facts.weight(refusal.capG)}, ${facts.weight(refusal.alreadyG)} déjà dedans.`;
    case 'pastMixing':
      return 'sorti du pétrin\u00a0: on ne peut plus rien y mélanger.';
    case 'morePiecesThanThere':
      return `${refusal.wanted} pièces, c’est plus qu’il n’y en a (${refusal.has}).`;
    case 'noPieces':
      return 'rien n’en a encore été compté.';
    case 'notJoinable':
      return `ne peut pas aller avec ${refusal.otherTag}\u00a0: seulement des pétrissées d’une même recette, à la même étape.`;
    case 'notUnderWay':
      return 'personne ne l’a commencé.';
    case 'alreadyThere':
      return alreadyThereWords(refusal, facts);
    case 'stationNeeded':
      return 'ce téléphone n’a pas de poste fixe\u00a0: dire d’abord à quel poste il est.';
    case 'stationUnknown':
      return `aucun poste ${refusal.stationId} ici.`;
    case 'placeUnknown':
      return `aucun lieu ${refusal.placeId} ici.`;
    case 'notInOven':
      return 'il n’est dans aucun four.';
    case 'noSuchSlot':
      return 'cette place n’existe pas ici.';
    case 'noTestPiece':
      return 'aucun pâton d’essai n’y est.';
    case 'programmeMissing':
      return `${refusal.placeId} n’a pas de programme dans le fournil.`;
    case 'deckUnknown':
      return `aucun étage ${refusal.deckId} ici.`;
    case 'resourceUnknown':
      return `rien ici sous le nom ${refusal.resource.id}.`;
    case 'notBlocked':
      return `${facts.resource(refusal.resource)}\u00a0: déjà en service.`;
    case 'ingredientUnknown':
      return `ingrédient absent des listes\u00a0: ${facts.ingredient(refusal.ingredientId)}.`;
    case 'timeOutOfOrder':
      return `l’heure doit être entre ${facts.clock(refusal.earliestMs)} et ${facts.clock(refusal.latestMs)}.`;
    case 'nothingChanges':
      return 'c’est déjà ainsi.';
    case 'tagOfOther':
      return `${refusal.wantedTag} est le repère d’une autre pâte.`;
    case 'notAFerment':
      return 'ce n’est pas un pot que l’on rafraîchit.';
    case 'dayNotOpen':
      return `la journée ${refusal.serviceDate} n’est pas ouverte.`;
    case 'documentChanged':
      return 'quelqu’un d’autre l’a modifié depuis\u00a0: regarder de nouveau.';
    case 'documentFaulty':
      return `${refusal.faults.map(({ path, message, facts: said }) => `${path}\u00a0: ${(said === undefined ? undefined : facts.fault?.(said)) ?? message}`).join('\u202f; ')}.`;
    case 'noFreeBowl':
      return `aucune cuve libre pour ${facts.mixer(refusal.mixerId)}\u00a0: ${listWords(refusal.takenByTags)} dedans.`;
    case 'cutsTooHeavy':
      return `les parts demandent ${facts.weight(refusal.neededG)}, il y a ${facts.weight(refusal.hasG)}.`;
    case 'productUnknown':
      return `produit inconnu ici\u00a0: ${facts.product(refusal.productId)}.`;
    case 'nothingCalls':
      return 'rien n’appelle en ce moment.';
    case 'alreadyHeard':
      return `déjà entendu à ${facts.clock(refusal.atMs)}.`;
    case 'nothingAsked':
      return 'la cuisson ne demande rien là.';
    case 'promptAnswered':
      return 'quelqu’un l’a déjà fait.';
    case 'notHeld':
      return 'son appel n’est pas retenu.';
    case 'soundTestWaits':
      return `un essai du son est demandé depuis ${facts.clock(refusal.atMs)}\u202f; il sonne dès que possible.`;
    case 'beingLost':
      return `${refusal.tag} se perd\u00a0: rien d’autre ne doit sonner.`;
    case 'noSoundTest':
      return 'aucun essai du son n’attend de réponse.';
    case 'soundTestAnswered':
      return `déjà répondu à ${facts.clock(refusal.atMs)}\u00a0: ${refusal.heard ? 'entendu' : 'pas entendu'}.`;
    case 'lineUnknown':
      return `cette ligne n’est plus dans la pesée\u00a0: regarder encore.`;
    case 'notWeighed':
      return `ce n’est pas dans la cuve.`;
    case 'alreadyMixed':
      return `c’est déjà pétri.`;
    case 'wildReading':
      return `${facts.reading(refusal.celsius)} est loin des ${facts.reading(refusal.expectedC)} attendus\u00a0: mesurer encore.`;
    case 'pastHoldingLimit':
      return `limite dépassée depuis ${facts.clock(refusal.limitMs)} (${refusal.clause})\u00a0: à jeter, ou la personne responsable décide. La règle des autorités locales passe avant.`;
    case 'outsideMixer':
      return `hors de ce que pétrit ${facts.mixer(refusal.mixerId)}\u00a0: ${facts.load(refusal.leastG)} à ${facts.load(refusal.mostG)}.`;
    case 'nothingToUndo':
      return 'rien à annuler\u00a0: seule la dernière action de ce téléphone peut l’être.';
    case 'workRestsOnIt':
      return 'ne peut pas être annulé\u00a0: du travail fait depuis en dépend.';
    case 'dayAlreadyOpen':
      return `la journée ${refusal.serviceDate} est déjà ouverte.`;
    case 'documentMissing':
      return `il manque\u00a0: ${DOCUMENTS[refusal.kind]} ${refusal.id}.`;
    case 'orderUnknown':
      return 'la commande n’est plus là.';
    case 'tooManyOrders':
      return `une journée prend au plus ${refusal.most} commandes.`;
    case 'pinUnknown':
      return 'elle est déjà libre de bouger.';
    case 'callOutdated':
      return 'cet appel n’est plus d’actualité.';
    case 'forbidden':
      return 'ce téléphone n’en a pas le droit.';
    case 'notKept':
      return refusal.cause === 'diskFull'
        ? 'le disque du serveur est plein, rien n’est écrit. Ce téléphone garde l’appui et le renvoie.'
        : 'le serveur n’a pas pu l’écrire. Ce téléphone garde l’appui et le renvoie.';
    default:
      return unreachable(refusal);
  }
}

const DOCUMENTS: Readonly<Record<Extract<Refusal, { code: 'documentMissing' }>['kind'], string>> = {
  formula: 'recette',
  product: 'produit',
  ingredient: 'ingrédient',
};

/** Stations stand for people; where a device has none, its own name must do. */
function whoWords(
  refusal: { readonly stationId?: string | undefined; readonly deviceId?: string | undefined },
  facts: RefusalFacts,
): string {
  const station = refusal.stationId === undefined ? null : facts.station(refusal.stationId);
  if (station !== null) return ` au poste ${station.toLowerCase()}`;
  if (refusal.deviceId === undefined) return '';
  if (facts.isThisDevice(refusal.deviceId)) return ' sur ce téléphone';
  const device = facts.device(refusal.deviceId);
  return device === null ? ' sur un autre appareil' : ` sur ${device}`;
}

function freeWords(slots: readonly string[]): string {
  return slots.length === 0 ? 'Aucune autre place libre.' : `${slots.length === 1 ? 'Libre' : 'Libres'}\u00a0: ${listWords(slots)}.`;
}

function alreadyThereWords(
  refusal: { readonly stationId?: string | undefined; readonly placeId?: string | undefined },
  facts: RefusalFacts,
): string {
  if (refusal.stationId !== undefined) return `déjà au poste ${(facts.station(refusal.stationId) ?? refusal.stationId).toLowerCase()}.`;
  return refusal.placeId === undefined ? 'c’est déjà là.' : `c’est déjà là\u00a0: ${facts.place(refusal.placeId)}.`;
}

/** An age: minutes up to three hours, hours beyond. */
function hoursWords(minutes: number): string {
  return minutes <= 180 ? `${Math.round(minutes)} min` : `${Math.round(minutes / 60)} h`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
