import { createHash, createPrivateKey, createPublicKey, generateKeyPairSync, type KeyObject } from 'node:crypto';
import { chmodSync, existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { flush } from '../journal/flush.ts';
import { ArchiveError } from './archive-error.ts';

/** The file's name in the data folder. Whoever has it can sign archives in the house's name. */
export const ARCHIVE_KEY_FILE = 'archive-key.pem';

/** The house's own key for archives: Ed25519, in PKCS8, readable to the server's own user only. Made on first use. Throws ArchiveError. */
export async function archiveKey(dataFolder: string): Promise<KeyObject> {
  const path = join(dataFolder, ARCHIVE_KEY_FILE);
  if (!existsSync(path)) {
    const pem = generateKeyPairSync('ed25519').privateKey.export({ type: 'pkcs8', format: 'pem' });
    writeFileSync(`${path}.new`, pem, { mode: 0o600 });
    await flush(`${path}.new`);
    renameSync(`${path}.new`, path);
    await flush(dirname(path));
  }
  chmodSync(path, 0o600);
  return readKey(path, createPrivateKey);
}

/** A public key in PEM (SPKI). Throws ArchiveError where there is none that signs archives. */
export function publicKeyAt(path: string): KeyObject {
  if (!existsSync(path)) throw new ArchiveError(`There is no ${path}.`);
  return readKey(path, createPublicKey);
}

/** The 32 bytes of a public key (RFC 8032) as base64url. */
export function keyText(key: KeyObject): string {
  return (key.type === 'private' ? createPublicKey(key) : key).export({ format: 'jwk' }).x ?? '';
}

/** A public key of its 32 bytes as base64url; null where the text is none, or another way to write it. */
export function keyOfText(text: string): KeyObject | null {
  try {
    const key = createPublicKey({ key: { kty: 'OKP', crv: 'Ed25519', x: text }, format: 'jwk' });
    return keyText(key) === text ? key : null;
  } catch {
    // Node says in many ways that a text is no key.
    return null;
  }
}

/** The public part of a key in PEM. */
export function publicPem(key: KeyObject): string {
  return String(createPublicKey(key).export({ type: 'spki', format: 'pem' }));
}

/** SHA-256 of a public key's SPKI, to be compared by eye: pairs of hexadecimal digits. */
export function fingerprintOf(key: KeyObject): string {
  const spki = (key.type === 'private' ? createPublicKey(key) : key).export({ type: 'spki', format: 'der' });
  const digits = createHash('sha256').update(spki).digest('hex').toUpperCase();
  return (digits.match(/../g) ?? []).join(':');
}

function readKey(path: string, read: (pem: string) => KeyObject): KeyObject {
  let key: KeyObject | null = null;
  try {
    key = read(readFileSync(path, 'utf8'));
  } catch (error) {
    throw new ArchiveError(`${path} is no key.`, { cause: error });
  }
  if (key.asymmetricKeyType !== 'ed25519') throw new ArchiveError(`${path} is no Ed25519 key.`);
  return key;
}
