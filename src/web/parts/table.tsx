import type { ComponentChildren } from 'preact';
import { ScrollBox } from './scroll-box.tsx';

/**
 * A table with a caption; number columns are right-aligned with even figures. On a narrow screen it
 * scrolls inside itself. `foot` is the row of totals.
 *
 *   <Table caption="Families" rows={rows} keyOf={(row) => row.family} columns={[
 *     { head: 'Family', cell: (row) => row.name },
 *     { head: 'Still to pay', number: true, cell: (row) => <Money minor={row.due} plain /> },
 *   ]} />
 */
export interface Column<R> {
  readonly head: string;
  readonly cell: (row: R) => ComponentChildren;
  readonly number?: boolean;
  /** Left out below 640 px. */
  readonly wide?: boolean;
  /** Only verbs, which paper has no use for. */
  readonly verbs?: boolean;
}

export function Table<R>(props: {
  readonly caption: string;
  readonly hideCaption?: boolean;
  readonly columns: readonly Column<R>[];
  readonly rows: readonly R[];
  readonly keyOf: (row: R) => string;
  readonly foot?: readonly ComponentChildren[];
  /** What to say when there is no row. */
  readonly none?: ComponentChildren;
}) {
  if (props.rows.length === 0 && props.none !== undefined) return <p class="none">{props.none}</p>;
  const look = (column: Column<R> | undefined) =>
    [column?.number && 'number', column?.wide && 'wide-only', column?.verbs && 'no-print']
      .filter(Boolean)
      .join(' ');
  return (
    <ScrollBox label={props.caption}>
      <table class="table">
        <caption class={props.hideCaption ? 'only-read' : ''}>{props.caption}</caption>
        <thead>
          <tr>
            {props.columns.map((column) => (
              <th scope="col" key={column.head} class={look(column)}>
                {column.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {props.rows.map((row) => (
            <tr key={props.keyOf(row)}>
              {props.columns.map((column, place) =>
                place === 0 ? (
                  <th
                    scope="row"
                    key={column.head}
                    class={look(column)}
                    data-head={column.verbs ? undefined : column.head}
                  >
                    {column.cell(row)}
                  </th>
                ) : (
                  <td
                    key={column.head}
                    class={look(column)}
                    data-head={column.verbs ? undefined : column.head}
                  >
                    {column.cell(row)}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
        {props.foot && (
          <tfoot>
            <tr>
              {props.foot.map((cell, place) => (
                <td key={props.columns[place]?.head} class={look(props.columns[place])}>
                  {cell}
                </td>
              ))}
            </tr>
          </tfoot>
        )}
      </table>
    </ScrollBox>
  );
}
