import '../../help/help.css';
import { useEffect } from 'preact/hooks';
import { wordList } from '../../help/word-list.ts';
import { PrintButton } from '../../parts/button.tsx';
import { Page } from '../../parts/page.tsx';
import { say } from '../../say.ts';

/** What the words of the app mean, one line each; `/words#credit` leads to one of them. */
export function WordsScreen() {
  useEffect(() => document.getElementById(location.hash.slice(1))?.scrollIntoView(), []);
  return (
    <Page
      title={say`Word list`}
      lead={say`The words of this book, one line each.`}
      actions={<PrintButton />}
    >
      <dl class="word-list">
        {wordList.map(([id, word, means]) => (
          <div key={id} id={id}>
            <dt>{word}</dt>
            <dd>{means}</dd>
          </div>
        ))}
      </dl>
    </Page>
  );
}
