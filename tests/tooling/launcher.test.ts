import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { launcherModule, runNode } from './run-node.ts';

const LAUNCHER = fileURLToPath(launcherModule('launch.mjs'));

describe('the launcher', () => {
  test('refuses an unknown command in one line, with exit code 2 and nothing on stdout', async () => {
    const { exitCode, stdout, stderr } = await runNode([LAUNCHER, 'knead']);
    expect(exitCode).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/^There is no command "knead"\. The commands are: .*serve.*\n$/);
  });

  test('refuses an older Node in one line, before it loads anything', async () => {
    const program = `
      Object.defineProperty(process, 'versions', { value: { ...process.versions, node: '20.18.3' } });
      await import(${JSON.stringify(launcherModule('launch.mjs'))});`;
    const { exitCode, stdout, stderr } = await runNode(['--input-type=module', '-e', program]);
    expect(exitCode).toBe(1);
    expect(stdout).toBe('');
    expect(stderr).toBe('This needs Node 20.19 or newer; this is Node 20.18.3.\n');
  });
});

describe('a tool that the launcher runs', () => {
  const run = `import { runTool } from ${JSON.stringify(launcherModule('run-tool.mjs'))};`;

  test('keeps its output to itself and gives it to its caller', async () => {
    const program = `${run}
      const result = await runTool(process.execPath, ['-e', 'console.log("out"); console.error("err"); process.exitCode = 3'], { cwd: '/' });
      process.exitCode = result.exitCode === 3 && result.output.includes('out') && result.output.includes('err') ? 0 : 1;`;
    expect(await runNode(['--input-type=module', '-e', program])).toEqual({ exitCode: 0, stdout: '', stderr: '' });
  });

  test('that is not there ends with exit code 127', async () => {
    const program = `${run}
      const result = await runTool('/nowhere/tool', [], { cwd: '/' });
      process.exitCode = result.exitCode === 127 && result.output.includes('ENOENT') ? 0 : 1;`;
    expect(await runNode(['--input-type=module', '-e', program])).toEqual({ exitCode: 0, stdout: '', stderr: '' });
  });

  test.each([
    ['SIGINT', 130],
    ['SIGTERM', 143],
  ] as const)('is ended, with its own children, by a %s to the launcher, which then tells so', async (signal, code) => {
    // The tool starts a child of its own and says so; then both only wait.
    const waits = 'setInterval(() => {}, 1_000_000)';
    const tool = `
      const { spawn } = require('node:child_process');
      const child = spawn(process.execPath, ['-e', ${JSON.stringify(waits)}], { stdio: 'inherit' });
      child.on('spawn', () => console.log('ready'));
      ${waits};`;
    const program = `${run} await runTool(process.execPath, ['-e', ${JSON.stringify(tool)}], { cwd: '/', show: true });`;
    let isSignalled = false;
    // Both hold the launcher's stdout: that it closes, and with it this promise comes true, says that both have ended.
    const { exitCode } = await runNode(['--input-type=module', '-e', program], (soFar, pid) => {
      if (isSignalled || !soFar.includes('ready')) return;
      isSignalled = true;
      process.kill(pid, signal);
    });
    expect(exitCode).toBe(code);
  });
});
