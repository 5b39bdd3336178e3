import { RECORD_TABLES, type TableDescription } from '../../shared/records/tables.ts';
import { assert } from '../../shared/result.ts';

/** Where a table's columns come from, in SQL. Instants are given in ms, and so is what a period by instants is held against. */
export interface TableSource {
  readonly from: string;
  /** What a period is held against; null: the table is always whole. */
  readonly period: string | null;
  readonly columns: Readonly<Record<string, string>>;
}

/** An instant in ms as ISO 8601 in UTC. */
function iso(ms: string): string {
  return `strftime('%Y-%m-%dT%H:%M:%fZ', ${ms} / 1000.0, 'unixepoch')`;
}

function minutesBetween(fromMs: string, toMs: string): string {
  return `(${toMs} - ${fromMs}) / 60000.0`;
}

/** A corrected value: of a step's edge an instant, of anything else what was said. */
function corrected(column: string): string {
  return `CASE WHEN f.what IN ('start', 'end') THEN ${iso(`CAST(${column} AS INTEGER)`)} ELSE ${column} END`;
}

function nameOf(kind: string, id: string, version: string): string {
  return `(SELECT d.name FROM documents d WHERE d.kind = '${kind}' AND d.id = ${id} AND d.version = ${version} LIMIT 1)`;
}

function ofDay(what: string, from: string, condition: string): string {
  return `(SELECT ${what} FROM ${from} WHERE ${condition})`;
}

const OF_BATCH = { batch_id: 'w.id', tag: 'w.tag', service_date: 'w.service_date' } as const;
const BY_DAY = 'w.service_date';

/** A table of facts, each of one workpiece. */
function facts(table: string, columns: Readonly<Record<string, string>>): TableSource {
  return {
    from: `${table} f JOIN workpieces w ON w.number = f.workpiece`,
    period: BY_DAY,
    columns: { event: 'f.sequence', ...OF_BATCH, ...columns },
  };
}

