import { loadHighs } from '../checks/outside/highs.ts';
import { matchProgramme, type ToExplain } from '../checks/outside/match-programme.ts';
import { addDays } from '../src/base/day.ts';
import { seeded } from '../src/base/seeded.ts';
import { testBook } from '../src/ledger/test-book.ts';
import { matchBank } from '../src/questions/match/match-bank.ts';
import { mostDisjoint, type Way } from '../src/solvers/match/most-disjoint.ts';
import { sumsTo } from '../src/solvers/match/sums-to.ts';
import { median } from './median.ts';

/**
 * Matching: 1,000 bank lines against 1,000 deposits (goal: at most 200 ms, preparation included),
 * and 30 lines against 60 receipts, several receipts a line, against the integer-programming solver
 * HiGHS in the same run at equal optimum (goal: at least 100 times faster). The solver's time is
 * that of reading and solving the text, not of writing it. Medians are told.
 *
 * node bench/match.ts
 */
const GOALS = { thousand: 200, ratio: 100 };
const ROUNDS = 7;
const SEASON_DAYS = 120;
const DAYS = 10;

const random = seeded(20270404);
const highs = await loadHighs();
for (let turn = 0; turn < 3; turn += 1) thousand();
const large = Array.from({ length: ROUNDS }, thousand);
const small = Array.from({ length: ROUNDS }, thirty);
const ours = median(large);
const ratio = median(small.map((round) => round.integer / round.ours));
console.log(`1,000 lines against 1,000 deposits: ${ours.toFixed(1)} ms (goal ${GOALS.thousand})`);
console.log(
  `30 lines against 60 receipts: ours ${median(small.map((round) => round.ours)).toFixed(2)} ms, ` +
    `integer programme ${median(small.map((round) => round.integer)).toFixed(0)} ms, ` +
    `${ratio.toFixed(0)} times (goal ${GOALS.ratio})`,
);
process.exitCode = ours <= GOALS.thousand && ratio >= GOALS.ratio ? 0 : 1;

/** A third of the lines on the day itself, the rest up to three days later; one in twenty lost. */
function thousand(): number {
  const book = testBook({ honey: 800 }, ['ada']);
  const deposits = Array.from({ length: 1000 }, () =>
    book.movement('deposit', {
      date: addDays('2027-02-01', random.whole(0, SEASON_DAYS)),
      cents: 25 * random.whole(40, 8000),
    }),
  );
  const kept = random.shuffle(deposits).filter(() => !random.chance(5));
  const extra = Array.from({ length: 1000 - kept.length }, () => random.pick(deposits));
  const lines = [...kept, ...extra].map(({ date, cents }, at) => ({
    line: at + 1,
    date: addDays(date, random.whole(0, 3)),
    cents: at < kept.length ? cents : cents + 5,
    text: 'DEPOSIT',
  }));
  const ledger = book.ledger(deposits);
  const { ms, answer } = timed(() => matchBank(ledger, { lines }));
  if (answer.matched.length < kept.length) throw new Error('a line was not matched');
  return ms;
}

/** Every line is the sum of one to three receipts of the days before it. */
function randomLines(): ToExplain {
  const receipts = Array.from({ length: 60 }, (_, at) => ({
    day: at + random.whole(0, 1),
    cents: 25 * random.whole(20, 1000),
  }));
  const lines = Array.from({ length: 30 }, (_, at) => {
    const [first, second] = [receipts[2 * at], receipts[2 * at + 1]];
    return { day: 2 * at + 3, cents: (first?.cents ?? 0) + (second?.cents ?? 0) };
  });
  return { receipts, lines: random.shuffle(lines), days: DAYS };
}

function explained({ lines, receipts, days }: ToExplain): { lines: number; receipts: number } {
  const ways = lines.flatMap((line, at): Way[] => {
    const near = [...receipts.keys()].filter((place) => {
      const apart = line.day - (receipts[place]?.day ?? 0);
      return apart >= 0 && apart <= days;
    });
    const values = near.map((place) => receipts[place]?.cents ?? 0);
    const { sets } = sumsTo(values, line.cents, { members: 12, found: 50 });
    return sets.map((set) => ({ line: at, items: set.map((place) => near[place] ?? 0) }));
  });
  const { chosen } = mostDisjoint(ways);
  return { lines: chosen.length, receipts: chosen.flatMap(({ items }) => items).length };
}

function thirty(): { readonly ours: number; readonly integer: number } {
  const problem = randomLines();
  const found = timed(() => explained(problem));
  const programme = matchProgramme(problem);
  const integer = timed(() => highs.solve(programme, { mip_rel_gap: 0, time_limit: 120 }));
  const { lines, receipts } = found.answer;
  const value = lines * (problem.receipts.length + 1) - receipts;
  if (Math.round(integer.answer.ObjectiveValue) !== value) throw new Error('not the same optimum');
  return { ours: found.ms, integer: integer.ms };
}

function timed<T>(work: () => T) {
  const started = performance.now();
  const answer = work();
  return { answer, ms: performance.now() - started };
}
