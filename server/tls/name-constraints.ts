/** Tags of DER (X.690 section 8.1.2), as far as name constraints need them. */
const SEQUENCE = 0x30;
const PERMITTED = 0xa0;
const DNS_NAME = 0x82;
const IP_ADDRESS = 0x87;
/** From here on a length takes more than one byte. */
const LONG = 0x80;

/** Addresses of local networks, with their masks in bits: RFC 1918, RFC 6598, RFC 3927, RFC 4193, RFC 4291 and RFC 1122's loopback. */
const LOCAL_NETWORKS: readonly (readonly [readonly number[], number])[] = [
  [[10, 0, 0, 0], 8],
  [[172, 16, 0, 0], 12],
  [[192, 168, 0, 0], 16],
  [[100, 64, 0, 0], 10],
  [[169, 254, 0, 0], 16],
  [[127, 0, 0, 0], 8],
  [[0xfc, ...Array<number>(15).fill(0)], 7],
  [[0xfe, 0x80, ...Array<number>(14).fill(0)], 10],
  [[...Array<number>(15).fill(0), 1], 128],
];

/**
 * The value of the extension of name constraints (RFC 5280 section 4.2.1.10) that lets an authority speak for some names, and what is below
 * them, and for addresses of local networks: whoever steals its key cannot speak for a bank. `more`: addresses beyond those.
 */
export function permittedNames(names: readonly string[], more: readonly string[]): Uint8Array {
  const subtrees = [
    ...names.map((name) => subtree(DNS_NAME, Buffer.from(name, 'ascii'))),
    ...LOCAL_NETWORKS.map(([address, bits]) => subtree(IP_ADDRESS, Buffer.from([...address, ...maskOf(bits, address.length)]))),
    ...more.map((address) => subtree(IP_ADDRESS, Buffer.from([...address.split('.').map(Number), 255, 255, 255, 255]))),
  ];
  return tagged(SEQUENCE, tagged(PERMITTED, Buffer.concat(subtrees)));
}

/** Whether an IPv4 address is one of a local network. */
export function isLocalAddress(address: string): boolean {
  const bytes = address.split('.').map(Number);
  return LOCAL_NETWORKS.some(
    ([network, bits]) =>
      network.length === bytes.length && maskOf(bits, bytes.length).every((mask, index) => ((bytes[index] ?? 0) & mask) === network[index]),
  );
}

function subtree(tag: number, content: Uint8Array): Uint8Array {
  return tagged(SEQUENCE, tagged(tag, content));
}

function tagged(tag: number, content: Uint8Array): Uint8Array {
  const { length } = content;
  const head = length < LONG ? [tag, length] : length < 0x100 ? [tag, LONG | 1, length] : [tag, LONG | 2, length >> 8, length & 0xff];
  return Buffer.concat([Buffer.from(head), content]);
}

function maskOf(bits: number, bytes: number): readonly number[] {
  return Array.from({ length: bytes }, (_, index) => (0xff00 >> Math.min(8, Math.max(0, bits - index * 8))) & 0xff);
}
