import { link } from '../../parts/link.tsx';
import { say } from '../../say.ts';
import '../../styles/tasks.css';
import { useState } from 'preact/hooks';
import { plainText } from '../../../base/plain-text.ts';
import { type FamilyBalance, familyBalances } from '../../../questions/family-balances.ts';
import { useBook } from '../../book.ts';
import { go } from '../../navigation.ts';
import { TextField } from '../../parts/field.tsx';
import { Money, Units } from '../../parts/figures.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Owed } from '../../parts/owed.tsx';
import { Page } from '../../parts/page.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import type { ScreenProps } from '../../routes.ts';

type Standing = 'all' | 'to-pay' | 'in-credit' | 'even';

const STANDINGS: readonly (readonly [Standing, string])[] = [
  ['all', say`All`],
  ['to-pay', say`Still to pay`],
  ['in-credit', say`In credit`],
  ['even', say`Even`],
];

/** Every family with what it has out and still has to pay; the totals are the ledger's. */
export function FamiliesScreen({ search }: ScreenProps) {
  const { ledger } = useBook();
  const [text, setText] = useState('');
  const standing = STANDINGS.find(([value]) => value === search.get('show'))?.[0] ?? 'all';
  const answer = familyBalances(ledger);
  const shown = answer.families.filter(
    (family) => matchesText(family, text) && matchesStanding(family, standing),
  );
  return (
    <Page
      title={say`Families`}
      lead={
        <span class="figures">
          <Units
            units={answer.unitsOut}
            words={say.count(answer.unitsOut)`# unit out|# units out`}
          />{' '}
          <span>
            {say.pieces`${<Money minor={answer.stillToPay} />} still to pay,
              ${<Money minor={answer.inCredit} />} in credit`}
          </span>
        </span>
      }
      actions={
        <a class="button button-plain" href="/statements">
          {say`Print all statements`}
        </a>
      }
    >
      {answer.unplaced !== 0 && (
        <Notice
          tone="stop"
          title={say`Some payments or goods stand under a seller who has no family.`}
        >
          <p>
            {say.pieces`${<Owed minor={answer.unplaced} />}. Give the seller a family in
              ${link('/set-up/sellers', say`set-up`)}, or edit those records.`}
          </p>
        </Notice>
      )}
      <div class="filter no-print">
        <TextField label={say`Find a family or seller`} value={text} onValue={setText} />
        <div class="chips" role="radiogroup" aria-label={say`Show`}>
          {STANDINGS.map(([value, words]) => (
            <label class="chip" key={value}>
              <input
                type="radio"
                name="standing"
                checked={standing === value}
                onChange={() => go(`/families?show=${value}`, true)}
              />
              <span>{words}</span>
            </label>
          ))}
        </div>
      </div>
      <div class="stack stack-families">
        <Table
          caption={say.count(
            answer.families.length,
          )`${shown.length} of # family|${shown.length} of # families`}
          rows={shown}
          keyOf={(family) => family.family}
          columns={columns}
          none={
            answer.families.length === 0
              ? say.pieces`No family yet. ${link('/set-up/paste', say`Paste a seller list`)}, or
                ${link('/set-up/families', say`add a family`)}.`
              : say`No family fits. Clear the filter.`
          }
          {...(shown.length === answer.families.length
            ? {
                foot: [
                  say`Together`,
                  '',
                  <UnitsOut units={answer.unitsOut} />,
                  <Owed minor={answer.owes} />,
                ],
              }
            : {})}
        />
      </div>
    </Page>
  );
}

const columns: readonly Column<FamilyBalance>[] = [
  {
    head: say`Family`,
    cell: (family) => <a href={`/families/${family.family}`}>{family.name}</a>,
  },
  {
    head: say`Sellers`,
    cell: (family) => family.sellers.map((seller) => seller.name).join(say`, `),
  },
  {
    head: say`Units out`,
    number: true,
    cell: (family) => <UnitsOut units={family.unitsOut} />,
  },
  { head: say`Account`, number: true, cell: (family) => <Owed minor={family.owes} /> },
];

/** Stacked on a phone there is no column head, so that the figure says what it is. */
function UnitsOut({ units }: { readonly units: number }) {
  return (
    <>
      <Units units={units} plain />
      <span class="only-narrow"> {say`units out`}</span>
    </>
  );
}

function matchesText(family: FamilyBalance, text: string): boolean {
  const wanted = plainText(text);
  const names = [family.name, family.family, ...family.sellers.map((seller) => seller.name)];
  return names.some((name) => plainText(name).includes(wanted));
}

function matchesStanding(family: FamilyBalance, standing: Standing): boolean {
  if (standing === 'all') return true;
  if (standing === 'even') return family.owes === 0;
  return standing === 'to-pay' ? family.owes > 0 : family.owes < 0;
}
