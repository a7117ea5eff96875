import fc from 'fast-check';
import type { StallEntry } from '../../records/stall-entry.ts';

/** Lines of a stall's sheet for tests: ids count up by phone, times by the second. */
export function pen(phone: string, starts = '2027-04-03T09:00:00') {
  let written = 0;
  let moment = Date.parse(`${starts}Z`);
  return {
    wait: (seconds: number) => {
      moment += seconds * 1000;
    },
    write: (
      what: StallEntry['what'],
      parts: Omit<StallEntry, 'id' | 'at' | 'what'> = {},
    ): StallEntry => {
      written += 1;
      moment += 1000;
      const at = new Date(moment).toISOString().slice(0, 19);
      return { id: `${phone}-${String(written).padStart(4, '0')}`, at, what, ...parts };
    },
  };
}

/** What one phone may write in a day: sales, payments, goods brought, drops, some taken back. */
export function anyPhone(phone: string): fc.Arbitrary<StallEntry[]> {
  const step = fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom('honey', 'jam') },
    { weight: 1, arbitrary: fc.constantFrom('paid', 'brought', 'drop', 'undo', 'pause') },
  );
  return fc.array(step, { maxLength: 25 }).map((steps) => {
    const on = pen(phone);
    const lines: StallEntry[] = [];
    for (const each of steps) {
      if (each === 'pause') on.wait(600);
      else lines.push(lineOf(each, on, lines));
    }
    return lines;
  });
}

function lineOf(step: string, on: ReturnType<typeof pen>, before: readonly StallEntry[]) {
  if (step === 'paid') return on.write('paid', { tender: 'cash', handed: 2000 });
  if (step === 'brought') return on.write('brought', { lines: { honey: 6 } });
  if (step === 'drop') return on.write('drop', { pieces: { '2000': 2 }, names: ['Ann', 'Bo'] });
  if (step === 'undo') return on.write('undo', { of: before.slice(-1).map(({ id }) => id) });
  return on.write('sold', { lines: { [step]: 1 } });
}
