/** What a column holds. A `yesNo` is 0 or 1, a `date` is YYYY-MM-DD, an `instant` is ISO 8601 in UTC with milliseconds. */
export type ColumnType = 'text' | 'integer' | 'number' | 'yesNo' | 'date' | 'instant';
/** What a number counts; null where it counts nothing that has a unit. The column's name ends in it: `_g`, `_c`, `_min`. */
export type ColumnUnit = 'g' | '°C' | 'min' | null;

/** One column of a table for others. */
export interface TableColumn {
  readonly name: string;
  readonly type: ColumnType;
  readonly unit: ColumnUnit;
  /** Whether it may be empty. */
  readonly mayBeEmpty: boolean;
  readonly says: string;
}

/** A table of the records as others read it: a view of `records.db`, and a file that can be downloaded. */
export interface TableDescription {
  readonly name: string;
  readonly says: string;
  /** The column by which a period is meant: a service date, or an instant, which counts by its date in the house's zone; null: always whole. */
  readonly periodBy: string | null;
  readonly columns: readonly TableColumn[];
}

type Make = (name: string, says: string) => TableColumn;
const made =
  (type: ColumnType, unit: ColumnUnit = null): Make =>
  (name, says) => ({ name, type, unit, mayBeEmpty: false, says });
const text = made('text');
const count = made('integer');
const ratio = made('number');
const yesNo = made('yesNo');
const date = made('date');
const instant = made('instant');
const grams = made('number', 'g');
const minutes = made('number', 'min');
const celsius = made('number', '°C');
const orEmpty = (column: TableColumn): TableColumn => ({ ...column, mayBeEmpty: true });

const event = count('event', 'number of the journal’s event that says so');
const ofBatch: readonly TableColumn[] = [
  text('batch_id', 'which batch, prep, pot, cut or load'),
  text('tag', 'its tag, as C2 or C2-a'),
  date('service_date', 'the day that it serves'),
];
const step = text('step', 'which step of its way');

/**
 * Every table that the records hold for others: for a spreadsheet, a download, or any tool that reads SQLite. Ids are the journal's; places,
 * stations, mixers and ingredients go by the keys that their documents gave them, devices by ids without names.
 */
