import { useSignal } from '@preact/signals';
import {
  type Following,
  type RunningLine,
  runningBalance,
} from '../../../questions/running-balance.ts';
import { balanceFigure } from '../../../statements/place-words.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { say } from '../../say.ts';
import { Figure } from './place-list.tsx';

const SHOWN_FIRST = 40;

/**
 * Every record that changed one or more accounts, the latest first, with the balance after each.
 */
export function AccountRoll(props: {
  readonly following: Following;
  /** The account, or the beginning that several share: it decides the words of the balance. */
  readonly account: string;
}) {
  const { ledger, currency } = useBook();
  const all = useSignal(false);
  const { following, account } = props;
  const { lines, balance } = runningBalance(ledger, following);
  const latest = [...lines].reverse();
  const shown = all.value ? latest : latest.slice(0, SHOWN_FIRST);
  return (
    <>
      <p class="roll-now">
        {say`Now`}{' '}
        <Figure figure={balanceFigure(following.ledger, account, balance, currency, say)} />
      </p>
      {lines.length === 0 ? (
        <p class="none">{say`No record has changed this yet.`}</p>
      ) : (
        <section class="scrolls" aria-label={say`Records behind this figure`}>
          <table class="account-roll">
            <thead>
              <tr>
                <th scope="col" class="roll-wide">
                  {say`Day`}
                </th>
                <th scope="col">{say`Record`}</th>
                <th scope="col" class="number">
                  {say`Change`}
                </th>
                <th scope="col" class="number">
                  {say`After`}
                </th>
              </tr>
            </thead>
            <tbody>
              {shown.map((line) => (
                <AccountLine
                  key={`${line.record} ${line.date} ${line.cause}`}
                  line={line}
                  following={following}
                  account={account}
                />
              ))}
            </tbody>
          </table>
        </section>
      )}
      {shown.length < latest.length && (
        <Button onClick={() => (all.value = true)}>{say`Show all ${latest.length}`}</Button>
      )}
    </>
  );
}

function AccountLine(props: {
  readonly line: RunningLine;
  readonly following: Following;
  readonly account: string;
}) {
  const { ledger, currency } = useBook();
  const { line, following, account } = props;
  const record = ledger.standing.get(line.record);
  const outward = account === 'supplier' || account === 'issued';
  const sign = outward ? -1 : 1;
  const text = (amount: number) =>
    following.ledger === 'money' ? say.money(amount, currency) : say.units(amount);
  const change = sign * line.amount;
  return (
    <tr>
      <td class="roll-wide roll-day">{say.day(line.date)}</td>
      <th scope="row">
        <span class="roll-day roll-narrow">{say.day(line.date)}</span>{' '}
        <a href={`/records/${line.record}`}>
          {line.cause === 'new-price' ? say`New price: ` : ''}
          {record === undefined ? line.record : recordSentence(record, ledger, say)}
        </a>
      </th>
      <td class="number">{`${change > 0 ? '+' : ''}${text(change)}`}</td>
      <td class="number">{text(sign * line.balance)}</td>
    </tr>
  );
}
