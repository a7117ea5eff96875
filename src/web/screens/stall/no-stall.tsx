import { Page } from '../../parts/page.tsx';
import { say } from '../../say.ts';

export function NoStall() {
  return (
    <Page title={say`Stall`} above={<a href="/stalls">{say`Stalls`}</a>}>
      <p>{say`There is no such stall in this book.`}</p>
    </Page>
  );
}
