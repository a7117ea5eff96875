import type { SupplierFile, SupplierLine } from '../../../intake/supplier/supplier-file.ts';
import type { Ledger } from '../../../ledger/ledger.ts';
import { matchSupplier, type SupplierMatch } from '../../../questions/match/match-supplier.ts';
import { missingSupplierRecords } from '../../../questions/match/missing-supplier-records.ts';
import { productName } from '../../../statements/account-name.ts';
import { kindName } from '../../../statements/kind-name.ts';
import {
  paperDifferenceWords,
  supplierReasonWords,
} from '../../../statements/supplier-match-words.ts';
import { useBook } from '../../book.ts';
import { Money } from '../../parts/figures.tsx';
import { Notice } from '../../parts/notice.tsx';
import { say } from '../../say.ts';
import { whyAddress } from '../../why-address.ts';
import { addLink, whyOf } from './add-link.ts';
import { MatchPair, MatchPart, RecordLines, StatementLine } from './match-pair.tsx';

interface PileProps {
  readonly found: SupplierMatch;
  readonly lines: ReadonlyMap<number, SupplierLine>;
}

/** Three piles: what differs, what only one has, what agrees. */
export function SupplierResult({ file }: { readonly file: SupplierFile }) {
  const { ledger } = useBook();
  const found = matchSupplier(ledger, file);
  const lines = new Map(file.lines.map((line) => [line.line, line]));
  const left = found.differ.length + found.onlyTheirs.length + found.onlyOurs.length;
  return (
    <>
      <Sums found={found} />
      {left === 0 && <Notice tone="done" title={say`Every line agrees with the book.`} />}
      <Differ found={found} lines={lines} />
      <OnlyTheirs found={found} lines={lines} />
      <MatchPart title={say`Only in the book`} count={found.onlyOurs.length}>
        {found.onlyOurs.map((record) => (
          <MatchPair
            key={record}
            theirs={say`On the statement`}
            right={<RecordLines ids={[record]} />}
          >
            <WhyBalance found={found} />
          </MatchPair>
        ))}
      </MatchPart>
      <MatchPart title={say`Agree`} count={found.matched.length}>
        {found.matched.map(({ line, records, why }) => (
          <MatchPair
            key={line}
            theirs={say`On the statement`}
            left={<SupplierLineText line={lines.get(line)} />}
            right={<RecordLines ids={records} />}
          >
            <span class="soft">{supplierReasonWords(why, say)}</span>
          </MatchPair>
        ))}
      </MatchPart>
    </>
  );
}

function Sums({ found }: { readonly found: SupplierMatch }) {
  return (
    <>
      <dl class="match-sums" aria-label={say`Both balances`}>
        <dt>{say`On the supplier’s account by the book`}</dt>
        <dd>
          <Money minor={found.bookBalance} plain to="/accounts/money/supplier" />
        </dd>
        <dt>{say`By the statement`}</dt>
        <dd>
          <Money minor={found.bankBalance} plain />{' '}
          {found.bankBalance !== found.bookBalance && <WhyBalance found={found} />}
        </dd>
      </dl>
      <p class="soft">{say`Below zero is owed by the group.`}</p>
    </>
  );
}

function Differ({ found, lines }: PileProps) {
  const { ledger } = useBook();
  return (
    <MatchPart title={say`Differ`} count={found.differ.length}>
      {found.differ.map(({ line, records, by, off }, at) => (
        <MatchPair
          key={`${line} ${at}`}
          theirs={say`On the statement`}
          left={<SupplierLineText line={lines.get(line ?? 0)} />}
          right={<RecordLines ids={records} />}
        >
          <span>▲ {paperDifferenceWords(by, ledger, say)}</span>
          {records.map((record) => (
            <a key={record} href={`/records/${record}/edit`}>
              {say`Edit the record`}
            </a>
          ))}
          <a
            href={
              off === 0 ? whyGoods(ledger, records) : whyOf('supplier', found.bookBalance + off)
            }
          >
            {line === undefined ? say`Why?` : say`Why, for line ${line}?`}
          </a>
        </MatchPair>
      ))}
    </MatchPart>
  );
}

function WhyBalance({ found }: { readonly found: SupplierMatch }) {
  return <a href={whyOf('supplier', found.bankBalance)}>{say`Why?`}</a>;
}

/** Where no money hangs on a difference, the goods are asked after: a neighbour's or the shelf. */
function whyGoods(ledger: Ledger, records: readonly string[]): string {
  const record = ledger.standing.currentOf(records[0] ?? '');
  const neighbour = record !== undefined && 'neighbour' in record ? record.neighbour : undefined;
  return whyAddress([neighbour === undefined ? 'stockroom' : `neighbour:${neighbour}`]);
}

function OnlyTheirs({ found, lines }: PileProps) {
  const { ledger } = useBook();
  const missing = missingSupplierRecords(ledger, found.onlyTheirs);
  return (
    <MatchPart title={say`Only on the statement`} count={found.onlyTheirs.length}>
      {found.onlyTheirs.map((paper) => {
        const numbers = paper.lines.map(({ line }) => line);
        const offer = missing.find(({ lines: of }) => of.join() === numbers.join());
        return (
          <MatchPair
            key={numbers.join()}
            theirs={say`On the statement`}
            left={numbers.map((line) => <SupplierLineText key={line} line={lines.get(line)} />)}
          >
            {offer && (
              <a href={addLink(offer.record)}>
                {say`Record it: ${kindName(offer.record.kind, say).toLowerCase()}`}
              </a>
            )}
            <WhyBalance found={found} />
          </MatchPair>
        );
      })}
    </MatchPart>
  );
}

function SupplierLineText({ line }: { readonly line: SupplierLine | undefined }) {
  const { ledger } = useBook();
  if (line === undefined) return <p class="soft">{say`no line`}</p>;
  const goods = Object.entries(line.goods).map(
    ([product, units]) => `${say.units(units)} ${productName(ledger.setup, product)}`,
  );
  const text = [line.text, line.reference ?? '', ...goods].filter((part) => part !== '');
  return (
    <StatementLine line={line.line} date={line.date} text={text.join(say`, `)} cents={line.cents} />
  );
}
