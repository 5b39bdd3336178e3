/** How a phone comes to this kitchen. */
export type JoinAddress =
  /** `url` leads to the phone's page; the parts are what a thumb types, breakable between them. */
  | { readonly isReachable: true; readonly url: string; readonly parts: readonly string[] }
  /** Only the server's own machine gets through. */
  | { readonly isReachable: false };

const LOOPBACK = /^(localhost|127(\.\d+){3}|\[::1\])$/;

/** Where phones join, by the first of the server's addresses; null while it has said none. Throws a TypeError on what is no URL. */
export function joinAddressOf(addresses: readonly string[]): JoinAddress | null {
  const [first] = addresses;
  if (first === undefined) return null;
  const { href, hostname, protocol, host, pathname } = new URL('/phone', first);
  if (LOOPBACK.test(hostname)) return { isReachable: false };
  return { isReachable: true, url: href, parts: [`${protocol}//`, host, pathname] };
}
