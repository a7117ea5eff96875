import { sum } from '../../../base/sum.ts';
import '../../styles/tasks.css';
import './stall.css';
import './sell.css';
import { useState } from 'preact/hooks';
import { cashOf, phoneOf } from '../../../questions/stall/stall-sheet.ts';
import type { RecordOf } from '../../../records/record.ts';
import type { StallEntry } from '../../../records/stall-entry.ts';
import { hostName } from '../../../statements/account-name.ts';
import { clockText, stallTimeText } from '../../../statements/stall-time-text.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { Money, Units } from '../../parts/figures.tsx';
import { Page } from '../../parts/page.tsx';
import { PaperLinks } from '../../parts/paper-links.tsx';
import { Table } from '../../parts/table.tsx';
import type { ScreenProps } from '../../routes.ts';
import { say } from '../../say.ts';
import { ChooseCount } from './choose-count.tsx';
import { lineKinds } from './line-kinds.ts';
import { NoStall } from './no-stall.tsx';
import { PaceTables } from './pace-tables.tsx';
import { StallSteps } from './stall-steps.tsx';
import { type OpenSheet, useSheet } from './use-sheet.ts';

/** The sheet of a stall so far: all its phones' lines together, pace, what is left. */
export function SheetScreen({ params }: ScreenProps) {
  const stall = useBook().ledger.setup.stalls.get(params.stall ?? '');
  return stall === undefined ? <NoStall /> : <Sheet key={stall.stall} stall={stall} />;
}

function Sheet({ stall }: { readonly stall: RecordOf<'stall'> }) {
  const { ledger } = useBook();
  const open = useSheet(stall);
  const { sheet } = open;
  return (
    <Page
      title={say`Sheet of the stall`}
      above={<a href={`/stalls/${stall.stall}`}>{hostName(ledger.setup, stall.host)}</a>}
      lead={stallTimeText(stall.starts, stall.ends, say)}
      actions={<PaperLinks paper="stall-sheet" about={stall.stall} words={say`Stall sheet`} />}
    >
      <ChooseCount open={open} counts={sheet.opening} words={say`opening counts`} />
      <ChooseCount open={open} counts={sheet.closing} words={say`closing counts`} />
      <HandIn open={open} />
      {sheet.closing.entries.length > 0 && (
        <p>
          <a class="button button-plain" href={`/stalls/${stall.stall}`}>
            {say`Settle the stall`}
          </a>
        </p>
      )}
      <PaceTables sheet={sheet} />
      <div class="sheet-lines">
        <SheetLines open={open} />
      </div>
      <StallSteps stall={stall} open={open} />
    </Page>
  );
}

function HandIn({ open }: { readonly open: OpenSheet }) {
  const [said, setSaid] = useState('');
  const { onlyHere, sheet } = open;
  const lines = onlyHere.length;
  return (
    <section aria-labelledby="handed-in">
      <h2 id="handed-in">{say`Phones of this stall`}</h2>
      <p>
        {sheet.phones.length === 0
          ? say`No phone has written on this sheet yet.`
          : say`Written by: ${sheet.phones.join(', ')}.`}{' '}
        {lines > 0 &&
          say.count(lines)`# line is only on this phone.|# lines are only on this phone.`}
      </p>
      {lines > 0 && (
        <Button onClick={async () => setSaid((await open.handIn()) ?? '')}>
          {say`Hand in this phone’s lines`}
        </Button>
      )}
      <p role="status">{said}</p>
    </section>
  );
}

const LISTED: ReadonlySet<StallEntry['what']> = new Set(['open', 'brought', 'drop', 'count']);

/** Everything but the sales, one line each, to be taken back where it was wrong. */
function SheetLines({ open }: { readonly open: OpenSheet }) {
  const lines = open.sheet.entries.filter(({ what }) => LISTED.has(what));
  const takeBack = async (entry: StallEntry) => {
    const undo = await open.write('undo', { of: [entry.id] });
    await open.handIn([undo.entry]);
  };
  return (
    <Table
      caption={say`Counts, goods brought and cash drops`}
      rows={lines}
      keyOf={({ id }) => id}
      none={say`No count, top-up or drop yet.`}
      columns={[
        {
          head: say`When`,
          cell: (entry) => say`${clockText(entry.at).slice(0, 5)}, phone ${phoneOf(entry)}`,
        },
        { head: say`What`, cell: ({ what }) => lineKinds[what] },
        { head: say`Units`, number: true, cell: (entry) => <EntryUnits entry={entry} /> },
        { head: say`Cash`, number: true, cell: (entry) => <EntryCash entry={entry} /> },
        { head: say`By`, wide: true, cell: ({ names = [] }) => names.join(', ') },
        {
          head: say`Take back`,
          verbs: true,
          cell: (entry) => (
            <Button
              quiet
              label={say`Take back: ${lineKinds[entry.what]}, ${clockText(entry.at).slice(0, 5)}`}
              onClick={() => takeBack(entry)}
            >
              {say`Take back`}
            </Button>
          ),
        },
      ]}
    />
  );
}

function EntryUnits({ entry }: { readonly entry: StallEntry }) {
  if (entry.lines === undefined) return null;
  const units = sum(Object.values(entry.lines));
  return <Units units={units} plain />;
}

function EntryCash({ entry }: { readonly entry: StallEntry }) {
  if (entry.pieces === undefined && entry.cents === undefined) return null;
  return <Money minor={cashOf(entry)} plain />;
}
