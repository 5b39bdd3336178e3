import type { Verb } from '../../../shared/documents/method.ts';
import type { VerbWords } from '../en/verbs.ts';

/** Every verb of the trade; the type makes a missing one an error. */
export const VERBS: Readonly<Record<Verb, VerbWords>> = {
  weigh: { call: 'EINWIEGEN', running: 'einwiegen', done: 'EINGEWOGEN' },
  feed: { call: 'FÜTTERN', running: 'auffrischen', done: 'AUFGEFRISCHT' },
  ripen: { call: 'REIFEN', running: 'reifen', done: 'REIF' },
  add: { call: 'ZUGEBEN', running: 'zugeben', done: 'ZUGEGEBEN' },
  firstSpeed: { call: '1. GANG', running: '1. Gang', done: '1. GANG FERTIG' },
  secondSpeed: { call: '2. GANG', running: '2. Gang', done: '2. GANG FERTIG' },
  stand: { call: 'STEHEN', running: 'stehen', done: 'GESTANDEN' },
  turnOut: { call: 'AUSKIPPEN', running: 'auskippen', done: 'AUSGEKIPPT' },
  bulk: { call: 'STOCKGARE', running: 'Stockgare', done: 'STOCKGARE FERTIG' },
  fold: { call: 'FALTEN', running: 'falten', done: 'GEFALTET' },
  divide: { call: 'TEILEN', running: 'teilen', done: 'GETEILT' },
  scale: { call: 'ABWIEGEN', running: 'abwiegen', done: 'ABGEWOGEN' },
  round: { call: 'WIRKEN', running: 'rundwirken', done: 'RUNDGEWIRKT' },
  benchRest: { call: 'RUHEN', running: 'Zwischengare', done: 'ENTSPANNT' },
  shape: { call: 'FORMEN', running: 'formen', done: 'GEFORMT' },
  tin: { call: 'KÄSTEN', running: 'in Kästen', done: 'IN KÄSTEN' },
  fill: { call: 'FÜLLEN', running: 'füllen', done: 'GEFÜLLT' },
  lockIn: { call: 'BUTTER EIN', running: 'einschlagen', done: 'EINGESCHLAGEN' },
  sheet: { call: 'AUSROLLEN', running: 'ausrollen', done: 'AUSGEROLLT' },
  turn: { call: 'TOUR', running: 'Tour', done: 'TOURIERT' },
  chill: { call: 'KÜHLEN', running: 'kühlen', done: 'GEKÜHLT' },
  prove: { call: 'AUF GARE', running: 'Stückgare', done: 'GARE FERTIG' },
  retard: { call: 'KALTGARE', running: 'kalte Gare', done: 'KALT GEFÜHRT' },
  temper: { call: 'ANWÄRMEN', running: 'temperieren', done: 'TEMPERIERT' },
  top: { call: 'BELEGEN', running: 'belegen', done: 'BELEGT' },
  wash: { call: 'STREICHEN', running: 'abstreichen', done: 'ABGESTRICHEN' },
  seed: { call: 'SAATEN', running: 'bestreuen', done: 'BESTREUT' },
  dust: { call: 'STÄUBEN', running: 'bestäuben', done: 'BESTÄUBT' },
  dock: { call: 'STIPPEN', running: 'stippen', done: 'GESTIPPT' },
  score: { call: 'SCHNITT', running: 'einschneiden', done: 'EINGESCHNITTEN' },
  load: { call: 'EINSCHUSS', running: 'einschießen', done: 'EINGESCHOSSEN' },
  bake: { call: 'BACKEN', running: 'backen', done: 'AUSGEBACKEN' },
  partBake: { call: 'HALBBACKEN', running: 'halbbacken', done: 'HALB GEBACKEN' },
  bakeOff: { call: 'ABBACKEN', running: 'fertigbacken', done: 'FERTIGGEBACKEN' },
  takeOut: { call: 'RAUS', running: 'herausholen', done: 'HERAUSGEHOLT' },
  depan: { call: 'STÜRZEN', running: 'stürzen', done: 'GESTÜRZT' },
  cool: { call: 'AUSKÜHLEN', running: 'auskühlen', done: 'AUSGEKÜHLT' },
  wait: { call: 'WEITER', running: 'warten', done: 'GEWARTET' },
  glaze: { call: 'GLASIEREN', running: 'glasieren', done: 'GLASIERT' },
  slice: { call: 'SCHEIBEN', running: 'aufschneiden', done: 'AUFGESCHNITTEN' },
  // Not "packen": from across the room it reads like "backen".
  pack: { call: 'VERPACKEN', running: 'verpacken', done: 'VERPACKT' },
  cook: { call: 'KOCHEN', running: 'kochen', done: 'GEKOCHT' },
  clean: { call: 'REINIGEN', running: 'reinigen', done: 'GEREINIGT' },
};

/** The call for a judged step that is due: look, rather than do. The step's name stands with it. */
export const CHECK_CALL = 'PRÜFEN';
