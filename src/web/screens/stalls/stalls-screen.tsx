import { say } from '../../say.ts';
import '../../styles/tasks.css';
import { type StallStanding, stallStandings } from '../../../questions/stall-settlement.ts';
import { hostName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Units } from '../../parts/figures.tsx';
import { Page } from '../../parts/page.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import { ClosedDifference } from './closed-difference.tsx';
import { DifferencesPicture } from './differences-picture.tsx';
import { stallStates } from './stall-words.ts';

/** Every stall by day, with what is still to do about it. */
export function StallsScreen() {
  const book = useBook();
  const standings = stallStandings(book.ledger, book.workingDay());
  const open = standings.filter(({ state }) => stallStates[state].mark === 'open');
  const byDay = Map.groupBy(standings, ({ stall }) => stall.starts.slice(0, 10));
  return (
    <Page
      title={say`Stalls`}
      lead={leadOf(standings.length, open.length)}
      actions={
        <>
          <a class="button button-plain" href="/set-up/stalls">
            {say`Plan a stall`}
          </a>
          <a class="button button-plain" href="/set-up/hosts">
            {say`Host shops and reports`}
          </a>
        </>
      }
    >
      {[...byDay].map(([day, stalls]) => (
        <section key={day} aria-labelledby={`day-${day}`}>
          <h2 id={`day-${day}`} class="day-head">
            {say.day(day)}
          </h2>
          <ul class="task-list">
            {stalls.map((standing) => (
              <StallRow key={standing.stall.stall} standing={standing} />
            ))}
          </ul>
        </section>
      ))}
      <DifferencesPicture />
    </Page>
  );
}

function leadOf(stalls: number, open: number): string {
  if (stalls === 0) return say`No stall yet. Plan the first one in set-up.`;
  return say.count(stalls)`# stall, ${open} with something to do.|# stalls, ${open} with something
    to do.`;
}

function StallRow({ standing }: { readonly standing: StallStanding }) {
  const { ledger } = useBook();
  const { stall, state, closes, notSharedUnits } = standing;
  const { mark, word } = stallStates[state];
  const clock = say`${stall.starts.slice(11)} to ${stall.ends.slice(11)}`;
  return (
    <li class="task-row">
      <a class="task-link" href={`/stalls/${stall.stall}`}>
        {hostName(ledger.setup, stall.host)}, {clock}
      </a>
      <span class="task-facts">
        {closes.map((close) => (
          <ClosedDifference key={close.id} close={close} />
        ))}
        {state === 'not-shared' && (
          <Units
            units={notSharedUnits}
            words={say.count(notSharedUnits)`# unit not yet shared|# units not yet shared`}
          />
        )}
      </span>
      <span class="task-state">
        <StateMark mark={mark} word={word} />
      </span>
    </li>
  );
}
