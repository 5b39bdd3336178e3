import type { DatabaseKind } from '../journal/open-database.ts';
import { RECORD_VIEWS } from './record-views.ts';

/** The file's name in the data folder. It can be thrown away at any time: it is made again of the journal. */
export const RECORDS_FILE = 'records.db';

/**
 * Raised with every change of the tables, of what is written into them, or of the floor's own fold: a file of another version is thrown
 * away and built anew.
 */
export const RECORDS_VERSION = 7;

/** Tables with one row for each fact, by the event that says it: what a command said is taken out by the sequence numbers of its events. */
export const FACT_TABLES = [
  'edges',
  'lots',
  'readings',
  'losses',
  'more_time',
  'corrections',
  'reasons',
  'uses',
  'samples',
  'plan_moves',
  'documents',
  'day_ends',
  'holds',
  'oven_loads',
] as const;

// Instants are milliseconds since 1970, of house time. `workpiece` is workpieces.number. These tables are our own and may change with any
// version; what others read are the views, which shared/records/tables.ts describes.
const SCHEMA = `
CREATE TABLE checkpoint (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  kitchen  TEXT NOT NULL,
  version  INTEGER NOT NULL,
  sequence INTEGER NOT NULL,
  hash     TEXT NOT NULL,
  written  INTEGER NOT NULL,
  fold     TEXT NOT NULL
) STRICT;

CREATE TABLE workpieces (
  number           INTEGER PRIMARY KEY,
  id               TEXT NOT NULL UNIQUE,
  kind             TEXT NOT NULL,
  tag              TEXT NOT NULL,
  service_date     TEXT NOT NULL,
  formula          TEXT NOT NULL,
  formula_version  INTEGER NOT NULL,
  product          TEXT,
  product_version  INTEGER,
  parent           INTEGER,
  root             INTEGER NOT NULL,
  planned_start_ms INTEGER NOT NULL,
  started_ms       INTEGER,
  ended_ms         INTEGER,
  ending           TEXT,
  grams            REAL NOT NULL,
  scaled_to_g      REAL NOT NULL,
  scrap_g          REAL NOT NULL,
  pieces           INTEGER,
  planned_pieces   INTEGER,
  allergens        TEXT NOT NULL
) STRICT;
CREATE INDEX workpieces_by_day ON workpieces (service_date);
CREATE INDEX workpieces_by_formula ON workpieces (formula, service_date);
CREATE INDEX workpieces_by_product ON workpieces (product, service_date) WHERE product IS NOT NULL;
CREATE INDEX workpieces_by_root ON workpieces (root);
CREATE INDEX workpieces_open ON workpieces (service_date) WHERE ending IS NULL;

CREATE TABLE steps (
  workpiece        INTEGER NOT NULL,
  round            INTEGER NOT NULL,
  step             TEXT NOT NULL,
  position         INTEGER NOT NULL,
  verb             TEXT NOT NULL,
  kind             TEXT NOT NULL,
  status           TEXT NOT NULL,
  started_ms       INTEGER,
  ended_ms         INTEGER,
  planned_start_ms INTEGER,
  planned_end_ms   INTEGER,
  earliest_min     REAL,
  target_min       REAL,
  latest_min       REAL,
  factor           REAL,
  more_min         REAL NOT NULL,
  station          TEXT,
  helpers          TEXT NOT NULL,
  started_by       TEXT,
  ended_by         TEXT,
  pieces           INTEGER,
  inferred         INTEGER NOT NULL,
  place            TEXT,
  PRIMARY KEY (workpiece, round, step)
) STRICT, WITHOUT ROWID;
CREATE INDEX steps_by_time ON steps (ended_ms);

CREATE TABLE brought (
  workpiece INTEGER NOT NULL,
  step      TEXT NOT NULL,
  PRIMARY KEY (workpiece, step)
) STRICT, WITHOUT ROWID;

CREATE TABLE workpiece_events (
  workpiece INTEGER NOT NULL,
  sequence  INTEGER NOT NULL,
  PRIMARY KEY (workpiece, sequence)
) STRICT, WITHOUT ROWID;

CREATE TABLE house_events (
  sequence INTEGER PRIMARY KEY,
  type     TEXT NOT NULL
) STRICT;

CREATE TABLE edges (
  sequence INTEGER NOT NULL,
  item     INTEGER NOT NULL,
  kind     TEXT NOT NULL,
  source   INTEGER NOT NULL,
  target   INTEGER NOT NULL,
  grams    REAL NOT NULL,
  at_ms    INTEGER NOT NULL,
  PRIMARY KEY (sequence, item)
) STRICT, WITHOUT ROWID;
CREATE INDEX edges_onward ON edges (source, sequence);
CREATE INDEX edges_back ON edges (target, sequence);
CREATE INDEX edges_fed ON edges (source, sequence) WHERE kind = 'feed';

CREATE TABLE lots (
  sequence    INTEGER NOT NULL,
  item        INTEGER NOT NULL,
  workpiece   INTEGER NOT NULL,
  ingredient  TEXT NOT NULL,
  lot         TEXT NOT NULL,
  line        TEXT,
  grams       REAL NOT NULL,
  at_ms       INTEGER NOT NULL,
  replaced_by INTEGER,
  PRIMARY KEY (sequence, item)
) STRICT, WITHOUT ROWID;
CREATE INDEX lots_by_lot ON lots (lot, ingredient, replaced_by, sequence, at_ms);
CREATE INDEX lots_of_ingredient ON lots (ingredient, sequence);
CREATE INDEX lots_of_workpiece ON lots (workpiece, sequence);
CREATE INDEX lots_replaced ON lots (replaced_by) WHERE replaced_by IS NOT NULL;

CREATE TABLE readings (
  sequence  INTEGER PRIMARY KEY,
  workpiece INTEGER NOT NULL,
  place     TEXT NOT NULL,
  celsius   REAL NOT NULL,
  at_ms     INTEGER NOT NULL
) STRICT;
CREATE INDEX readings_of_workpiece ON readings (workpiece);

CREATE TABLE losses (
  sequence  INTEGER PRIMARY KEY,
  workpiece INTEGER NOT NULL,
  what      TEXT NOT NULL,
  grams     REAL NOT NULL,
  pieces    INTEGER,
  at_ms     INTEGER NOT NULL
) STRICT;
CREATE INDEX losses_of_workpiece ON losses (workpiece);

CREATE TABLE more_time (
  sequence  INTEGER PRIMARY KEY,
  workpiece INTEGER NOT NULL,
  step      TEXT NOT NULL,
  minutes   INTEGER NOT NULL,
  at_ms     INTEGER NOT NULL
) STRICT;
CREATE INDEX more_time_of_workpiece ON more_time (workpiece);

CREATE TABLE holds (
  sequence  INTEGER PRIMARY KEY,
  workpiece INTEGER NOT NULL,
  step      TEXT NOT NULL,
  at_ms     INTEGER NOT NULL,
  until_ms  INTEGER NOT NULL,
  released_ms       INTEGER,
  released_sequence INTEGER
) STRICT;
CREATE INDEX holds_of_workpiece ON holds (workpiece);
CREATE INDEX holds_by_time ON holds (at_ms);
CREATE INDEX holds_released ON holds (released_sequence) WHERE released_sequence IS NOT NULL;

CREATE TABLE corrections (
  sequence  INTEGER PRIMARY KEY,
  workpiece INTEGER NOT NULL,
  step      TEXT,
  what      TEXT NOT NULL,
  was       TEXT NOT NULL,
  became    TEXT NOT NULL,
  at_ms     INTEGER NOT NULL,
  device    TEXT NOT NULL
) STRICT;
CREATE INDEX corrections_of_workpiece ON corrections (workpiece);

CREATE TABLE reasons (
  sequence  INTEGER PRIMARY KEY,
  workpiece INTEGER NOT NULL,
  step      TEXT,
  what      TEXT NOT NULL,
  reason    TEXT NOT NULL,
  at_ms     INTEGER NOT NULL
) STRICT;
CREATE INDEX reasons_of_workpiece ON reasons (workpiece);

CREATE TABLE uses (
  sequence  INTEGER NOT NULL,
  item      INTEGER NOT NULL,
  workpiece INTEGER NOT NULL,
  step      TEXT NOT NULL,
  kind      TEXT NOT NULL,
  resource  TEXT NOT NULL,
  at_ms     INTEGER NOT NULL,
  PRIMARY KEY (sequence, item)
) STRICT, WITHOUT ROWID;
CREATE INDEX uses_of_workpiece ON uses (workpiece, step);

CREATE TABLE oven_loads (
  sequence  INTEGER PRIMARY KEY,
  workpiece INTEGER NOT NULL,
  step      TEXT NOT NULL,
  slots     TEXT NOT NULL,
  pieces    INTEGER,
  from_ms   INTEGER NOT NULL,
  to_ms     INTEGER,
  out_sequence INTEGER
) STRICT;
CREATE INDEX oven_loads_of_workpiece ON oven_loads (workpiece);
CREATE INDEX oven_loads_by_time ON oven_loads (from_ms);
CREATE INDEX oven_loads_out ON oven_loads (out_sequence) WHERE out_sequence IS NOT NULL;

CREATE TABLE samples (
  sequence  INTEGER PRIMARY KEY,
  kind      TEXT NOT NULL,
  subject   TEXT NOT NULL,
  formula   TEXT,
  step      TEXT,
  workpiece INTEGER,
  load_g    REAL,
  value     REAL NOT NULL,
  at_ms     INTEGER NOT NULL
) STRICT;
CREATE INDEX samples_by_time ON samples (kind, at_ms);
CREATE INDEX samples_by_instant ON samples (at_ms);

CREATE TABLE calls (
  sequence      INTEGER PRIMARY KEY,
  workpiece     INTEGER NOT NULL,
  step          TEXT NOT NULL,
  level         TEXT NOT NULL,
  due_ms        INTEGER NOT NULL,
  raised_ms     INTEGER NOT NULL,
  heard_ms      INTEGER,
  ended_ms      INTEGER,
  became        TEXT,
  sounded_count INTEGER NOT NULL
) STRICT;
CREATE INDEX calls_of_workpiece ON calls (workpiece);
CREATE INDEX calls_by_time ON calls (raised_ms);

CREATE TABLE plan_moves (
  sequence INTEGER NOT NULL,
  item     INTEGER NOT NULL,
  workpiece INTEGER NOT NULL,
  step     TEXT NOT NULL,
  from_ms  INTEGER NOT NULL,
  to_ms    INTEGER NOT NULL,
  because  TEXT,
  because_id TEXT,
  at_ms    INTEGER,
  PRIMARY KEY (sequence, item)
) STRICT, WITHOUT ROWID;
CREATE INDEX plan_moves_of_workpiece ON plan_moves (workpiece);

CREATE TABLE documents (
  sequence INTEGER PRIMARY KEY,
  kind     TEXT NOT NULL,
  id       TEXT NOT NULL,
  version  INTEGER NOT NULL,
  name     TEXT NOT NULL
) STRICT;
CREATE INDEX documents_by_id ON documents (kind, id, version, name);

CREATE TABLE day_ends (
  sequence     INTEGER PRIMARY KEY,
  service_date TEXT NOT NULL,
  what         TEXT NOT NULL
) STRICT;
CREATE INDEX day_ends_by_day ON day_ends (service_date);

CREATE TABLE orders (
  id           TEXT PRIMARY KEY,
  service_date TEXT NOT NULL,
  product      TEXT NOT NULL,
  pieces       INTEGER NOT NULL,
  ready_ms     INTEGER NOT NULL,
  is_withdrawn INTEGER NOT NULL,
  label        TEXT,
  sequence     INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX orders_by_day ON orders (service_date);
`;

/** What the house asks of its past: rows made of the journal's events, and views of them for others. */
export const RECORDS_DATABASE: DatabaseKind = {
  applicationId: 0x4f76_7752,
  schemaVersion: RECORDS_VERSION,
  schema: `${SCHEMA}\n${RECORD_VIEWS}`,
};
