import { freeId } from '../../../intake/short-id.ts';
import { hostName, stallName } from '../../../statements/account-name.ts';
import { stallTimeText } from '../../../statements/stall-time-text.ts';
import { useBook } from '../../book.ts';
import { say } from '../../say.ts';
import { EditableList } from './editable-list.tsx';
import { Reading, removalOf, replacing } from './reading.ts';

const LOCAL_TIME = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/;

/** Stalls to come: where, and from when to when. Shifts are kept on the stall's own page. */
export function StallsPart() {
  const { ledger } = useBook();
  const { hosts, stalls } = ledger.setup;
  const options = [...hosts.values()].map(({ host, name }) => ({ value: host, words: name }));
  const settled = new Set(
    ledger
      .movements()
      .filter((movement) => movement.kind === 'stall-close')
      .map(({ stall }) => stall),
  );
  return (
    <EditableList
      spec={{
        caption: say`Stalls`,
        add: [say`Add a stall`, say`Add the stall`],
        none: say`No stall yet. Add a host shop first, then plan a stall there.`,
        rows: [...stalls.values()].sort((a, b) => (a.starts < b.starts ? -1 : 1)),
        columns: [
          {
            head: say`Stall`,
            cell: (row) => <a href={`/stalls/${row.stall}`}>{hostName(ledger.setup, row.host)}</a>,
          },
          { head: say`When`, cell: (row) => stallTimeText(row.starts, row.ends, say) },
          { head: say`Sellers on shift`, number: true, cell: (row) => row.shifts.length },
        ],
        keyOf: (row) => row.stall,
        nameOf: (row) => stallName(ledger.setup, row.stall, say),
        fields: [
          {
            name: 'host',
            label: say`Host shop`,
            kind: 'select',
            options,
            empty: say`Choose a host shop`,
          },
          { name: 'starts', label: say`Starts`, kind: 'time' },
          { name: 'ends', label: say`Ends`, kind: 'time' },
        ],
        start: (row) => ({
          host: row?.host ?? '',
          starts: row?.starts ?? '',
          ends: row?.ends ?? '',
        }),
        read: (values, row) => {
          const reading = new Reading(values, row);
          const host = reading.text('host', say`Choose the host shop.`);
          const starts = reading.optional('starts');
          const ends = reading.optional('ends');
          if (!LOCAL_TIME.test(starts)) reading.refuse('starts', say`Choose the day and time.`);
          if (!LOCAL_TIME.test(ends)) reading.refuse('ends', say`Choose the day and time.`);
          else if (ends <= starts) reading.refuse('ends', say`The end is not after the start.`);
          const stall =
            row?.stall ?? freeId(`${host} ${starts.slice(5, 10)}`, 'stall', new Set(stalls.keys()));
          const shifts = row?.shifts ?? [];
          return reading.done({
            kind: 'stall',
            stall,
            host,
            starts,
            ends,
            shifts: [...shifts],
            ...replacing(row),
          });
        },
        // A settled stall stays: its takings would otherwise belong nowhere.
        remove: (row) => (settled.has(row.stall) ? [] : removalOf(ledger, row)),
      }}
    />
  );
}
