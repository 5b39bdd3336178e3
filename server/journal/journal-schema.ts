import type { DatabaseKind } from './open-database.ts';

/** What a row of `names` holds. */
export const NAME_KIND = {
  /** A short text, as text. */
  text: 0,
  /** An id, as its 16 bytes. */
  id: 1,
  /** The keys of an object in their order, as a JSON list of texts. */
  keys: 2,
} as const;

// Every kitchen numbers its own events, which therefore lie in the order in which they are read. Names and commands are
// numbered through the whole file. What is in a body: body-codec.ts.
const SCHEMA = `
CREATE TABLE kitchens (
  number INTEGER PRIMARY KEY,
  id     BLOB NOT NULL UNIQUE CHECK (length(id) = 16)
) STRICT;

CREATE TABLE names (
  number INTEGER PRIMARY KEY,
  kind   INTEGER NOT NULL CHECK (kind BETWEEN 0 AND 2),
  value  ANY NOT NULL,
  UNIQUE (value, kind)
) STRICT;

CREATE TABLE commands (
  number      INTEGER PRIMARY KEY,
  id          BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  kitchen     INTEGER NOT NULL REFERENCES kitchens (number),
  device      INTEGER NOT NULL REFERENCES names (number),
  received_ms INTEGER NOT NULL,
  outcome     BLOB NOT NULL
) STRICT;

CREATE TABLE events (
  kitchen  INTEGER NOT NULL REFERENCES kitchens (number),
  sequence INTEGER NOT NULL CHECK (sequence > 0),
  command  INTEGER NOT NULL REFERENCES commands (number),
  ordinal  INTEGER NOT NULL,
  version  INTEGER NOT NULL,
  body     BLOB NOT NULL,
  hash     BLOB NOT NULL CHECK (length(hash) = 32),
  PRIMARY KEY (kitchen, sequence),
  UNIQUE (command, ordinal)
) STRICT, WITHOUT ROWID;
`;

/** The database that holds what happened: events, the outcomes of commands, and the names that both refer to. */
export const JOURNAL_DATABASE: DatabaseKind = { applicationId: 0x4f76_774a, schemaVersion: 1, schema: SCHEMA };
