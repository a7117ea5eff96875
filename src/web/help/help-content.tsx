import './help.css';
import { accountName } from '../../statements/account-name.ts';
import { balanceFigure } from '../../statements/place-words.ts';
import { recordSentence } from '../../statements/record-sentence.ts';
import { address } from '../navigation.ts';
import { Button } from '../parts/button.tsx';
import { say } from '../say.ts';
import { Figure } from '../screens/board/place-list.tsx';
import { CountOutcome } from '../screens/count/count-outcome.tsx';
import { type ExampleFigures, exampleFigures } from './example-figures.ts';
import { topicAt } from './topic-at.ts';
import { topics } from './topics.ts';

/** Three sentences, an example with its figures, and a way to try it on the made-up book. */
export function HelpContent() {
  const task = topicAt(address.value.path);
  if (task === undefined) return null;
  const topic = topics[task];
  const open = async () => (await import('./try-it.ts')).tryIt(topic.opens);
  return (
    <div class="help-content">
      <ol class="help-says">
        {topic.says.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ol>
      <Example figures={exampleFigures(topic)} />
      <p class="button-row">
        <Button onClick={open}>{say`Try it in the made-up season`}</Button>
        <a class="jump" href="/words">
          {say`Word list`}
        </a>
        {task === 'closing' && (
          <a class="jump" href="/closing/first">
            {say`A first closing, step by step`}
          </a>
        )}
      </p>
    </div>
  );
}

function Example({ figures }: { readonly figures: ExampleFigures }) {
  const { record, ledger, changed, counted } = figures;
  const currency = ledger.setup.season?.currency ?? '';
  const figure = (change: (typeof changed)[number], amount: number) => (
    <Figure figure={balanceFigure(change.ledger, change.account, amount, currency, say)} />
  );
  return (
    <section class="help-example" aria-label={say`Example with made-up figures`}>
      <p>
        <b>{say`Example, made up:`}</b> {recordSentence(record, ledger, say)}
      </p>
      {counted !== undefined && <CountOutcome difference={counted} />}
      <ul>
        {changed.map((change) => (
          <li key={`${change.ledger}:${change.account}`}>
            {accountName(ledger, change.ledger, change.account, say)}:{' '}
            {figure(change, change.before)} <span aria-hidden="true">→</span>{' '}
            <span class="only-read">{say`then`}</span> {figure(change, change.after)}
          </li>
        ))}
      </ul>
    </section>
  );
}
