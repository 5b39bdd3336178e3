import { readFileSync } from 'node:fs';

/**
 * Loaded before the server in a round: a wall clock that somebody sets. Upon SIGUSR2 it reads by how many milliseconds it is off from the
 * machine's from the file that OVENWARD_SHIFT names.
 */
const realNow = Date.now.bind(Date);
let shiftMs = 0;
Date.now = () => realNow() + shiftMs;
process.on('SIGUSR2', () => {
  shiftMs = Number(readFileSync(process.env['OVENWARD_SHIFT'] ?? '', 'utf8'));
});
