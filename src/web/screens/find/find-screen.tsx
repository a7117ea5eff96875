import { say } from '../../say.ts';
import './find.css';
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Ledger } from '../../../ledger/ledger.ts';
import {
  type FoundRecord,
  findInSteps,
  type RecordSearch,
  readyTexts,
} from '../../../questions/find-records.ts';
import { placeIds } from '../../../questions/places.ts';
import { isKind } from '../../../records/record.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { Page } from '../../parts/page.tsx';
import { useGrowing } from '../../parts/use-growing.ts';
import { useInSteps } from '../../parts/use-in-steps.ts';
import type { ScreenProps } from '../../routes.ts';
import { FindForm } from './find-form.tsx';
import { FoundList } from './found-list.tsx';

/** Records by kind, person, product, place, day and text together; edited where they are found. */
const SHOWN_FIRST = 60;

/** What is asked for, as it stands in the address, so that a search can be kept and shared. */
export type Asked = Readonly<Record<string, string>>;

export function FindScreen({ search }: ScreenProps) {
  const { ledger, version } = useBook();
  useEffect(() => ready(ledger), [ledger, version.value]);
  const asked = useSignal<Asked>(Object.fromEntries(search));
  const most = useSignal(SHOWN_FIRST);
  useEffect(() => {
    const text = new URLSearchParams(Object.entries(asked.value)).toString();
    // The address follows without a step in the history for every letter typed.
    history.replaceState(null, '', text === '' ? '/find' : `/find?${text}`);
  }, [asked.value]);
  return (
    <Page title={say`Find`} layout="find">
      <div class="find-columns">
        <FindForm
          asked={asked.value}
          onAsk={(change) => {
            const next = Object.entries({ ...asked.peek(), ...change });
            asked.value = Object.fromEntries(next.filter(([, text]) => text));
            most.value = SHOWN_FIRST;
          }}
          onClear={() => (asked.value = {})}
        />
        <Results asked={asked.value} most={most.value} onMore={() => (most.value += SHOWN_FIRST)} />
      </div>
    </Page>
  );
}

/** The answer follows what is typed a moment later, and is drawn in parts: no letter waits. */
function Results(props: {
  readonly asked: Asked;
  readonly most: number;
  readonly onMore: () => void;
}) {
  const { ledger, version } = useBook();
  const { asked, most } = props;
  const key = `${version.value} ${JSON.stringify(asked)}`;
  const found = useInSteps(() => finding(ledger, searchOf(asked)), key);
  const wanted = Math.min(most, found?.length ?? 0);
  const drawn = useGrowing(wanted, found);
  return (
    <section class="find-results" aria-labelledby="found-head">
      <h2 class="column-head" id="found-head" aria-live="polite">
        {found === undefined ? say`Find` : say.count(found.length)`# record|# records`}
      </h2>
      {found?.length === 0 && (
        <p class="none">{say`Nothing fits all of it. Take one condition away.`}</p>
      )}
      {found !== undefined && drawn > 0 && <FoundList found={found.slice(0, drawn)} />}
      {drawn < wanted && <div class="more-coming" />}
      {found !== undefined && drawn === wanted && found.length > wanted && (
        <Button onClick={props.onMore}>{say`Show more`}</Button>
      )}
    </section>
  );
}

/** What was typed is on the screen before the book is searched. */
function* finding(
  ledger: Ledger,
  search: RecordSearch,
): Generator<undefined, readonly FoundRecord[]> {
  yield undefined;
  return yield* findInSteps(ledger, search);
}

/** So many texts are made ready at a time: a few milliseconds, also on a slow phone. */
const AT_ONCE = 250;

/** Makes a whole book ready to be searched in small pieces; gives what stops it. */
function ready(ledger: Ledger): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const more = (): void => {
    if (!readyTexts(ledger, AT_ONCE)) timer = setTimeout(more);
  };
  timer = setTimeout(more);
  return () => clearTimeout(timer);
}

function searchOf(asked: Asked): RecordSearch {
  const { kind = '', seller, family, product, from, to, text } = asked;
  const place = placeIds.find((known) => known === asked.place);
  return {
    ...(isKind(kind) ? { kinds: [kind] } : {}),
    ...(seller ? { seller } : {}),
    ...(family ? { family } : {}),
    ...(product ? { product } : {}),
    ...(place ? { place } : {}),
    ...(from ? { from } : {}),
    ...(to ? { to } : {}),
    ...(text ? { text } : {}),
    gone: asked.gone === 'yes' || kind === 'void',
  };
}
