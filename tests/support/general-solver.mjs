import { createRequire } from 'node:module';
import { Worker } from 'node:worker_threads';

const require = createRequire(import.meta.url);

/** The general solver's own program is made for a browser's worker: this is what it finds of one. */
const BROWSER_WORKER = `
const { parentPort, workerData } = require('node:worker_threads');
const { readFileSync } = require('node:fs');
globalThis.require = require;
globalThis.postMessage = (message) => parentPort.postMessage(message);
globalThis.addEventListener = (type, listener) => {
  if (type === 'message') parentPort.on('message', (data) => listener({ data }));
};
require('node:vm').runInThisContext(readFileSync(workerData.program, 'utf8'), { filename: workerData.program });
`;

/** @typedef {{ status: string, solution: Record<string, unknown> | null, errors: unknown[] }} Answer */

/**
 * Solves a model with Chuffed in a worker of its own, which ends with it: the program does not bear a second run.
 *
 * @param {string} model in MiniZinc
 * @param {number} limitMs after which what was found so far is the answer, its status UNPROVED
 * @returns {Promise<Answer>}
 */
export function solveModel(model, limitMs) {
  const program = require.resolve('minizinc/minizinc-worker.js');
  return new Promise((resolve, reject) => {
    const worker = new Worker(BROWSER_WORKER, { eval: true, workerData: { program } });
    /** @type {Answer} */
    const answer = { status: 'UNPROVED', solution: null, errors: [] };
    const end = () => {
      clearTimeout(timer);
      worker.terminate().then(() => resolve(answer), reject);
    };
    const timer = setTimeout(end, limitMs);
    worker.on('error', reject);
    worker.on('message', (message) => {
      if (message.type === 'ready') {
        const args = ['--solver', 'org.minizinc.chuffed', '-f', '-a', '--output-mode', 'json', 'day.mzn'];
        worker.postMessage({ jsonStream: true, files: { 'day.mzn': model }, args }, []);
      } else if (message.type === 'solution') answer.solution = message.output.json;
      else if (message.type === 'status') answer.status = message.status;
      else if (message.type === 'error') answer.errors.push(message);
      else if (message.type === 'exit') end();
    });
    worker.postMessage({ wasmURL: require.resolve('minizinc/minizinc.wasm'), dataURL: require.resolve('minizinc/minizinc.data') }, []);
  });
}

/** The solver's name with its version and that of the package it comes in. */
export function solverName() {
  return `Chuffed 0.14.0 of minizinc ${require(require.resolve('minizinc').replace(/dist.*/u, 'package.json')).version} (WebAssembly)`;
}
