import { riseEstimate, type RiseEstimate, type RiseReading } from './rise-estimate.ts';

/** A mixer's dough that was measured: of which formula, how heavy (grams), and by how much it warmed (kelvin). */
export interface MixerReading extends RiseReading {
  readonly formulaId: string;
  readonly loadG: number;
}

/** From where an expected rise is: this formula at such a load, this formula, this mixer, the mixer's own papers, or custom. */
export type RiseFrom = 'load' | 'formula' | 'mixer' | 'document' | 'custom';

export interface ExpectedRise extends RiseEstimate {
  readonly from: RiseFrom;
}

/** Doughs warm by 3 to 5 K in normal mixing: the middle of it, until anybody knows better. Common practice. */
export const CUSTOMARY_RISE_K = 4;
/** Loads whose ratio is nearer than this count as alike. */
const ALIKE_RATIO = 1.5;

/**
 * By how much a mixer will warm a dough, in kelvin: from its readings with this formula at about this load, which begin from those
 * with this formula, which begin from all of the mixer's, which begin from what its document says (`documentRiseK`).
 */
export function expectedRise({
  readings,
  formulaId,
  loadG,
  documentRiseK,
}: {
  readonly readings: readonly MixerReading[];
  readonly formulaId: string;
  readonly loadG: number;
  readonly documentRiseK: number | null;
}): ExpectedRise {
  const ofFormula = readings.filter((reading) => reading.formulaId === formulaId);
  const levels: readonly (readonly [RiseFrom, readonly MixerReading[]])[] = [
    ['mixer', readings],
    ['formula', ofFormula],
    ['load', ofFormula.filter((reading) => isAlike(reading.loadG, loadG))],
  ];
  let known: ExpectedRise = documentRiseK === null ? bare(CUSTOMARY_RISE_K, 'custom') : bare(documentRiseK, 'document');
  for (const [from, level] of levels) {
    if (level.length === 0) break;
    // Custom is no reading: it gives way to the first that is one.
    const estimate = riseEstimate(level, known.from === 'custom' ? null : known);
    if (estimate !== null) known = { ...estimate, from };
  }
  return known;
}

function bare(riseK: number, from: RiseFrom): ExpectedRise {
  return { riseK, spreadK: null, count: 0, from };
}

function isAlike(aG: number, bG: number): boolean {
  return Math.max(aG, bG) <= Math.min(aG, bG) * ALIKE_RATIO;
}
