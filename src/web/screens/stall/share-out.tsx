import { useState } from 'preact/hooks';
import { done, refused } from '../../../base/outcome.ts';
import { dealtEvenly } from '../../../questions/dealt-evenly.ts';
import { shareCheck } from '../../../questions/share-check.ts';
import type { StallStanding } from '../../../questions/stall-settlement.ts';
import type { Lines } from '../../../records/fields.ts';
import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { LateField, useLate } from '../../parts/closed-season.tsx';
import { ErrorSummary } from '../../parts/notice.tsx';
import { useSaving } from '../../parts/saving.ts';
import { Sentence } from '../../parts/sentence.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import { typedWhole } from '../../parts/typed.ts';
import { ShareGrid, type ShareTyped } from './share-grid.tsx';

/** The stall's credit: what has been shared, and a grid for what has not. */
export function ShareOut({ standing }: { readonly standing: StallStanding }) {
  const { ledger } = useBook();
  const open = Object.keys(standing.notShared).length > 0;
  return (
    <section aria-labelledby="share-out">
      <h2 id="share-out">Share-out</h2>
      <ul class="record-list">
        {standing.shareouts.map((shareout) => (
          <li key={shareout.id}>
            <Sentence record={ledger.standing.get(shareout.id)} />
          </li>
        ))}
      </ul>
      {open ? (
        <ShareForm key={standing.shareouts.length} standing={standing} />
      ) : (
        <p>
          <StateMark mark="done" word="0 units not yet shared" />
        </p>
      )}
    </section>
  );
}

function ShareForm({ standing }: { readonly standing: StallStanding }) {
  const book = useBook();
  const { notShared: pool, stall } = standing;
  const { sellers } = book.ledger.setup;
  const onShift = [...new Set(stall.shifts.map((shift) => shift.seller))];
  const active = [...sellers.values()].filter((one) => one.active).map((one) => one.seller);
  const [shown, setShown] = useState(onShift.length > 0 ? onShift : active);
  const [typed, setTyped] = useState<ShareTyped>({});
  const saving = useSaving();
  const late = useLate();
  const read = readShares(typed);
  const check = shareCheck(pool, read.shares);
  const save = (event: SubmitEvent) => {
    event.preventDefault();
    const errors = [...read.errors, ...late.errors];
    for (const product of check.tooMuch) {
      const name = productName(book.ledger.setup, product);
      errors.push({ field: `share.${product}`, words: `${name}: more given than there is.` });
    }
    if (Object.keys(read.shares).length === 0) {
      errors.push({ field: '', words: 'Give at least one unit to a seller.' });
    }
    const draft = {
      kind: 'shareout' as const,
      date: standing.closes.at(-1)?.date ?? book.workingDay(),
      pool: `stall:${stall.stall}`,
      lines: read.shares,
      ...late.field,
    };
    void saving.save(errors.length > 0 ? refused(errors) : done([draft]));
  };
  const others = active.filter((seller) => !shown.includes(seller));
  return (
    <form onSubmit={save} noValidate>
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      <p>
        {onShift.length > 0
          ? 'The sellers who were on shift. Credit counts towards prizes and is never money.'
          : 'Nobody was down for a shift, so every active seller is listed. Credit is never money.'}
      </p>
      <p class="button-row">
        <Button onClick={() => setTyped(asTyped(dealtEvenly(pool, shown)))}>
          Start from an even share
        </Button>
        {others.length > 0 && (
          <Button onClick={() => setShown([...shown, ...others])}>Show all active sellers</Button>
        )}
      </p>
      <ShareGrid
        sellers={shown}
        check={check}
        typed={typed}
        onTyped={setTyped}
        errorOf={saving.errorOf}
      />
      <LateField late={late} error={saving.errorOf('late')} />
      <Button kind="main" submit disabled={saving.busy}>
        Save the share-out
      </Button>
    </form>
  );
}

function asTyped(shares: Readonly<Record<string, Lines>>): ShareTyped {
  const typed: Record<string, Record<string, string>> = {};
  for (const seller in shares) {
    const units = Object.entries(shares[seller] ?? {});
    typed[seller] = Object.fromEntries(units.map(([product, count]) => [product, String(count)]));
  }
  return typed;
}

function readShares(typed: ShareTyped) {
  const shares: Record<string, Record<string, number>> = {};
  const errors: { field: string; words: string }[] = [];
  for (const seller in typed) {
    for (const product in typed[seller]) {
      const units = typedWhole(typed[seller]?.[product] ?? '');
      if (!units.ok) errors.push({ field: `share.${product}.${seller}`, words: units.refusal });
      else if (units.value > 0) shares[seller] = { ...shares[seller], [product]: units.value };
    }
  }
  return { shares, errors };
}
