// Every npm script starts here. Plain Node without packages: it has to run on a fresh copy, before anything is installed or built.
// What it needs of Node's newer parts is loaded only after the version is known to be new enough.

const NEEDED_MAJOR = 20;
const NEEDED_MINOR = 19;

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < NEEDED_MAJOR || (major === NEEDED_MAJOR && minor < NEEDED_MINOR)) {
  process.stderr.write(`This needs Node ${NEEDED_MAJOR}.${NEEDED_MINOR} or newer; this is Node ${process.versions.node}.\n`);
  process.exitCode = 1;
} else {
  const { runCommand } = await import('./run-command.mjs');
  process.exitCode = await runCommand(process.argv.slice(2));
  const { leaveEvenIfHeldOpen } = await import('./leave.mjs');
  leaveEvenIfHeldOpen();
}
