import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { HEARTBEAT_MS } from '../../shared/wire/protocol.ts';
import { startNode, startServer } from './child.ts';
import { openPages, Page } from './pages.ts';
import { freePort, inTemporaryFolder } from './places.ts';
import { lineWithFloor, type Line, type Round } from './report.ts';

/** A window over which the idle process is watched. */
const WINDOW_MS = 6_000;
/** Ticks of processor time a second in /proc, on every Linux there is (proc(5): sysconf(_SC_CLK_TCK)). */
const TICKS_A_SECOND = 100;

/**
 * What the server takes while nobody taps: the demo day, a wall and two phones that only say that they are there. The floor is a Node
 * process that waits. Needs /proc.
 */
export function atRest(rounds: number): Promise<readonly Line[]> {
  return inTemporaryFolder(async (folder) => {
    const port = await freePort();
    const server = await startServer(join(folder, 'data'), port);
    const bare = startNode(['--eval', 'setInterval(() => {}, 1000)']);
    const pages = [...(await openPages(1, () => Page.live(port, 'wall'))), ...(await openPages(2, () => Page.live(port, 'phone')))];
    const heartbeat = setInterval(() => pages.forEach((page) => page.ping()), HEARTBEAT_MS);
    try {
      // What starting left behind is cleared away first.
      await pause(WINDOW_MS);
      const processor: Round[] = [];
      const memory: Round[] = [];
      for (let round = 0; round < rounds; round += 1) {
        const before = [ticksOf(server.pid), ticksOf(bare.pid)] as const;
        const startMs = performance.now();
        await pause(WINDOW_MS);
        const windowS = (performance.now() - startMs) / 1000;
        const percent = (ticks: number): number => (ticks / TICKS_A_SECOND / windowS) * 100;
        // Less than a tick cannot be told from nothing; half a tick keeps the ratio finite.
        const least = percent(0.5);
        processor.push({
          value: Math.max(least, percent(ticksOf(server.pid) - before[0])),
          floor: Math.max(least, percent(ticksOf(bare.pid) - before[1])),
        });
        memory.push({ value: residentMb(server.pid), floor: residentMb(bare.pid) });
      }
      return [
        lineWithFloor('memory at rest', 'MB', '≤ 120 MB', memory),
        lineWithFloor(`processor time at rest, windows of ${WINDOW_MS / 1000} s`, '% of a core', '≤ 1 %', processor),
      ];
    } finally {
      clearInterval(heartbeat);
      for (const page of pages) page.end();
      await server.end('SIGKILL');
      await bare.end('SIGKILL');
    }
  });
}

/** User and system time, in ticks (proc(5), /proc/pid/stat, fields 14 and 15, counted after the last ')'). */
function ticksOf(pid: number): number {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  return Number(fields[11]) + Number(fields[12]);
}

/** Resident memory, in millions of bytes (proc(5), /proc/pid/status, VmRSS, in units of 1024 bytes). */
function residentMb(pid: number): number {
  const kilobytes = Number(/^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]);
  return (kilobytes * 1024) / 1_000_000;
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
