import { useState } from 'preact/hooks';
import { useBook } from '../../book.ts';
import { LinesWords } from '../../parts/lines-words.tsx';
import { say } from '../../say.ts';
import { keptTally, unitsTapped } from './sales-tally.ts';

/** What was tapped as sold on this device, to hold the count against; and the way to tap more. */
export function TappedSales({ stall }: { readonly stall: string }) {
  const { address } = useBook();
  const [tally] = useState(() => keptTally(address, stall, localStorage));
  return (
    <p class="soft">
      {tally.length > 0 && (
        <>
          {say`Tapped as sold on this device:`} <LinesWords lines={unitsTapped(tally)} />.{' '}
        </>
      )}
      <a href={`/stalls/${stall}/sell`}>{say`Tap sales one by one`}</a>
    </p>
  );
}
