import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bringPrograms } from './system-packages.ts';

/**
 * Everything a change must pass, in one run: brings the programs the tests need, then checks types,
 * form, all tests, the build and the app in a browser. The last line says how much passed.
 */
const home = join(import.meta.dirname, '..');
const results = mkdtempSync(join(tmpdir(), 'cratebook-test-'));

interface Count {
  readonly passed: number;
  readonly failed: number;
}

interface Step {
  readonly name: string;
  readonly run: () => Count;
}

const steps: readonly Step[] = [
  { name: 'types', run: () => command('tsc', '-p', '.') },
  { name: 'form', run: () => command('biome', 'check', '.') },
  { name: 'tests', run: () => tests('unit') },
  { name: 'build', run: () => command('vite', 'build', '--logLevel', 'warn') },
  { name: 'the app in a browser', run: () => tests('browser') },
];

function main(): number {
  const toInstall = bringPrograms();
  if (toInstall !== '') {
    process.stderr.write(`${toInstall}\n`);
    return 2;
  }
  const counts = steps.map((step) => timed(step));
  rmSync(results, { recursive: true });
  const passed = counts.reduce((sum, count) => sum + count.passed, 0);
  const failed = counts.reduce((sum, count) => sum + count.failed, 0);
  process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
  return failed === 0 ? 0 : 1;
}

function timed({ name, run }: Step): Count {
  process.stdout.write(`\n== ${name}\n`);
  const start = performance.now();
  const count = run();
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  const state = count.failed === 0 ? 'passed' : 'failed';
  process.stdout.write(`== ${name}: ${state} in ${seconds} s\n`);
  return count;
}

/** Runs a tool of node_modules on this Node; it counts as one check. */
function command(tool: string, ...options: string[]): Count {
  return run(tool, options) ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

/** Runs a project of tests and counts them; a run that breaks off counts as failed. */
function tests(project: 'unit' | 'browser'): Count {
  const file = join(results, `${project}.json`);
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  const wentWell = run('vitest', ['run', '--project', project, ...reporters]);
  const counted = countOf(file);
  const brokeOff = !wentWell && counted.failed === 0;
  return { passed: counted.passed, failed: counted.failed + (brokeOff ? 1 : 0) };
}

function countOf(file: string): Count {
  try {
    const report = JSON.parse(readFileSync(file, 'utf8'));
    return { passed: Number(report.numPassedTests), failed: Number(report.numFailedTests) };
  } catch {
    return { passed: 0, failed: 0 };
  }
}

function run(tool: string, options: readonly string[]): boolean {
  const bin = join(home, 'node_modules', '.bin');
  // Tools start `node` by name: the one that runs this comes first.
  const path = [join(process.execPath, '..'), bin, process.env.PATH].join(':');
  const done = spawnSync(join(bin, tool), options, {
    cwd: home,
    stdio: 'inherit',
    env: { ...process.env, PATH: path, NO_COLOR: '1' },
  });
  return done.status === 0;
}

process.exitCode = main();
