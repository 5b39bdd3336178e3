/** Grams as a scale of the bench shows them. */
export function toTenth(grams: number): number {
  return Math.round(grams * 10) / 10;
}

/** Grams of which there must be enough, never less than they are. */
export function upToTenth(grams: number): number {
  return Math.ceil(grams * 10 - 1e-6) / 10;
}

/** Grams that are there, never shown as more than they are. */
export function downToTenth(grams: number): number {
  return Math.floor(grams * 10 + 1e-6) / 10;
}
