/** Why an archive could not be written or read. Its message is one sentence for the person who asked. */
export class ArchiveError extends Error {
  override readonly name = 'ArchiveError';
}
