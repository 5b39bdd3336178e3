import type { BookFaultFacts } from '../../../shared/documents/book-fault-facts.ts';
import { unreachable } from '../../../shared/result.ts';
import { decimalComma } from '../decimal-comma.ts';

type FactsOf<Code extends BookFaultFacts['code']> = Extract<BookFaultFacts, { readonly code: Code }>;

const KIND_NAMES: Readonly<Record<FactsOf<'notAPrep'>['kind'], string>> = { dough: 'une pâte', prep: 'une prépa', ferment: 'un ferment' };

const CLAIM_NAMES: Readonly<Record<FactsOf<'claimUnknown'>['kind'], string>> = {
  mixer: 'pétrin',
  bowl: 'cuve',
  restPlace: 'lieu de repos',
  vessel: 'contenant',
  deck: 'étage',
  bench: 'plan de travail',
  hands: 'poste',
};

const PUT_BACK_NAMES: Readonly<Record<FactsOf<'takesBackTwice'>['what'], string>> = {
  scrap: 'chutes de pâte',
  trim: 'rognures',
  oldDough: 'pâte fermentée',
  oldBread: 'pain rassis',
};

/** What cannot be in the formula book, for the one who writes in it. */
export function bookFaultWords(facts: BookFaultFacts): string {
  switch (facts.code) {
    case 'ingredientUnknown':
      return `l’ingrédient «\u00a0${facts.id}\u00a0» n’existe pas`;
    case 'formulaUnknown':
      return `la recette «\u00a0${facts.id}\u00a0» n’existe pas`;
    case 'productUnknown':
      return `le produit «\u00a0${facts.id}\u00a0» n’existe pas`;
    case 'placeUnknown':
      return `le lieu de repos «\u00a0${facts.id}\u00a0» n’existe pas`;
    case 'claimUnknown':
      return `${CLAIM_NAMES[facts.kind]} «\u00a0${facts.id}\u00a0»\u00a0: n’existe pas`;
    case 'slotUnknown':
      return `la place «\u00a0${facts.id}\u00a0» n’existe dans aucun four`;
    case 'secondSpeedMissing':
      return `deuxième vitesse, et ${facts.mixers.join(', ')} n’en a qu’une`;
    case 'stepUnknown':
      return `l’étape «\u00a0${facts.id}\u00a0» n’existe pas`;
    case 'takenIsDough':
      return `«\u00a0${facts.id}\u00a0» est une pâte\u202f; seul un ferment ou une prépa peut entrer`;
    case 'madeOfItself':
      return `«\u00a0${facts.id}\u00a0» se fait avec «\u00a0${facts.into}\u00a0»`;
    case 'notAPrep':
      return `«\u00a0${facts.id}\u00a0» est ${KIND_NAMES[facts.kind]}, pas une prépa`;
    case 'notAdded':
      return `l’étape «\u00a0${facts.step}\u00a0» n’a pas «\u00a0${facts.id}\u00a0» parmi ses ajouts`;
    case 'lettersTaken':
      return `«\u00a0${facts.letters}\u00a0» est déjà à la recette «\u00a0${facts.by}\u00a0»`;
    case 'partUnknown':
      return `«\u00a0${facts.name}\u00a0» n’est pas une partie placée avant celle-ci`;
    case 'partTakenTwice':
      return `«\u00a0${facts.name}\u00a0» est déjà employée`;
    case 'partIdle':
      return `«\u00a0${facts.name}\u00a0» n’entre nulle part`;
    case 'seedOutsideFerment':
      return 'seul un ferment se fait avec ce qu’on en a gardé';
    case 'seedTwice':
      return 'ce qu’on a gardé n’entre qu’une fois';
    case 'seedNotKept':
      return 'il se fait avec ce qu’on en a gardé\u00a0: dire combien reste dans le pot';
    case 'keepsSeed':
      return `seul un ferment garde un chef, et ceci est ${KIND_NAMES[facts.kind]}`;
    case 'keepingOfPreps':
      return `seul une prépa ou un produit dit comment il se conserve, et ceci est ${KIND_NAMES[facts.kind]}`;
    case 'noWeight':
      return 'rien là-dedans ne pèse';
    case 'noFlour':
      return 'une pâte contient de la farine';
    case 'takesBackTwice':
      return `${PUT_BACK_NAMES[facts.what]}\u00a0: deux règles`;
    case 'vesselsUnnamed':
      return 'nommer les contenants, le meilleur d’abord';
    case 'stepNotBefore':
      return `«\u00a0${facts.id}\u00a0» n’est pas une étape placée avant celle-ci`;
    case 'untilBefore':
      return `«\u00a0${facts.id}\u00a0» est finie avant que cette étape commence`;
    case 'lagOrder':
      return `au plus tard (${number(facts.latestMin)} min) tombe avant au plus tôt (${number(facts.earliestMin)} min)`;
    case 'yieldOfOther':
      return 'seule une préparation perd du poids par son rendement\u00a0; la perte à la cuisson est celle du produit';
    case 'ripeningOrder':
      return 'la température minimale est sous la meilleure, et la meilleure sous la maximale, au moins à mi-chemin';
    case 'bakeLast':
      return 'la cuisson ne peut pas être la dernière étape\u00a0: il faut défourner';
    case 'amountUnwritten':
      return `les parties de «\u00a0${facts.formula}\u00a0» ne disent pas combien de «\u00a0${facts.id}\u00a0» entre`;
    case 'addedTooMuch':
      return `les étapes ajoutent ${number(facts.addedG)} g de «\u00a0${facts.id}\u00a0», les parties en ont ${number(facts.hasG)} g`;
    case 'stepOfMethod':
      return `«\u00a0${facts.id}\u00a0» est déjà une étape de la recette «\u00a0${facts.formula}\u00a0»`;
    case 'stepOfProduct':
      return `«\u00a0${facts.id}\u00a0» est déjà une étape du produit «\u00a0${facts.product}\u00a0»`;
    case 'waitsForLater':
      return `elle attend «\u00a0${facts.step}\u00a0», qui ne vient pas avant «\u00a0${facts.joins}\u00a0»`;
    case 'readyAfterWithin':
      return `prête ${number(facts.readyMin)} min avant et commencée au plus ${number(facts.withinMin)} min avant\u00a0: les deux sont impossibles`;
    case 'stepNeeded':
      return `l’étape «\u00a0${facts.id}\u00a0» sert encore à\u00a0: ${facts.by.join(', ')}`;
    case 'lineNeeded':
      return `la quantité de «\u00a0${facts.id}\u00a0» sert encore à\u00a0: ${facts.by.join(', ')}`;
    case 'kindNeeded':
      return `comme ${KIND_NAMES[facts.kind]}, ne peut plus entrer dans\u00a0: ${facts.by.join(', ')}`;
    case 'flourNeeded':
      return `sans cette farine, n’en ont plus\u00a0: ${facts.by.join(', ')}`;
    case 'formsOfYeastOnly':
      return 'seule la levure est fraîche, sèche ou instantanée';
    case 'productOfOther':
      return `«\u00a0${facts.id}\u00a0» se fait avec la recette «\u00a0${facts.formula}\u00a0», pas «\u00a0${facts.wanted}\u00a0»`;
    case 'cutsMissing':
      return 'une pâte demande au moins un produit';
    case 'divideNotLast':
      return `la recette «\u00a0${facts.formula}\u00a0» doit finir par la division avant d’avoir plusieurs produits`;
    case 'divideTwice':
      return `la recette «\u00a0${facts.formula}\u00a0» ne doit diviser qu’une fois, à la fin de sa méthode, avant d’avoir plusieurs produits`;
    case 'atLeast':
      return `au moins ${number(facts.least)}`;
    case 'atMost':
      return `au plus ${number(facts.most)}`;
    case 'textNeeded':
      return 'il faut écrire quelque chose';
    case 'textTooLong':
      return `au plus ${facts.most} caractères`;
    case 'numberNeeded':
      return 'il faut un nombre';
    case 'wholeNeeded':
      return 'nombres entiers seulement';
    case 'oneNeeded':
      return 'au moins un';
    case 'tooMany':
      return `au plus ${facts.most}`;
    case 'choiceNeeded':
      return 'un des choix proposés';
    case 'keyForm':
      return 'minuscules, chiffres et traits d’union, une lettre d’abord, 40 au plus';
    case 'lettersForm':
      return 'une majuscule, suivie au plus d’une minuscule';
    case 'weightNeeded':
      return 'plus que rien';
    case 'earliestAfterTarget':
      return `au plus tôt (${number(facts.earliestMin)} min) tombe après la durée visée (${number(facts.targetMin)} min)`;
    case 'latestBeforeTarget':
      return `au plus tard (${number(facts.latestMin)} min) tombe avant la durée visée (${number(facts.targetMin)} min)`;
    case 'lostBeforeLate':
      return `perdue (${number(facts.lostMin)} min) vient avant en retard (${number(facts.lateMin)} min)`;
    case 'checkNeeded':
      return 'une étape jugée à l’œil demande le contrôle qui la termine';
    case 'phasesNeeded':
      return 'une cuisson demande ses phases';
    case 'phasesDiffer':
      return `les phases durent ${number(facts.sumMin)} min, la durée visée dit ${number(facts.targetMin)} min`;
    case 'phasesOfOther':
      return 'seule une cuisson a des phases';
    case 'additionOfOne':
      return 'un ajout est un ingrédient ou une recette, l’un des deux';
    case 'additionInOneWay':
      return 'un ajout est en pour cent ou en grammes par pièce, pas les deux';
    case 'heldBackFormula':
      return 'seul un ingrédient peut être retenu';
    default:
      return unreachable(facts);
  }
}

function number(value: number): string {
  return decimalComma(value);
}
