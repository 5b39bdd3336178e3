import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { verbSchema, type Step } from '../../shared/documents/method.ts';
import { NAME_CHARACTERS, REMARK_CHARACTERS } from '../../shared/documents/names.ts';
import { numberField, plainMeasure, temperatureMeasure, type Field, type Units } from '../desk/field.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { METHOD, STEP_KINDS, STEP_LABELS, VERB_GROUPS, type VerbGroup } from '../words/method.ts';
import { VERBS } from '../words/verbs.ts';
import { namesOf } from './step-names.ts';
import { verbsOf } from './verb-groups.ts';

const WEEK_MIN = 7 * 24 * 60;
const MINUTES = plainMeasure(UNITS.minutes);
const GROUPS = Object.keys(VERB_GROUPS) as VerbGroup[];

/** Every verb under the heading of its part of the work. */
export const VERB_CHOICES: Readonly<Record<string, Readonly<Record<string, string>>>> = Object.fromEntries(
  GROUPS.map((group) => [VERB_GROUPS[group], Object.fromEntries(verbsOf(group).map((verb) => [verb, VERBS[verb].running]))]),
);

/** What a step does and how it ends. */
export const VERB_FIELD: Field = { key: 'verb', label: STEP_LABELS.verb, kind: 'one', options: {}, groups: VERB_CHOICES };
export const KIND_FIELD: Field = { key: 'kind', label: STEP_LABELS.kind, kind: 'one', options: STEP_KINDS };

/** How long a step lasts, as far as its kind asks for it; what is there is shown in any kind. */
export function timeFields({ kind, minutes, minutesPerPiece }: Step): readonly Field[] {
  const isWork = kind === 'hands';
  return [
    ...(isWork && minutes.earliest === undefined
      ? []
      : [numberField('minutes.earliest', STEP_LABELS.earliest, MINUTES, 0, WEEK_MIN, 'optional')]),
    numberField('minutes.target', isWork ? METHOD.targetOfHands : STEP_LABELS.target, MINUTES, 0, WEEK_MIN),
    ...(isWork && minutes.latest === undefined
      ? []
      : [numberField('minutes.latest', STEP_LABELS.latest, MINUTES, 0, WEEK_MIN, 'optional')]),
    ...(isWork || minutesPerPiece !== undefined
      ? [numberField('minutesPerPiece', STEP_LABELS.minutesPerPiece, MINUTES, 0, WEEK_MIN, 'optional')]
      : []),
    numberField('toleranceMin.late', STEP_LABELS.late, MINUTES, 0, WEEK_MIN),
    numberField('toleranceMin.lost', STEP_LABELS.lost, MINUTES, 0, WEEK_MIN, 'optional'),
  ];
}

/** What to look for, and what to take care of. */
export function lookFields({ kind }: Step): readonly Field[] {
  const hint = kind === 'judged' ? { hint: METHOD.checkNeededHint } : {};
  return [
    { key: 'check', label: STEP_LABELS.check, kind: 'text', most: REMARK_CHARACTERS, isLong: true, ...hint },
    { key: 'caution', label: STEP_LABELS.caution, kind: 'text', most: REMARK_CHARACTERS, isLong: true, hint: METHOD.cautionHint },
  ];
}

/** Whose work it is, and where the dough stands meanwhile. */
export function whereFields(kitchen: Kitchen): readonly Field[] {
  return [
    { key: 'station', label: STEP_LABELS.station, kind: 'one', options: { '': METHOD.none, ...namesOf(kitchen.stations) } },
    { key: 'place', label: STEP_LABELS.place, kind: 'one', options: { '': METHOD.anyPlace, ...namesOf(kitchen.restPlaces) } },
  ];
}

/** The core temperature, where one means something. */
export function coreFields({ kind, verb, coreC }: Step, units: Units): readonly Field[] {
  return kind === 'bake' || verb === 'cook' || coreC !== undefined
    ? [numberField('coreC', STEP_LABELS.coreC, temperatureMeasure(units), -40, 600, 'optional')]
    : [];
}

/** What is left of a prep when it is cooked. */
export function yieldFields({ verb, yieldPct }: Step): readonly Field[] {
  return verb === 'cook' || yieldPct !== undefined
    ? [numberField('yieldPct', STEP_LABELS.yieldPct, plainMeasure('%'), 1, 100, 'optional')]
    : [];
}

export const BEGINS_FIELD: Field = { key: 'beginsByItself', label: STEP_LABELS.beginsByItself, kind: 'yes' };
export const LEAVE_OUT_FIELD: Field = { key: 'leaveOut', label: STEP_LABELS.leaveOut, kind: 'text', most: NAME_CHARACTERS };

/** Whether a text names a verb. */
export function isVerb(text: string): text is Step['verb'] {
  return verbSchema.safeParse(text).success;
}
