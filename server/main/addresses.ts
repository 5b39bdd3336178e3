import { hostname, networkInterfaces } from 'node:os';

/** The machine's IPv4 addresses on the local network. */
export function localNetworkAddresses(): readonly string[] {
  return Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .filter((address) => address.family === 'IPv4' && !address.internal)
    .map((address) => address.address);
}

/** The names by which a network knows this machine by itself: its host name, and that in the local domain (RFC 6762 section 3). */
export function machineNames(name = hostname()): readonly string[] {
  const full = name.toLowerCase();
  const [first = full] = full.split('.');
  return [...new Set([full, first, `${first}.local`])].filter((each) => each !== '' && !each.startsWith('.'));
}
