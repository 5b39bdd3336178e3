import type { Verb } from '../../../shared/documents/method.ts';

/** A verb as the screens say it. */
export interface VerbWords {
  /** A call for hands: short, to be read across the room. */
  readonly call: string;
  /** What runs, or comes next. */
  readonly running: string;
  /** What a thumb says: the button reads tag and past tense, "C1 FOLDED". */
  readonly done: string;
}

/** Every verb of the trade; the type makes a missing one an error. */
export const VERBS: Readonly<Record<Verb, VerbWords>> = {
  weigh: { call: 'WEIGH', running: 'weigh out', done: 'WEIGHED OUT' },
  feed: { call: 'FEED', running: 'feed', done: 'FED' },
  ripen: { call: 'RIPEN', running: 'ripen', done: 'RIPENED' },
  add: { call: 'ADD', running: 'add', done: 'ADDED' },
  firstSpeed: { call: '1st SPEED', running: '1st speed', done: '1st SPEED DONE' },
  secondSpeed: { call: '2nd SPEED', running: '2nd speed', done: '2nd SPEED DONE' },
  stand: { call: 'STAND', running: 'stand', done: 'STOOD' },
  turnOut: { call: 'TURN OUT', running: 'turn out', done: 'TURNED OUT' },
  bulk: { call: 'BULK', running: 'bulk', done: 'BULK DONE' },
  fold: { call: 'FOLD', running: 'fold', done: 'FOLDED' },
  divide: { call: 'DIVIDE', running: 'divide', done: 'DIVIDED' },
  scale: { call: 'SCALE', running: 'scale', done: 'SCALED' },
  round: { call: 'ROUND', running: 'round', done: 'ROUNDED' },
  benchRest: { call: 'REST', running: 'bench rest', done: 'RESTED' },
  shape: { call: 'SHAPE', running: 'shape', done: 'SHAPED' },
  tin: { call: 'TIN', running: 'into tins', done: 'IN TINS' },
  fill: { call: 'FILL', running: 'fill', done: 'FILLED' },
  lockIn: { call: 'LOCK IN', running: 'lock in', done: 'LOCKED IN' },
  sheet: { call: 'SHEET', running: 'sheet', done: 'SHEETED' },
  turn: { call: 'TURN', running: 'turn', done: 'TURNED' },
  chill: { call: 'CHILL', running: 'chill', done: 'CHILLED' },
  prove: { call: 'PROVE', running: 'prove', done: 'PROVED' },
  retard: { call: 'RETARD', running: 'retard', done: 'RETARDED' },
  temper: { call: 'TEMPER', running: 'temper', done: 'TEMPERED' },
  top: { call: 'TOP', running: 'top', done: 'TOPPED' },
  wash: { call: 'WASH', running: 'wash', done: 'WASHED' },
  seed: { call: 'SEED', running: 'seed', done: 'SEEDED' },
  dust: { call: 'DUST', running: 'dust', done: 'DUSTED' },
  dock: { call: 'DOCK', running: 'dock', done: 'DOCKED' },
  score: { call: 'SCORE', running: 'score', done: 'SCORED' },
  load: { call: 'LOAD', running: 'load', done: 'LOADED' },
  bake: { call: 'BAKE', running: 'bake', done: 'BAKED' },
  partBake: { call: 'PART-BAKE', running: 'part-bake', done: 'PART-BAKED' },
  bakeOff: { call: 'BAKE OFF', running: 'bake off', done: 'BAKED OFF' },
  takeOut: { call: 'OUT', running: 'take out', done: 'TAKEN OUT' },
  depan: { call: 'DEPAN', running: 'depan', done: 'DEPANNED' },
  cool: { call: 'COOL', running: 'cool', done: 'COOLED' },
  wait: { call: 'GO ON', running: 'wait', done: 'WAITED' },
  glaze: { call: 'GLAZE', running: 'glaze', done: 'GLAZED' },
  slice: { call: 'SLICE', running: 'slice', done: 'SLICED' },
  pack: { call: 'PACK', running: 'pack', done: 'PACKED' },
  cook: { call: 'COOK', running: 'cook', done: 'COOKED' },
  clean: { call: 'CLEAN', running: 'clean', done: 'CLEANED' },
};

/** The call for a judged step that is due: look, rather than do. The step's name stands with it. */
export const CHECK_CALL = 'CHECK';
