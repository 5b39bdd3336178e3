import { encode } from 'uqr';

/** ISO/IEC 18004 (from memory): so many light modules must stand round the code. */
export const QUIET_MODULES = 4;

/** A QR code as one path. Its unit is the module; the quiet zone is part of the square. */
export interface QrPath {
  /** Modules from edge to edge, the quiet zone with them. */
  readonly modules: number;
  /** All dark modules, run by run of each row. */
  readonly path: string;
}

/** The QR code of a text at error correction M, which bears some flour on the glass. Throws where the text is too long for any code. */
export function qrPathOf(text: string): QrPath {
  const { data, size } = encode(text, { ecc: 'M', border: 0 });
  const runs = data.flatMap((row, y) =>
    runsOf(row).map(([x, length]) => `M${x + QUIET_MODULES} ${y + QUIET_MODULES}h${length}v1h-${length}z`),
  );
  return { modules: size + 2 * QUIET_MODULES, path: runs.join('') };
}

/** Where dark modules begin in a row, and how many follow. */
function runsOf(row: readonly boolean[]): (readonly [number, number])[] {
  const runs: (readonly [number, number])[] = [];
  let x = 0;
  while (x < row.length) {
    const from = x;
    while (row[x] === true) x += 1;
    if (x > from) runs.push([from, x - from]);
    else x += 1;
  }
  return runs;
}
