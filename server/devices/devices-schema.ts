import type { DatabaseKind } from '../journal/open-database.ts';

const SCHEMA = `
CREATE TABLE devices (
  id            BLOB PRIMARY KEY CHECK (length(id) = 16),
  kind          TEXT NOT NULL CHECK (kind IN ('wall', 'phone', 'script')),
  number        INTEGER NOT NULL,
  name          TEXT,
  station       TEXT,
  first_seen_ms INTEGER NOT NULL,
  last_seen_ms  INTEGER NOT NULL,
  UNIQUE (kind, number)
) STRICT, WITHOUT ROWID;

CREATE INDEX devices_by_last_seen ON devices (last_seen_ms);
`;

/** The file of devices in the data folder. */
export const DEVICES_FILE = 'devices.db';

/** The database of walls and phones. It is apart from the journal so that a name in it can be erased. */
export const DEVICES_DATABASE: DatabaseKind = { applicationId: 0x4f76_7744, schemaVersion: 1, schema: SCHEMA };
