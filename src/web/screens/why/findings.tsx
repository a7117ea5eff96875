import { useSignal } from '@preact/signals';
import type { AmountApart } from '../../../questions/explain/amounts-apart.ts';
import type { Explanation } from '../../../questions/explain/explain.ts';
import type { SeenExplained } from '../../../questions/explain/explain-seen.ts';
import { tiesOf, withTies } from '../../../questions/explain/ties.ts';
import { apartName, apartWords } from '../../../statements/apart-words.ts';
import { lookWords } from '../../../statements/explanation-words.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { useClosed } from '../../parts/closed-season.tsx';
import { Notice } from '../../parts/notice.tsx';
import { say } from '../../say.ts';
import { seenPlaceOf } from '../../why-address.ts';
import { ApartList } from './apart-list.tsx';
import { type Asked, askedAddress } from './asked.ts';
import { Cause, type Taking } from './cause.tsx';
import { type Found, useExplained } from './use-explained.ts';

const SHOWN_FIRST = 3;
const FAR_FETCHED = 0.01;
/** Below these odds the first explanation is less likely than not. */
const DOUBTFUL = 0.5;

/** The difference between what was seen and the book, and what may have caused it. */
export function Findings(props: { readonly asked: Asked; readonly taking: Taking }) {
  const found = useExplained(props.asked);
  return (
    <section aria-labelledby="found" aria-busy={found.at === 'looking'}>
      <h2 id="found" tabIndex={-1}>
        {say`Likely causes`}
      </h2>
      <p class="soft" aria-live="polite">
        {statusWords(found)}
      </p>
      {found.at === 'looking' && <div class="looking" aria-hidden="true" />}
      {found.at === 'found' && found.apart.length > 0 && (
        <>
          <Apart apart={found.apart} />
          <Causes {...props} found={found} />
        </>
      )}
    </section>
  );
}

/** Read out once the search is over. */
function statusWords(found: Found): string {
  if (found.at === 'looking') {
    return found.isLong
      ? say`Still looking. You can go on with other things meanwhile.`
      : say`Looking through the records…`;
  }
  if (found.at === 'failed') {
    return say`The search could not start or broke off. Load the app again.`;
  }
  if (found.apart.length === 0) return say`✓ What was seen agrees with the book.`;
  const many = found.causes.length;
  if (many === 0) return say`No cause was found.`;
  return say.count(many)`# possible cause.|# possible causes, the most likely first.`;
}

function Apart({ apart }: { readonly apart: readonly AmountApart[] }) {
  const { ledger, currency } = useBook();
  return (
    <>
      <ul class="differences" aria-label={say`Differences`}>
        {apart.map((each) => (
          <li key={`${each.ledger}:${each.account} ${each.product}`}>
            <span class="apart-name">{apartName(each, ledger, say)}</span>{' '}
            <span class="figure figure-difference">
              <span class="shape shape-difference" aria-hidden="true">
                ▲
              </span>
              {apartWords(each, currency, say)}
            </span>
          </li>
        ))}
      </ul>
      <details>
        <summary>{say`By the book, and seen`}</summary>
        <ApartList apart={apart} label={say`By the book, and seen`} then={say`seen:`} />
      </details>
    </>
  );
}

function Causes(props: {
  readonly asked: Asked;
  readonly found: Extract<Found, { readonly at: 'found' }>;
  readonly taking: Taking;
}) {
  const all = useSignal(false);
  const closed = useClosed();
  const { causes, unexplained, apart } = props.found;
  const explanations = causes.map(({ explanation }) => explanation);
  const ties = tiesOf(explanations);
  const shown = causes.slice(0, all.value ? causes.length : shownFirst(explanations));
  return (
    <>
      {unexplained && <NothingSingle isAny={explanations.length > 0} />}
      {closed !== undefined && (
        <p class="soft">{say`The season is closed: its records are read-only, causes are only
          shown.`}</p>
      )}
      <ol class="causes">
        {shown.map((cause, at) => (
          <Cause
            key={JSON.stringify(cause.explanation.edits)}
            cause={cause}
            day={props.asked.day}
            ties={ties[at] ?? 1}
            taking={props.taking}
          />
        ))}
      </ol>
      {shown.length < explanations.length && (
        <p class="form-end">
          <Button onClick={() => (all.value = true)}>{say`Show all ${explanations.length}`}</Button>
        </p>
      )}
      {(explanations[0]?.odds ?? 0) < DOUBTFUL && <CountAgain apart={apart} />}
      <WhereToLook asked={props.asked} look={props.found.decides} />
    </>
  );
}

function NothingSingle({ isAny }: { readonly isAny: boolean }) {
  return (
    <Notice title={say`Nothing single explains this.`}>
      <p>
        {isAny
          ? say`Of two or three mistakes at once, these are the most likely.`
          : say`No two or three mistakes at once were found either.`}
      </p>
    </Notice>
  );
}

/** The first few, without what hardly can be; a tie is never cut in two. */
function shownFirst(explanations: readonly Explanation[]): number {
  const usual = explanations.slice(0, SHOWN_FIRST).filter(({ odds }) => odds >= FAR_FETCHED);
  return withTies(explanations, Math.max(1, usual.length));
}

/** What to count anew where nothing that was found is likely. */
function CountAgain({ apart }: { readonly apart: readonly AmountApart[] }) {
  const { ledger } = useBook();
  const names = apart.map((each) => apartName(each, ledger, say)).join(say`; `);
  return <p>{say`If none of these happened, look again before anything is changed: ${names}.`}</p>;
}

/** The one further look that would tell most, and the way to write down what is seen there. */
function WhereToLook(props: { readonly asked: Asked; readonly look: SeenExplained['decides'] }) {
  const { ledger } = useBook();
  const { asked, look } = props;
  if (look === undefined) return null;
  const cut = look.account.indexOf(':');
  const place = seenPlaceOf(look.account.slice(0, cut), look.account.slice(cut + 1));
  const isNew = place !== undefined && !asked.places.includes(place);
  return (
    <section class="where-to-look" aria-label={say`Where to look next`}>
      <p>{lookWords(look, ledger, say)}</p>
      <p class="next-steps no-print">
        {isNew && (
          <a class="next-step" href={askedAddress({ ...asked, places: [...asked.places, place] })}>
            {say`Write what is seen there`}
          </a>
        )}
        {place === 'stockroom' && (
          <a class="next-step" href="/count">
            {say`Count`}
          </a>
        )}
      </p>
    </section>
  );
}
