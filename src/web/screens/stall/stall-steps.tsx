import { stallReadiness } from '../../../questions/stall/stall-readiness.ts';
import type { RecordOf } from '../../../records/record.ts';
import { useBook } from '../../book.ts';
import { type Mark, StateMark } from '../../parts/state-mark.tsx';
import { say } from '../../say.ts';
import type { OpenSheet } from './use-sheet.ts';

/** What a stall's day is made of, in its order, with what is done. */
export function StallSteps(props: { readonly stall: RecordOf<'stall'>; readonly open: OpenSheet }) {
  const { ledger } = useBook();
  const { stall, open } = props;
  const { sheet } = open;
  const { missing } = stallReadiness(ledger, stall, sheet.ready);
  const counted = (one: { readonly entries: readonly unknown[]; readonly toChoose: boolean }) =>
    one.toChoose
      ? mark('open', say`${one.entries.length} counts: choose`)
      : one.entries.length > 0
        ? mark('done', say`counted`)
        : mark('ahead', say`not counted`);
  const steps: readonly (readonly [to: string, words: string, state: preact.JSX.Element])[] = [
    [
      'sheet/ready',
      say`Ready to open`,
      missing.length === 0
        ? mark('done', say`ready`)
        : mark('open', say.count(missing.length)`# point left|# points left`),
    ],
    ['sheet/open', say`Opening count`, counted(sheet.opening)],
    ['sell', say`Sell`, mark('ahead', say`${sheet.soldUnits} sold`)],
    ['sheet/brought', say`Goods brought`, mark('ahead', String(sheet.brought.length))],
    ['sheet/drop', say`Cash drop`, mark('ahead', String(sheet.drops.length))],
    ['sheet', say`Sheet and pace`, handed(open)],
    ['sheet/count', say`Closing count`, counted(sheet.closing)],
  ];
  return (
    <nav class="stall-steps" aria-label={say`The stall’s day`}>
      <ol>
        {steps.map(([to, words, state]) => (
          <li key={to}>
            <a href={`/stalls/${stall.stall}/${to}`}>{words}</a> {state}
          </li>
        ))}
      </ol>
    </nav>
  );
}

function mark(shape: Mark, word: string) {
  return <StateMark mark={shape} word={word} />;
}

function handed({ onlyHere, sheet }: OpenSheet) {
  if (sheet.entries.length === 0) return mark('ahead', say`empty`);
  return onlyHere.length === 0
    ? mark('done', say`handed in`)
    : mark('open', say.count(onlyHere.length)`# line to hand in|# lines to hand in`);
}
