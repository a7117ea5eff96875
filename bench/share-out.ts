import { loadHighs } from '../checks/outside/highs.ts';
import { shareCost, shareProgramme } from '../checks/outside/share-programme.ts';
import { randomShare } from '../simulation/random-problems.ts';
import { seeded } from '../src/base/seeded.ts';
import { sharedTable } from '../src/solvers/share/shared-table.ts';
import { median } from './median.ts';

/**
 * Share-outs against the integer-programming solver HiGHS in the same run, at equal optimum: as an
 * integer programme (goal: at least 10 times faster) and as the relaxed linear programme (goal: 3
 * times; its corners are whole here, so it has the same optimum). Their time is that of reading and
 * solving the text, not of writing it. The largest and the median of each grid point are told.
 *
 * node bench/share-out.ts
 */
const SIZES = [
  [20, 9],
  [60, 12],
  [200, 12],
] as const;
const UNITS = [50, 200, 500, 1000, 2000];
const ROUNDS = 7;
const GOALS = { integer: 10, linear: 3 };

const highs = await loadHighs();
const random = seeded(20270404);
let isMet = true;
warm();
console.log('sellers products units   ours ms  integer ms  linear ms   integer/ours  linear/ours');
for (const [rows, columns] of SIZES) {
  for (const units of UNITS) {
    const times = Array.from({ length: ROUNDS }, () => round(rows, columns, units));
    const of = (pick: (time: (typeof times)[number]) => number) => median(times.map(pick));
    const ratios = {
      integer: of((time) => time.integer / time.ours),
      linear: of((time) => time.linear / time.ours),
    };
    isMet = isMet && ratios.integer >= GOALS.integer && ratios.linear >= GOALS.linear;
    console.log(
      [
        String(rows).padStart(7),
        String(columns).padStart(8),
        String(units).padStart(5),
        of((time) => time.ours)
          .toFixed(2)
          .padStart(9),
        of((time) => time.integer)
          .toFixed(1)
          .padStart(11),
        of((time) => time.linear)
          .toFixed(1)
          .padStart(10),
        ratios.integer.toFixed(1).padStart(14),
        ratios.linear.toFixed(1).padStart(12),
      ].join(' '),
    );
  }
}
process.exitCode = isMet ? 0 : 1;

function round(rows: number, columns: number, units: number) {
  const table = randomShare(random, rows, columns, units);
  const shared = timed(() => sharedTable(table));
  const totals = shared.answer.cells.map((cells) => cells.reduce((sum, each) => sum + each, 0));
  const texts = {
    integer: shareProgramme(table, totals),
    linear: shareProgramme(table, totals, true),
  };
  const integer = timed(() => highs.solve(texts.integer, { mip_rel_gap: 0 }));
  const linear = timed(() => highs.solve(texts.linear));
  const cost = shareCost(table, shared.answer);
  for (const { answer } of [integer, linear]) {
    if (Math.round(answer.ObjectiveValue) !== cost) throw new Error('not the same optimum');
  }
  return { ours: shared.ms, integer: integer.ms, linear: linear.ms };
}

function warm(): void {
  for (let turn = 0; turn < 40; turn += 1) round(60, 12, 200);
}

function timed<T>(work: () => T) {
  const started = performance.now();
  const answer = work();
  return { answer, ms: performance.now() - started };
}
