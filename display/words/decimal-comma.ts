/** A number, or a text that begins with one, with the comma that German and French write before a fraction: "0,5", "2,5 kg". */
export function decimalComma(number: number | string): string {
  return String(number).replace(/(\d)\.(\d)/, '$1,$2');
}
