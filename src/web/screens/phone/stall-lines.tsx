import { useEffect, useState } from 'preact/hooks';
import { stallName } from '../../../statements/account-name.ts';
import type { StallLine } from '../../../storage/indexeddb/stall-log.ts';
import { useBook } from '../../book.ts';
import { madeUpOpen } from '../../help/made-up-open.ts';
import { say } from '../../say.ts';
import { lineKinds } from '../stall/line-kinds.ts';
import { onlyHere } from './only-here.ts';

/** Lines of stalls' sheets that are in no book yet; asked again whenever a record arrives. */
export function useLinesHere(): readonly StallLine[] {
  const { copies, version } = useBook();
  const [lines, setLines] = useState<readonly StallLine[]>([]);
  // What was tried in the made-up book is kept nowhere, and the real book is not open meanwhile.
  const isMadeUp = madeUpOpen.value !== undefined;
  useEffect(() => {
    let stale = isMadeUp;
    if (!stale) void onlyHere(copies).then((here) => stale || setLines(here.lines));
    return () => {
      stale = true;
    };
  }, [copies, version.value, isMadeUp]);
  return lines;
}

/** The same by stall, each with the way to its sheet, where they are handed in. */
export function StallLines({ lines }: { readonly lines: readonly StallLine[] }) {
  const stalls = Map.groupBy(lines, ({ group, season, stall }) => `${group}/${season}/${stall}`);
  return (
    <section aria-labelledby="stall-lines">
      <h2 id="stall-lines">{say`Lines of stalls’ sheets`}</h2>
      <p>{say`They come into the book once they are handed in on the stall’s sheet.`}</p>
      <ul class="phone-entries">
        {[...stalls].map(([stall, of]) => (
          <li key={stall}>
            <StallLink line={of[0]} />
            <br />
            <span class="soft">{kindsOf(of)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function StallLink({ line }: { readonly line: StallLine | undefined }) {
  const { ledger, address } = useBook();
  const { group, season, stall = '' } = line ?? {};
  if (group !== address.group || season !== address.season) {
    return <>{say`Stall ${stall} of the book ${season ?? ''}: open that book first.`}</>;
  }
  return <a href={`/stalls/${stall}/sheet`}>{stallName(ledger.setup, stall, say)}</a>;
}

/** `Sold: 12, Closing count: 1` */
function kindsOf(lines: readonly StallLine[]): string {
  const kinds = Map.groupBy(lines, ({ entry }) => lineKinds[entry.what]);
  return [...kinds].map(([kind, of]) => say`${kind}: ${of.length}`).join(say`, `);
}
