import type { Step, Verb } from '../../shared/documents/method.ts';

/** How a step usually ends and how long it usually is, in minutes: common practice, to begin from. */
export interface UsualTime {
  readonly kind: Step['kind'];
  readonly targetMin: number;
  readonly earliestMin?: number;
  readonly latestMin?: number;
  readonly perPieceMin?: number;
  readonly lateMin?: number;
  readonly lostMin?: number;
}

/** Common practice of a small bakehouse. */
export const USUAL_TIMES: Readonly<Record<Verb, UsualTime>> = {
  weigh: hands(6, 15),
  feed: hands(4, 30, 240),
  ripen: rest(180, 240, 480),
  add: hands(2, 10),
  firstSpeed: { kind: 'judged', earliestMin: 3, targetMin: 4, latestMin: 7, lateMin: 1, lostMin: 3 },
  secondSpeed: { kind: 'judged', earliestMin: 4, targetMin: 6, latestMin: 9, lateMin: 1, lostMin: 4 },
  stand: rest(15, 20, 45),
  turnOut: hands(2, 5, 25),
  bulk: rest(45, 60, 90),
  fold: hands(2, 10, 30),
  divide: hands(8, 10, 35),
  scale: perPiece(1, 0.3),
  round: perPiece(1, 0.3),
  benchRest: rest(12, 20, 35),
  shape: perPiece(1, 0.5),
  tin: perPiece(1, 0.5),
  fill: perPiece(1, 0.3),
  lockIn: hands(5, 5, 15),
  sheet: hands(4, 5, 15),
  turn: hands(5, 5, 15),
  chill: rest(20, 30, 120),
  prove: rest(40, 60, 85),
  retard: rest(480, 600, 1080),
  temper: { kind: 'judged', earliestMin: 20, targetMin: 40, latestMin: 80, lateMin: 30 },
  top: perPiece(1, 0.3),
  wash: hands(3, 4, 12),
  seed: hands(2, 4, 12),
  dust: hands(1, 4, 12),
  dock: hands(1, 4, 12),
  score: { kind: 'hands', targetMin: 1, perPieceMin: 0.2, lateMin: 3, lostMin: 12 },
  load: hands(2, 5, 15),
  bake: { kind: 'bake', earliestMin: 25, targetMin: 30, latestMin: 38 },
  partBake: { kind: 'bake', earliestMin: 16, targetMin: 20, latestMin: 24 },
  bakeOff: { kind: 'bake', earliestMin: 8, targetMin: 10, latestMin: 14 },
  takeOut: hands(2, 3, 8),
  depan: hands(2, 10),
  cool: { kind: 'timed', earliestMin: 30, targetMin: 60 },
  wait: { kind: 'timed', earliestMin: 0, targetMin: 30, latestMin: 240 },
  glaze: hands(3, 10),
  slice: perPiece(1, 0.2),
  pack: { kind: 'hands', targetMin: 1, perPieceMin: 0.2, lateMin: 30 },
  cook: { kind: 'judged', earliestMin: 8, targetMin: 12, latestMin: 20, lateMin: 2, lostMin: 6 },
  clean: hands(10, 30),
};

function hands(targetMin: number, lateMin: number, lostMin?: number): UsualTime {
  return { kind: 'hands', targetMin, lateMin, ...(lostMin === undefined ? {} : { lostMin }) };
}

function perPiece(targetMin: number, perPieceMin: number): UsualTime {
  return { kind: 'hands', targetMin, perPieceMin, lateMin: 5, lostMin: 20 };
}

function rest(earliestMin: number, targetMin: number, latestMin: number): UsualTime {
  return { kind: 'timed', earliestMin, targetMin, latestMin };
}
