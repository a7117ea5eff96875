import { fieldId } from '../../parts/field.tsx';
import { say } from '../../say.ts';
import { cellField } from './sheet-typed.ts';

/** Sets what a cell says and locks it; undefined lets go of the lock. */
export type OnCell = (seller: string, product: string, text: string | undefined) => void;

/**
 * Units of one product for one seller: a number that follows, until something is typed into it or
 * its lock is closed; then it stays and the rest is shared around it.
 */
export function ShareCell(props: {
  readonly seller: string;
  readonly product: string;
  /** Who and what, for those who do not see the table. */
  readonly name: string;
  readonly shown: string;
  readonly locked: boolean;
  readonly wrong: boolean;
  readonly onCell: OnCell;
}) {
  const { seller, product, name, shown, locked } = props;
  return (
    <span class={locked ? 'share-cell share-locked' : 'share-cell'}>
      <input
        id={fieldId(cellField(seller, product))}
        type="text"
        inputMode="numeric"
        autocomplete="off"
        class="number"
        aria-label={name}
        aria-invalid={props.wrong ? 'true' : undefined}
        value={shown}
        onInput={(event) => props.onCell(seller, product, event.currentTarget.value)}
        onFocus={(event) => event.currentTarget.select()}
        onBlur={(event) => {
          if (event.currentTarget.value.trim() === '') props.onCell(seller, product, undefined);
        }}
        onKeyDown={moveBetweenRows}
      />
      <Lock
        name={name}
        locked={locked}
        onPress={() => props.onCell(seller, product, locked ? undefined : shown)}
      />
    </span>
  );
}

function Lock(props: {
  readonly name: string;
  readonly locked: boolean;
  readonly onPress: () => void;
}) {
  const { name, locked } = props;
  return (
    <button
      type="button"
      class="lock"
      aria-pressed={locked}
      aria-label={say`Lock ${name}`}
      // Typing locks a cell; by keyboard only what is locked needs its button.
      tabIndex={locked ? 0 : -1}
      onClick={props.onPress}
    >
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        <path d={locked ? 'M5 7V5a3 3 0 0 1 6 0v2' : 'M5 7V4a3 3 0 0 1 5.7-1.3'} />
        <rect x="3" y="7" width="10" height="7" />
      </svg>
    </button>
  );
}

/** Up, Down and Enter go to the same product of the seller above or below. */
function moveBetweenRows(event: KeyboardEvent & { readonly currentTarget: HTMLElement }): void {
  const step = { ArrowUp: -1, ArrowDown: 1, Enter: 1 }[event.key];
  if (step === undefined) return;
  event.preventDefault();
  const cell = event.currentTarget.closest('td');
  const rows = cell?.closest('tbody')?.rows;
  const row = cell?.closest('tr');
  if (cell === null || cell === undefined || rows === undefined || !row) return;
  const next = rows[row.sectionRowIndex + step];
  next?.cells[cell.cellIndex]?.querySelector('input')?.focus();
}
