/** A number with the comma of French before its decimals. */
export function decimalComma(value: number): string {
  return String(value).replace('.', ',');
}
