import { link } from '../../parts/link.tsx';
import { say } from '../../say.ts';
import '../../styles/tasks.css';
import './stall.css';
import { useState } from 'preact/hooks';
import { sheetSaysElse } from '../../../questions/stall/sheet-settlement.ts';
import { type StallStanding, stallStandings } from '../../../questions/stall-settlement.ts';
import type { RecordOf } from '../../../records/record.ts';
import { hostName } from '../../../statements/account-name.ts';
import { stallTimeText } from '../../../statements/stall-time-text.ts';
import { useBook } from '../../book.ts';
import { Notice } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { PaperLinks } from '../../parts/paper-links.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import { useFocusBack } from '../../parts/use-focus-back.ts';
import type { ScreenProps } from '../../routes.ts';
import { ClosedDifference } from '../stalls/closed-difference.tsx';
import { stallStates } from '../stalls/stall-words.ts';
import { SettleSheet } from './settle-sheet.tsx';
import { SettledFacts } from './settled-facts.tsx';
import { ShareOut } from './share-out.tsx';
import { Shifts } from './shifts.tsx';
import { StallSteps } from './stall-steps.tsx';
import { type OpenSheet, useSheet } from './use-sheet.ts';

/** One stall: who is on it, what it took and brought back, its money, and its share-out. */
export function StallScreen({ params }: ScreenProps) {
  const book = useBook();
  const standing = stallStandings(book.ledger, book.workingDay()).find(
    ({ stall }) => stall.stall === params.stall,
  );
  if (standing === undefined) {
    return (
      <Page title={say`Stall`} above={<a href="/stalls">{say`Stalls`}</a>}>
        <p>
          {say.pieces`There is no such stall in this book. Plan it in
            ${link('/set-up/stalls', say`set-up`)}.`}
        </p>
      </Page>
    );
  }
  return <Stall key={standing.stall.stall} standing={standing} />;
}

function Stall({ standing }: { readonly standing: StallStanding }) {
  const { ledger } = useBook();
  const { stall, state, closes, shareouts } = standing;
  const [editing, setEditing] = useState(false);
  const within = useFocusBack<HTMLElement>(editing ? say`Edit` : undefined);
  const { mark, word } = stallStates[state];
  const close = closes.at(-1);
  const open = useSheet(stall);
  return (
    <Page
      title={hostName(ledger.setup, stall.host)}
      above={<a href="/stalls">{say`Stalls`}</a>}
      lead={
        <>
          {stallTimeText(stall.starts, stall.ends, say)} · <StateMark mark={mark} word={word} />
        </>
      }
      actions={<PaperLinks paper="stall-sheet" about={stall.stall} words={say`Stall sheet`} />}
    >
      <p class="caution">
        {say`Local rules first: two adults at all times, children clear of traffic, shade and water
          in heat, lift cases with two, cash with adults only and never in sight.`}
      </p>
      <Shifts stall={stall} />
      {close === undefined && (
        <section aria-labelledby="at-the-stall">
          <h2 id="at-the-stall">{say`At the stall`}</h2>
          <StallSteps stall={stall} open={open} />
        </section>
      )}
      <section aria-labelledby="settle" ref={within}>
        <h2 id="settle">{close === undefined ? say`Settle the stall` : say`Settled`}</h2>
        {closes.length > 1 && (
          <Notice
            tone="stop"
            title={say.count(
              closes.length,
            )`This stall was settled # time.|This stall was settled # times.`}
          >
            <p>{say`Open both records, compare them, and remove the one that is not right.`}</p>
          </Notice>
        )}
        {closes.map((one) => (
          <p class="figures" key={one.id}>
            <ClosedDifference close={one} />
          </p>
        ))}
        {close !== undefined && <SaysElse open={open} close={close} />}
        {close !== undefined && !editing && (
          <SettledFacts close={close} onEdit={() => setEditing(true)} />
        )}
        {(close === undefined || editing) && open.isRead && (
          <SettleSheet stall={stall} close={close} open={open} onDone={() => setEditing(false)} />
        )}
      </section>
      {(close !== undefined || shareouts.length > 0) && <ShareOut standing={standing} />}
    </Page>
  );
}

/** A phone may hand in goods brought or a drop after the stall was settled. */
function SaysElse(props: { readonly open: OpenSheet; readonly close: RecordOf<'stall-close'> }) {
  const { open, close } = props;
  if (!sheetSaysElse(open.sheet, close)) return null;
  return (
    <Notice title={say`The stall’s sheet says other goods or cash than were settled.`}>
      <p>
        {say.pieces`Compare with ${link(`/stalls/${close.stall}/sheet`, say`the sheet`)}, then edit
          what was settled, or leave it.`}
      </p>
    </Notice>
  );
}
