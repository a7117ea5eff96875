import { findingLine } from '../../intake/finding.ts';
import { readLiftProblem, worthScale } from '../../intake/problems/lift-problem.ts';
import { lift as liftOf, liftProgramme } from '../../questions/lift.ts';
import type { Command } from './command.ts';
import { writeJson } from './outlet.ts';
import { standardInput } from './standard-input.ts';
import { Stop } from './stop.ts';
import { textTable } from './text-table.ts';

export const lift: Command = {
  options: { programme: { type: 'boolean' } },
  takes: [],
  help: `A pool of units given where it reaches most: first the most sellers at their own goal, then
the greatest worth of prize steps, then the lowest totals raised first. Exact; all of it is given.
A group should use this only where it chose so before its first stall: an even share is the usual.

The problem is read from standard input:
  {"pool":12,"sellers":[{"seller":"ada","credited":38,"goal":40}],"steps":[{"units":50,"worth":2}]}
worth: what a step counts against other steps, once it is reached; never an amount of money.

  --json        {"give":{seller:units},"goalsReached":n,"worth":n,"left":n}
  --programme   the same question as an integer programme (LP format), for any other solver to
                confirm: its optimum is goalsReached and worth, put together as its first line says

Examples
  cratebook lift --json < problem.json`,
  run: async (given, outlet) => {
    const read = readLiftProblem(await standardInput(outlet));
    if (!read.ok) throw new Stop(findingLine(read.refusal, 'standard input'));
    const { steps } = read.value;
    const input = { ...read.value, worthScale: worthScale(steps.map(({ worth }) => worth)) };
    if (given.has('programme')) {
      await outlet.write(liftProgramme(input));
      return 0;
    }
    const lifted = liftOf(input);
    if (given.has('json')) {
      await writeJson(outlet, lifted);
      return 0;
    }
    const rows = input.sellers.map(({ seller, credited, goal }) => {
      const given = lifted.give[seller] ?? 0;
      return [
        seller,
        String(credited),
        String(given),
        String(credited + given),
        String(goal ?? ''),
      ];
    });
    const heads = ['seller', 'credited', 'gets', 'then', 'goal'];
    await outlet.write(textTable(heads, rows, new Set([1, 2, 3, 4])));
    await outlet.write(`${lifted.goalsReached} at their goal, steps worth ${lifted.worth}\n`);
    return 0;
  },
};
