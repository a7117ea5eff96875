import { describe, expect, it } from 'vitest';
import { demoHeader, demoSeason } from '../../../scenarios/demo/demo-season.ts';
import { writeBook } from '../../intake/write-book.ts';
import { run } from './test-run.ts';

const demo = [...writeBook(demoHeader, demoSeason())].join('');
const on = ['--today', '2027-04-04'];

describe('read-line', () => {
  it('says the sentence and the record of one reading', async () => {
    const { code, out } = await run(['read-line', '-', 'ada out 2c honey', '--json', ...on], demo);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual({
      readings: [
        {
          sentence: 'Goods out to Ada M.: 24 Wildflower honey, $204.00',
          record: { kind: 'handover', date: '2027-04-04', seller: 'ada', lines: { honey: 24 } },
        },
      ],
      wanted: [],
    });
  });

  it('ends with 1 where two readings are possible, and tells both', async () => {
    const { code, out } = await run(['read-line', '-', 'back 2 tea petr', ...on], demo);
    expect(code).toBe(1);
    expect(out.split('\n')).toEqual([
      'Goods back from Petr N.: 2 Berry tea, $10.50 (4 Apr 2027)',
      'Goods back from Petr N.: 2 Mint tea, $10.00 (4 Apr 2027)',
      '',
    ]);
  });

  it('ends with 1 where a word is not known, and names the nearest', async () => {
    const { code, out } = await run(['read-line', '-', 'ada out 2 hony', '--json', ...on], demo);
    expect(code).toBe(1);
    expect(JSON.parse(out).wanted).toMatchObject([{ said: 'hony', nearest: 'honey' }]);
  });
});
