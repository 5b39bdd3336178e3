import { readBakehouseFile, type BakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import { NAME_CHARACTERS, REMARK_CHARACTERS } from '../../../shared/documents/names.ts';
import { assert } from '../../../shared/result.ts';

/** Words that take much room, and one that cannot be broken. */
const WORDS = [' with wholemeal and warm water of Wismar', 'wwwmmmWWWMMM@wwwmmmWWWMMM@wwwmmmWWWMMM@wwwmmmWWWMMM@wwwmmm'];
const REMARK = 'Wait until it wobbles warmly when the mould is moved, and swells well above the rim without a mark where it was wetted. ';
/** The widest tag letters. */
const LETTERS: Readonly<Record<string, string>> = { C: 'Wm', R: 'Mm', M: 'Gm', O: 'Om', Ch: 'Qm' };

/** The same house with every name and remark as long as its schema lets it be, and the widest letters. */
export function longNamed(file: BakehouseFile): BakehouseFile {
  const known = new Map<string, string>();
  const longName = (name: string): string => {
    const count = known.size;
    const long =
      known.get(name) ?? `${`${name}${(WORDS[count % 2] ?? '').repeat(3)}`.slice(0, NAME_CHARACTERS - 2)}${String(10 + (count % 90))}`;
    known.set(name, long);
    return long;
  };
  const lengthen = (key: string, value: unknown): unknown => {
    if (Array.isArray(value)) return value.map((one) => lengthen('', one));
    if (typeof value === 'object' && value !== null) {
      return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, lengthen(name, inner)]));
    }
    if (typeof value !== 'string') return value;
    // A part is asked for by its name.
    if (key === 'name' || key === 'part') return longName(value);
    if (key === 'check' || key === 'caution') return REMARK.repeat(3).slice(0, REMARK_CHARACTERS - 1) + '.';
    return key === 'letters' ? (LETTERS[value] ?? value) : value;
  };
  const read = readBakehouseFile(lengthen('', file));
  assert(read.ok, read.ok ? '' : JSON.stringify(read.fault));
  return read.value;
}
