/** Why a database or the data folder could not be opened. Nothing in it was touched. */
export type OpenErrorCode =
  | 'notADatabase'
  | 'otherProgram'
  | 'newerVersion'
  | 'olderVersion'
  | 'databaseMissing'
  | 'databaseFailed'
  | 'databaseDamaged'
  | 'diskFull'
  | 'folderNotWritable'
  | 'folderInUse';

/** A fault on opening. Its message is one sentence for the person who started the server. */
export class OpenError extends Error {
  readonly code: OpenErrorCode;
  constructor(code: OpenErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'OpenError';
    this.code = code;
  }
}
