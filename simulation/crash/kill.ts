import { killWhileAppending } from './kill-while-appending.ts';

/**
 * node simulation/crash/kill.ts [KILLS] [SEED]: kills an appending process; exit 1 where it hurt.
 */
const [kills = '1000', seed = '1'] = process.argv.slice(2);
const started = Date.now();
const counts = await killWhileAppending({
  kills: Number(kills),
  seed: Number(seed),
  fault: 'none',
  tell: (sofar) => {
    if (sofar.kills % 50 === 0) console.error(JSON.stringify(sofar));
  },
});
const seconds = Math.round((Date.now() - started) / 1000);
console.log(JSON.stringify({ ...counts, seed: Number(seed), seconds }));
process.exitCode = counts.lost === 0 && counts.damaged === 0 ? 0 : 1;
