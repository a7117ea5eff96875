import { spawnSync } from 'node:child_process';

/** Programs that the tests use, most for a second opinion, by the Debian package of each. */
const PROGRAMS: Readonly<Record<string, string>> = {
  chromium: 'chromium',
  ledger: 'ledger',
  hledger: 'hledger',
  'bean-check': 'beancount',
  pdftoppm: 'poppler-utils',
  qpdf: 'qpdf',
  // Power cuts and full disks.
  strace: 'strace',
  prlimit: 'util-linux',
};
const LOCK_TIMEOUT_S = 600;

/** Installs what is missing where the system has apt. Returns what to install by hand, else ''. */
export function bringPrograms(): string {
  const missing = missingPackages();
  if (missing.length === 0) return '';
  if (!hasProgram('apt-get')) return byHand(missing, 'This system has no apt-get');
  const isRoot = process.getuid?.() === 0;
  if (!isRoot && !hasProgram('sudo')) return byHand(missing, 'This needs root or sudo');
  process.stderr.write(`Installing ${missing.join(', ')}\n`);
  if (!aptGet(isRoot, 'install', ...missing)) {
    aptGet(isRoot, 'update');
    aptGet(isRoot, 'install', ...missing);
  }
  const still = missingPackages();
  return still.length === 0 ? '' : byHand(still, 'apt-get did not bring everything');
}

function aptGet(isRoot: boolean, action: string, ...packages: string[]): boolean {
  const command = ['env', 'DEBIAN_FRONTEND=noninteractive', 'apt-get'];
  const options = ['-y', '-q', '--no-install-recommends', '-o'];
  const timeout = `DPkg::Lock::Timeout=${LOCK_TIMEOUT_S}`;
  const line = [...command, ...options, timeout, action, ...packages];
  const [program = '', ...rest] = isRoot ? line : ['sudo', ...line];
  return spawnSync(program, rest, { stdio: ['ignore', 2, 2] }).status === 0;
}

function missingPackages(): string[] {
  return Object.entries(PROGRAMS)
    .filter(([program]) => !hasProgram(program))
    .map(([, name]) => name);
}

function hasProgram(program: string): boolean {
  return spawnSync('sh', ['-c', `command -v ${program}`], { stdio: 'ignore' }).status === 0;
}

function byHand(packages: readonly string[], why: string): string {
  return `${why}. Please install these, then try again: ${packages.join(', ')} (names in Debian)`;
}
