import { z } from 'zod';
import { accepted, refused, type Result } from '../result.ts';
import { boilingPointC } from '../trade/boiling-point.ts';
import type { CalcFault } from '../trade/calc-part.ts';
import { coreLine, coreReachesMin, type CoreReading } from '../trade/core-temperature.ts';
import { finite, readBody } from './read-body.ts';

/** Readings of one core at most. */
const MOST = 1000;
/** Altitudes for which the standard atmosphere is used here, in metres. */
const ALTITUDE_M = { least: -5000, most: 11_000 } as const;

const common = {
  readings: z.array(z.strictObject({ atMin: z.number().min(0), coreC: z.number() })).max(MOST),
  targetC: z.number(),
};
const plateauSchema = z.strictObject({ ...common, plateauC: z.number() });
const altitudeSchema = z.strictObject({ ...common, altitudeM: z.number().min(ALTITUDE_M.least).max(ALTITUDE_M.most) });

const FORMS = ['plateauC', 'altitudeM'];

/** When a core has its target temperature, on the semi-log line to the plateau. */
export function calcCore(body: unknown): Result<object, CalcFault> {
  const forms = typeof body === 'object' && body !== null ? FORMS.filter((key) => Object.hasOwn(body, key)) : ['plateauC'];
  if (forms.length !== 1)
    return refused({ code: 'notExactlyOne', field: forms[1] ?? 'plateauC', message: 'exactly one of plateauC, altitudeM' });
  if (forms[0] === 'plateauC') {
    const read = readBody(plateauSchema, body);
    return read.ok ? reckoned(read.value, read.value.plateauC) : read;
  }
  const read = readBody(altitudeSchema, body);
  return read.ok ? reckoned(read.value, boilingPointC(read.value.altitudeM)) : read;
}

function reckoned(
  { readings, targetC }: { readonly readings: readonly CoreReading[]; readonly targetC: number },
  plateauC: number,
): Result<object, CalcFault> {
  const checked = checkedReadings(readings, plateauC);
  if (!checked.ok) return checked;
  const line = coreLine(checked.value, plateauC);
  const atMin = coreReachesMin(line, targetC);
  return finite({ atMin, fMin: line.fMin, plateauC, reachable: atMin !== null });
}

/** The readings in the order of time. */
function checkedReadings(readings: readonly CoreReading[], plateauC: number): Result<readonly CoreReading[], CalcFault> {
  if (readings.length < 2)
    return refused({ code: 'tooFewReadings', field: 'readings', message: 'two readings or more, at different times' });
  const inOrder = readings.map((reading, index) => ({ ...reading, index })).sort((a, b) => a.atMin - b.atMin);
  for (const [place, { atMin, coreC, index }] of inOrder.entries()) {
    const before = inOrder[place - 1];
    if (before?.atMin === atMin)
      return refused({ code: 'sameTime', field: `readings[${index}].atMin`, message: 'each reading at a time of its own' });
    if (before !== undefined && before.coreC >= coreC)
      return refused({ code: 'notRising', field: `readings[${index}].coreC`, message: `above ${before.coreC}, which was read before it` });
    if (coreC >= plateauC)
      return refused({ code: 'outOfRange', field: `readings[${index}].coreC`, message: `below the plateau of ${plateauC}` });
  }
  return accepted(inOrder);
}
