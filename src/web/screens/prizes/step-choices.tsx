import { useRef, useState } from 'preact/hooks';
import { chosenAt, levelsUp, type SellerPrizes } from '../../../questions/prizes.ts';
import { NO_PRIZE } from '../../../records/no-prize.ts';
import type { RecordOf } from '../../../records/record.ts';
import { sellerName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { say } from '../../say.ts';

/** A seller's steps, each with its choice: a select while it can still be changed. */
export function StepChoices(props: {
  readonly prizes: SellerPrizes;
  readonly readOnly: boolean;
  readonly onChoose: (level: string, choice: string) => void;
}) {
  const { ledger } = useBook();
  const { steps, notReached, credited } = props.prizes;
  const levels = levelsUp(ledger);
  const earned = levels.filter(({ level }) => steps.includes(level));
  const next = levels.find(({ units }) => units > credited);
  return (
    <>
      <ul class="step-choices">
        {earned.map((level) => (
          <Step key={level.level} level={level} {...props} />
        ))}
      </ul>
      {next !== undefined && (
        <span class="soft">
          {say`${next.units - credited} more, at ${next.units}: ${next.prize}`}
        </span>
      )}
      {levels
        .filter(({ level }) => notReached.includes(level))
        .map((level) => (
          <NotReached key={level.level} level={level} prizes={props.prizes} />
        ))}
    </>
  );
}

function NotReached({ level, prizes }: Pick<StepProps, 'level' | 'prizes'>) {
  const { ledger } = useBook();
  return (
    <p class="not-reached">
      {say`${level.prize}: ${chosenAt(ledger, prizes.seller, level) ?? ''} was chosen, and the
        credit is ${prizes.credited} of ${level.units}. If it is ordered it stays; a leader
        decides.`}
    </p>
  );
}

interface StepProps {
  readonly prizes: SellerPrizes;
  readonly level: RecordOf<'level'>;
  readonly readOnly: boolean;
  readonly onChoose: (level: string, choice: string) => void;
}

function Step(props: StepProps) {
  const { ledger } = useBook();
  const { level, prizes } = props;
  const chosen = chosenAt(ledger, prizes.seller, level) ?? '';
  const said = chosen === NO_PRIZE ? say`no prize` : chosen;
  return (
    <li>
      <span>{level.prize}</span>
      {props.readOnly ? (
        <span>{said !== '' && `: ${said}`}</span>
      ) : (
        <ChoiceOf {...props} chosen={chosen} />
      )}
      {!prizes.sure.includes(level.level) && <span class="soft">{say`not confirmed`}</span>}
    </li>
  );
}

/**
 * What is offered at a step, and always to do without the prize. Arrow keys pass over choices on
 * their way: by keyboard a choice counts on Enter, or when the list is left.
 */
function ChoiceOf({ level, prizes, chosen, onChoose }: StepProps & { readonly chosen: string }) {
  const { ledger } = useBook();
  const [passing, setPassing] = useState<string | undefined>(undefined);
  const byKeys = useRef(false);
  const shown = passing ?? chosen;
  const settle = () => {
    if (shown !== chosen) onChoose(level.level, shown);
    setPassing(undefined);
  };
  const needed = (level.choices?.length ?? 0) > 0;
  const offered = (level.choices ?? []).filter((choice) => choice !== NO_PRIZE);
  return (
    <select
      aria-label={say`Choice of ${sellerName(ledger.setup, prizes.seller)}: ${level.prize}`}
      class={needed && chosen === '' ? 'choice-missing' : ''}
      value={shown}
      onPointerDown={() => (byKeys.current = false)}
      onKeyDown={(event) => {
        byKeys.current = true;
        if (event.key === 'Enter') settle();
      }}
      onBlur={settle}
      onChange={(event) => {
        const { value } = event.currentTarget;
        if (byKeys.current) setPassing(value);
        else onChoose(level.level, value);
      }}
    >
      <option value="" disabled={needed} selected={shown === ''}>
        {needed ? say`Choice missing` : say`gets it`}
      </option>
      {offered.map((choice) => (
        <option key={choice} value={choice} selected={choice === shown}>
          {choice}
        </option>
      ))}
      <option value={NO_PRIZE} selected={shown === NO_PRIZE}>
        {say`No prize, thank you`}
      </option>
    </select>
  );
}
