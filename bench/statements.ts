import { readFileSync } from 'node:fs';
import { availableParallelism, loadavg } from 'node:os';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { paperPdfs } from '../src/paper/paper-batch.ts';
import { PaperPrinter } from '../src/paper/paper-printer.ts';
import { familyAccounts } from '../src/questions/family-account.ts';
import { familyStatement } from '../src/statements/family-statement.ts';
import type { Paper } from '../src/statements/paper.ts';
import { english } from '../src/words/english.ts';
import { syntheticFamilies } from './synthetic-families.ts';

/**
 * Statements for 1,000 families, from the folded book to checked PDF/UA-1 bytes, in papers a
 * second, against two peers in the same run: the same typesetter used the plain way (a new compiler
 * a paper, one process), and that typesetter on a bare page without table, tags or checks, which no
 * paper of ours can be faster than in one process. Run: `node bench/statements.ts [families]`.
 *
 * On a machine that others use, the processor time a paper says more than the clock: it is what
 * the rate would be if all cores were free.
 */
const FAMILIES = Number(process.argv[2] ?? 1000);
const PEER_PAPERS = 40;
const GOAL_PER_SECOND = 200;

const context = {
  says: () => english,
  group: 'Wrenfield Young Rowers',
  asAt: '2027-04-18',
  ask: 'Jo Reyes',
};
const ledger = syntheticFamilies(FAMILIES);
const loadBefore = loadavg()[0] ?? 0;
const start = performance.now();
const startCpu = processorMs();
const accounts = familyAccounts(ledger);
if (!accounts.ok) throw new Error(accounts.refusal.name);
let good = 0;
let bytes = 0;
let pages = 0;
await paperPdfs(papersOf(accounts.value.values()), {
  size: 'a4',
  each: (_paper, printed) => {
    if (!printed.ok || !isMarkedUa1(printed.value.pdf)) return;
    good += 1;
    bytes += printed.value.pdf.length;
    pages += printed.value.pages;
  },
});
const seconds = (performance.now() - start) / 1000;
const cpuMs = (processorMs() - startCpu) / FAMILIES;
const cores = availableParallelism();
const rate = FAMILIES / seconds;

const some = [...papersOf([...accounts.value.values()].slice(0, PEER_PAPERS))];
const fresh = perSecond(PEER_PAPERS, (at) => {
  const paper = some[at % some.length];
  if (paper !== undefined) new PaperPrinter().print(paper, 'a4');
});
const bareCompiler = NodeCompiler.create({ workspace: '/nowhere' });
const bare = perSecond(PEER_PAPERS * 5, (at) => {
  bareCompiler.pdf({ mainFileContent: `Statement ${at}` }, { pdfTags: false });
});

let lines = 0;
for (const account of accounts.value.values()) lines += account.lines.length;
console.log(`${FAMILIES} statements, ${(lines / FAMILIES).toFixed(1)} dated lines each, \
${pages} pages, ${(bytes / FAMILIES / 1024).toFixed(0)} KB each`);
console.log(`marked PDF/UA-1 and passed by the typesetter's check: ${good} of ${FAMILIES}`);
console.log(`machine: ${cores} cores, load ${loadBefore.toFixed(1)} before the start`);
console.log(`rate: ${rate.toFixed(0)} a second by the clock (goal ${GOAL_PER_SECOND})`);
console.log(`processor time: ${cpuMs.toFixed(1)} ms a paper, with starting and writing; \
${((cores * 1000) / cpuMs).toFixed(0)} a second if all cores were free`);
console.log(`peer, a new compiler a paper: ${fresh.toFixed(0)} a second; ours is \
${(rate / fresh).toFixed(1)} times that`);
console.log(`peer, a bare untagged line in one process: ${bare.toFixed(0)} a second; ours is \
${(rate / bare).toFixed(2)} times that`);
if (good !== FAMILIES) process.exitCode = 1;

function* papersOf(all: Iterable<Parameters<typeof familyStatement>[0]>): Generator<Paper> {
  for (const account of all) yield familyStatement(account, ledger, context);
}

/**
 * Milliseconds of processor time of this process and those it started that have ended
 * (proc(5), /proc/pid/stat fields 14 to 17, in hundredths of a second).
 */
function processorMs(): number {
  const fields = readFileSync('/proc/self/stat', 'utf8').split(') ').at(-1)?.split(' ') ?? [];
  return fields.slice(11, 15).reduce((sum, ticks) => sum + Number(ticks) * 10, 0);
}

function perSecond(count: number, work: (at: number) => void): number {
  const began = performance.now();
  for (let at = 0; at < count; at += 1) work(at);
  return count / ((performance.now() - began) / 1000);
}

/** The marks of ISO 14289-1 that stand outside compressed parts: part 1 in the metadata. */
function isMarkedUa1(pdf: Uint8Array): boolean {
  const text = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength);
  return text.includes('<pdfuaid:part>1</pdfuaid:part>');
}
