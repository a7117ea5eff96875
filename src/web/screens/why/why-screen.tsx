import { say } from '../../say.ts';
import '../../styles/tasks.css';
import './why.css';
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { useBook } from '../../book.ts';
import { ErrorSummary } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { useSaving } from '../../parts/saving.ts';
import type { ScreenProps } from '../../routes.ts';
import { whyAddress, whyFamily } from '../../why-address.ts';
import { type Asked, readAsked } from './asked.ts';
import type { Taken, Taking } from './cause.tsx';
import { Findings } from './findings.tsx';
import { SeenForm } from './seen-form.tsx';
import { TakenNotice } from './taken-notice.tsx';

/** Why something does not agree: what was seen, what differs, and what may have gone wrong. */
export function WhyScreen({ search }: ScreenProps) {
  const book = useBook();
  const { taken, saving, taking } = useTaking();
  const asked = readAsked(search, book.ledger, book.workingDay());
  const said = search.toString();
  useFocusOn(said, asked.places.length);
  if (asked.places.length === 0) return <ChoosePlace />;
  const now = taken.value;
  // Undone by the notice on top, or followed by another save, it is not the last change any more.
  const isLast = now !== undefined && book.saved.value === now.records;
  return (
    <Page
      title={say`Why?`}
      above={<a href="/why">{say`Other places`}</a>}
      lead={say`Write what was seen. Nothing is changed until you take one of the causes.`}
      layout="why-page"
    >
      <div class="why-columns">
        <FoldedForm key={said} asked={asked} />
        <div class="why-found">
          {isLast && (
            <TakenNotice
              taken={now}
              onUndone={() => {
                taken.value = undefined;
                document.getElementById('found')?.focus();
              }}
            />
          )}
          <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
          {asked.seen.length > 0 && <Findings asked={asked} taking={taking} />}
        </div>
      </div>
    </Page>
  );
}

/** Takes an explanation, and remembers what the last one that was taken has changed. */
function useTaking() {
  const taken = useSignal<Taken | undefined>(undefined);
  const saving = useSaving();
  const taking: Taking = {
    busy: saving.busy,
    take: (drafts, about) =>
      saving.save({ ok: true, value: drafts }, (records) => {
        taken.value = { ...about, records };
      }),
  };
  return { taken, saving, taking };
}

/**
 * The form stands open while something is still to be written; else a narrow screen folds it, so
 * that the causes come first.
 */
function FoldedForm({ asked }: { readonly asked: Asked }) {
  const isSaid = asked.seen.length === asked.places.length;
  const isOpen = !isSaid || matchMedia('(min-width: 60rem)').matches;
  return (
    <details class="why-seen no-print" open={isOpen}>
      <summary>{say`What was seen, at the end of ${say.day(asked.day)}`}</summary>
      <SeenForm asked={asked} />
    </details>
  );
}

/** After another question the focus goes on: into the place that is new, or to the causes. */
function useFocusOn(said: string, places: number): void {
  const before = useRef({ said, places });
  useEffect(() => {
    const was = before.current;
    before.current = { said, places };
    if (was.said === said) return;
    const all = document.querySelectorAll<HTMLElement>('.seen-place');
    const input = all[all.length - 1]?.querySelector('input');
    const to = places > was.places ? input : document.getElementById('found');
    to?.focus();
  }, [said, places]);
}

function ChoosePlace() {
  const { setup } = useBook().ledger;
  return (
    <Page
      title={say`Why?`}
      above={<a href="/">{say`Places`}</a>}
      lead={say`What does not agree with the book?`}
    >
      <ul class="why-places">
        {PLACES.map(([place, words]) => (
          <li key={place}>
            <a href={whyAddress([place])}>{words}</a>
          </li>
        ))}
        {[...setup.families.values()].map(({ family, name }) => (
          <li key={family}>
            <a href={whyFamily(setup, family)}>{say`Family ${name}: it says otherwise`}</a>
          </li>
        ))}
      </ul>
    </Page>
  );
}

const PLACES = [
  ['stockroom', say`Stockroom: a count differs`],
  ['cashbox', say`Cash box: counted, and it differs`],
  ['bank', say`Bank: its balance differs`],
  ['cards', say`Cards: what is still to come differs`],
  ['supplier', say`Supplier: its figure differs`],
] as const;
