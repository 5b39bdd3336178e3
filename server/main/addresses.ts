import { networkInterfaces } from 'node:os';

/** The machine's IPv4 addresses on the local network. */
export function localNetworkAddresses(): readonly string[] {
  return Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .filter((address) => address.family === 'IPv4' && !address.internal)
    .map((address) => address.address);
}
