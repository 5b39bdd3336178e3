const UTF_16_LE = [0xff, 0xfe] as const;

/** A file's bytes as text: UTF-8, what spreadsheets call Unicode text (UTF-16 with its mark), else Windows' Western code page. */
export function textOfBytes(bytes: Uint8Array): string {
  if (bytes[0] === UTF_16_LE[0] && bytes[1] === UTF_16_LE[1]) return new TextDecoder('utf-16le').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // Not UTF-8: spreadsheets of western houses still write this.
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
