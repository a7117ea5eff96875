import { freeId } from '../../../intake/short-id.ts';
import { useBook } from '../../book.ts';
import { EditableList } from './editable-list.tsx';
import type { FieldSpec } from './fields-form.tsx';
import { Reading, removalOf, replacing } from './reading.ts';

const NAME: FieldSpec = { name: 'name', label: 'Name', kind: 'text' };

/** Shops and places that host stalls. */
export function HostsPart() {
  const { ledger } = useBook();
  const { hosts } = ledger.setup;
  return (
    <EditableList
      spec={{
        caption: 'Host shops',
        one: 'host shop',
        none: 'No host shop yet. Add the first one, then plan a stall there.',
        rows: [...hosts.values()],
        columns: [
          { head: 'Name', cell: (row) => row.name },
          {
            head: 'Season report',
            cell: (row) => (
              <a href={`/hosts/${row.host}`} aria-label={`Report for ${row.name}`}>
                Report
              </a>
            ),
          },
        ],
        keyOf: (row) => row.host,
        nameOf: (row) => row.name,
        fields: [NAME],
        start: (row) => ({ name: row?.name ?? '' }),
        read: (values, row) => {
          const reading = new Reading(values, row);
          const name = reading.text('name', 'Write the name of the shop or place.');
          const host = row?.host ?? freeId(name, 'host', new Set(hosts.keys()));
          return reading.done({ kind: 'host', host, name, ...replacing(row) });
        },
        remove: (row) => removalOf(ledger, row),
      }}
    />
  );
}

/** Other local groups that goods are swapped with. */
export function NeighboursPart() {
  const { ledger } = useBook();
  const { neighbours } = ledger.setup;
  return (
    <EditableList
      spec={{
        caption: 'Neighbour groups',
        one: 'neighbour group',
        none: 'No neighbour group yet. Add one to record swaps with it.',
        rows: [...neighbours.values()],
        columns: [{ head: 'Name', cell: (row) => row.name }],
        keyOf: (row) => row.neighbour,
        nameOf: (row) => row.name,
        fields: [NAME],
        start: (row) => ({ name: row?.name ?? '' }),
        read: (values, row) => {
          const reading = new Reading(values, row);
          const name = reading.text('name', 'Write the name of the group.');
          const neighbour = row?.neighbour ?? freeId(name, 'group', new Set(neighbours.keys()));
          return reading.done({ kind: 'neighbour', neighbour, name, ...replacing(row) });
        },
        remove: (row) => removalOf(ledger, row),
      }}
    />
  );
}
