import { createServer } from 'node:net';

/**
 * Why a port cannot be listened on, or null where it could be a moment ago. Asked before a data folder is opened, so that a
 * server that cannot start leaves the folder as it was.
 */
export function portFault(port: number, host: string): Promise<Error | null> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', (error) => resolve(error));
    probe.listen({ port, host }, () => probe.close(() => resolve(null)));
  });
}
