import type { ShareSheet } from '../../../questions/share/share-sheet.ts';
import {
  carriedWords,
  type ShareNames,
  sellerReason,
  shareReason,
} from '../../../statements/share-words.ts';
import { say } from '../../say.ts';

/** Why this is fair, in one sentence; seller by seller where somebody asks. */
export function WhyFair(props: { readonly sheet: ShareSheet; readonly names: ShareNames }) {
  const { sheet, names } = props;
  const sellers = sheet.input.sellers.filter(({ weight }) => weight > 0);
  return (
    <section class="why-fair" aria-labelledby="why-fair">
      <h3 id="why-fair">{say`Why this is fair`}</h3>
      <p>{shareReason(sheet, names, say)}</p>
      <details>
        <summary>{say`Seller by seller`}</summary>
        <ul class="record-list">
          {sellers.map(({ seller, carried }) => (
            <li key={seller}>
              {names.seller(seller)}: {sellerReason(sheet, seller, say)}.{' '}
              {carriedWords(names.seller(seller), Number(carried?.valueOf() ?? 0), say)}
            </li>
          ))}
        </ul>
      </details>
      <p class="soft">{say`Credit counts towards prizes and is never money.`}</p>
    </section>
  );
}