export const RECORD_TABLES: readonly TableDescription[] = [
  {
    name: 'batches',
    says: 'Every batch, prep, pot, cut and load, as it stands or as it ended.',
    periodBy: 'service_date',
    columns: [
      ...ofBatch,
      text('kind', 'batch, prep, ferment (a pot), cut or load'),
      text('formula_id', 'by which formula'),
      orEmpty(text('formula_name', 'its name in that version')),
      count('formula_version', 'in which version'),
      orEmpty(text('product_id', 'what it becomes')),
      orEmpty(text('product_name', 'its name in that version')),
      orEmpty(count('product_version', 'in which version')),
      orEmpty(text('parent_batch_id', 'what it was divided from')),
      text('whole_batch_id', 'the batch that it is part of, itself where it is none'),
      instant('planned_start_at', 'when it was to begin'),
      orEmpty(instant('started_at', 'when it began')),
      orEmpty(instant('ended_at', 'when it was done, divided or given up')),
      orEmpty(text('ending', 'finished, divided or discarded')),
      grams('dough_g', 'what it weighs'),
      grams('scaled_to_g', 'what it was scaled to'),
      grams('scrap_g', 'scrap that it has and that may be put back'),
      orEmpty(count('pieces', 'how many pieces it has')),
      orEmpty(count('planned_pieces', 'how many it was to have')),
      text('allergens', 'what is in it that has to be named, with spaces between'),
    ],
  },
  {
    name: 'batch_steps',
    says: 'Every step that was begun, planned against actual.',
    periodBy: 'service_date',
    columns: [
      ...ofBatch,
      text('formula_id', 'by which formula'),
      count('feed', 'how often a pot had been fed before; 0 for everything else'),
      step,
      count('position', 'its place in the way, from 0; -1 where the way has it no more'),
      text('verb', 'what is done'),
      text('kind', 'what kind of step it is'),
      text('status', 'started, done or skipped'),
      orEmpty(instant('started_at', 'when it began')),
      orEmpty(instant('ended_at', 'when it was done')),
      orEmpty(minutes('took_min', 'from its beginning to its end')),
      orEmpty(instant('planned_start_at', 'when the plan had it begin')),
      orEmpty(instant('planned_end_at', 'when the plan had it end')),
      orEmpty(minutes('earliest_min', 'the least that it takes, as it was when it began')),
      orEmpty(minutes('target_min', 'what it should take')),
      orEmpty(minutes('latest_min', 'the most that it may take')),
      orEmpty(ratio('ripening_factor', 'by which its minutes were multiplied for what was learned')),
      minutes('more_time_min', 'what was given on top'),
      orEmpty(text('station', 'where it was tapped')),
      text('helpers', 'stations that helped, with spaces between'),
      orEmpty(text('started_by', 'device that began it')),
      orEmpty(text('ended_by', 'device that ended it')),
      orEmpty(count('pieces', 'pieces done so far')),
      yesNo('is_inferred', 'nobody tapped it: it follows from what was taken'),
      orEmpty(text('place', 'where the dough stood for most of it')),
    ],
  },
  {
    name: 'ingredient_lots',
    says: 'Every lot number that was weighed or added into something.',
    periodBy: 'service_date',
    columns: [
      event,
      ...ofBatch,
      text('ingredient_id', 'of which ingredient'),
      text('lot_number', 'as it was scanned or typed'),
      orEmpty(text('line', 'line of the weigh-out; empty for what was added later')),
      grams('weight_g', 'how much; a line of several lots is shared evenly'),
      instant('weighed_at', 'when'),
      yesNo('is_replaced', 'the line was weighed anew or taken back: it does not count'),
    ],
  },
  {
    name: 'draws',
    says: 'What went from where into what: divided, made into loads, joined, drawn, put back, fed.',
    periodBy: 'service_date',
    columns: [
      event,
      text('kind', 'divide, load, join, draw, putBack or feed (a pot into itself)'),
      text('from_batch_id', 'what it was taken from'),
      text('from_tag', 'its tag'),
      text('into_batch_id', 'what it went into'),
      text('into_tag', 'its tag'),
      date('service_date', 'the day that what it went into serves'),
      grams('weight_g', 'how much; of a feed, flour and water'),
      instant('drawn_at', 'when'),
    ],
  },
  {
    name: 'temperatures',
    says: 'Every temperature that was read of a dough.',
    periodBy: 'service_date',
    columns: [
      event,
      ...ofBatch,
      text('read_of', 'what was read: dough, core, …'),
      celsius('temperature_c', 'as read'),
      instant('read_at', 'when'),
    ],
  },
  {
    name: 'losses_named',
    says: 'What was lost and named.',
    periodBy: 'service_date',
    columns: [
      event,
      ...ofBatch,
      text('what', 'what was lost, or seed: what a feed threw away'),
      grams('weight_g', 'how much'),
      orEmpty(count('pieces', 'how many pieces')),
      instant('named_at', 'when'),
    ],
  },
  {
    name: 'time_given',
    says: 'Every time that a step was given a little more.',
    periodBy: 'service_date',
    columns: [event, ...ofBatch, step, minutes('more_min', 'how much more'), instant('given_at', 'when')],
  },
  {
    name: 'holds_made',
    says: 'Every call that was put off.',
    periodBy: 'service_date',
    columns: [
      event,
      ...ofBatch,
      step,
      instant('held_at', 'when'),
      instant('held_until_at', 'until when'),
      orEmpty(instant('released_at', 'when somebody lifted it before that')),
    ],
  },
  {
    name: 'corrections_made',
    says: 'What was said first and what it was corrected to.',
    periodBy: 'service_date',
    columns: [
      event,
      ...ofBatch,
      orEmpty(step),
      text('what', 'start or end (a step’s instant), count or tag'),
      text('was', 'what stood there; an instant as ISO 8601 in UTC'),
      text('became', 'what stands there now'),
      instant('corrected_at', 'when'),
      text('device_id', 'by which device'),
    ],
  },
  {
    name: 'reasons_given',
    says: 'Why something was left out, given up, used past its limit or counted anew.',
    periodBy: 'service_date',
    columns: [
      event,
      ...ofBatch,
      orEmpty(step),
      text('what', 'skipped, discarded, usedPastLimit or counted'),
      text('reason', 'in the words of whoever said it'),
      instant('given_at', 'when'),
    ],
  },
  {
    name: 'resources_used',
    says: 'Which mixer, place or oven a step took when it began.',
    periodBy: 'service_date',
    columns: [
      event,
      ...ofBatch,
      step,
      text('kind', 'what kind of resource'),
      text('resource_id', 'which one'),
      instant('used_at', 'from when'),
    ],
  },
  {
    name: 'oven_loads_baked',
    says: 'What was in which slots of the oven, from when to when.',
    periodBy: 'service_date',
    columns: [
      event,
      ...ofBatch,
      step,
      text('slots', 'slots of the oven, with spaces between'),
      orEmpty(count('pieces', 'how many pieces')),
      instant('loaded_at', 'when it went in'),
      orEmpty(instant('unloaded_at', 'when it came out')),
      orEmpty(minutes('baked_min', 'how long it was in')),
    ],
  },
  {
    name: 'calls_raised',
    says: 'Every call: when it was due, raised, heard, and what became of it.',
    periodBy: 'service_date',
    columns: [
      event,
      ...ofBatch,
      step,
      text('level', 'call, late or lost'),
      instant('due_at', 'when the step was due'),
      instant('raised_at', 'when the call was raised'),
      orEmpty(instant('heard_at', 'when somebody said that they heard it')),
      orEmpty(instant('ended_at', 'when it went away')),
      orEmpty(text('became', 'done, stronger (a later level took its place) or undone')),
      orEmpty(minutes('open_min', 'from raised to its end')),
      count('sounded_count', 'how often it sounded'),
    ],
  },
  {
    name: 'steps_moved',
    says: 'Every step that a new plan moved, and because of what.',
    periodBy: 'service_date',
    columns: [
      event,
      ...ofBatch,
      step,
      instant('moved_from_at', 'when it was to begin'),
      instant('moved_to_at', 'when it was to begin from then on'),
      orEmpty(text('because', 'what moved it')),
      orEmpty(text('because_id', 'the resource or batch that moved it')),
      orEmpty(instant('planned_at', 'when the plan was adopted')),
    ],
  },
  {
    name: 'orders_placed',
    says: 'Orders as they stand now.',
    periodBy: 'service_date',
    columns: [
      count('event', 'number of the event that last changed it'),
      text('order_id', 'which order'),
      date('service_date', 'for which day'),
      text('product_id', 'what'),
      orEmpty(text('product_name', 'its newest name')),
      count('pieces', 'how many'),
      instant('ready_at', 'by when'),
      yesNo('is_withdrawn', 'it was taken back'),
    ],
  },
  {
    name: 'days',
    says: 'One row a service date, with what was made, lost and called.',
    periodBy: 'service_date',
    columns: [
      date('service_date', 'the day'),
      yesNo('is_closed', 'somebody ended it'),
      count('batches', 'batches of the day, without their cuts and loads'),
      count('preps', 'preps'),
      count('discarded', 'batches, preps, cuts and loads given up'),
      grams('dough_g', 'what its batches were scaled to'),
      grams('lost_g', 'what was named as lost'),
      count('calls', 'calls raised, of the first level'),
      count('late_calls', 'calls that got late or worse'),
      count('orders', 'orders that stand'),
      count('pieces_ordered', 'pieces in them'),
    ],
  },
  {
    name: 'learned_samples',
    says: 'What the house learned of itself, a sample a row.',
    periodBy: 'learned_at',
    columns: [
      event,
      text(
        'kind',
        'rise (kelvins that a mixer warms a dough), ripeness (factor on a rest’s minutes) or slotHeat (share of a bake’s minutes)',
      ),
      text('subject', 'of what: a mixer, a formula, slots'),
      orEmpty(text('formula_id', 'with which formula')),
      orEmpty(text('step', 'in which step, or bake of which kind')),
      orEmpty(text('batch_id', 'of which batch')),
      orEmpty(grams('load_g', 'with how much in the mixer')),
      ratio('value', 'kelvins, factor or share, by its kind'),
      instant('learned_at', 'when'),
    ],
  },
  {
    name: 'documents_adopted',
    says: 'Every version of formulas, products, kitchen, house and ingredients that was taken in.',
    periodBy: null,
    columns: [
      event,
      text('kind', 'formula, product, kitchen, house or ingredients'),
      text('document_id', 'which one'),
      count('version', 'in which version'),
      text('name', 'its name; empty where it has none'),
    ],
  },
];

/** The names of all tables, in their order. */
export const TABLE_NAMES: readonly string[] = RECORD_TABLES.map(({ name }) => name);

/** One table by its name; undefined where there is none. */
export function tableNamed(name: string): TableDescription | undefined {
  return RECORD_TABLES.find((table) => table.name === name);
}
