// Before the library: it asks for it on loading.
import 'reflect-metadata';
import { webcrypto } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import * as x509 from '@peculiar/x509';
import { z } from 'zod';
import { isLocalAddress, permittedNames } from './name-constraints.ts';

type CryptoKey = webcrypto.CryptoKey;
type CryptoKeyPair = webcrypto.CryptoKeyPair;

x509.cryptoProvider.set(webcrypto as unknown as Parameters<(typeof x509.cryptoProvider)['set']>[0]);

const ALGORITHM = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const;
const NAME_CONSTRAINTS = '2.5.29.30';
const DAY_MS = 24 * 3_600_000;
/** When this was written: a clock before it is wrong. */
const EARLIEST_MS = Date.UTC(2026, 0, 1);
/** A root is put into phones by hand, and outlives them. */
const ROOT_DAYS = 3650;
/** Well below the 398 days that browsers give a certificate at most. */
export const LEAF_DAYS = 90;
/** A clock that is a little behind takes a certificate all the same. */
const BACKDATED_MS = DAY_MS;
/** Names that no house has for itself alone, and that lead nowhere beyond its own network (RFC 6761, RFC 6762, RFC 8375). */
const LOCAL_NAMES = ['localhost', 'local', 'home.arpa'];

/** A certificate with its key, as TLS takes them. */
export interface Credentials {
  readonly key: string;
  readonly cert: string;
  readonly notAfterMs: number;
  /** Names and addresses that the root may not speak for: it was made before this machine had them. */
  readonly leftOut: readonly string[];
}

/** What a root may speak for, beside local names and networks. */
const permittedSchema = z.object({ names: z.array(z.string()), addresses: z.array(z.string()) });
type Permitted = z.infer<typeof permittedSchema>;

/** A bakehouse's own certificate authority: its root, and leaves made by it. */
export interface Authority {
  /** The root, in PEM. */
  readonly root: string;
  /** Its SHA-256, to be compared by eye: pairs of hexadecimal digits. */
  readonly fingerprint: string;
  /** Until when it is good. */
  readonly notAfterMs: number;
  /** Makes a certificate for those names and IPv4 addresses of this machine that the root may speak for: one more would spoil it for all. */
  leaf(names: readonly string[], addresses: readonly string[], nowMs: number): Promise<Credentials>;
}

/**
 * Opens the authority in a folder, or makes one there on first use, for these names and local networks alone. Its key is readable to the
 * server's own user only. Throws where the folder cannot be written or what is in it is no key and root.
 */
export async function openAuthority(
  folder: string,
  names: readonly string[],
  addresses: readonly string[],
  nowMs: number,
): Promise<Authority> {
  const [keyFile, rootFile, permittedFile] = [join(folder, 'root-key.pem'), join(folder, 'root.pem'), join(folder, 'permitted.json')];
  if (!existsSync(keyFile)) {
    // A machine without a clock of its own that has not asked for the time yet: what it made now would be over before it is used.
    if (nowMs < EARLIEST_MS) throw new Error('the clock of this machine is years behind; set it before the root is made');
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const keys = await newKeys();
    const permitted = {
      names: [...new Set([...names, ...LOCAL_NAMES])],
      addresses: addresses.filter((address) => !isLocalAddress(address)),
    };
    const root = await newRoot(keys, permitted, nowMs);
    writeNew(permittedFile, JSON.stringify(permitted), 0o644);
    writeNew(rootFile, root.toString('pem'), 0o644);
    writeNew(keyFile, await keyPem(keys.privateKey), 0o600);
  }
  chmodSync(keyFile, 0o600);
  const root = new x509.X509Certificate(readFileSync(rootFile, 'utf8'));
  const signingKey = await importKey(readFileSync(keyFile, 'utf8'));
  const permitted = permittedSchema.parse(JSON.parse(readFileSync(permittedFile, 'utf8')));
  const thumbprint = Buffer.from(await root.getThumbprint('SHA-256'));
  return {
    root: root.toString('pem'),
    fingerprint: (thumbprint.toString('hex').toUpperCase().match(/../g) ?? []).join(':'),
    notAfterMs: root.notAfter.getTime(),
    leaf: async (leafNames, leafAddresses, leafNowMs) => {
      const [mayNames, mayAddresses] = [
        leafNames.filter((name) => speaksFor(permitted, name)),
        leafAddresses.filter((address) => reaches(permitted, address)),
      ];
      const leftOut = [...leafNames, ...leafAddresses].filter((each) => !mayNames.includes(each) && !mayAddresses.includes(each));
      return { ...(await newLeaf(root, signingKey, mayNames, mayAddresses, leafNowMs)), leftOut };
    },
  };
}

/** Exactly, or anything below (RFC 5280 section 4.2.1.10). */
function speaksFor({ names }: Permitted, name: string): boolean {
  return names.some((permitted) => name === permitted || name.endsWith(`.${permitted}`));
}

function reaches({ addresses }: Permitted, address: string): boolean {
  return isLocalAddress(address) || addresses.includes(address);
}

async function newRoot(keys: CryptoKeyPair, { names, addresses }: Permitted, nowMs: number): Promise<x509.X509Certificate> {
  return x509.X509CertificateGenerator.createSelfSigned({
    name: 'CN=Ovenward bakehouse root',
    notBefore: new Date(nowMs - BACKDATED_MS),
    notAfter: new Date(nowMs + ROOT_DAYS * DAY_MS),
    signingAlgorithm: ALGORITHM,
    keys,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign, true),
      new x509.Extension(NAME_CONSTRAINTS, true, permittedNames(names, addresses)),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
}

async function newLeaf(
  root: x509.X509Certificate,
  signingKey: CryptoKey,
  names: readonly string[],
  addresses: readonly string[],
  nowMs: number,
): Promise<Omit<Credentials, 'leftOut'>> {
  const keys = await newKeys();
  const notAfterMs = nowMs + LEAF_DAYS * DAY_MS;
  const leaf = await x509.X509CertificateGenerator.create({
    subject: 'CN=Ovenward',
    issuer: root.subjectName,
    notBefore: new Date(nowMs - BACKDATED_MS),
    notAfter: new Date(notAfterMs),
    signingAlgorithm: ALGORITHM,
    publicKey: keys.publicKey,
    signingKey,
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension([
        ...[...new Set(['localhost', ...names])].map((value) => ({ type: 'dns', value }) as const),
        ...[...new Set(['127.0.0.1', ...addresses])].map((value) => ({ type: 'ip', value }) as const),
      ]),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
      await x509.AuthorityKeyIdentifierExtension.create(root.publicKey),
    ],
  });
  return { key: await keyPem(keys.privateKey), cert: leaf.toString('pem'), notAfterMs };
}

function newKeys(): Promise<CryptoKeyPair> {
  return webcrypto.subtle.generateKey(ALGORITHM, true, ['sign', 'verify']);
}

async function keyPem(key: CryptoKey): Promise<string> {
  return x509.PemConverter.encode(await webcrypto.subtle.exportKey('pkcs8', key), 'PRIVATE KEY');
}

function importKey(pem: string): Promise<CryptoKey> {
  const [der] = x509.PemConverter.decode(pem);
  if (der === undefined) throw new Error('the key of the bakehouse’s authority is no PEM');
  return webcrypto.subtle.importKey('pkcs8', der, ALGORITHM, false, ['sign']);
}

/** Whole or not at all, and never for a moment readable to others than it is meant for. */
function writeNew(file: string, text: string, mode: number): void {
  writeFileSync(`${file}.new`, `${text}\n`, { mode });
  renameSync(`${file}.new`, file);
}
