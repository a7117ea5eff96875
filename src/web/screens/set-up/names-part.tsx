import { freeId } from '../../../intake/short-id.ts';
import { useBook } from '../../book.ts';
import { say } from '../../say.ts';
import { EditableList } from './editable-list.tsx';
import type { FieldSpec } from './fields-form.tsx';
import { Reading, removalOf, replacing } from './reading.ts';

const NAME: FieldSpec = { name: 'name', label: say`Name`, kind: 'text' };

/** Shops and places that host stalls. */
export function HostsPart() {
  const { ledger } = useBook();
  const { hosts } = ledger.setup;
  return (
    <EditableList
      spec={{
        caption: say`Host shops`,
        add: [say`Add a host shop`, say`Add the host shop`],
        none: say`No host shop yet. Add the first one, then plan a stall there.`,
        rows: [...hosts.values()],
        columns: [
          { head: say`Name`, cell: (row) => row.name },
          {
            head: say`Season report`,
            cell: (row) => (
              <a href={`/hosts/${row.host}`} aria-label={say`Report for ${row.name}`}>
                {say`Report`}
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
          const name = reading.text('name', say`Write the name of the shop or place.`);
          const host = row?.host ?? freeId(name, 'host', new Set(hosts.keys()));
          return reading.done({ kind: 'host', host, name, ...replacing(row) });
        },
        remove: (row) => removalOf(ledger, row),
      }}
    />
  );
}

const DEPOT: FieldSpec = {
  name: 'supplier',
  label: say`The supplier’s own depot`,
  hint: say`A swap out to it is goods brought back to the supplier.`,
  kind: 'check',
};

/** Other local groups that goods are swapped with, and the supplier where it takes goods back. */
export function NeighboursPart() {
  const { ledger } = useBook();
  const { neighbours } = ledger.setup;
  return (
    <EditableList
      spec={{
        caption: say`Neighbour groups`,
        add: [say`Add a neighbour group`, say`Add the neighbour group`],
        none: say`No neighbour group yet. Add one to record swaps with it.`,
        rows: [...neighbours.values()],
        columns: [
          { head: say`Name`, cell: (row) => row.name },
          { head: DEPOT.label, cell: (row) => (row.supplier === true ? say`yes` : '') },
        ],
        keyOf: (row) => row.neighbour,
        nameOf: (row) => row.name,
        fields: [NAME, DEPOT],
        start: (row) => ({ name: row?.name ?? '', supplier: row?.supplier ? 'yes' : '' }),
        read: (values, row) => {
          const reading = new Reading(values, row);
          const name = reading.text('name', say`Write the name of the group.`);
          const neighbour = row?.neighbour ?? freeId(name, 'group', new Set(neighbours.keys()));
          const supplier = reading.ticked('supplier');
          const depot = supplier || row?.supplier === true ? { supplier } : {};
          return reading.done({ kind: 'neighbour', neighbour, name, ...depot, ...replacing(row) });
        },
        remove: (row) => removalOf(ledger, row),
      }}
    />
  );
}
