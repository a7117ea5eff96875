import { say } from '../../say.ts';
import '../../styles/tasks.css';
import './closing.css';
import { useState } from 'preact/hooks';
import { isDay } from '../../../base/day.ts';
import { done, type Outcome, refused } from '../../../base/outcome.ts';
import { type ClosingList, closingList } from '../../../questions/closing-list.ts';
import type { RecordOf } from '../../../records/record.ts';
import { closingWords } from '../../../statements/closing-words.ts';
import { type Draft, useBook } from '../../book.ts';
import { go } from '../../navigation.ts';
import { Button } from '../../parts/button.tsx';
import { ClosedNotice, useClosed } from '../../parts/closed-season.tsx';
import { DayField, TextField } from '../../parts/field.tsx';
import { ErrorSummary, type FieldError, Notice } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { useSaving } from '../../parts/saving.ts';
import { contentOf } from '../../undo.ts';
import { closingGroups } from './closing-groups.ts';

interface CloseTyped {
  readonly date: string;
  readonly second: string;
  readonly reason: string;
}

/** The check page: what stands open, and who answers for closing all the same. */
export function CloseScreen() {
  const book = useBook();
  const closed = useClosed();
  const { season } = book.ledger.setup;
  const list = closingList(book.ledger, book.workingDay());
  const [typed, setTyped] = useState<CloseTyped>({
    date: book.workingDay(),
    second: '',
    reason: '',
  });
  const saving = useSaving();
  const above = <a href="/closing">{say`Closing list`}</a>;
  if (season === undefined || closed !== undefined) {
    return (
      <Page title={say`Close the season`} above={above}>
        {closed === undefined ? <p>{say`Set up the season first.`}</p> : <ClosedNotice />}
      </Page>
    );
  }
  const save = (event: SubmitEvent) => {
    event.preventDefault();
    void saving.save(closeDraft(season, typed, list.ready), () => go('/closing'));
  };
  const field = (name: keyof CloseTyped) => ({
    name,
    value: typed[name],
    error: saving.errorOf(name),
    onValue: (value: string) => setTyped({ ...typed, [name]: value }),
  });
  return (
    <Page
      title={say`Close the season`}
      above={above}
      lead={say`Check this with a second person. Afterwards only late records can be added.`}
    >
      <CheckAnswers list={list} />
      <form class="panel" onSubmit={save} noValidate>
        <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
        <DayField label={say`Day of closing`} {...field('date')} />
        <TextField
          label={say`Second person`}
          hint={say`An adult other than you, best a leader of the group who is not the treasurer.`}
          maxLength={200}
          optional={list.ready}
          {...field('second')}
        />
        <TextField
          label={say`Reason`}
          hint={
            list.ready
              ? undefined
              : say`Why the season closes although something is open, and what becomes of it.`
          }
          long
          maxLength={500}
          optional={list.ready}
          {...field('reason')}
        />
        <Button kind={list.ready ? 'main' : 'stop'} submit disabled={saving.busy}>
          {list.ready ? say`Close the season` : say`Close with items open`}
        </Button>
      </form>
    </Page>
  );
}

/** The list once more in short: what is open by name, with the way back to it. */
function CheckAnswers({ list }: { readonly list: ClosingList }) {
  const book = useBook();
  const open = list.items.filter((item) => item.state === 'open');
  return (
    <>
      {open.length > 0 && (
        <Notice tone="stop" title={say.count(open.length)`# item is open.|# items are open.`}>
          <p>{say`Finish them, or give a reason and the name of a second person.`}</p>
        </Notice>
      )}
      <dl class="check-answers">
        {closingGroups.map(([group, words]) => {
          const own = list.items.filter((item) => item.group === group);
          if (own.length === 0) return null;
          const left = own.filter((item) => item.state === 'open');
          return (
            <div key={group}>
              <dt>{words}</dt>
              <dd>
                {left.length === 0 && say`✓ nothing open`}
                <ul>
                  {left.map((item) => {
                    const said = closingWords(item, book.ledger, book.workingDay(), say);
                    return (
                      <li key={item.item}>
                        {said.title}
                        {said.left !== '' && `: ${said.left}`}
                      </li>
                    );
                  })}
                </ul>
              </dd>
              <dd class="check-change">
                <a href="/closing" aria-label={say`Change: ${words}`}>
                  {say`Change`}
                </a>
              </dd>
            </div>
          );
        })}
      </dl>
    </>
  );
}

/** The season again, closed; with items open it needs a reason and a second person. */
function closeDraft(
  season: RecordOf<'season'>,
  typed: CloseTyped,
  ready: boolean,
): Outcome<readonly Draft[], readonly FieldError[]> {
  const errors: FieldError[] = [];
  const second = typed.second.trim();
  const reason = typed.reason.trim();
  if (!isDay(typed.date)) errors.push({ field: 'date', words: say`Choose the day of closing.` });
  if (!ready && second === '') {
    errors.push({ field: 'second', words: say`Write the name of the second person.` });
  }
  if (!ready && reason === '') {
    errors.push({ field: 'reason', words: say`Write why it closes with items open.` });
  }
  if (errors.length > 0) return refused(errors);
  const closed = {
    date: typed.date,
    ...(second === '' ? {} : { second }),
    ...(reason === '' ? {} : { reason }),
  };
  const { name, currency, starts, ends } = season;
  const content = { ...contentOf(season), kind: 'season' as const, name, currency, starts, ends };
  return done([{ ...content, closed, replaces: season.id }]);
}
