import type { SellerPrizes } from '../../../questions/prizes.ts';
import { sellerName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';

/** A seller's steps, each with its choice: a select while it can still be changed. */
export function StepChoices(props: {
  readonly prizes: SellerPrizes;
  readonly readOnly: boolean;
  readonly onChoose: (level: string, choice: string) => void;
}) {
  const { ledger } = useBook();
  const { seller, steps, missing } = props.prizes;
  const { levels, choices } = ledger.setup;
  if (steps.length === 0) return <span class="soft">none yet</span>;
  return (
    <ul class="step-choices">
      {steps.map((id) => {
        const level = levels.get(id);
        const options = level?.choices ?? [];
        const chosen = missing.includes(id) ? '' : (choices.get(`${seller} ${id}`)?.choice ?? '');
        return (
          <li key={id}>
            <span>{level?.prize ?? id}</span>
            {options.length > 0 && props.readOnly && <span>: {chosen || 'no choice'}</span>}
            {options.length > 0 && !props.readOnly && (
              <select
                aria-label={`Choice of ${sellerName(ledger.setup, seller)}: ${level?.prize ?? id}`}
                class={chosen === '' ? 'choice-missing' : ''}
                value={chosen}
                onChange={(event) => props.onChoose(id, event.currentTarget.value)}
              >
                <option value="" disabled>
                  Choice missing
                </option>
                {options.map((option) => (
                  <option key={option} value={option} selected={option === chosen}>
                    {option}
                  </option>
                ))}
              </select>
            )}
          </li>
        );
      })}
    </ul>
  );
}
