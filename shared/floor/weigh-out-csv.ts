import { csvOf, type CsvCell } from '../csv.ts';
import type { Workpiece } from './state.ts';
import type { WeighOut } from './weigh-out.ts';

/** Columns, in English, with their SI units. */
const COLUMNS = [
  'tag',
  'service_date',
  'formula',
  'formula_version',
  'part',
  'line',
  'kind',
  'item',
  'needed_g',
  'division_g',
  'held_back_g',
  'goes_in_at_step',
  'weighed_g',
  'lot_numbers',
  'weighed_at_utc',
] as const;

/** A weigh-out as comma-separated values (RFC 4180), a row for each line; several lot numbers of one line are parted by a space. */
export function weighOutCsv(weighOut: WeighOut, workpiece: Workpiece): string {
  const rows = weighOut.parts.flatMap((part) =>
    part.lines.map((line): readonly CsvCell[] => [
      workpiece.tag,
      workpiece.serviceDate,
      workpiece.formulaId,
      workpiece.formulaVersion,
      part.name,
      line.id,
      line.kind,
      line.name,
      line.grams,
      line.divisionG,
      line.heldBackG,
      line.stepId,
      line.weighed?.grams ?? null,
      line.weighed === null ? null : line.weighed.lotNumbers.join(' '),
      line.weighed === null ? null : new Date(line.weighed.atMs).toISOString(),
    ]),
  );
  return csvOf([COLUMNS, ...rows]);
}
