import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { demoHeader, demoSeason, demoSeasonMended } from '../../../scenarios/demo/demo-season.ts';
import { writeBook } from '../../intake/write-book.ts';
import { run } from './test-run.ts';

const folder = mkdtempSync(join(tmpdir(), 'cratebook-prizes-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const demo = [...writeBook(demoHeader, demoSeason())].join('');
const mended = [...writeBook(demoHeader, demoSeasonMended())].join('');
const isPdf = (file: string) => readFileSync(file).subarray(0, 5).toString() === '%PDF-';

describe('prizes', () => {
  it('has the keys of the contract, and tells what is forgone and not reached', async () => {
    const { code, out } = await run(['prizes', '-', '--json'], demo);
    expect(code).toBe(0);
    const { sellers, order, notShared } = JSON.parse(out);
    const of = (id: string) => sellers.find(({ seller }: { seller: string }) => seller === id);
    expect(of('ada')).toMatchObject({
      credited: 74,
      confirmed: 74,
      steps: ['patch', 'bottle', 'shirt'],
      missing: [],
    });
    expect(of('otto')).toMatchObject({ steps: ['patch'], forgone: ['patch'] });
    expect(of('noa')).toMatchObject({ credited: 34, notReached: ['bottle', 'shirt'] });
    expect(order).toContainEqual({ level: 'patch', prize: 'Season patch', pieces: 13 });
    expect(notShared).toEqual({ 'stall:garden-0327': 57 });
  });

  it('leaves nothing for a leader to decide once the demo season is put right', async () => {
    const { sellers, notShared } = JSON.parse((await run(['prizes', '-', '--json'], mended)).out);
    const notReached = sellers.flatMap((one: { notReached: string[] }) => one.notReached);
    expect(notReached).toEqual([]);
    expect(notShared).toEqual({});
  });

  it('prints the order and the hand-out list', async () => {
    const [order, list] = [join(folder, 'order.pdf'), join(folder, 'list.pdf')];
    const args = ['prizes', '-', '--order-pdf', order, '--hand-out-pdf', list];
    const { code, out } = await run(args, demo);
    expect({ code, out }).toEqual({ code: 0, out: '' });
    expect([order, list].map(isPdf)).toEqual([true, true]);
  });
});

describe('host', () => {
  it('reports a shop’s season as words, as numbers and on paper', async () => {
    const words = await run(['host', '-', '--host', 'market'], demo);
    expect(words.out).toContain('3 stalls, 12 h: 107 units sold for $785.25.');
    const { out } = await run(['host', '-', '--host', 'market', '--json'], demo);
    expect(JSON.parse(out)).toMatchObject({ host: 'market', minutes: 720, value: 78525 });
    const file = join(folder, 'host.pdf');
    await run(['host', '-', '--host', 'market', '--pdf', file], demo);
    expect(isPdf(file)).toBe(true);
  });

  it('names the nearest host shop where there is none of that name', async () => {
    const book = join(folder, 'demo.jsonl');
    writeFileSync(book, demo);
    const wrong = await run(['host', book, '--host', 'markt']);
    expect(wrong).toMatchObject({ code: 2, out: '' });
    expect(wrong.notes[0]).toMatch(/no host shop "markt"; did you mean market\?/);
    expect((await run(['host', book])).notes[0]).toMatch(/--host is missing/);
  });
});
