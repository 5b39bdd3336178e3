/** Digits are read out in two halves. */
const HALF = 3;

/** The six digits that let a device in, as they are shown: "483 201". */
export function digitsText(code: string): string {
  return `${code.slice(0, HALF)} ${code.slice(HALF)}`;
}