const SOURCES: Readonly<Record<string, TableSource>> = {
  batches: {
    from: 'workpieces w',
    period: BY_DAY,
    columns: {
      ...OF_BATCH,
      kind: 'w.kind',
      formula_id: 'w.formula',
      formula_name: nameOf('formula', 'w.formula', 'w.formula_version'),
      formula_version: 'w.formula_version',
      product_id: 'w.product',
      product_name: nameOf('product', 'w.product', 'w.product_version'),
      product_version: 'w.product_version',
      parent_batch_id: '(SELECT p.id FROM workpieces p WHERE p.number = w.parent)',
      whole_batch_id: '(SELECT r.id FROM workpieces r WHERE r.number = w.root)',
      planned_start_at: 'w.planned_start_ms',
      started_at: 'w.started_ms',
      ended_at: 'w.ended_ms',
      ending: 'w.ending',
      dough_g: 'w.grams',
      scaled_to_g: 'w.scaled_to_g',
      scrap_g: 'w.scrap_g',
      pieces: 'w.pieces',
      planned_pieces: 'w.planned_pieces',
      allergens: 'w.allergens',
    },
  },
  batch_steps: {
    from: 'steps s JOIN workpieces w ON w.number = s.workpiece',
    period: BY_DAY,
    columns: {
      ...OF_BATCH,
      formula_id: 'w.formula',
      feed: 's.round',
      step: 's.step',
      position: 's.position',
      verb: 's.verb',
      kind: 's.kind',
      status: 's.status',
      started_at: 's.started_ms',
      ended_at: 's.ended_ms',
      took_min: minutesBetween('s.started_ms', 's.ended_ms'),
      planned_start_at: 's.planned_start_ms',
      planned_end_at: 's.planned_end_ms',
      earliest_min: 's.earliest_min',
      target_min: 's.target_min',
      latest_min: 's.latest_min',
      ripening_factor: 's.factor',
      more_time_min: 's.more_min',
      station: 's.station',
      helpers: 's.helpers',
      started_by: 's.started_by',
      ended_by: 's.ended_by',
      pieces: 's.pieces',
      is_inferred: 's.inferred',
      place: 's.place',
    },
  },
  ingredient_lots: facts('lots', {
    ingredient_id: 'f.ingredient',
    lot_number: 'f.lot',
    line: 'f.line',
    weight_g: 'f.grams',
    weighed_at: 'f.at_ms',
    is_replaced: 'f.replaced_by IS NOT NULL',
  }),
  draws: {
    from: 'edges e JOIN workpieces w ON w.number = e.target JOIN workpieces o ON o.number = e.source',
    period: BY_DAY,
    columns: {
      event: 'e.sequence',
      kind: 'e.kind',
      from_batch_id: 'o.id',
      from_tag: 'o.tag',
      into_batch_id: 'w.id',
      into_tag: 'w.tag',
      service_date: 'w.service_date',
      weight_g: 'e.grams',
      drawn_at: 'e.at_ms',
    },
  },
  temperatures: facts('readings', { read_of: 'f.place', temperature_c: 'f.celsius', read_at: 'f.at_ms' }),
  losses_named: facts('losses', { what: 'f.what', weight_g: 'f.grams', pieces: 'f.pieces', named_at: 'f.at_ms' }),
  time_given: facts('more_time', { step: 'f.step', more_min: 'f.minutes', given_at: 'f.at_ms' }),
  holds_made: facts('holds', { step: 'f.step', held_at: 'f.at_ms', held_until_at: 'f.until_ms', released_at: 'f.released_ms' }),
  corrections_made: facts('corrections', {
    step: 'f.step',
    what: 'f.what',
    was: corrected('f.was'),
    became: corrected('f.became'),
    corrected_at: 'f.at_ms',
    device_id: 'f.device',
  }),
  reasons_given: facts('reasons', { step: 'f.step', what: 'f.what', reason: 'f.reason', given_at: 'f.at_ms' }),
  resources_used: facts('uses', { step: 'f.step', kind: 'f.kind', resource_id: 'f.resource', used_at: 'f.at_ms' }),
  oven_loads_baked: facts('oven_loads', {
    step: 'f.step',
    slots: 'f.slots',
    pieces: 'f.pieces',
    loaded_at: 'f.from_ms',
    unloaded_at: 'f.to_ms',
    baked_min: minutesBetween('f.from_ms', 'f.to_ms'),
  }),
  calls_raised: facts('calls', {
    step: 'f.step',
    level: 'f.level',
    due_at: 'f.due_ms',
    raised_at: 'f.raised_ms',
    heard_at: 'f.heard_ms',
    ended_at: 'f.ended_ms',
    became: 'f.became',
    open_min: minutesBetween('f.raised_ms', 'f.ended_ms'),
    sounded_count: 'f.sounded_count',
  }),
  steps_moved: facts('plan_moves', {
    step: 'f.step',
    moved_from_at: 'f.from_ms',
    moved_to_at: 'f.to_ms',
    because: 'f.because',
    because_id: 'f.because_id',
    planned_at: 'f.at_ms',
  }),
  orders_placed: {
    from: 'orders f',
    period: 'f.service_date',
    columns: {
      event: 'f.sequence',
      order_id: 'f.id',
      service_date: 'f.service_date',
      product_id: 'f.product',
      product_name: `(SELECT d.name FROM documents d WHERE d.kind = 'product' AND d.id = f.product ORDER BY d.version DESC LIMIT 1)`,
      pieces: 'f.pieces',
      ready_at: 'f.ready_ms',
      is_withdrawn: 'f.is_withdrawn',
    },
  },
  days: {
    from: '(SELECT service_date FROM workpieces UNION SELECT service_date FROM day_ends UNION SELECT service_date FROM orders) w',
    period: BY_DAY,
    columns: {
      service_date: 'w.service_date',
      // What was said of it last: a day that was closed may be opened again.
      is_closed: `coalesce((SELECT e.what = 'closed' FROM day_ends e WHERE e.service_date = w.service_date ORDER BY e.sequence DESC LIMIT 1), 0)`,
      batches: ofDay('count(*)', 'workpieces p', "p.service_date = w.service_date AND p.kind = 'batch' AND p.parent IS NULL"),
      preps: ofDay('count(*)', 'workpieces p', "p.service_date = w.service_date AND p.kind = 'prep' AND p.parent IS NULL"),
      discarded: ofDay('count(*)', 'workpieces p', "p.service_date = w.service_date AND p.ending = 'discarded'"),
      dough_g: ofDay(
        'coalesce(sum(p.scaled_to_g), 0.0)',
        'workpieces p',
        "p.service_date = w.service_date AND p.kind = 'batch' AND p.parent IS NULL",
      ),
      lost_g: ofDay(
        'coalesce(sum(l.grams), 0.0)',
        'workpieces p JOIN losses l ON l.workpiece = p.number',
        'p.service_date = w.service_date',
      ),
      calls: ofDay(
        'count(*)',
        'workpieces p JOIN calls c ON c.workpiece = p.number',
        "p.service_date = w.service_date AND c.level = 'call'",
      ),
      late_calls: ofDay(
        'count(*)',
        'workpieces p JOIN calls c ON c.workpiece = p.number',
        "p.service_date = w.service_date AND c.level <> 'call'",
      ),
      orders: ofDay('count(*)', 'orders o', 'o.service_date = w.service_date AND NOT o.is_withdrawn'),
      pieces_ordered: ofDay('coalesce(sum(o.pieces), 0)', 'orders o', 'o.service_date = w.service_date AND NOT o.is_withdrawn'),
    },
  },
  learned_samples: {
    from: 'samples f LEFT JOIN workpieces w ON w.number = f.workpiece',
    period: 'f.at_ms',
    columns: {
      event: 'f.sequence',
      kind: 'f.kind',
      subject: 'f.subject',
      formula_id: 'f.formula',
      step: 'f.step',
      batch_id: 'w.id',
      load_g: 'f.load_g',
      value: 'f.value',
      learned_at: 'f.at_ms',
    },
  },
  documents_adopted: {
    from: 'documents f',
    period: null,
    columns: { event: 'f.sequence', kind: 'f.kind', document_id: 'f.id', version: 'f.version', name: 'f.name' },
  },
};

/** Where a described table's columns come from. */
export function sourceOf(table: TableDescription): TableSource {
  const source = SOURCES[table.name];
  assert(source !== undefined, `the table ${table.name} has a source`);
  return source;
}

/** SQL of a table's columns in their order, instants in ms. */
export function columnsInMs(table: TableDescription, { columns }: TableSource): readonly string[] {
  return table.columns.map(({ name }) => {
    const sql = columns[name];
    assert(sql !== undefined, `${table.name}.${name} has a source`);
    return sql;
  });
}

/** The same as they are read by others, instants as text. */
export function columnsAsRead(table: TableDescription, source: TableSource): readonly string[] {
  return columnsInMs(table, source).map((sql, index) => (table.columns[index]?.type === 'instant' ? iso(sql) : sql));
}

/** The statements that make a view of each described table. */
export const RECORD_VIEWS: string = RECORD_TABLES.map((table) => {
  const source = sourceOf(table);
  const selected = columnsAsRead(table, source).map((sql, index) => `  ${sql} AS ${table.columns[index]?.name}`);
  return `CREATE VIEW ${table.name} AS SELECT\n${selected.join(',\n')}\nFROM ${source.from};\n`;
}).join('\n');
