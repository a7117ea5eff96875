import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { flows, grown } from './hand-flows.ts';
import { speedPage } from './speed-table.ts';

describe('the page about the speed of hand', () => {
  it('says what the flows are now', () => {
    const page = readFileSync(new URL('../../docs/speed-of-hand.md', import.meta.url), 'utf8');
    expect(plain(page)).toBe(plain(speedPage()));
  });
});

/** Without what a formatter of tables adds. */
function plain(page: string): string {
  return page.replace(/ {2,}/g, ' ').replace(/-{3,}/g, '---');
}

describe.each(flows)('$what', (flow) => {
  it('stays within its taps, keys and seconds', () => {
    expect(grown(flow, flow.app)).toEqual([]);
  });

  it('would be told with one tap more, and with one key more', () => {
    expect(grown(flow, `${flow.app}P`)).toContainEqual(expect.stringContaining('taps'));
    expect(grown(flow, `${flow.app}K`)).toContainEqual(expect.stringContaining('keys'));
  });
});
