import type { Verb } from '../../../shared/documents/method.ts';
import type { VerbWords } from '../en/verbs.ts';

/**
 * Every verb of the trade; the type makes a missing one an error. What runs is a noun, which goes with "début", "fin"
 * and "sans" alike; what is done is masculine, whatever the dough is called.
 */
export const VERBS: Readonly<Record<Verb, VerbWords>> = {
  weigh: { call: 'PESER', running: 'pesée', done: 'PESÉ' },
  feed: { call: 'RAFRAÎCHIR', running: 'rafraîchi', done: 'RAFRAÎCHI' },
  ripen: { call: 'MÛRIR', running: 'maturation', done: 'MÛR' },
  add: { call: 'AJOUTER', running: 'ajout', done: 'AJOUTÉ' },
  firstSpeed: { call: 'FRASER', running: 'frasage', done: 'FRASÉ' },
  secondSpeed: { call: '2e VITESSE', running: '2e vitesse', done: '2e VITESSE FAITE' },
  stand: { call: 'REPOS', running: 'repos en cuve', done: 'REPOSÉ' },
  turnOut: { call: 'VIDER CUVE', running: 'sortie de cuve', done: 'SORTI DE CUVE' },
  bulk: { call: 'POINTAGE', running: 'pointage', done: 'POINTAGE FINI' },
  fold: { call: 'RABATTRE', running: 'rabat', done: 'RABATTU' },
  divide: { call: 'DIVISER', running: 'division', done: 'DIVISÉ' },
  // Not PESER again: that is what is weighed into the bowl.
  scale: { call: 'DÉTAILLER', running: 'détaillage', done: 'DÉTAILLÉ' },
  round: { call: 'BOULER', running: 'boulage', done: 'BOULÉ' },
  benchRest: { call: 'DÉTENTE', running: 'détente', done: 'DÉTENDU' },
  shape: { call: 'FAÇONNER', running: 'façonnage', done: 'FAÇONNÉ' },
  // Not MOULER: across the room it reads as BOULER.
  tin: { call: 'EN MOULES', running: 'mise en moules', done: 'MIS EN MOULES' },
  fill: { call: 'FOURRER', running: 'fourrage', done: 'FOURRÉ' },
  // Not ENFERMER: across the room it reads as ENFOURNER.
  lockIn: { call: 'BEURRAGE', running: 'beurrage', done: 'BEURRE ENFERMÉ' },
  sheet: { call: 'ABAISSER', running: 'abaissage', done: 'ABAISSÉ' },
  turn: { call: 'TOURER', running: 'tour', done: 'TOURÉ' },
  chill: { call: 'AU FROID', running: 'mise au froid', done: 'REFROIDI' },
  prove: { call: 'APPRÊT', running: 'apprêt', done: 'APPRÊT FINI' },
  retard: { call: 'BLOCAGE', running: 'blocage', done: 'BLOCAGE FINI' },
  temper: { call: 'TEMPÉRER', running: 'tempérage', done: 'À TEMPÉRATURE' },
  top: { call: 'GARNIR', running: 'garnissage', done: 'GARNI' },
  wash: { call: 'DORER', running: 'dorure', done: 'DORÉ' },
  seed: { call: 'GRAINER', running: 'grainage', done: 'GRAINÉ' },
  dust: { call: 'FARINER', running: 'farinage', done: 'FARINÉ' },
  dock: { call: 'PIQUER', running: 'piquage', done: 'PIQUÉ' },
  score: { call: 'LAMER', running: 'coup de lame', done: 'LAMÉ' },
  load: { call: 'ENFOURNER', running: 'enfournement', done: 'ENFOURNÉ' },
  bake: { call: 'CUISSON', running: 'cuisson', done: 'CUIT' },
  partBake: { call: 'PRÉCUIRE', running: 'précuisson', done: 'PRÉCUIT' },
  bakeOff: { call: 'RECUIRE', running: 'recuisson', done: 'CUISSON FINIE' },
  // Not DÉFOURNER: across the room it reads as ENFOURNER.
  takeOut: { call: 'SORTIR', running: 'défournement', done: 'DÉFOURNÉ' },
  depan: { call: 'DÉMOULER', running: 'démoulage', done: 'DÉMOULÉ' },
  cool: { call: 'RESSUAGE', running: 'ressuage', done: 'RESSUÉ' },
  wait: { call: 'CONTINUER', running: 'attente', done: 'ATTENTE FINIE' },
  glaze: { call: 'GLACER', running: 'glaçage', done: 'GLACÉ' },
  slice: { call: 'TRANCHER', running: 'tranchage', done: 'TRANCHÉ' },
  pack: { call: 'EMBALLER', running: 'emballage', done: 'EMBALLÉ' },
  // Not CUIRE: that is said of bread.
  cook: { call: 'CUISINER', running: 'cuisine', done: 'CUISINÉ' },
  clean: { call: 'NETTOYER', running: 'nettoyage', done: 'NETTOYÉ' },
};

/** The call for a judged step that is due: look, rather than do. The step's name stands with it. */
export const CHECK_CALL = 'VÉRIFIER';
