import { sheetSettlement } from '../../../questions/stall/sheet-settlement.ts';
import type { StallSheet } from '../../../questions/stall/stall-sheet.ts';
import { Button } from '../../parts/button.tsx';
import { Money } from '../../parts/figures.tsx';
import { LinesWords } from '../../parts/lines-words.tsx';
import { link } from '../../parts/link.tsx';
import { say } from '../../say.ts';
import type { OpenSheet } from './use-sheet.ts';

/** What the stall's phones wrote, beside the settle sheet: taps, drops, and what fills it in. */
export function FromSheet(props: {
  readonly stall: string;
  readonly open: OpenSheet;
  readonly onFill: () => void;
}) {
  const { stall, open } = props;
  const { sheet, onlyHere } = open;
  if (sheet.entries.length === 0) {
    return <p class="soft">{link(`/stalls/${stall}/sell`, say`Tap sales one by one`)}</p>;
  }
  return (
    <div class="notice">
      <div>
        <p>
          {say`Tapped as sold:`} <LinesWords lines={sheet.sold} />.{' '}
          {say`Phones: ${sheet.phones.join(', ')}.`}{' '}
          {onlyHere.length > 0 &&
            say.count(
              onlyHere.length,
            )`# line is only on this phone.|# lines are only on this phone.`}
        </p>
        {sheet.drops.length > 0 && (
          <p>
            {say`Cash drops, in the pieces below:`} <Money minor={sheet.dropped} plain />
          </p>
        )}
        <Next stall={stall} sheet={sheet} onFill={props.onFill} />
      </div>
    </div>
  );
}

function Next(props: {
  readonly stall: string;
  readonly sheet: StallSheet;
  readonly onFill: () => void;
}) {
  const { stall } = props;
  switch (sheetSettlement(props.sheet, stall, '')) {
    case 'count-first':
      return (
        <p>{link(`/stalls/${stall}/sheet/count`, say`Make the closing count at the stall`)}</p>
      );
    case 'choose-first':
      return <p>{link(`/stalls/${stall}/sheet`, say`Two counts are there: choose first`)}</p>;
    default:
      return (
        <p>
          {say`Filled in from the stall’s counts. Look it over.`}{' '}
          <Button quiet onClick={props.onFill}>
            {say`Fill in again`}
          </Button>
        </p>
      );
  }
}
