import { cutPower } from './cut-power.ts';

/**
 * node simulation/crash/cut.ts [STATES] [SEED]: power cuts in the store and in three faulty ones.
 */
const [states = '1000', seed = '1'] = process.argv.slice(2);
const common = { states: Number(states), seed: Number(seed), appends: 250 };
let sound = true;
for (const fault of [
  'none',
  'synchronous-normal',
  'synchronous-off',
  'acknowledge-early',
] as const) {
  const started = Date.now();
  const counts = await cutPower({ ...common, fault });
  const seconds = Math.round((Date.now() - started) / 1000);
  console.log(JSON.stringify({ fault, ...counts, seed: common.seed, seconds }));
  if (fault === 'none') sound = counts.losing === 0 && counts.damaged === 0;
  else sound &&= counts.losing > 0;
}
process.exitCode = sound ? 0 : 1;
