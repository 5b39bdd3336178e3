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
  role          TEXT CHECK (role IN ('look', 'act', 'manage')),
  token_hash    BLOB CHECK (length(token_hash) = 32),
  secure        INTEGER NOT NULL DEFAULT 0 CHECK (secure IN (0, 1)),
  vouched       INTEGER NOT NULL DEFAULT 0 CHECK (vouched IN (0, 1)),
  UNIQUE (kind, number)
) STRICT, WITHOUT ROWID;

CREATE UNIQUE INDEX devices_by_token ON devices (token_hash);

CREATE INDEX devices_by_last_seen ON devices (last_seen_ms);
`;

/** From schema 1, when everybody who could reach the server was let in. Who is in the list then has to be let in once. */
const LIFT_FROM_1 = `
ALTER TABLE devices ADD COLUMN role TEXT CHECK (role IN ('look', 'act', 'manage'));
ALTER TABLE devices ADD COLUMN token_hash BLOB CHECK (length(token_hash) = 32);
ALTER TABLE devices ADD COLUMN secure INTEGER NOT NULL DEFAULT 0 CHECK (secure IN (0, 1));
ALTER TABLE devices ADD COLUMN vouched INTEGER NOT NULL DEFAULT 0 CHECK (vouched IN (0, 1));
CREATE UNIQUE INDEX devices_by_token ON devices (token_hash);
`;

/** The file of devices in the data folder. */
export const DEVICES_FILE = 'devices.db';

/** The database of walls and phones. It is apart from the journal so that a name in it can be erased. */
export const DEVICES_DATABASE: DatabaseKind = { applicationId: 0x4f76_7744, schemaVersion: 2, schema: SCHEMA, lifts: { 1: LIFT_FROM_1 } };
