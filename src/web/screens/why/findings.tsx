import { useSignal } from '@preact/signals';
import type { AmountApart } from '../../../questions/explain/amounts-apart.ts';
import type { Explained } from '../../../questions/explain/explain.ts';
import { tiesOf } from '../../../questions/explain/ties.ts';
import { apartName, apartWords } from '../../../statements/apart-words.ts';
import { lookWords } from '../../../statements/explanation-words.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { useClosed } from '../../parts/closed-season.tsx';
import { Notice } from '../../parts/notice.tsx';
import { seenPlaceOf } from '../../why-address.ts';
import { ApartList } from './apart-list.tsx';
import { type Asked, askedAddress } from './asked.ts';
import { Cause, type Taking } from './cause.tsx';
import { useExplained } from './use-explained.ts';

const SHOWN_FIRST = 3;

/** The difference between what was seen and the book, and what may have caused it. */
export function Findings(props: { readonly asked: Asked; readonly taking: Taking }) {
  const found = useExplained(props.asked);
  if (found.at === 'nothing-said') return null;
  return (
    <section aria-labelledby="found" aria-busy={found.at === 'looking'}>
      <h2 id="found" tabIndex={-1}>
        Likely causes
      </h2>
      {found.at === 'looking' && <p class="soft">Looking through the records…</p>}
      {found.at === 'found' && found.apart.length === 0 && (
        <Notice tone="done" title="✓ What was seen agrees with the book." />
      )}
      {found.at === 'found' && found.apart.length > 0 && (
        <>
          <Apart apart={found.apart} />
          <Causes {...props} explained={found.explained} />
        </>
      )}
    </section>
  );
}

function Apart({ apart }: { readonly apart: readonly AmountApart[] }) {
  const { ledger, currency } = useBook();
  return (
    <>
      <ul class="differences" aria-label="Differences">
        {apart.map((each) => (
          <li key={`${each.ledger}:${each.account} ${each.product}`}>
            <span class="apart-name">{apartName(each, ledger)}</span>{' '}
            <span class="figure figure-difference">
              <span class="shape shape-difference" aria-hidden="true">
                ▲
              </span>
              {apartWords(each, currency)}
            </span>
          </li>
        ))}
      </ul>
      <details>
        <summary>By the book, and seen</summary>
        <ApartList apart={apart} label="By the book, and seen" then="seen:" />
      </details>
    </>
  );
}

function Causes(props: {
  readonly asked: Asked;
  readonly explained: Explained;
  readonly taking: Taking;
}) {
  const all = useSignal(false);
  const closed = useClosed();
  const { explanations, unexplained } = props.explained;
  const ties = tiesOf(explanations);
  const shown = all.value ? explanations : explanations.slice(0, SHOWN_FIRST);
  return (
    <>
      {unexplained && (
        <Notice title="Nothing single explains this.">
          <p>
            {explanations.length === 0
              ? 'No two or three mistakes at once were found either.'
              : 'Of two or three mistakes at once, these are the most likely.'}
          </p>
        </Notice>
      )}
      {closed !== undefined && (
        <p class="soft">The season is closed: its records are read-only, causes are only shown.</p>
      )}
      <ol class="causes">
        {shown.map((explanation, at) => (
          <Cause
            key={JSON.stringify(explanation.edits)}
            explanation={explanation}
            day={props.asked.day}
            ties={ties[at] ?? 1}
            taking={props.taking}
          />
        ))}
      </ol>
      {shown.length < explanations.length && (
        <p class="form-end">
          <Button onClick={() => (all.value = true)}>Show all {explanations.length}</Button>
        </p>
      )}
      <WhereToLook asked={props.asked} explained={props.explained} />
    </>
  );
}

/** The one further look that would tell most, and the way to write down what is seen there. */
function WhereToLook(props: { readonly asked: Asked; readonly explained: Explained }) {
  const { ledger } = useBook();
  const { asked, explained } = props;
  const look = explained.decides;
  if (look === undefined) return null;
  const cut = look.account.indexOf(':');
  const place = seenPlaceOf(look.account.slice(0, cut), look.account.slice(cut + 1));
  const isNew = place !== undefined && !asked.places.includes(place);
  return (
    <section class="where-to-look" aria-label="Where to look next">
      <p>{lookWords(look, ledger)}</p>
      <p class="next-steps no-print">
        {isNew && (
          <a class="next-step" href={askedAddress({ ...asked, places: [...asked.places, place] })}>
            Write what is seen there
          </a>
        )}
        {place === 'stockroom' && (
          <a class="next-step" href="/count">
            Count
          </a>
        )}
      </p>
    </section>
  );
}
