import { useState } from 'preact/hooks';
import { countersNotice } from '../../../questions/counters.ts';
import {
  type CardText,
  type CardTick,
  cardTexts,
  cardTicks,
  stallReadiness,
} from '../../../questions/stall/stall-readiness.ts';
import type { RecordOf } from '../../../records/record.ts';
import { clockText } from '../../../statements/stall-time-text.ts';
import { useBook } from '../../book.ts';
import { go } from '../../navigation.ts';
import { Button } from '../../parts/button.tsx';
import { CheckField, TextField } from '../../parts/field.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import { say } from '../../say.ts';
import type { OpenSheet } from './use-sheet.ts';

const TEXTS: Readonly<Record<CardText, readonly [label: string, hint: string]>> = {
  host: [say`Host contact`, say`Whom to ask at the host shop, and the number.`],
  holder: [say`Who holds the cash`, say`An adult, who keeps it on them and out of sight.`],
  stop: [
    say`When to stop`,
    say`Your group’s own limits for heat, cold, wind and lightning. Stop early when in doubt.`,
  ],
};

const TICKS: Readonly<Record<CardTick, string>> = {
  unload: say`Unloaded before children leave the cars`,
  traffic: say`The stall stands clear of traffic and of doors`,
  water: say`Water, and shade or warmth, for everybody`,
};

/** The readiness card: a look through before anybody sells. It is saved as far as it is filled. */
export function ReadyForm(props: { readonly stall: RecordOf<'stall'>; readonly open: OpenSheet }) {
  const { ledger } = useBook();
  const { stall, open } = props;
  const before = open.sheet.ready;
  const [names, setNames] = useState<readonly string[]>(before?.names ?? []);
  const [card, setCard] = useState<Card>(before?.card ?? {});
  const save = async (event: SubmitEvent) => {
    event.preventDefault();
    const said = Object.entries(card).filter(([, text]) => text.trim() !== '');
    const there = names.map((name) => name.trim()).filter((name) => name !== '');
    const { entry } = await open.write('ready', { names: there, card: Object.fromEntries(said) });
    await open.handIn([entry]);
    go(`/stalls/${stall.stall}/sell`);
  };
  return (
    <form onSubmit={save} noValidate class="ready-form">
      <Caution />
      <ShiftsCovered stall={stall} />
      <Adults names={names} onNames={setNames} />
      <Points card={card} onCard={setCard} />
      <p role="status">
        <Left missing={stallReadiness(ledger, stall, { names: [...names], card }).missing.length} />
      </p>
      <div class="form-end">
        <Button kind="main" submit>
          {say`Save the card`}
        </Button>
      </div>
    </form>
  );
}

type Card = Readonly<Record<string, string>>;

function Caution() {
  return (
    <p class="caution">
      {say`Local rules and the host’s rules go first.`}{' '}
      {/* Two adults: NSPCC Learning, Recommended adult to child ratios. */}
      {say`Two adults at all times is published advice, for small groups too. The rest is common
        practice.`}
    </p>
  );
}

function Points(props: { readonly card: Card; readonly onCard: (card: Card) => void }) {
  const { card } = props;
  const set = (point: string, text: string) => props.onCard({ ...card, [point]: text });
  return (
    <>
      {cardTexts.map((point) => (
        <TextField
          key={point}
          label={TEXTS[point][0]}
          hint={TEXTS[point][1]}
          value={card[point] ?? ''}
          onValue={(text) => set(point, text)}
          maxLength={200}
        />
      ))}
      {cardTicks.map((point) => (
        <CheckField
          key={point}
          label={TICKS[point]}
          checked={(card[point] ?? '') !== ''}
          onChecked={(checked) => set(point, checked ? 'yes' : '')}
        />
      ))}
    </>
  );
}

function Adults(props: {
  readonly names: readonly string[];
  readonly onNames: (names: readonly string[]) => void;
}) {
  const [first = '', second = ''] = props.names;
  return (
    <>
      <div class="field-row">
        <TextField
          label={say`First adult`}
          value={first}
          onValue={(name) => props.onNames([name, second])}
          maxLength={200}
        />
        <TextField
          label={say`Second adult`}
          value={second}
          onValue={(name) => props.onNames([first, name])}
          maxLength={200}
        />
      </div>
      <AdultsNotice first={first} second={second} />
    </>
  );
}

function Left({ missing }: { readonly missing: number }) {
  return missing === 0 ? (
    <StateMark mark="done" word={say`Ready to open`} />
  ) : (
    <StateMark mark="open" word={say.count(missing)`# point left|# points left`} />
  );
}

function AdultsNotice(props: { readonly first: string; readonly second: string }) {
  const notice = countersNotice(useBook().ledger, props.first, props.second);
  if (notice === 'two') return null;
  return (
    <p class="soft">
      {notice === 'same-family' || notice === 'same-last-name'
        ? say`Both may be of one household. Ask an adult of another one to come, too.`
        : say`Two different adults are needed, for the whole time.`}
    </p>
  );
}

/** Sellers by first name and initial; hours in which nobody is down. */
function ShiftsCovered({ stall }: { readonly stall: RecordOf<'stall'> }) {
  const { cover } = stallReadiness(useBook().ledger, stall, undefined);
  return (
    <p>
      {cover.gaps.length === 0 ? (
        <StateMark
          mark="done"
          word={say.count(cover.sellers)`# seller, all hours covered|# sellers, all hours covered`}
        />
      ) : (
        <>
          <StateMark mark="open" word={say`Nobody is down for:`} />{' '}
          {cover.gaps.map(({ from, to }) => say`${clockText(from)} to ${clockText(to)}`).join(', ')}
          . <a href={`/stalls/${stall.stall}`}>{say`Edit shifts`}</a>
        </>
      )}
    </p>
  );
}
