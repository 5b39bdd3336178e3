import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { SNAPSHOT_FILE } from '../../server/journal/snapshot-file.ts';
import { JOURNAL_FILE } from '../../server/journal/sqlite-journal.ts';
import { answering, serverArguments, startNode, startServer, timeToEnd } from './child.ts';
import { writeLongJournal } from './long-journal.ts';
import { freePort, inTemporaryFolder, ROOT } from './places.ts';
import { interleaved, lineWithFloor, type Line } from './report.ts';

const EVENTS = 100_000;
const READ_FILE = 'require("node:fs").readFileSync(process.argv[1])';

/** From starting the process until it answers, on a journal of 100 000 events; the floor is Node's own start and reading the file. */
export function startOnLongJournal(rounds: number): Promise<readonly Line[]> {
  return inTemporaryFolder(async (folder) => {
    const data = join(folder, 'data');
    const { mkdirSync } = await import('node:fs');
    mkdirSync(data);
    await writeLongJournal(data, EVENTS, Date.now());
    const readFile = (): Promise<number> => timeToEnd(['--eval', READ_FILE, join(data, JOURNAL_FILE)]);
    // A server that ends in good order leaves a snapshot behind.
    await (await startServer(data, await freePort())).end('SIGINT');
    const withSnapshot = await interleaved(rounds, () => timeToAnswer(data), readFile);
    const withoutSnapshot = await interleaved(
      rounds,
      () => {
        rmSync(join(data, SNAPSHOT_FILE), { force: true });
        return timeToAnswer(data);
      },
      readFile,
    );
    return [
      lineWithFloor('start on 100 000 events with a snapshot', 'ms', '≤ 1000 ms', withSnapshot),
      lineWithFloor('start on 100 000 events without one', 'ms', '≤ 1000 ms', withoutSnapshot),
    ];
  });
}

async function timeToAnswer(data: string): Promise<number> {
  const port = await freePort();
  const startMs = performance.now();
  const child = startNode(serverArguments(['--data', data, '--port', String(port)]));
  await answering(port, child);
  const tookMs = performance.now() - startMs;
  // Killed: going down in good order would write a snapshot.
  await child.end('SIGKILL');
  return tookMs;
}

/** From `npm start` a second time until it answers; the floor is Node's own start. */
export function secondStart(rounds: number): Promise<readonly Line[]> {
  return inTemporaryFolder(async (folder) => {
    const launch = async (): Promise<number> => {
      const port = await freePort();
      const startMs = performance.now();
      const child = startNode([join(ROOT, 'server/cli/launch.mjs'), 'serve', '--data', join(folder, 'data'), '--port', String(port)]);
      await answering(port, child);
      const tookMs = performance.now() - startMs;
      await child.end('SIGINT');
      return tookMs;
    };
    // The first start makes the folder, brings the demo in, and builds what is missing.
    await launch();
    const results = await interleaved(rounds, launch, () => timeToEnd(['--eval', '0']));
    return [lineWithFloor('second start through the launcher', 'ms', '≤ 1000 ms', results)];
  });
}
