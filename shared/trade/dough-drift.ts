/** Where a dough stands, as its temperature feels it. */
export interface Surroundings {
  /** Of the air, in °C; null where nothing is known of it: then the dough keeps its temperature, but for its own heat. */
  readonly ambientC: number | null;
  /** Time constant of dough and container there, in minutes, more than 0: after it 63 % of the way to the air is gone. */
  readonly tauMin: number;
  /** By how much the dough would warm by itself, in kelvin an hour: 1 to 2 in kilograms of bulk at room temperature (baeckerlatein). */
  readonly selfHeatKPerH: number;
}

/** A dough temperature from an instant on, as long as it stands where it does. */
export interface Drift extends Surroundings {
  readonly doughC: number;
}

/**
 * Where a drift leads to, in °C: the air, and what the dough's own heat holds above it. Newton's law of cooling with a source:
 * dT/dt = (ambient − T) ÷ τ + heat. Null where there is no such temperature.
 */
export function settlesAtC({ ambientC, tauMin, selfHeatKPerH }: Surroundings): number | null {
  return ambientC === null ? null : ambientC + (selfHeatKPerH / 60) * tauMin;
}

/** The dough's temperature, in °C, so many minutes (0 or more) after a drift began. */
export function driftedC(drift: Drift, afterMin: number): number {
  const endC = settlesAtC(drift);
  if (endC === null) return drift.doughC + (drift.selfHeatKPerH / 60) * afterMin;
  return endC + (drift.doughC - endC) * Math.exp(-afterMin / drift.tauMin);
}

/**
 * How many minutes after it began a drift passes a temperature; null where it never does. A drift goes one way, so it passes each once
 * at most.
 */
export function minutesUntilC(drift: Drift, passedC: number): number | null {
  if (passedC === drift.doughC) return 0;
  const endC = settlesAtC(drift);
  if (endC === null) {
    const minutes = (passedC - drift.doughC) / (drift.selfHeatKPerH / 60);
    return Number.isFinite(minutes) && minutes > 0 ? minutes : null;
  }
  const share = (passedC - endC) / (drift.doughC - endC);
  return share > 0 && share < 1 ? -drift.tauMin * Math.log(share) : null;
}
